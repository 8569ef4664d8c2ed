/**
 * The day of a clock as its place has it, year first.
 *
 * Example: the evening of 5 March 2026 is 2026-03-05, also where it is the sixth in Greenwich by then.
 */
export function today(clock = new Date()): string {
  const two = (number: number) => String(number).padStart(2, '0');
  return `${clock.getFullYear()}-${two(clock.getMonth() + 1)}-${two(clock.getDate())}`;
}

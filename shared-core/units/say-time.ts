import { say } from '../words/index.ts';

const MINUTES_OF_DAY = 1_440;

/** '45 min', '2 h', '2 h 30 min'. */
export function sayTime(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return say`${rest} min`;
  return rest === 0 ? say`${hours} h` : say`${hours} h ${rest} min`;
}

/** Minutes of the clock, in days where there are two or more: '4 h', '3 days'. */
export function sayWait(minutes: number): string {
  return minutes >= 2 * MINUTES_OF_DAY ? say`${Math.ceil(minutes / MINUTES_OF_DAY)} days` : sayTime(minutes);
}

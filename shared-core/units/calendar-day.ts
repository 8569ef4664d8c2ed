import { modulo } from './integer.ts';

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * Whether the calendar has that day.
 *
 * Shapes: months from 1 to 12, days from 1; leap years by the Gregorian rule. Example: 29 February was in 2024 and 2000,
 * not in 2026 and 1900.
 */
export function isCalendarDay(year: number, month: number, day: number): boolean {
  const isLeap = modulo(year, 4) === 0 && (modulo(year, 100) !== 0 || modulo(year, 400) === 0);
  const days = DAYS[month - 1];
  return days !== undefined && day >= 1 && day <= (month === 2 && isLeap ? 29 : days);
}

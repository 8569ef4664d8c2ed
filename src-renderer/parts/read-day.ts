import { isCalendarDay } from '../../shared-core/units/index.ts';
import { say } from '../../shared-core/words/index.ts';

/** A day as typed; null where it is no day of the calendar. */
export function readDay(typed: string): string | null {
  const day = typed.trim();
  const [, year, month, date] = (/^(\d{4})-(\d{2})-(\d{2})$/.exec(day) ?? []).map(Number);
  return year !== undefined && isCalendarDay(year, month!, date!) ? day : null;
}

export function sayNoDay(typed: string): string {
  return say`‘${typed.trim()}’ is no day; a date takes year, month and day, such as 2026-03-02.`;
}

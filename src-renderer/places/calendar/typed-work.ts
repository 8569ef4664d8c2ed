import { civilDay, dayNumberOf } from '../../../shared-core/calendar/index.ts';
import { say, sayDay } from '../../../shared-core/words/index.ts';
import { readDay, sayNoDay } from '../../parts/read-day.ts';

const DAY = String.raw`\d{4}-\d{2}-\d{2}`;
/** A day, or the first and the last of several with a word or a dash between them. */
const DAYS = new RegExp(String.raw`^(${DAY})(?:\s*(?:\p{L}+|[-–]|\.\.)\s*(${DAY}))?$`, 'u');
const MOST_DAYS = 400;

/**
 * Days as typed, separated by commas or semicolons, each once and in their order.
 *
 * Several days in a row are typed by the first and the last of them, with a word or a dash between. Fails with a sentence
 * that names what is no day. Example: '2026-12-24 to 2026-12-26, 2026-05-01' is four days from 1 May on.
 */
export function readDays(typed: string): { readonly days: readonly string[] } | { readonly trouble: string } {
  const found = new Set<string>();
  for (const part of typed.split(/[,;\n]/).map((one) => one.trim())) {
    if (part === '') continue;
    const [, first, last = first] = DAYS.exec(part) ?? [];
    const [from, to] = [first && readDay(first), last && readDay(last)];
    if (!from || !to) return { trouble: sayNoDay(part) };
    const [start, end] = [dayNumberOf(from), dayNumberOf(to)];
    if (end < start) return { trouble: say`‘${part}’ ends before it begins.` };
    if (end - start + found.size >= MOST_DAYS) return { trouble: say`These are more than ${MOST_DAYS} days.` };
    for (let day = start; day <= end; day += 1) found.add(civilDay(day));
  }
  return { days: [...found].sort() };
}

/** Days as their field shows them, three and more in a row by the first and the last: '2026-12-24 to 2026-12-26'. */
export function writeDays(days: readonly string[]): string {
  return inRows(days).map(([first, last]) => (first === last ? first : say`${first} to ${last}`)).join(', ');
}

/** The same for reading: '24 Dec 2026 to 26 Dec 2026'. */
export function sayDays(days: readonly string[]): string {
  return inRows(days).map(([first, last]) => (first === last ? sayDay(first) : say`${sayDay(first)} to ${sayDay(last)}`)).join(', ');
}

function inRows(days: readonly string[]): readonly (readonly [first: string, last: string])[] {
  const rows: string[][] = [];
  for (const day of days.toSorted()) {
    const row = rows.at(-1);
    if (row && dayNumberOf(day) === dayNumberOf(row.at(-1)!) + 1) row.push(day);
    else rows.push([day]);
  }
  return rows.flatMap((row) => (row.length > 2 ? [[row[0]!, row.at(-1)!] as const] : row.map((day) => [day, day] as const)));
}

/**
 * A time as typed, in whole minutes: '90', '1:30' and '1.5 h' are 90; null where it is none.
 */
export function readMinutes(typed: string): number | null {
  const text = typed.trim();
  const clock = /^(\d{1,4}):([0-5]\d)$/.exec(text);
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]);
  const hours = /^(\d{1,4})(?:[.,](\d{1,2}))?\s*h$/i.exec(text);
  if (hours) return Number(hours[1]) * 60 + Math.round((Number((hours[2] ?? '0').padEnd(2, '0')) * 60) / 100);
  return /^\d{1,6}$/.test(text) ? Number(text) : null;
}

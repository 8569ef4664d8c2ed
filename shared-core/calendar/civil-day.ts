import { assert } from '../base/index.ts';
import { WEEKDAYS } from '../house/index.ts';
import { floorDivide, modulo } from '../units/index.ts';

const DAYS_IN_400_YEARS = 146_097;
/** From 1 March of the year 0, with which the 400 years are counted, to 1 January 1970. */
const DAYS_TO_1970 = 719_468;
/** 1 January 1970 was a Thursday. */
const WEEKDAY_OF_1970 = 3;

/**
 * The number of a day of the Gregorian calendar, counted from 1 January 1970, which is 0.
 *
 * Takes a day of the calendar such as "2026-03-02"; anything else is a bug of ours. Rule: years are counted from March, so
 * that the leap day is their last, and 400 of them have 146097 days. Example: "2026-03-02" is 20514.
 */
export function dayNumberOf(day: string): number {
  const [, year, month, date] = /^(\d{4,})-(\d{2})-(\d{2})$/.exec(day)?.map(Number) ?? [];
  assert(year !== undefined && month !== undefined && date !== undefined, `${day} is no day such as 2026-03-02`);
  const marchYear = month > 2 ? year : year - 1;
  const era = floorDivide(marchYear, 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = floorDivide(153 * modulo(month + 9, 12) + 2, 5) + date - 1;
  const dayOfEra = yearOfEra * 365 + floorDivide(yearOfEra, 4) - floorDivide(yearOfEra, 100) + dayOfYear;
  return era * DAYS_IN_400_YEARS + dayOfEra - DAYS_TO_1970;
}

/**
 * The day that has a number: `civilDay(20514)` is "2026-03-02".
 */
export function civilDay(dayNumber: number): string {
  const since = dayNumber + DAYS_TO_1970;
  const era = floorDivide(since, DAYS_IN_400_YEARS);
  const dayOfEra = since - era * DAYS_IN_400_YEARS;
  // Leap days before it, so that what is left counts years of 365 days.
  const leapDays = floorDivide(dayOfEra, 1_460) - floorDivide(dayOfEra, 36_524) + floorDivide(dayOfEra, 146_096);
  const yearOfEra = floorDivide(dayOfEra - leapDays, 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + floorDivide(yearOfEra, 4) - floorDivide(yearOfEra, 100));
  const marchMonth = floorDivide(5 * dayOfYear + 2, 153);
  const date = dayOfYear - floorDivide(153 * marchMonth + 2, 5) + 1;
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  const year = era * 400 + yearOfEra + (month > 2 ? 0 : 1);
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`;
}

/**
 * The weekday of a day by its number: that of 20514, 2 March 2026, is 'mon'.
 */
export function weekdayOf(dayNumber: number): (typeof WEEKDAYS)[number] {
  return WEEKDAYS[modulo(dayNumber + WEEKDAY_OF_1970, 7)]!;
}

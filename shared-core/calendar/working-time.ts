import { assert } from '../base/index.ts';
import type { Work } from '../house/index.ts';
import { floorDivide, modulo } from '../units/index.ts';
import { civilDay, dayNumberOf, weekdayOf } from './civil-day.ts';

export const MINUTES_PER_DAY = 1_440;
/** A working day begins at 08:00; common practice, no source. Only what dries overnight asks when. */
export const START_MINUTE = 480;

/**
 * The two ways in which time is counted: by the clock, and by what is worked.
 *
 * The clock counts minutes from midnight before the first day, days off included. Worked minutes count one working day
 * after the other without what lies between them, so the end of a day and the next one's start are one number.
 */
export interface WorkingTime {
  /** Minutes of a working day. */
  readonly dayMinutes: number;
  /** The clock when a working day begins; the first is 0. */
  readonly clockOfDay: (index: number) => number;
  /** The first working day from a day on, by its index; a day before the first is none before it. */
  readonly indexFrom: (day: string) => number;
  /** The working day in whose hours a clock stands, their end included. */
  readonly indexAt: (clock: number) => number;
  readonly dayOf: (index: number) => string;
  /** The date of a clock, whether worked on or not. */
  readonly dateAt: (clock: number) => string;
  /** The worked minutes that are over at a clock, which is the first one that begins then or later. */
  readonly workedAt: (clock: number) => number;
  /** The first clock within working hours, their end included, at a clock or after it. */
  readonly openFrom: (clock: number) => number;
  /** The last clock within working hours, their end included, at a clock or before it. */
  readonly openUntil: (clock: number) => number;
  /** The clock at which a worked minute begins. */
  readonly clockAtStart: (worked: number) => number;
  /** The clock at which so many worked minutes are over. */
  readonly clockAtEnd: (worked: number) => number;
}

/**
 * Reckons with the working days of a crew from a day on.
 *
 * Shapes: `starts` such as "2026-03-02"; clocks and worked minutes whole. Before the first day every day is as if worked,
 * so that what is reckoned backwards has somewhere to be. Example: 8 hours from Monday to Friday, from Friday 2026-03-06:
 * worked minute 480 begins on Monday at 08:00, which is clock 4800, and 480 worked minutes are over on Friday at 16:00,
 * clock 960.
 */
export function workingTimeOf(work: Work, starts: string): WorkingTime {
  const first = dayNumberOf(starts);
  const dayMinutes = work.hours * 60;
  const holidays = new Set(work.holidays.map(dayNumberOf));
  assert(work.days.length > 0, 'a crew works on one weekday or more');
  /** Of each working day its distance from the first day; of each day the first working day from it on. */
  const offsets: number[] = [];
  const nextOf: number[] = [];
  const addDay = () => {
    const offset = nextOf.length;
    nextOf.push(offsets.length);
    if (work.days.includes(weekdayOf(first + offset)) && !holidays.has(first + offset)) offsets.push(offset);
  };
  const offsetOf = (index: number): number => {
    if (index < 0) return index;
    while (offsets.length <= index) addDay();
    return offsets[index]!;
  };
  const indexFromOffset = (offset: number): number => {
    if (offset < 0) return offset;
    while (nextOf.length <= offset) addDay();
    return nextOf[offset]!;
  };
  const clockOfDay = (index: number) => offsetOf(index) * MINUTES_PER_DAY + START_MINUTE;
  /** The working day of a clock or the next one, and how far into its hours the clock is: below 0 before them. */
  const placeOf = (clock: number): readonly [index: number, into: number] => {
    const index = indexFromOffset(floorDivide(clock, MINUTES_PER_DAY));
    return [index, clock - clockOfDay(index)];
  };
  const clockAtStart = (worked: number) => clockOfDay(floorDivide(worked, dayMinutes)) + modulo(worked, dayMinutes);
  return {
    dayMinutes,
    clockOfDay,
    indexFrom: (day) => indexFromOffset(Math.max(0, dayNumberOf(day) - first)),
    // A day of 16 hours ends at midnight.
    indexAt: (clock) => indexFromOffset(floorDivide(clock - 1, MINUTES_PER_DAY)),
    dayOf: (index) => civilDay(first + offsetOf(index)),
    dateAt: (clock) => civilDay(first + floorDivide(clock, MINUTES_PER_DAY)),
    workedAt(clock) {
      const [index, into] = placeOf(clock);
      return index * dayMinutes + Math.min(dayMinutes, Math.max(0, into));
    },
    openFrom(clock) {
      const [index, into] = placeOf(clock);
      return into > dayMinutes ? clockOfDay(index + 1) : Math.max(clock, clockOfDay(index));
    },
    openUntil(clock) {
      const [index, into] = placeOf(clock);
      return into < 0 ? clockOfDay(index - 1) + dayMinutes : Math.min(clock, clockOfDay(index) + dayMinutes);
    },
    clockAtStart,
    clockAtEnd: (worked) => clockAtStart(worked - 1) + 1,
  };
}

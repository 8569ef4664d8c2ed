import type { Work } from '../house/index.ts';

/** A day such as "2026-03-02", and a minute of its working hours: from 0, at their start, to as many as a day has. */
export interface WorkTime {
  readonly day: string;
  readonly minute: number;
}

/** Something that takes people and time. */
export interface Job {
  readonly id: string;
  /** Null for what belongs to no room. */
  readonly room: string | null;
  readonly words: string;
  /** Whole minutes: of one person, or of two together by the clock. */
  readonly minutes: number;
  /** How many of the crew it takes for its whole length; 0 for what somebody else does in working hours. */
  readonly people: 0 | 1 | 2;
  /** Minutes of the clock, day and night, in which nothing that comes after it may begin. */
  readonly waitMinutes: number;
  readonly after: readonly string[];
  /** Not before this day: a delivery. */
  readonly earliest: string | null;
  /** The day on which the user has it begin. */
  readonly chosen: string | null;
}

/** A job in the calendar: from when to when it is worked on, on which days and by whom. */
export interface Booking {
  readonly job: string;
  readonly from: WorkTime;
  readonly to: WorkTime;
  readonly days: readonly string[];
  /** Which of the crew, counted from 1; nobody for what takes no minutes or is done by somebody else. */
  readonly crew: readonly number[];
  /** Why it does not begin on the day that the user chose; null where it does or none was chosen. */
  readonly moved: string | null;
}

/** What is to be put into days, and whose days they are. */
export interface CalendarQuestion {
  readonly jobs: readonly Job[];
  readonly work: Work;
  /** The first day on which anything may be done, where the work names none. */
  readonly starts: string;
  /** The ids of rooms of which no two may be out of use on the same day. */
  readonly keptUsable: readonly string[];
  /** What a room is called in a sentence; its id where nobody says. */
  readonly nameRoom?: (room: string) => string;
  /** 'instant' takes a good calendar, 'usual' looks for the shortest. */
  readonly effort?: 'instant' | 'usual';
}

export interface CalendarPlan {
  readonly jobs: readonly Job[];
  /** In the order in which they begin. */
  readonly bookings: readonly Booking[];
  /** The day of the first booking; null where nothing is to be done. */
  readonly first: string | null;
  readonly last: string | null;
  /** Working days from the first on which anything could begin, whatever the order, to the last. */
  readonly workingDays: number;
  /** No calendar of these jobs takes fewer. */
  readonly lowerBound: number;
  readonly isShortest: boolean;
  /** Rooms that should stay usable and are out of use together all the same: each waits for something in the others. */
  readonly inseparable: readonly (readonly string[])[];
  /** Jobs for two of which the crew has only one: somebody has to lend a hand. */
  readonly lackingHands: readonly string[];
}

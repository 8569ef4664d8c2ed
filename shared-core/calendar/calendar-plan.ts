/** A day such as "2026-03-02", and a minute of its working hours from the first on. */
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
  /** Of one person, whole minutes. */
  readonly minutes: number;
  readonly people: 1 | 2;
  /** Minutes of the clock, day and night, in which nothing that comes after it may begin. */
  readonly waitMinutes: number;
  readonly after: readonly string[];
  /** Not before this day: a delivery. */
  readonly earliest: string | null;
  /** The day on which the user has it begin. */
  readonly chosen: string | null;
}

/** A job in the calendar: from when to when it is worked on, and on which days. */
export interface Booking {
  readonly job: string;
  readonly from: WorkTime;
  readonly to: WorkTime;
  readonly days: readonly string[];
  /** Why it does not stand on the day that the user chose; null where it does or none was chosen. */
  readonly moved: string | null;
}

export interface CalendarPlan {
  readonly jobs: readonly Job[];
  readonly bookings: readonly Booking[];
  /** Null where nothing is to be done. */
  readonly first: string | null;
  readonly last: string | null;
  /** Working days from the first to the last. */
  readonly workingDays: number;
  /** No calendar of these jobs takes fewer. */
  readonly lowerBound: number;
  readonly isShortest: boolean;
}

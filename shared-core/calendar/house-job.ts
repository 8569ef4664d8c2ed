import type { Job } from './calendar-plan.ts';

export type JobKind = 'preparation' | 'lining' | 'painting' | 'hanging' | 'clearing-up';

/** One line of arithmetic, with the rule it follows where there is one. */
export interface JobWorking {
  readonly text: string;
  readonly rule?: string;
}

/** A job of a house, with what it is and how its minutes were reached; its minutes are those of each of its people. */
export interface HouseJob extends Job {
  readonly kind: JobKind;
  /** Somebody else does it: it takes none of the crew's time and keeps its place and its waiting. */
  readonly isOthers: boolean;
  readonly working: readonly JobWorking[];
}

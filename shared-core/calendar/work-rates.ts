import { millimetres } from '../units/index.ts';
import { say } from '../words/index.ts';

/** How long one of something takes one person. */
export interface WorkRate {
  readonly minutes: number;
  readonly source: string;
}

export const COMMON_PRACTICE = say`common practice, no source`;
const rate = (minutes: number): WorkRate => ({ minutes, source: COMMON_PRACTICE });

/** Where to start from until a decorator's own figures are known: minutes of one person. */
export const WORK_RATES = {
  /** Of each coat, by the square metre. */
  ceilingPerSquareMetre: rate(5),
  wallsPerSquareMetre: rate(4),
  woodworkPerSquareMetre: rate(15),
  /** Of each piece. */
  strip: rate(15),
  shortPiece: rate(8),
  panel: rate(20),
  ceilingStrip: rate(20),
  liningStrip: rate(10),
  shortLining: rate(6),
  /** Along the wall. */
  borderPerMetre: rate(4),
  liningPerMetre: rate(3),
  /** Once for each band, each ceiling. */
  strikingLines: rate(20),
  /** Once for each room. */
  clearingUp: rate(30),
} as const;

/** What covers less than that of the wall's height hangs as quickly as a piece over a door; common practice, no source. */
export const SHORT_PIECE = millimetres(1200);

/** Minutes of the clock in which nothing may follow; common practice, no source: the tin's and the paste's own figures come first. */
export const DRYING_MINUTES = { ceiling: 240, walls: 240, woodwork: 960, lining: 1440, paperUnderBorder: 1440 } as const;

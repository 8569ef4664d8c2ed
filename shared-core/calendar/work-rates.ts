import { type House, ownRateOf } from '../house/index.ts';
import { millimetres } from '../units/index.ts';
import { say } from '../words/index.ts';

/** How long one of something takes one person. */
export interface WorkRate {
  readonly words: string;
  readonly minutes: number;
  readonly source: string;
}

export const COMMON_PRACTICE = say`common practice, no source`;
const rate = (minutes: number, words: string): WorkRate => ({ words, minutes, source: COMMON_PRACTICE });

/** Where to start from until a decorator's own figures are known: minutes of one person. */
export const WORK_RATES = {
  /** Of each coat, by the square metre. */
  ceilingPerSquareMetre: rate(5, say`A coat on a ceiling, a square metre`),
  wallsPerSquareMetre: rate(4, say`A coat on walls, a square metre`),
  woodworkPerSquareMetre: rate(15, say`A coat on woodwork, a square metre`),
  /** Of each piece. */
  strip: rate(15, say`A strip`),
  shortPiece: rate(8, say`A short piece`),
  panel: rate(20, say`A panel of a mural`),
  ceilingStrip: rate(20, say`A strip on a ceiling, each of two people`),
  liningStrip: rate(10, say`A strip of lining`),
  shortLining: rate(6, say`A short piece of lining`),
  /** Along the wall. */
  borderPerMetre: rate(4, say`A border, a metre`),
  liningPerMetre: rate(3, say`Lining across, a metre`),
  /** Once for each band, each ceiling. */
  strikingLines: rate(20, say`Striking lines, for each band and ceiling`),
  /** Once for each room. */
  clearingUp: rate(30, say`Clearing up a room`),
} as const;

export type WorkRates = Readonly<Record<keyof typeof WORK_RATES, WorkRate>>;

/**
 * How long things take in a house: our figures, and in their place the house's own.
 *
 * Example: of a house that says 12 minutes of a strip, a strip takes 12, a short piece our 8.
 */
export function ratesOf(house: Pick<House, 'work'>): WorkRates {
  const own = Object.entries(WORK_RATES).map(([of, ours]) => {
    const minutes = ownRateOf(house, of);
    return [of, minutes === undefined ? ours : { ...ours, minutes, source: say`the house’s own figure` }] as const;
  });
  return Object.fromEntries(own) as WorkRates;
}

/** What covers less than that of the wall's height hangs as quickly as a piece over a door; common practice, no source. */
export const SHORT_PIECE = millimetres(1200);

/** Minutes of the clock in which nothing may follow; common practice, no source: the tin's and the paste's own figures come first. */
export const DRYING_MINUTES = { ceiling: 240, walls: 240, woodwork: 960, lining: 1440, paperUnderBorder: 1440 } as const;

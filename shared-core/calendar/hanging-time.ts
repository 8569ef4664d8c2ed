import type { Rules } from '../house/index.ts';
import type { BorderLayout, CeilingLayout, Piece, StretchLayout } from '../setting-out/index.ts';
import { type Area, areaOf, ceilDivide, lengthOf, showArea, showLength, UNITS_PER_METRE } from '../units/index.ts';
import type { HouseJob, JobWorking } from './house-job.ts';
import { SHORT_PIECE, type WorkRate } from './work-rates.ts';
import { say } from '../words/index.ts';

/** How long something takes each of its people. */
export type JobTime = Pick<HouseJob, 'minutes' | 'people' | 'working'>;

/** What is hung of one sort, and whether one person can hang it. */
interface Share {
  readonly isForTwo: boolean;
  readonly minutes: number;
  readonly working: JobWorking;
}

/**
 * How long strips take: by the piece, whole or short; what is longer than one person hangs takes two.
 *
 * Shapes: minutes of each person, whole. Where one piece takes two people they are both there to the end and share what
 * one could do, its half rounded up. The lines are struck once; of what is booked only the first piece is waited for.
 * Source: common practice, no source. Example: 20 whole strips of 15 min and the lines in 20 min are 320 min of one
 * person; with 4 of them too long for one 60 min of two and 260 min shared, 190 min of each.
 */
export function timeOfStrips(stretches: readonly Pick<StretchLayout, 'strips'>[], { onePersonLength }: Pick<Rules, 'onePersonLength'>, rates: { readonly whole: WorkRate; readonly short: WorkRate; readonly lines: WorkRate }, bookingMinutes = 0): JobTime {
  const pieces = stretches.flatMap(({ strips }) => strips.flatMap((strip) => strip.pieces)).map((piece) => ({ isShort: isShort(piece), isForTwo: isForTwo(piece, { onePersonLength }) }));
  const of = (short: boolean, forTwo: boolean) => pieces.filter((piece) => piece.isShort === short && piece.isForTwo === forTwo).length;
  return together([
    ...sharesOfPieces(say`Whole pieces`, of(false, false), rates.whole, false),
    ...sharesOfPieces(say`Pieces too long for one person`, of(false, true), rates.whole, true),
    ...sharesOfPieces(say`Short pieces`, of(true, false), rates.short, false),
  ], rates.lines, bookingMinutes);
}

function isShort({ part, top, bottom }: Pick<Piece, 'part' | 'top' | 'bottom'>): boolean {
  return part !== 'full' || top - bottom < SHORT_PIECE;
}

/**
 * Whether a strip on a wall takes two people: a whole one that is longer than one person hangs.
 *
 * Source: common practice, no source. Example: with 12 ft for one person a whole strip of 12 ft takes one, of 13 ft two.
 */
export function isForTwo(piece: Pick<Piece, 'part' | 'top' | 'bottom'>, { onePersonLength }: Pick<Rules, 'onePersonLength'>): boolean {
  return !isShort(piece) && piece.top - piece.bottom > onePersonLength.length;
}

/**
 * How long a ceiling's strips take: each takes two people.
 *
 * Source: common practice, no source. Example: eight strips of 20 min and the lines in 20 min are 170 min of each of two.
 */
export function timeOverhead({ strips }: Pick<CeilingLayout, 'strips'>, rates: { readonly strip: WorkRate; readonly lines: WorkRate }, bookingMinutes = 0): JobTime {
  return together(sharesOfPieces(say`Pieces overhead`, strips.reduce((sum, { pieces }) => sum + pieces.length, 0), rates.strip, true), rates.lines, bookingMinutes);
}

/**
 * How long lengths along walls take, of a border or of lining across: by the metre, rounded up once.
 *
 * Shapes: its working is in metres whatever the house shows, since the figure is.
 * Source: common practice, no source. Example: 12.34 m of border at 4 min a metre are 50 min, with the lines 70 min.
 */
export function timeOfLengths(stretches: readonly Pick<BorderLayout, 'lengths'>[], { metre: rate, lines }: { readonly metre: WorkRate; readonly lines: WorkRate }, bookingMinutes = 0): JobTime {
  const lengths = stretches.flatMap((stretch) => stretch.lengths);
  const of = (isForTwo: boolean) => lengths.filter(({ needsTwo }) => needsTwo === isForTwo).reduce((sum, { from, to }) => sum + to - from, 0);
  const share = (what: string, isForTwo: boolean): readonly Share[] => {
    const length = of(isForTwo);
    const minutes = ceilDivide(length * rate.minutes, UNITS_PER_METRE);
    return length === 0 ? [] : [{ isForTwo, minutes, working: { text: say`${what}: ${showLength(lengthOf(length), 'metric')} at ${rate.minutes} min a metre = ${minutes} min, rounded up.`, rule: rate.source } }];
  };
  return together([...share(say`Lengths for one person`, false), ...share(say`Lengths too long for one person`, true)], lines, bookingMinutes);
}

/**
 * How long one coat takes one person, rounded up once to whole minutes.
 *
 * Source: common practice, no source. Example: 32.80 m² of wall at 4 min are 131.2 min, so 132 min.
 */
export function timeOfCoat(areas: readonly Area[], rate: WorkRate): JobTime {
  const area = areas.reduce((sum, one) => sum + BigInt(one), 0n);
  const minutes = Number((area * BigInt(rate.minutes) + SQUARE_METRE - 1n) / SQUARE_METRE);
  return { minutes, people: 1, working: [{ text: say`${showArea(areaOf(Number(area)), 'metric')} at ${rate.minutes} min a square metre = ${minutes} min, rounded up.`, rule: rate.source }] };
}

const SQUARE_METRE = BigInt(UNITS_PER_METRE) ** 2n;

function sharesOfPieces(what: string, count: number, rate: WorkRate, isForTwo: boolean): readonly Share[] {
  const minutes = count * rate.minutes;
  return count === 0 ? [] : [{ isForTwo, minutes, working: { text: say`${what}: ${count} × ${rate.minutes} min = ${minutes} min.`, rule: rate.source } }];
}

function together(shares: readonly Share[], lines: WorkRate, bookingMinutes: number): JobTime {
  const sum = (isForTwo: boolean) => shares.filter((share) => share.isForTwo === isForTwo).reduce((total, { minutes }) => total + minutes, 0);
  const [ofOne, ofTwo] = [sum(false) + lines.minutes, sum(true)];
  const people = shares.some(({ isForTwo }) => isForTwo) ? 2 : 1;
  const shared = people === 2 ? ceilDivide(ofOne, 2) : ofOne;
  const minutes = ofTwo + shared + bookingMinutes;
  return {
    minutes,
    people,
    working: [
      { text: say`Striking lines: ${lines.minutes} min.`, rule: lines.source },
      ...shares.map(({ working }) => working),
      ...(bookingMinutes > 0 ? [{ text: say`Booking the first piece: ${bookingMinutes} min.`, rule: say`the others are booked while one hangs` }] : []),
      ...(people === 2
        ? [{ text: say`What one could do, ${ofOne} min, shared by two: ${shared} min.`, rule: say`both are there to the end; the half is rounded up` }, { text: say`Together ${minutes} min of each of two people.` }]
        : [{ text: say`Together ${minutes} min.` }]),
    ],
  };
}

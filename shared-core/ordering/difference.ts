import type { CheckedDelivery, Ledger, RunStock } from './ledger.ts';
import type { OrderLine } from './order-line.ts';
import type { SaleUnit } from './packs.ts';
import type { WayOut } from './ways-out.ts';

/** What has to be ordered beyond the orders that were placed. */
export interface DifferenceLine {
  readonly covering: string;
  /** The run it must match; null where that is not known yet, and then it is that of the placed order. */
  readonly run: string | null;
  readonly rolls: number;
  readonly rooms: readonly string[];
  /** Whether the run is known to have so many; where it is not, it may be gone. */
  readonly isOffered: boolean;
}

/** What can go back, or need not come: whole sale units, unopened. */
export interface ReturnLine {
  readonly covering: string;
  readonly patternNumber: string | null;
  readonly run: string | null;
  readonly rolls: number;
  /** `not-needed` is beyond what the rooms and the spare take, `not-sent` the same while it has not come. */
  readonly why: 'not-needed' | 'not-sent' | 'wrong-pattern' | 'run-not-ordered' | 'not-kept';
}

/**
 * The difference order of a covering: what its rooms take beyond what was ordered, none before anything was.
 *
 * Where no run can hang a room, it asks for the fewest more rolls of a run that would do. Example: 10 ordered and come of
 * run 2214, the hall grown by a wall so that 12 are needed: 2 of run 2214, which may be gone.
 */
export function findDifference(ledger: Ledger, lines: readonly OrderLine[], waysOut: readonly WayOut[]): readonly DifferenceLine[] {
  if (ledger.lines.length === 0) return [];
  const { covering } = ledger;
  return lines.flatMap(({ run, rooms, toBuy, shortfall }): readonly DifferenceLine[] => {
    if (shortfall > 0) {
      const more = waysOut.find((way) => way.kind === 'ask-for-more' || way.kind === 'another-run');
      return [more && more.kind === 'ask-for-more' ? { covering, run: more.run, rolls: more.rolls, rooms, isOffered: false } : { covering, run: null, rolls: more ? more.rolls : shortfall, rooms, isOffered: false }];
    }
    return toBuy > 0 ? [{ covering, run, rolls: toBuy, rooms, isOffered: run !== null }] : [];
  });
}

/**
 * What of a covering can go back or need not come: of each run what no room and no spare takes, in whole sale units of
 * those that were bought, and packages of a wrong pattern or run that nobody has kept.
 *
 * Rolls that were in hand before any order stay; so do all while a room waits for a run, as what is there may be what it
 * hangs from. Example: 12 of run 2214 came in doubles, 8 are needed and 1 is spare:
 * one double goes back, the third roll stays.
 */
export function findReturns(ledger: Ledger, lines: readonly OrderLine[], patternNumber: string | null, sold: readonly SaleUnit[]): readonly ReturnLine[] {
  const { covering } = ledger;
  const isShort = lines.some(({ shortfall }) => shortfall > 0);
  const notNeeded = ledger.lines.length === 0 || isShort ? [] : ledger.runs.flatMap((stock) => surplusOf(stock, ledger, lines, patternNumber, sold));
  const refused = ledger.deliveries.flatMap((checked): readonly ReturnLine[] => {
    const rolls = checked.sound - checked.gone;
    const why = refusalOf(checked, ledger, patternNumber);
    return why && rolls > 0 ? [{ covering, patternNumber: checked.delivery.patternNumber, run: checked.delivery.run, rolls, why }] : [];
  });
  return [...notNeeded, ...refused];
}

function refusalOf({ verdict, delivery }: CheckedDelivery, { lines }: Ledger, patternNumber: string | null): ReturnLine['why'] | null {
  if (patternNumber !== null && delivery.patternNumber !== patternNumber) return 'wrong-pattern';
  if (verdict !== 'sent-back') return null;
  return lines.length > 0 && lines.every(({ run }) => run !== delivery.run) ? 'run-not-ordered' : 'not-kept';
}

function surplusOf({ run, inHand, onOrder }: RunStock, ledger: Ledger, lines: readonly OrderLine[], patternNumber: string | null, sold: readonly SaleUnit[]): readonly ReturnLine[] {
  const line = lines.find((one) => one.run === run);
  const surplus = inHand + onOrder - (line ? line.rollsNeeded + line.spare : 0);
  const sizes = packSizes(ledger, run, sold);
  const notSent = wholeUnits(Math.min(surplus, onOrder), sizes);
  const came = ledger.deliveries.reduce((sum, { verdict, delivery, sound, gone }) => sum + (verdict === 'counts' && delivery.run === run ? sound - gone : 0), 0);
  const back = wholeUnits(Math.min(surplus - notSent, came), sizes);
  const of = (rolls: number, why: ReturnLine['why']): readonly ReturnLine[] => (rolls > 0 ? [{ covering: ledger.covering, patternNumber, run, rolls, why }] : []);
  return [...of(notSent, 'not-sent'), ...of(back, 'not-needed')];
}

/** The sizes of the packs that a run was ordered in; where its orders say none, those it is sold in. */
function packSizes(ledger: Ledger, run: string | null, sold: readonly SaleUnit[]): readonly number[] {
  const ordered = ledger.lines.filter((line) => line.run === run).flatMap(({ line }) => line.packs.map(({ rolls }) => rolls));
  return ordered.length > 0 ? ordered : sold.map(({ rolls }) => rolls);
}

/** The most rolls up to a limit that are whole packs. */
function wholeUnits(limit: number, sizes: readonly number[]): number {
  const isReached = [true];
  let most = 0;
  for (let total = 1; total <= limit; total += 1) {
    isReached[total] = sizes.some((size) => size <= total && isReached[total - size]);
    if (isReached[total]) most = total;
  }
  return most;
}

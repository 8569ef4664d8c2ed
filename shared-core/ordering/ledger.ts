import type { Delivery, House, PlacedLine } from '../house/index.ts';

/** What there is of one run of a pattern. */
export interface RunStock {
  /** Null: ordered as one run of which nothing has come yet, so that its number is not known. */
  readonly run: string | null;
  /** Stock and what came sound and is kept, less what went back. */
  readonly inHand: number;
  /** Ordered and still to come. */
  readonly onOrder: number;
  /** What can still be had. */
  readonly offered: number;
}

/** A line of a placed order, and what has come of it. */
export interface LineProgress {
  readonly order: string;
  /** Its place in the order. */
  readonly index: number;
  readonly line: PlacedLine;
  /** The run that it asks for; of a line that asks for any one run, the first that came for it. */
  readonly run: string | null;
  /** Sound rolls of that run. */
  readonly received: number;
  /** Sound rolls of another run that are kept in their place. */
  readonly instead: number;
  readonly outstanding: number;
  /** Rolls that were taken off it, and of a closed line what has not come. */
  readonly notComing: number;
}

/** How a delivery stands to what was ordered; only what `counts` is in hand. */
export type Verdict = 'counts' | 'wrong-pattern' | 'run-not-ordered' | 'sent-back';

export interface CheckedDelivery {
  /** Its place in the house's list. */
  readonly index: number;
  readonly delivery: Delivery;
  readonly verdict: Verdict;
  /** Rolls that are there and can be hung. */
  readonly sound: number;
  /** Sound rolls beyond what any order asks for; 0 where nothing was ordered. */
  readonly tooMany: number;
  /** Of its sound rolls, those that went back. */
  readonly gone: number;
}

/** What was ordered of a covering, what has come, and what there is of each run. */
export interface Ledger {
  readonly covering: string;
  /** In the order in which the facts name them. */
  readonly runs: readonly RunStock[];
  readonly lines: readonly LineProgress[];
  readonly deliveries: readonly CheckedDelivery[];
  /** Which run each room was to hang from when the last order was placed; null where that was the run on its way. */
  readonly sharing: ReadonlyMap<string, string | null>;
}

interface OpenLine {
  readonly order: string;
  readonly index: number;
  /** How many packages had been recorded before it was placed. */
  readonly earlier: number;
  readonly line: PlacedLine;
  run: string | null;
  received: number;
  instead: number;
}

/**
 * Keeps a covering's ledger: every delivery held against the placed orders, in the order in which they were recorded.
 *
 * Shapes: counts of rolls. A package never came for an order that was placed after it was recorded; what such packages
 * have too many stays in hand and fills no later order. A delivery under another pattern number never counts. One of a run that no order names counts
 * where nothing was ordered, or where an order asks for any one run and this is the first to come: that run is then the
 * line's. Otherwise it counts only once somebody has decided to keep it, and then takes the place of what is outstanding.
 * Damaged rolls and those that were not in the package stay outstanding. What went back is taken off its run.
 * Example: 10 ordered of any one run; 8 of run 2214 come, 2 of them damaged: 6 in hand, 4 on order, all of 2214. Then 3
 * of run 2215 come: they wait for a decision.
 */
export function keepLedger(house: House, covering: string): Ledger {
  const patternNumber = house.coverings.find(({ id }) => id === covering)?.patternNumber;
  const lines: OpenLine[] = house.orders.flatMap((order) =>
    order.lines.flatMap((line, index) => (line.covering === covering ? [{ order: order.id, index, earlier: order.earlier, line, run: line.run ?? null, received: 0, instead: 0 }] : [])),
  );
  const runs = new Map<string, { inHand: number; offered: number }>();
  const at = (run: string) => {
    const entry = runs.get(run) ?? { inHand: 0, offered: 0 };
    runs.set(run, entry);
    return entry;
  };
  for (const entry of house.stock) if (entry.covering === covering) at(entry.run).inHand += entry.rolls;
  for (const { run } of lines) if (run !== null) at(run);
  const wentBack = new Map<string, number>();
  for (const entry of house.returns) if (entry.covering === covering) wentBack.set(entry.run, (wentBack.get(entry.run) ?? 0) + entry.rolls);
  const takeBack = (run: string, most: number) => {
    const taken = Math.min(most, wentBack.get(run) ?? 0);
    wentBack.set(run, (wentBack.get(run) ?? 0) - taken);
    return taken;
  };
  const checked = house.deliveries.flatMap((delivery, index): readonly Omit<CheckedDelivery, 'gone'>[] => {
    if (delivery.covering !== covering) return [];
    const sound = delivery.rolls - delivery.damaged - delivery.short;
    const asked = lines.filter(({ earlier }) => index >= earlier);
    const verdict = judge(delivery, patternNumber, asked);
    const left = verdict === 'counts' ? book(asked, delivery.run, sound) : 0;
    if (verdict === 'counts') at(delivery.run).inHand += sound;
    return [{ index, delivery, verdict, sound, tooMany: asked.length === 0 ? 0 : left }];
  });
  // What nobody kept goes back first, then what came and counts, then what was in hand before.
  const gone = new Map([...checked.filter(({ verdict }) => verdict !== 'counts'), ...checked.filter(({ verdict }) => verdict === 'counts')].map(({ index, delivery, sound }) => [index, takeBack(delivery.run, sound)]));
  const deliveries = checked.map((one) => ({ ...one, gone: gone.get(one.index)! }));
  for (const { verdict, delivery, gone: back } of deliveries) if (verdict === 'counts') at(delivery.run).inHand -= back;
  for (const [run, rest] of wentBack) {
    const there = runs.get(run);
    if (there) there.inHand = Math.max(0, there.inHand - rest);
  }
  for (const entry of house.offers) if (entry.covering === covering) at(entry.run).offered += entry.rolls;

  const onOrder = (wanted: string | null) => lines.reduce((sum, line) => sum + (line.run === wanted ? outstandingOf(line) : 0), 0);
  const stocks: RunStock[] = [...runs].map(([run, { inHand, offered }]) => ({ run, inHand, onOrder: onOrder(run), offered }));
  const unknown = onOrder(null);
  return {
    covering,
    runs: unknown > 0 ? [...stocks, { run: null, inHand: 0, onOrder: unknown, offered: 0 }] : stocks,
    lines: lines.map(progressOf),
    deliveries,
    sharing: sharingOf(house, covering, lines),
  };
}

/** What the orders say of it, the last one's word last; of a line that asked for any one run, the run that came. */
function sharingOf(house: House, covering: string, lines: readonly OpenLine[]): ReadonlyMap<string, string | null> {
  const cameFor = (order: string) => lines.find((line) => line.order === order && line.line.run === undefined)?.run ?? null;
  const shares = house.orders.flatMap((order) => [...order.lines, ...order.sharing].filter((share) => share.covering === covering).map((share) => ({ rooms: share.rooms, run: share.run ?? cameFor(order.id) })));
  return new Map(shares.flatMap(({ rooms, run }) => rooms.map((room) => [room, run] as const)));
}

function judge(delivery: Delivery, patternNumber: string | undefined, lines: readonly OpenLine[]): Verdict {
  if (delivery.decision === 'send-back') return 'sent-back';
  if (patternNumber !== undefined && delivery.patternNumber !== patternNumber) return 'wrong-pattern';
  const isAsked = lines.length === 0 || lines.some(({ run }) => run === delivery.run || run === null);
  return isAsked || delivery.decision === 'keep' ? 'counts' : 'run-not-ordered';
}

/**
 * Books sound rolls on the lines they were ordered by, then on those that ask for any one run, else in place of another
 * run; gives what no line asked for.
 */
function book(lines: readonly OpenLine[], run: string, sound: number): number {
  const own = lines.filter((line) => line.run === run);
  const left = fill(own, sound, 'received');
  const open = left > 0 || own.length === 0 ? lines.filter((line) => line.run === null) : [];
  for (const line of open) line.run = run;
  const over = fill(open, left, 'received');
  return own.length + open.length > 0 ? over : fill(lines, over, 'instead');
}

/** What a closed line got before it was closed is its own; what is still to come goes before it. Gives what is left. */
function fill(lines: readonly OpenLine[], sound: number, as: 'received' | 'instead'): number {
  let left = sound;
  for (const line of lines.toSorted((one, other) => Number(one.line.closed) - Number(other.line.closed))) {
    const taken = Math.min(left, notCome(line));
    line[as] += taken;
    left -= taken;
  }
  return left;
}

function progressOf(open: OpenLine): LineProgress {
  const { order, index, line, run, received, instead } = open;
  const outstanding = outstandingOf(open);
  return { order, index, line, run, received, instead, outstanding, notComing: Math.max(0, line.rolls - received - instead - outstanding) };
}

function outstandingOf(line: OpenLine): number {
  return line.line.closed ? 0 : notCome(line);
}

function notCome({ line, received, instead }: OpenLine): number {
  return Math.max(0, line.rolls - line.takenOff - received - instead);
}

import { type FilledRoll, type KnownOrders, orderCuts } from './cut-order.ts';
import { areNeighbours, type HungPieces } from './hanging-order.ts';

/** Steps for one parting of rolls: runs put into a roll, pieces gone through. */
const MOST_STEPS = 3_000;
/** Ways that are looked at closely, for one parting of rolls. */
const MOST_WAYS = 60;
/** What looking closely at a way takes, in steps. */
const STEPS_A_WAY = 20;
/** Places where neighbours of these rolls may stay parted. */
const MOST_PARTED = 3;

/** Steps that may still be taken, for all partings together. */
export interface Allowance {
  steps: number;
}

/**
 * Parts the pieces of a few rolls anew among as many rolls, so that more neighbours come from one roll; null where
 * nothing better is found.
 *
 * Rule: first no neighbours are parted, then one pair, and so on while that is no worse than now; of three rolls and more
 * only what parts fewer is looked for. Better is what is worth more (see `FilledRoll`), then what leaves the longest
 * offcut. Example: rolls of strips 1 2 4 and 3 5 6 become 1 2 3 and 4 5 6.
 */
export function partAnew(hung: HungPieces, rolls: readonly FilledRoll[], known: KnownOrders, allowance: Allowance): readonly FilledRoll[] | null {
  const pieces = rolls.flatMap((roll) => roll.pieces).sort((one, other) => one - other);
  const rollOf = new Map(rolls.flatMap((roll, index) => roll.pieces.map((piece) => [piece, index] as const)));
  const joints = pieces.flatMap((piece, index) => (index > 0 && areNeighbours(hung, pieces[index - 1]!, piece) ? [index] : []));
  const parted = joints.filter((index) => rollOf.get(pieces[index]!) !== rollOf.get(pieces[index - 1]!)).length;
  const search: Search = { hung, known, rolls, best: rolls, steps: 0, ways: 0 };
  for (let cuts = 0; cuts <= Math.min(rolls.length > 2 ? parted - 1 : parted, MOST_PARTED) && search.best === rolls; cuts += 1) {
    forEachChoice(joints, cuts, (chosen) => {
      search.steps += pieces.length;
      placeRuns(search, runsOf(pieces, joints, chosen));
      return search.steps < MOST_STEPS && search.ways < MOST_WAYS;
    });
  }
  allowance.steps -= search.steps + search.ways * STEPS_A_WAY;
  return search.best === rolls ? null : search.best;
}

interface Search {
  readonly hung: HungPieces;
  readonly known: KnownOrders;
  readonly rolls: readonly FilledRoll[];
  best: readonly FilledRoll[];
  steps: number;
  ways: number;
}

/** Calls with every choice of so many of these until told to stop. */
function forEachChoice(from: readonly number[], count: number, call: (chosen: readonly number[]) => boolean): void {
  const chosen: number[] = [];
  const choose = (next: number): boolean => {
    if (chosen.length === count) return call(chosen);
    for (let index = next; index < from.length; index += 1) {
      chosen.push(from[index]!);
      const goesOn = choose(index + 1);
      chosen.pop();
      if (!goesOn) return false;
    }
    return true;
  };
  choose(0);
}

/** Neighbours in one run but where they are parted. */
function runsOf(pieces: readonly number[], joints: readonly number[], parted: readonly number[]): readonly (readonly number[])[] {
  const runs: number[][] = [];
  pieces.forEach((piece, index) => {
    if (joints.includes(index) && !parted.includes(index)) runs.at(-1)!.push(piece);
    else runs.push([piece]);
  });
  return runs;
}

/** Puts whole runs into rolls in every way, longest first, so that what can't fit is seen early. */
function placeRuns(search: Search, wanted: readonly (readonly number[])[]): void {
  const { hung, rolls } = search;
  const runs = wanted
    .map((pieces) => ({ pieces, length: pieces.reduce((sum, piece) => sum + hung.types[hung.typeOf[piece]!]!.length, 0) }))
    .sort((one, other) => other.length - one.length);
  const into: (typeof runs)[] = rolls.map(() => []);
  const lengths = rolls.map(() => 0);
  const place = (index: number, opened: number): void => {
    if (search.steps >= MOST_STEPS || search.ways >= MOST_WAYS) return;
    search.steps += 1;
    if (index === runs.length) {
      if (opened === rolls.length) judge(search, into.map((some) => some.flatMap(({ pieces }) => pieces).sort((one, other) => one - other)));
      return;
    }
    const run = runs[index]!;
    for (let roll = 0; roll < Math.min(opened + 1, rolls.length); roll += 1) {
      if (lengths[roll]! + run.length > hung.capacity) continue;
      lengths[roll]! += run.length;
      into[roll]!.push(run);
      place(index + 1, Math.max(opened, roll + 1));
      into[roll]!.pop();
      lengths[roll]! -= run.length;
    }
  };
  if (runs.length >= rolls.length && runs[0]!.length <= hung.capacity) place(0, 0);
}

function judge(search: Search, rolls: readonly (readonly number[])[]): void {
  search.ways += 1;
  const found: FilledRoll[] = [];
  for (const pieces of rolls) {
    const roll = orderCuts(search.hung, pieces, search.known);
    if (roll === null) return;
    found.push(roll);
  }
  if (isBetter(found, search.best)) search.best = found;
}

function isBetter(one: readonly FilledRoll[], other: readonly FilledRoll[]): boolean {
  const [worthOne, worthOther] = [worthOf(one), worthOf(other)];
  if (worthOne !== worthOther) return worthOne > worthOther;
  const [rests, otherRests] = [restsOf(one), restsOf(other)];
  const place = rests.findIndex((rest, index) => rest !== otherRests[index]);
  return place >= 0 && rests[place]! > otherRests[place]!;
}

function worthOf(rolls: readonly FilledRoll[]): number {
  return rolls.reduce((sum, { worth }) => sum + worth, 0);
}

function restsOf(rolls: readonly FilledRoll[]): readonly number[] {
  return rolls.map(({ rest }) => rest).sort((one, other) => other - one);
}

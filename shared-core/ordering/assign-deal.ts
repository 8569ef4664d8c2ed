import type { Budget } from './assign-budget.ts';
import type { Model } from './assign-model.ts';
import { ceilDivide } from '../units/index.ts';
import { type Choice, compareJudged, type Found, type Judged, judge, leftOverOf, roomsHung, setsOf } from './assign-score.ts';
import { lightestGroups } from './assign-starts.ts';

/**
 * Deals the units of each kind evenly over the runs, so that the mixture of each is like the whole's.
 *
 * Rule: each run is to take a part of what is in hand and bought; the next unit of a kind goes where most of the kind is
 * lacking by that part, and of equals where most is lacking of all kinds.
 * Example: six rooms of one kind and three of another over runs that take two thirds and one third: 4 and 2, 2 and 1.
 */
export function dealEvenly(model: Model, runs: readonly number[], goal: Judged): Choice {
  const { values, worth } = model.size;
  const chosen = lightestGroups(model, runs, goal.hung).toSorted((one, other) => one - other);
  const units = chosen.flatMap((group) => Array.from({ length: model.groups[group]!.end - model.groups[group]!.first }, (_, index) => model.groups[group]!.first + index));
  const all = units.reduce((sum, unit) => sum + values[unit]!, 0);
  const shares = shareOut(model, runs, ceilDivide(all, worth));
  const whole = shares.reduce((sum, share) => sum + share, 0);
  const choice: number[] = model.typed.map(() => -1);
  const lacking = shares.map((share) => (share / Math.max(1, whole)) * all);
  const ofKind = new Map<number, number[]>();
  const kindCount = new Map<number, number>();
  for (const unit of units) kindCount.set(model.kinds[unit]!, (kindCount.get(model.kinds[unit]!) ?? 0) + 1);
  for (const unit of units) {
    const kind = model.kinds[unit]!;
    const pin = model.pins[unit];
    const wanted = ofKind.get(kind) ?? shares.map((share) => (share / Math.max(1, whole)) * kindCount.get(kind)!);
    ofKind.set(kind, wanted);
    const isRare = kind < 0 || kindCount.get(kind)! < runs.length;
    const order = runs.map((_, index) => index).sort((one, other) => (isRare ? 0 : Math.round(wanted[other]!) - Math.round(wanted[one]!)) || lacking[other]! - lacking[one]! || one - other);
    const taker = typeof pin === 'number' ? runs.indexOf(pin) : order[0]!;
    choice[unit] = runs[taker]!;
    wanted[taker] = wanted[taker]! - 1;
    lacking[taker] = lacking[taker]! - values[unit]!;
  }
  return choice;
}

/** So many rolls over the runs: what is in hand first, then of each offer a like part; all there is where that is less. */
function shareOut(model: Model, runs: readonly number[], rolls: number): readonly number[] {
  const inHand = runs.map((run) => model.runs[run]!.inHand);
  const offered = runs.map((run) => model.runs[run]!.most - model.runs[run]!.inHand);
  const sum = (of: readonly number[]) => of.reduce((total, one) => total + one, 0);
  const beyond = rolls - sum(inHand);
  if (beyond <= 0) return inHand;
  const most = sum(offered);
  if (beyond >= most) return inHand.map((hand, index) => hand + offered[index]!);
  let left = beyond;
  const shares = offered.map((one) => {
    const part = beyond * one;
    const share = (part - (part % most)) / most;
    left -= share;
    return share;
  });
  for (let index = 0; left > 0; index = (index + 1) % shares.length) {
    if (shares[index]! >= offered[index]!) continue;
    shares[index] = shares[index]! + 1;
    left -= 1;
  }
  return inHand.map((hand, index) => hand + shares[index]!);
}

/** What a choice comes to, whether or not the runs have enough; `over` are the rolls that they lack. */
interface Weighed extends Judged {
  readonly over: number;
}

function compareWeighed(one: Weighed, other: Weighed): number {
  return one.over - other.over || compareJudged(one, other);
}

function weigh(model: Model, hung: number, rolls: readonly number[], sizes: readonly number[]): Weighed {
  let [over, bought, leftOver, used] = [0, 0, 0, 0];
  model.runs.forEach(({ inHand, most }, run) => {
    if (sizes[run] === 0) return;
    over += Math.max(0, rolls[run]! - most);
    const more = model.bought(rolls[run]! - inHand);
    bought += more;
    leftOver += leftOverOf(model, inHand, inHand + more - rolls[run]!);
    used += 1;
  });
  return { over, hung, bought, leftOver, used };
}

/** A unit that goes from one run to another, and one that may come back for it. */
interface Change {
  readonly unit: number;
  readonly back: number | null;
  readonly from: number;
  readonly to: number;
}

/** A change with what is expected of it; of equals the one of the greater promise is asked about first. */
interface Prospect extends Change {
  readonly weighed: Weighed;
  readonly promise: number;
}

/** Rolls, loads and units of every run as they stand. */
interface Standing {
  readonly sets: readonly (readonly number[])[];
  readonly rolls: readonly number[];
  readonly loads: readonly number[];
  readonly weighed: Weighed;
  readonly gathered: number;
}

/** What a cutting usually takes beyond its scale, in hundredths of a roll. */
const USUAL_EXCESS = 30;
/** Less than this is no gathering of what is left over, in rolls squared. */
const LEAST_GATHERED = 1 / 1_000;

/**
 * Moves and exchanges units between runs, where by the scale the whole comes to less, and asks for the two cuttings.
 *
 * Rule: of the changes that promise most, the one whose loads stay furthest below whole rolls is asked about first; what
 * was asked about is judged by its cuttings. Where none promises less, what is left of the last rolls is gathered in one
 * run, until a roll of it can be saved. Groups are given up only where at the end a run has not enough. Ends at `goal`.
 * Example: rooms of 2.6 and 0.6 take 4 rolls of one run, rooms of 1.4 and 0.9 take 3 of another: that of 0.6 moves, and
 * each run gives 3.
 */
export function improveByAsking(model: Model, runs: readonly number[], start: Choice, goal: Judged, budget: Budget): Found | null {
  const choice = [...start];
  const hung = roomsHung(model, choice);
  let now = standingOf(model, choice, hung);
  const asked = new Set<string>();
  while (!budget.isOver() && (now.weighed.over > 0 || compareJudged(now.weighed, goal) > 0)) {
    const change = nextChange(model, runs, now, asked, budget);
    if (!change) break;
    apply(choice, change);
    const after = standingOf(model, choice, hung);
    if ((compareWeighed(after.weighed, now.weighed) || now.gathered + LEAST_GATHERED - after.gathered) < 0) {
      now = after;
      asked.clear();
    } else {
      apply(choice, { ...change, from: change.to, to: change.from });
      asked.add(keyOf(model, change));
    }
  }
  giveUp(model, choice);
  const judged = judge(model, choice);
  return judged && { choice, judged };
}

function standingOf(model: Model, choice: Choice, hung: number): Standing {
  const { values, worth } = model.size;
  const sets = setsOf(model, choice);
  const rolls = sets.map((set) => model.count(set));
  const loads = sets.map((set) => set.reduce((sum, unit) => sum + values[unit]!, 0));
  return { sets, rolls, loads, weighed: weigh(model, hung, rolls, sets.map((set) => set.length)), gathered: gatheredOf(rolls, loads, worth) };
}

/** The sum of the squares of what is left of each run's rolls; the more, the less it is scattered. */
function gatheredOf(rolls: readonly number[], loads: readonly number[], worth: number): number {
  return rolls.reduce((sum, one, run) => sum + (one - loads[run]! / worth) ** 2, 0);
}

function apply(choice: number[], { unit, back, from, to }: Change): void {
  choice[unit] = to;
  if (back !== null) choice[back] = from;
}

function keyOf({ kinds }: Model, { unit, back, from, to }: Change): string {
  const name = (one: number | null) => (one === null ? 'none' : kinds[one]! < 0 ? `unit ${one}` : kinds[one]!);
  return `${name(unit)} ${name(back)} ${from} ${to}`;
}

/** The change to ask about next: one that promises less, the usual excess heeded or not, else one that gathers what is left. */
function nextChange(model: Model, runs: readonly number[], now: Standing, asked: ReadonlySet<string>, budget: Budget): Change | null {
  const excesses = excessesOf(model, now);
  for (const excess of excesses) {
    const best = bestProspect(model, runs, now, excess, asked, budget, ({ weighed }) => compareWeighed(weighed, now.weighed) < 0);
    if (best) return best;
  }
  const isGathering = ({ weighed, promise }: Prospect) => compareWeighed(weighed, now.weighed) === 0 && promise > now.gathered + LEAST_GATHERED;
  for (const excess of excesses) {
    const best = bestProspect(model, runs, now, excess, asked, budget, isGathering, true);
    if (best) return best;
  }
  return null;
}

/** What cuttings may take beyond the scale: at least what they took as things stand, what is usual, and nothing. */
function excessesOf({ size: { worth } }: Model, { rolls, loads }: Standing): readonly number[] {
  const usual = ((worth - (worth % 100)) / 100) * USUAL_EXCESS;
  const seen = Math.max(...rolls.map((one, run) => (one - 1) * worth - loads[run]!));
  return seen > usual ? [seen + 1, usual, 0] : [usual, 0];
}

function bestProspect(model: Model, runs: readonly number[], now: Standing, excess: number, asked: ReadonlySet<string>, budget: Budget, isWanted: (prospect: Prospect) => boolean, isGathering = false): Prospect | null {
  const { values, worth } = model.size;
  const movable = now.sets.map((set) => onePerKind(model, set.filter((unit) => model.pins[unit] === null)));
  const expectedFrom = (load: number) => (load <= 0 ? 0 : ceilDivide(load + excess, worth));
  let best: Prospect | null = null;
  for (const from of runs) {
    for (const to of runs) {
      if (from === to || budget.isOver()) continue;
      budget.spend(movable[from]!.length * (movable[to]!.length + 1) * 8);
      for (const unit of movable[from]!) {
        // An exchange is the same from either side.
        for (const back of from < to ? [null, ...movable[to]!] : [null]) {
          const moved = values[unit]! - (back === null ? 0 : values[back]!);
          if (moved === 0) continue;
          const [loadFrom, loadTo] = [now.loads[from]! - moved, now.loads[to]! + moved];
          const [rollsFrom, rollsTo] = [expectedFrom(loadFrom), expectedFrom(loadTo)];
          // Where neither takes fewer nothing is better, and what is left is gathered only among as many.
          if (isGathering ? rollsFrom + rollsTo !== now.rolls[from]! + now.rolls[to]! : rollsFrom >= now.rolls[from]! && rollsTo >= now.rolls[to]!) continue;
          const loads = now.loads.with(from, loadFrom).with(to, loadTo);
          const rolls = now.rolls.with(from, rollsFrom).with(to, rollsTo);
          const sizes = now.sets.map((set, run) => set.length + (back !== null ? 0 : run === to ? 1 : run === from ? -1 : 0));
          const margin = Math.min(rollsFrom - loadFrom / worth, rollsTo - loadTo / worth);
          const prospect = { unit, back, from, to, weighed: weigh(model, now.weighed.hung, rolls, sizes), promise: isGathering ? gatheredOf(rolls, loads, worth) : margin };
          if (!isWanted(prospect) || (best && (compareWeighed(prospect.weighed, best.weighed) || best.promise - prospect.promise) >= 0)) continue;
          if (!asked.has(keyOf(model, prospect))) best = prospect;
        }
      }
    }
  }
  return best;
}

function onePerKind({ kinds }: Model, units: readonly number[]): readonly number[] {
  return [...new Map(units.map((unit) => [kinds[unit]! < 0 ? `unit ${unit}` : kinds[unit], unit])).values()];
}

/** Takes groups off runs that have not enough, and hangs them elsewhere where a run has. */
function giveUp(model: Model, choice: number[]): void {
  const { values, worth } = model.size;
  const given: number[] = [];
  model.runs.forEach(({ most }, run) => {
    for (;;) {
      const set = setsOf(model, choice)[run]!;
      const over = model.count(set) - most;
      if (set.length === 0 || over <= 0) return;
      // The least that may be enough, else the largest there is.
      const need = (over - 1) * worth;
      const lightFirst = set.toSorted((one, other) => values[one]! - values[other]! || other - one);
      const group = model.groupOf[lightFirst.find((unit) => values[unit]! > need) ?? lightFirst.at(-1)!]!;
      for (let unit = model.groups[group]!.first; unit < model.groups[group]!.end; unit += 1) choice[unit] = -1;
      given.push(group);
    }
  });
  for (const group of given.toSorted((one, other) => other - one)) {
    const { first, end } = model.groups[group]!;
    if (end > first + 1) continue;
    const value = values[first]!;
    const sets = setsOf(model, choice);
    const pin = model.pins[first];
    const free = (run: number) => model.runs[run]!.most * worth - sets[run]!.reduce((sum, unit) => sum + values[unit]!, 0);
    const [taker] = model.runs.map((_, run) => run).filter((run) => (pin === null || pin === run) && free(run) >= value).sort((one, other) => free(other) - free(one) || one - other);
    if (taker === undefined) continue;
    if (model.count([...sets[taker]!, first].sort((one, other) => one - other)) <= model.runs[taker]!.most) choice[first] = taker;
  }
}

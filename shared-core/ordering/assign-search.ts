import { ceilDivide } from '../units/index.ts';
import type { Budget } from './assign-budget.ts';
import { compareByRoom, valueOf } from './assign-bounds.ts';
import { fullestFill } from './assign-fill.ts';
import type { Model } from './assign-model.ts';
import { compareJudged, type Found, type Judged, judge, rollsOf } from './assign-score.ts';

/** More states than this are not remembered. */
const MOST_REMEMBERED = 300_000;
/** Of more units the rolls that each takes alone are not asked for. */
const MOST_ALONE = 12;

/**
 * Tries every assignment, unit by unit from the largest, but for what cannot be better than the best that is known.
 *
 * Rule: at each group what is left is bounded as if it could be cut from several runs at once: rooms hung, rolls bought,
 * left over, runs used. Units that are alike go to runs in rising order, of runs in the same state the first is tried,
 * and a state of the additive form that was searched is not searched again. Elsewhere a set counts for what the scales
 * say until nothing is left to hang and the whole looks better than the best: then its cuttings are asked for.
 *
 * Says whether all was tried, or the best met `floor`; `found` is told of each better one.
 * Example: rooms of 4, 4 and 3, runs of 7 and 4: with both rooms of 4 in turn in the first run 2 hang; with one of them in
 * the second all 3 do.
 */
export function searchAll(model: Model, start: Found, floor: Judged, leastBought: (rolls: number) => number, budget: Budget, found: (better: Found) => void): boolean {
  let best = start;
  const { groups, kinds, pins, runs, scales, isAdditive } = model;
  const units = model.typed.length;
  const choice: number[] = model.typed.map(() => -1);
  const loads = scales.map(() => runs.map(() => 0));
  const members: number[][] = runs.map(() => []);
  const least = runs.map(() => 0);
  const rest = restsOf(model);
  const alone = isAdditive ? scales[0]!.values : units <= MOST_ALONE ? model.typed.map((_, unit) => model.count([unit])) : null;
  const searched = new Map<string, number>();
  let isEnded = false;

  const isAtEnd = () => (isEnded ||= budget.isOver() || compareJudged(best.judged, floor) <= 0);

  const place = (unit: number, run: number): boolean => {
    const set = members[run]!;
    set.push(unit);
    choice[unit] = run;
    let rolls = least[run]!;
    scales.forEach(({ values, worth }, scale) => {
      const load = loads[scale]![run]! + values[unit]!;
      loads[scale]![run] = load;
      rolls = Math.max(rolls, isAdditive ? load : ceilDivide(load, worth));
    });
    if (!isAdditive) rolls = Math.max(rolls, model.known(set) ?? 0);
    least[run] = rolls;
    return rolls <= runs[run]!.most;
  };
  const take = (unit: number, run: number, before: number) => {
    members[run]!.pop();
    choice[unit] = -1;
    least[run] = before;
    scales.forEach(({ values }, scale) => (loads[scale]![run] = loads[scale]![run]! - values[unit]!));
  };

  /** The most that could still be cut, left over being what is not; without the rolls of each alone nothing is known. */
  const mostTaken = (from: number): number => {
    if (!alone) return Infinity;
    let sum = 0;
    for (let unit = from; unit < units; unit += 1) sum += alone[unit]!;
    if (isAdditive) return least.reduce((all, rolls) => all + rolls, sum);
    members.forEach((set) => (sum += model.known(set) ?? set.reduce((more, unit) => more + alone[unit]!, 0)));
    return sum;
  };

  const isHopeless = (group: number, hung: number): boolean => {
    const { judged } = best;
    const from = groups[group]?.first ?? units;
    let isMoreRooms = true;
    let [fewestMore, boughtNow, beyondNow, opened] = [0, 0, 0, false];
    runs.forEach((run, index) => {
      const beyond = Math.max(0, least[index]! - run.inHand);
      beyondNow += beyond;
      boughtNow += model.bought(beyond);
    });
    let [extra, extraOfPacks] = [0, 0];
    for (const [scale, { worth }] of scales.entries()) {
      const after = rest[scale]!;
      const room = (rolls: number, run: number) => {
        const free = rolls * worth - loads[scale]![run]!;
        return free <= 0 ? 0 : isAdditive ? after.fullest(group, free) : free;
      };
      const free = runs.reduce((sum, run, index) => sum + room(run.most, index), 0);
      const rooms = hung + after.rooms(group, free);
      if (rooms < judged.hung) return true;
      if (rooms > judged.hung) continue;
      isMoreRooms = false;
      const needed = after.least(group, judged.hung - hung);
      // Of what is paid for already as much as is left there: a unit may take it and more.
      const within = (rolls: number, index: number) => Math.min(Math.max(0, rolls * worth - loads[scale]![index]!), room(runs[index]!.most, index));
      const paid = runs.reduce((sum, { inHand }, index) => sum + within(Math.max(inHand, least[index]!), index), 0);
      const packed = runs.reduce((sum, { inHand }, index) => sum + within(inHand + model.bought(least[index]! - inHand), index), 0);
      extra = Math.max(extra, ceilDivide(Math.max(0, needed - paid), worth));
      extraOfPacks = Math.max(extraOfPacks, ceilDivide(Math.max(0, needed - packed), worth));
      const inUsed = runs.reduce((sum, run, index) => sum + (members[index]!.length > 0 ? room(run.most, index) : 0), 0);
      if (needed > inUsed) opened = true;
      fewestMore = Math.max(fewestMore, needed > inUsed ? 1 : 0);
    }
    if (isMoreRooms) return false;
    const bought = Math.max(leastBought(beyondNow + extra), boughtNow + extraOfPacks);
    if (bought !== judged.bought) return bought > judged.bought;
    const used = runs.filter((_, index) => members[index]!.length > 0);
    const unopened = runs.filter(({ most }, index) => members[index]!.length === 0 && most > 0).map(({ inHand }) => inHand);
    if (opened && unopened.length === 0) return true;
    const held = used.reduce((sum, { inHand }) => sum + inHand, 0) + (opened ? Math.min(...unopened) : 0);
    const leftOver = Math.max(0, held + bought - (isAdditive ? mostTaken(from) : bought));
    if (leftOver !== judged.leftOver) return leftOver > judged.leftOver;
    return used.length + fewestMore >= judged.used;
  };

  const wasSearched = (unit: number, hung: number): boolean => {
    if (!isAdditive || (unit > 0 && kinds[unit]! >= 0 && kinds[unit] === kinds[unit - 1])) return false;
    const states = runs.map(({ likeness }, index) => ({ likeness, state: 2 * loads[0]![index]! + (members[index]!.length > 0 ? 1 : 0), index }));
    const alike = states.toSorted((one, other) => one.likeness - other.likeness || (one.likeness < 0 ? one.index - other.index : one.state - other.state));
    const key = `${unit} ${alike.map(({ state }) => state).join(' ')}`;
    const before = searched.get(key);
    if (before !== undefined && before >= hung) return true;
    if (before !== undefined || searched.size < MOST_REMEMBERED) searched.set(key, hung);
    return false;
  };

  const end = () => {
    if (!isAdditive && !looksBetter()) return;
    const judged = judge(model, choice);
    if (!judged || compareJudged(judged, best.judged) >= 0) return;
    best = { choice: [...choice], judged };
    found(best);
  };

  /** Asks for one cutting after the other only while the whole may still be better. */
  const looksBetter = (): boolean => {
    const rolls = [...least];
    const isWorse = () => {
      const bought = runs.reduce((sum, run, index) => sum + model.bought(rolls[index]! - run.inHand), 0);
      return hungNow() === best.judged.hung && bought > best.judged.bought;
    };
    return members.every((set, run) => {
      if (isWorse() || budget.isOver()) return false;
      rolls[run] = rollsOf(model, set);
      return rolls[run]! <= runs[run]!.most;
    }) && !isWorse();
  };
  const hungNow = () => groups.reduce((sum, { first, rooms }) => sum + (choice[first]! >= 0 ? rooms : 0), 0);

  const isLikeAnEarlier = (run: number): boolean => {
    const { likeness } = runs[run]!;
    if (likeness < 0) return false;
    for (let other = 0; other < run; other += 1) {
      if (runs[other]!.likeness !== likeness || members[other]!.length > 0 !== members[run]!.length > 0) continue;
      if (members[run]!.length === 0 || (isAdditive && loads[0]![other] === loads[0]![run])) return true;
    }
    return false;
  };

  const visit = (unit: number, hung: number): void => {
    const group = model.groupOf[unit] ?? groups.length;
    const isFirst = unit === units || groups[group]!.first === unit;
    if (isAtEnd()) return;
    if (isFirst) {
      budget.spend(2 * runs.length * scales.length + 2 * (groups.length - group));
      if (isHopeless(group, hung)) return;
      if (unit === units) {
        end();
        return;
      }
      if (wasSearched(unit, hung)) return;
    }
    const isLikeLast = isAdditive && unit > 0 && kinds[unit]! >= 0 && kinds[unit] === kinds[unit - 1];
    const fromRun = !isLikeLast ? 0 : choice[unit - 1]! < 0 ? runs.length : choice[unit - 1]!;
    const isLast = groups[group]!.end === unit + 1;
    const pin = pins[unit];
    for (let run = fromRun; run < runs.length && !isEnded; run += 1) {
      if ((typeof pin === 'number' && pin !== run) || isLikeAnEarlier(run)) continue;
      const before = least[run]!;
      if (place(unit, run)) visit(unit + 1, isLast ? hung + groups[group]!.rooms : hung);
      take(unit, run, before);
    }
    if (isFirst && !isEnded) visit(groups[group]!.end, hung);
  };
  visit(0, 0);
  return !budget.isOver();
}

/** What the groups from one on count for in a scale. */
interface Rest {
  /** The most rooms in what is free; groups as if they could be cut from several runs. */
  readonly rooms: (group: number, free: number) => number;
  /** The least that so many rooms count for. */
  readonly least: (group: number, rooms: number) => number;
  /** The fullest that what is left can fill of a limit, where sums are few enough to be listed. */
  readonly fullest: (group: number, limit: number) => number;
}

const MOST_LISTED = 4_000_000;

function restsOf(model: Model): readonly Rest[] {
  const longest = Math.max(0, ...model.runs.map(({ most }) => most));
  return model.scales.map((scale) => {
    const light = model.groups.map((group, index) => ({ index, value: valueOf(scale, group), rooms: group.rooms })).sort(compareByRoom);
    const isListed = model.isAdditive && longest * model.typed.length <= MOST_LISTED;
    const fills = isListed ? [...model.groups, null].map((group) => fullestFill(scale.values.slice(group?.first ?? model.typed.length), longest)) : [];
    return {
      rooms(group, free) {
        let [left, rooms] = [free, 0];
        for (const one of light) {
          if (one.index < group) continue;
          if (one.value > left) return rooms + one.rooms - 1;
          left -= one.value;
          rooms += one.rooms;
        }
        return rooms;
      },
      least(group, wanted) {
        let [left, value] = [wanted, 0];
        for (const one of light) {
          if (left <= 0) return value;
          if (one.index < group) continue;
          value += left >= one.rooms ? one.value : ((one.value - (one.value % one.rooms)) / one.rooms) * left;
          left -= one.rooms;
        }
        return value;
      },
      fullest: (group, limit) => (isListed ? fills[group]!(limit) : limit),
    };
  });
}

import type { CuttingProblem, PieceType } from '../../shared-core/cutting/problem.ts';

/** Pieces alike, and the position at which their top lies in the repeat. */
interface Wanted extends PieceType {
  /** What taking one piece changes in the number of a lot. */
  readonly place: number;
}

/**
 * The fewest rolls that give all the pieces a roll can be relied on to give, found by trying every order of cuts.
 *
 * A lot is so many pieces of each type. For every lot it finds the fewest rolls and, among the ways
 * with so few, the soonest end of the roll in hand for each phase that roll can begin with: a piece
 * more goes behind that end or begins a new roll. Nothing better is lost: with fewer rolls the next
 * piece may begin a new one, and what follows on a roll fits the better the sooner it may begin.
 *
 * Works on (count + 1) * (count + 1) * ... lots: for a dozen pieces of a dozen types 4,096.
 */
export function fewestRolls(problem: CuttingProblem): number {
  const { rollLength, repeat, rollStart } = problem;
  const wanted: Wanted[] = [];
  let lots = 1;
  for (const { length, phase, count } of problem.pieces) {
    const top = rollStart === 'at-repeat' ? phase : 0;
    const capacity = rollStart === 'at-repeat' ? rollLength : rollLength - repeat;
    if (count === 0 || top + length > capacity) continue;
    wanted.push({ length, phase, count, place: lots });
    lots *= count + 1;
  }
  // A roll of unknown start is measured from the start of the repeat in which its first top lies.
  const beginnings = rollStart === 'at-repeat' ? [0] : [...new Set(wanted.map(({ phase }) => phase))];
  const limits = beginnings.map((phase) => (rollStart === 'at-repeat' ? rollLength : phase + rollLength - repeat));
  const fewest = new Float64Array(lots).fill(Infinity);
  /** By lot and beginning. */
  const ends = new Float64Array(lots * beginnings.length).fill(Infinity);
  fewest[0] = 0;
  const offer = (lot: number, rolls: number, beginning: number, end: number): void => {
    if (end > (limits[beginning] ?? 0)) return;
    const first = lot * beginnings.length;
    if (rolls < (fewest[lot] ?? 0)) ends.fill(Infinity, first, first + beginnings.length);
    fewest[lot] = rolls;
    if (end < (ends[first + beginning] ?? 0)) ends[first + beginning] = end;
  };
  for (let lot = 0; lot < lots; lot += 1) {
    const rolls = fewest[lot] ?? 0;
    for (const { length, phase, count, place } of wanted) {
      if (((lot - (lot % place)) / place) % (count + 1) === count) continue;
      const next = lot + place;
      for (let beginning = 0; beginning < beginnings.length && rolls <= (fewest[next] ?? 0); beginning += 1) {
        const end = ends[lot * beginnings.length + beginning] ?? Infinity;
        if (end < Infinity) offer(next, rolls, beginning, nextTop(end, phase, repeat) + length);
      }
      if (rolls + 1 <= (fewest[next] ?? 0)) offer(next, rolls + 1, rollStart === 'at-repeat' ? 0 : beginnings.indexOf(phase), phase + length);
    }
  }
  return fewest[lots - 1] ?? 0;
}

/** The first position from `from` on that lies at this phase. */
function nextTop(from: number, phase: number, repeat: number): number {
  if (repeat === 0) return from;
  const beyond = (from - phase) % repeat;
  return beyond > 0 ? from + repeat - beyond : from - beyond;
}

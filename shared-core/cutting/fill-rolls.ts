import { floorDivide, type Follower, type Kind, type Packing, type Tape } from './tape.ts';

type Choose = (left: readonly number[]) => readonly Kind[];

/** Roll by roll: at each end the piece that follows with the least gap, of those the longest that fits. */
export function fillByLeastGap(tape: Tape): readonly Packing[] {
  return fillRolls(tape, (left) => leastGapRoll(tape, left));
}

/** Roll by roll: from the longest piece still wanted, the fullest roll that so many steps of looking ahead find. */
export function fillFullest(tape: Tape, stepsPerRoll: number): readonly Packing[] {
  return fillRolls(tape, (left) => fullestRoll(tape, left, stepsPerRoll));
}

/** The choice would fall the same way again while the pieces last, so each roll is repeated that often at once. */
function fillRolls(tape: Tape, choose: Choose): readonly Packing[] {
  const left = tape.kinds.map((kind) => kind.count);
  const packings: Packing[] = [];
  while (left.some((count) => count > 0)) {
    const kinds = choose(left);
    const used = new Map<number, number>();
    for (const { rank } of kinds) used.set(rank, (used.get(rank) ?? 0) + 1);
    let times = Number.MAX_SAFE_INTEGER;
    for (const [rank, count] of used) times = Math.min(times, floorDivide(left[rank] ?? 0, count));
    for (const [rank, count] of used) left[rank] = (left[rank] ?? 0) - count * times;
    packings.push({ times, kinds });
  }
  return packings;
}

function leastGapRoll(tape: Tape, wanted: readonly number[]): readonly Kind[] {
  const left = [...wanted];
  const kinds: Kind[] = [];
  let end = 0;
  let followers = tape.firsts;
  for (;;) {
    const next = followers.find(({ kind, gap }) => (left[kind.rank] ?? 0) > 0 && end + gap + kind.length <= tape.capacity);
    if (next === undefined) return kinds;
    kinds.push(next.kind);
    left[next.kind.rank] = (left[next.kind.rank] ?? 0) - 1;
    end += next.gap + next.kind.length;
    followers = tape.followers[next.kind.rank] ?? [];
  }
}

interface Level {
  readonly follower: Follower;
  readonly end: number;
  /** All gaps from the roll's start up to this piece. */
  readonly gaps: number;
  readonly options: readonly Follower[];
  nextOption: number;
}

/** Depth-first with a stack of its own, so that a roll of very many short pieces cannot run out of call stack. */
function fullestRoll(tape: Tape, wanted: readonly number[], steps: number): readonly Kind[] {
  const left = [...wanted];
  const levels: Level[] = [];
  let fullest: readonly Kind[] = [];
  let leastWaste = Number.MAX_SAFE_INTEGER;
  const enter = (follower: Follower, before: Level | undefined): void => {
    const { kind, gap } = follower;
    const end = (before?.end ?? 0) + gap + kind.length;
    const gaps = (before?.gaps ?? 0) + gap;
    // In a free match the order within a roll is all one, so only the one with the longest first is looked at.
    const nextOption = tape.repeat === 0 ? kind.rank : 0;
    levels.push({ follower, end, gaps, options: tape.followers[kind.rank] ?? [], nextOption });
    left[kind.rank] = (left[kind.rank] ?? 0) - 1;
    const waste = gaps + tape.capacity - end;
    if (waste < leastWaste) {
      leastWaste = waste;
      fullest = levels.map((level) => level.follower.kind);
    }
  };

  const longest = tape.kinds.find((kind) => (wanted[kind.rank] ?? 0) > 0);
  if (longest !== undefined) enter({ kind: longest, gap: longest.lead }, undefined);
  for (let step = 0; step < steps; step += 1) {
    const level = levels.at(-1);
    if (level === undefined) break;
    const option = level.options[level.nextOption];
    level.nextOption += 1;
    // Options come by rising gap: once the gaps alone waste as much, none of those after it is better.
    if (option === undefined || level.gaps + option.gap >= leastWaste) {
      levels.pop();
      left[level.follower.kind.rank] = (left[level.follower.kind.rank] ?? 0) + 1;
    } else if ((left[option.kind.rank] ?? 0) > 0 && level.end + option.gap + option.kind.length <= tape.capacity) {
      enter(option, level);
    }
  }
  return fullest;
}

import type { Certificate } from './problem.ts';
import { ceilDivide, floorDivide, gapBefore, type Kind, type Tape } from './tape.ts';

interface Spaced {
  readonly kind: Kind;
  /** Least distance from its top to the top of any piece of the set. */
  distance: number;
}

/**
 * The best of three bounds over each set S of 'the pieces at least so long'.
 *
 * Why they hold. Take any plan and leave out all pieces outside S. The others may stay where they
 * are, so every roll still holds its pieces of S in phase, and no roll was added. On a roll:
 * - 'length': the pieces do not overlap, and the first begins no sooner than the least lead in S
 *   (a piece in phase never lies above its lead), so the lengths sum to at most `usable` = capacity - that lead.
 * - 'spacing': from the top of a piece i to the top of the next is at least distance d(i), the
 *   length of i plus its least gap to any piece of S; the last piece takes its length l only.
 *   So sum d - (d - l of the last) <= usable, and sum d <= `room` = usable + the largest d - l.
 * - 'count': if a roll holds k pieces of S, then the k least distances in S fit into `room` too.
 * Summed over the rolls, each gives rolls >= total / what one roll holds, rounded up.
 */
export function boundRolls(tape: Tape): Certificate {
  let best: Certificate = { rule: 'none', shortest: 0, bound: 0 };
  const set: Spaced[] = [];
  let total = 0;
  let leastLead = Number.MAX_SAFE_INTEGER;
  tape.kinds.forEach((kind) => {
    addSpaced(set, kind, tape.repeat);
    total += kind.count * kind.length;
    leastLead = Math.min(leastLead, kind.lead);
    if (tape.kinds[kind.rank + 1]?.length === kind.length) return;

    const usable = tape.capacity - leastLead;
    const room = usable + set.reduce((slack, { kind: { length }, distance }) => Math.max(slack, distance - length), 0);
    const spaced = set.reduce((sum, { kind: { count }, distance }) => sum + count * distance, 0);
    const count = set.reduce((sum, each) => sum + each.kind.count, 0);
    const offers: readonly Certificate[] = [
      { rule: 'length', shortest: kind.length, bound: ceilDivide(total, usable) },
      { rule: 'spacing', shortest: kind.length, bound: ceilDivide(spaced, room) },
      { rule: 'count', shortest: kind.length, bound: ceilDivide(count, mostInRoom(set, room)) },
    ];
    for (const offer of offers) if (offer.bound > best.bound) best = offer;
  });
  return best;
}

/** Any type counts as its own follower, even where only one piece is wanted: that can only weaken the bound. */
function addSpaced(set: Spaced[], kind: Kind, repeat: number): void {
  const added: Spaced = { kind, distance: kind.length + gapBefore(kind, kind, repeat) };
  for (const other of set) {
    other.distance = Math.min(other.distance, other.kind.length + gapBefore(kind, other.kind, repeat));
    added.distance = Math.min(added.distance, kind.length + gapBefore(other.kind, kind, repeat));
  }
  set.push(added);
}

function mostInRoom(set: readonly Spaced[], room: number): number {
  let most = 0;
  let left = room;
  for (const { kind, distance } of [...set].sort((a, b) => a.distance - b.distance)) {
    const taken = Math.min(kind.count, floorDivide(left, distance));
    most += taken;
    left -= taken * distance;
    if (taken < kind.count) break;
  }
  return most;
}

/** Rooms that must stay usable, as what has to come one after the other. */
export interface KeptGroups {
  /** Of each job its group; -1 for what belongs to no such room. */
  readonly of: readonly number[];
  /** One room each, or several that cannot be kept apart. */
  readonly rooms: readonly (readonly string[])[];
  readonly jobs: readonly (readonly number[])[];
  /** Of each group those that have to be over before it. */
  readonly before: readonly (readonly number[])[];
  /** Of each group those that come after it. */
  readonly behind: readonly (readonly number[])[];
}

/**
 * Groups the rooms that must stay usable: each is one, but for rooms of which each waits for something in the other.
 *
 * Takes the rooms' ids, of each job its room, and of each job what waits for it. Example: of two rooms that are both
 * filled before one cutting and both hung after it, neither can be done before the other is begun: they are one group.
 */
export function keptGroups(keptUsable: readonly string[], roomOf: readonly (string | null)[], behind: readonly (readonly number[])[]): KeptGroups {
  const rooms = [...new Set(keptUsable)].filter((room) => roomOf.includes(room));
  const numbers = new Map(rooms.map((room, number) => [room, number]));
  const numberOf = roomOf.map((room) => (room === null ? -1 : (numbers.get(room) ?? -1)));
  const reached = closure(rooms.map((_, room) => roomsBehind(room, numberOf, behind)));
  const leader = rooms.map((_, room) => rooms.findIndex((_other, other) => other === room || (reached[room]!.has(other) && reached[other]!.has(room))));
  const leaders = [...new Set(leader)];
  const groupOf = leader.map((first) => leaders.indexOf(first));
  const of = numberOf.map((room) => (room < 0 ? -1 : groupOf[room]!));
  const jobs: number[][] = leaders.map(() => []);
  of.forEach((group, job) => {
    if (group >= 0) jobs[group]!.push(job);
  });
  return {
    of,
    rooms: leaders.map((first) => rooms.filter((_, room) => leader[room] === first)),
    jobs,
    before: leaders.map((first, group) => leaders.flatMap((other, earlier) => (earlier !== group && reached[other]!.has(first) ? [earlier] : []))),
    behind: leaders.map((first, group) => leaders.flatMap((other, later) => (later !== group && reached[first]!.has(other) ? [later] : []))),
  };
}

/** The rooms of which some job comes after some job of a room, itself left out. */
function roomsBehind(room: number, numberOf: readonly number[], behind: readonly (readonly number[])[]): Set<number> {
  const found = new Set<number>();
  const seen = new Set<number>();
  const waiting = numberOf.flatMap((other, job) => (other === room ? [job] : []));
  for (let job = waiting.pop(); job !== undefined; job = waiting.pop()) {
    for (const later of behind[job]!) {
      if (seen.has(later)) continue;
      seen.add(later);
      waiting.push(later);
      if (numberOf[later]! >= 0 && numberOf[later] !== room) found.add(numberOf[later]!);
    }
  }
  return found;
}

/** What is reached in steps: a room that is behind one that is behind another. */
function closure(next: readonly ReadonlySet<number>[]): readonly ReadonlySet<number>[] {
  return next.map((first) => {
    const found = new Set(first);
    for (const other of found) for (const further of next[other]!) found.add(further);
    return found;
  });
}

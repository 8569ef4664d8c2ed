import { ceilDivide, floorDivide, gapBefore, type Kind, type Packing, type Tape } from './tape.ts';

interface OpenRolls extends Packing {
  readonly end: number;
}

/**
 * First-fit-decreasing: longest type first, each piece at the end of the first roll that still
 * takes it. A first roll takes pieces of one type until it is full for them, so rolls that are
 * alike are filled together and the work depends on the number of types, not of pieces.
 */
export function fitFirst(tape: Tape): readonly Packing[] {
  let open: readonly OpenRolls[] = [];
  for (const kind of tape.kinds) {
    const filled: OpenRolls[] = [];
    let wanted = kind.count;
    for (const rolls of open) wanted -= addPieces(tape, rolls, kind, wanted, filled);
    if (wanted > 0) {
      const times = ceilDivide(wanted, roomFor(tape, [], 0, kind).most);
      addPieces(tape, { times, kinds: [], end: 0 }, kind, wanted, filled);
    }
    open = filled;
  }
  return open;
}

/** Puts the rolls into `filled` with as many of the wanted pieces as they take, and returns how many that is. */
function addPieces(tape: Tape, rolls: OpenRolls, kind: Kind, wanted: number, filled: OpenRolls[]): number {
  const { top, step, most } = roomFor(tape, rolls.kinds, rolls.end, kind);
  if (most === 0 || wanted === 0) {
    filled.push(rolls);
    return 0;
  }
  const holding = (times: number, pieces: number): void => {
    if (times === 0) return;
    if (pieces === 0) filled.push({ ...rolls, times });
    else filled.push({ times, kinds: [...rolls.kinds, ...Array<Kind>(pieces).fill(kind)], end: top + (pieces - 1) * step + kind.length });
  };
  const full = Math.min(rolls.times, floorDivide(wanted, most));
  const rest = full < rolls.times ? wanted - full * most : 0;
  const partly = rest > 0 ? 1 : 0;
  holding(full, most);
  holding(partly, rest);
  holding(rolls.times - full - partly, 0);
  return full * most + rest;
}

function roomFor(tape: Tape, kinds: readonly Kind[], end: number, kind: Kind): { top: number; step: number; most: number } {
  const top = end + gapBefore(kind, kinds.at(-1), tape.repeat);
  const step = kind.length + gapBefore(kind, kind, tape.repeat);
  const room = tape.capacity - top - kind.length;
  return { top, step, most: room < 0 ? 0 : floorDivide(room, step) + 1 };
}

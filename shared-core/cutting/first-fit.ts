import { ceilDivide, floorDivide, type Kind, laneFrom, type Packing, roomFor, type Tape } from './tape.ts';

interface OpenRolls extends Packing {
  readonly end: number;
}

/**
 * First-fit-decreasing: longest kind first, each piece at the end of the first roll that still takes it.
 *
 * A first roll takes pieces of one kind until it is full for them, so rolls that are alike are filled together and the
 * work depends on the number of kinds, not of pieces.
 */
export function fitFirst(tape: Tape): readonly Packing[] {
  let open: readonly OpenRolls[] = [];
  for (const kind of tape.kinds) {
    const filled: OpenRolls[] = [];
    let wanted = kind.count;
    for (const rolls of open) wanted -= addPieces(tape, rolls, kind, wanted, filled);
    if (wanted > 0) {
      const lane = laneFrom(tape, kind.phase);
      addPieces(tape, { times: ceilDivide(wanted, roomFor(tape, lane, 0, kind).most), roll: { lane, order: [] }, end: 0 }, kind, wanted, filled);
    }
    open = filled;
  }
  return open;
}

/** Puts the rolls into `filled` with as many of the wanted pieces as they take, and returns how many that is. */
function addPieces(tape: Tape, rolls: OpenRolls, kind: Kind, wanted: number, filled: OpenRolls[]): number {
  const { lane, order } = rolls.roll;
  const { top, step, most } = roomFor(tape, lane, rolls.end, kind);
  if (most === 0 || wanted === 0) {
    filled.push(rolls);
    return 0;
  }
  const holding = (times: number, pieces: number): void => {
    if (times === 0) return;
    if (pieces === 0) filled.push({ ...rolls, times });
    else filled.push({ times, roll: { lane, order: [...order, ...Array<number>(pieces).fill(kind.rank)] }, end: top + (pieces - 1) * step + kind.length });
  };
  const full = Math.min(rolls.times, floorDivide(wanted, most));
  const rest = full < rolls.times ? wanted - full * most : 0;
  const partly = rest > 0 ? 1 : 0;
  holding(full, most);
  holding(partly, rest);
  holding(rolls.times - full - partly, 0);
  return full * most + rest;
}

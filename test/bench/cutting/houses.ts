import type { Opening, Room } from './rooms.ts';

/** A whole number from `least` to `most` in steps of `step`, all in mm. */
export type Draw = (least: number, most: number, step: number) => number;

/** The sizes that one joiner gave a whole house, in mm. */
interface Joinery {
  readonly doorHead: number;
  readonly windowHead: number;
  readonly sill: number;
  readonly highSill: number;
}

const CEILINGS = { least: 2_100, most: 3_200 };

/**
 * Rooms of a house on storeys of about fifteen; one room in six has a ceiling of its own.
 * Heights are whole centimetres, or where `isMeasured` each room's is what a tape showed, to the millimetre.
 */
export function dwelling(rooms: number, isMeasured: boolean, draw: Draw): readonly Room[] {
  const joinery = drawJoinery(draw);
  const storeys = Array.from({ length: 1 + (rooms - (rooms % 15)) / 15 }, () => drawCeiling(draw));
  return Array.from({ length: rooms }, (_, index) => {
    const hasOwnCeiling = draw(1, 6, 1) === 1;
    const built = hasOwnCeiling ? drawCeiling(draw) : storeys[index % storeys.length]!;
    const height = isMeasured ? within(CEILINGS, built + draw(-10, 10, 1)) : built;
    return drawRoom(height, 1, joinery, draw);
  });
}

/** A hotel: twelve to fifteen types of room on five heights of ceiling, some types far more frequent than others. */
export function hotel(rooms: number, draw: Draw): readonly Room[] {
  const joinery = drawJoinery(draw);
  const ceilings = Array.from({ length: 5 }, () => drawCeiling(draw));
  const shares = Array.from({ length: draw(12, 15, 1) }, () => draw(1, 12, 1) * draw(1, 3, 1));
  const whole = shares.reduce((sum, share) => sum + share, 0);
  const times = shares.map((share) => Math.max(1, (rooms * share - ((rooms * share) % whole)) / whole));
  const missing = rooms - times.reduce((sum, count) => sum + count, 0);
  const most = times.indexOf(Math.max(...times));
  return times.map((count, type) => drawRoom(ceilings[type % ceilings.length]!, count + (type === most ? missing : 0), joinery, draw));
}

function drawJoinery(draw: Draw): Joinery {
  const doorHead = draw(1_980, 2_040, 10);
  const windowHead = draw(1, 2, 1) === 1 ? doorHead : draw(2_000, 2_250, 10);
  return { doorHead, windowHead, sill: draw(750, 1_000, 10), highSill: draw(1_100, 1_400, 10) };
}

/** A usual height three times out of four, else any whole centimetre. */
function drawCeiling(draw: Draw): number {
  const usual = [2_300, 2_400, 2_400, 2_500, 2_500, 2_550, 2_600, 2_700, 2_750, 2_900, 3_000, 3_200];
  return draw(1, 4, 1) === 1 ? draw(CEILINGS.least, CEILINGS.most, 10) : usual[draw(0, usual.length - 1, 1)]!;
}

/** A rectangle: a door in its first wall, in most rooms a window in its third, in some one in its fourth. */
function drawRoom(height: number, times: number, joinery: Joinery, draw: Draw): Room {
  const [across, deep] = [draw(2_600, 5_200, 10), draw(2_400, 4_800, 10)];
  const windowHead = joinery.windowHead < height - 50 ? joinery.windowHead : height;
  const doorWidth = draw(1, 10, 1) === 1 ? 1_400 : draw(710, 860, 50);
  const openings: Opening[] = [place(0, across, doorWidth, 0, joinery.doorHead, draw)];
  const outlook = draw(1, 20, 1);
  if (outlook <= 7) openings.push(place(across + deep, across, draw(900, 1_800, 50), joinery.sill, windowHead, draw));
  else if (outlook <= 10) openings.push(place(across + deep, across, draw(600, 900, 50), joinery.highSill, windowHead, draw));
  else if (outlook <= 12) openings.push(place(across + deep, across, draw(1_400, 2_000, 100), 0, windowHead, draw));
  if (draw(1, 6, 1) === 1) openings.push(place(2 * across + deep, deep, draw(600, 1_200, 50), joinery.sill, windowHead, draw));
  return { perimeter: 2 * (across + deep), height, openings, times };
}

/** An opening somewhere in the wall that begins at `wall`, at least 150 mm from its corners. */
function place(wall: number, length: number, width: number, sill: number, head: number, draw: Draw): Opening {
  return { from: wall + draw(150, length - width - 150, 10), width, sill, head };
}

function within({ least, most }: { readonly least: number; readonly most: number }, height: number): number {
  return Math.max(least, Math.min(most, height));
}

import type { CuttingProblem, PieceType, RollStart } from '../../shared-core/cutting/index.ts';
import { seeded } from './problems.ts';

export interface HungHouse {
  readonly problem: CuttingProblem;
  /** For each stretch the types of its pieces in hanging order. */
  readonly hanging: readonly (readonly number[])[];
}

export interface HouseFacts {
  readonly rooms: number;
  readonly match: 'free' | 'straight' | 'half-drop';
  readonly rollStart: RollStart;
  readonly repeat?: number;
  /** How many heights the rooms share; by default every room is measured on its own. */
  readonly heights?: number;
  readonly seed: number;
}

/** Made-up rooms of four walls with a door and a window or two, in millimetres, from rolls of 10.05 m. */
export function hungHouse({ rooms, match, rollStart, repeat = 640, heights = rooms, seed }: HouseFacts): HungHouse {
  const random = seeded(seed);
  const cycle = match === 'free' ? 0 : repeat;
  const types = new Map<string, { -readonly [Key in keyof PieceType]: PieceType[Key] } & { readonly index: number }>();
  const add = (row: number[], length: number, phase: number): void => {
    const key = `${length} ${phase}`;
    const type = types.get(key) ?? { length, phase, count: 0, index: types.size };
    type.count += 1;
    types.set(key, type);
    row.push(type.index);
  };
  const measured = Array.from({ length: heights }, () => 2_300 + random(600));
  const hanging: number[][] = [];
  for (let room = 0; room < rooms; room += 1) {
    const height = measured[room % heights] ?? 2_500;
    const strips = 16 + random(14);
    const openings = openingsOf(strips, random);
    const row: number[] = [];
    const rows: number[][] = [row];
    let under: number[] = [];
    for (let strip = 0; strip < strips; strip += 1) {
      const drop = match === 'half-drop' && strip % 2 === 1 ? cycle / 2 : 0;
      const opening = openings.find(({ from, to }) => strip >= from && strip < to);
      add(row, (opening ? height - opening.head : height) + 100, drop);
      if (opening && opening.sill > 0) {
        if (under.length === 0) rows.push(under);
        add(under, opening.sill + 100, cycle === 0 ? 0 : (height - opening.sill + drop) % cycle);
      } else {
        under = [];
      }
    }
    hanging.push(...rows);
  }
  const pieces = [...types.values()].map(({ length, phase, count }) => ({ length, phase, count }));
  return { problem: { rollLength: 10_050, repeat: cycle, rollStart, pieces }, hanging };
}

function openingsOf(strips: number, random: (below: number) => number): readonly { readonly from: number; readonly to: number; readonly head: number; readonly sill: number }[] {
  const door = 1 + random(3);
  const window = 8 + random(3);
  const openings = [
    { from: door, to: door + 1, head: 2_030, sill: 0 },
    { from: window, to: window + 2, head: 2_100, sill: 850 + random(3) * 20 },
  ];
  return strips > 22 ? [...openings, { from: 17, to: 20, head: 2_100, sill: 400 }] : openings;
}

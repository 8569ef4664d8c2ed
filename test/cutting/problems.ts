import fc from 'fast-check';
import type { CuttingProblem, PieceType, RollStart } from '../../shared-core/cutting/index.ts';

export const HALF_DROP: CuttingProblem = {
  rollLength: 10_050,
  repeat: 640,
  rollStart: 'anywhere',
  pieces: [
    { length: 2_230, phase: 0, count: 10 },
    { length: 2_230, phase: 320, count: 10 },
  ],
};

export function freeMatch(rollLength: number, pieces: readonly (readonly [length: number, count: number])[]): CuttingProblem {
  return { rollLength, repeat: 0, rollStart: 'anywhere', pieces: pieces.map(([length, count]) => ({ length, phase: 0, count })) };
}

/** Johnson's worst family for first-fit-decreasing: 9m rolls do, first-fit-decreasing takes 11m. */
export function johnsonsWorst(m: number): CuttingProblem {
  return freeMatch(100, [[51, 6 * m], [27, 6 * m], [26, 6 * m], [23, 12 * m]]);
}

/** Park and Miller's minimal generator, so that a made-up problem is the same on every machine. */
export function seeded(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}

/** Falkenauer's triplets: exactly three pieces fill each of `triplets` rolls of 1000. */
export function falkenauerTriplets(triplets: number, seed: number): CuttingProblem {
  const random = seeded(seed);
  const lengths: number[] = [];
  for (let index = 0; index < triplets; index += 1) {
    const first = 380 + random(111);
    const most = (1_000 - first - ((1_000 - first) % 2)) / 2;
    const second = 250 + random(most - 250);
    lengths.push(first, second, 1_000 - first - second);
  }
  return freeMatch(1_000, lengths.map((length) => [length, 1]));
}

/** A house measured to the millimetre: 100 types and 1,200 pieces from rolls of 10.05 m. */
export function manyTypes(repeat: number, rollStart: RollStart): CuttingProblem {
  const random = seeded(7);
  const pieces = Array.from({ length: 100 }, (): PieceType => ({ length: 400 + random(2_400), phase: repeat === 0 ? 0 : random(2) * (repeat / 2), count: 12 }));
  return { rollLength: 10_050, repeat, rollStart, pieces };
}

interface Sizes {
  readonly rollLength: number;
  readonly repeat: number;
  readonly types: number;
  readonly count: number;
}

/** Problems of lengths that are small against the repeat as well as long, some of them impossible. */
export function smallProblems(most: Sizes): fc.Arbitrary<CuttingProblem> {
  return fc
    .record({ rollLength: fc.integer({ min: 1, max: most.rollLength }), repeat: fc.integer({ min: 0, max: most.repeat }), rollStart: fc.constantFrom<RollStart>('anywhere', 'at-repeat') })
    .chain((roll) =>
      fc
        .array(
          fc.record({
            length: fc.oneof(fc.integer({ min: 1, max: Math.ceil(roll.rollLength / 4) }), fc.integer({ min: 1, max: roll.rollLength + 1 })),
            phase: fc.integer({ min: 0, max: Math.max(roll.repeat - 1, 0) }),
            count: fc.integer({ min: 0, max: most.count }),
          }),
          { maxLength: most.types },
        )
        .map((pieces) => ({ ...roll, pieces })),
    );
}

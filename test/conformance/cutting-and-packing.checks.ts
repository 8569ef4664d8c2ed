import { fitFirst } from '../../shared-core/cutting/first-fit.ts';
import { type CuttingProblem, planCuts } from '../../shared-core/cutting/index.ts';
import { layTape } from '../../shared-core/cutting/tape.ts';
import { falkenauerTriplets, freeMatch, johnsonsWorst } from '../cutting/problems.ts';
import type { Check, Source } from './figure.ts';

const JOHNSON: Source = { name: "Johnson's worst family for first-fit-decreasing: capacity 100; 6m×51, 6m×27, 6m×26, 12m×23", how: 'recomputed' };
const MARTELLO_AND_TOTH: Source = { name: 'Martello and Toth, bounds L1 and L2: 70 60 50 33 33 33 11 7 3, capacity 100', how: 'recomputed' };
const FALKENAUER: Source = { name: 'Falkenauer, 1996, triplets: capacity 1000, three items fill each bin', how: 'memory' };

const MARTELLO_AND_TOTH_ITEMS = freeMatch(100, [[70, 1], [60, 1], [50, 1], [33, 3], [11, 1], [7, 1], [3, 1]]);

/** Rounded up: the items' lengths by the capacity, which is the bound L1. */
function lengthBound({ rollLength, pieces }: CuttingProblem): number {
  return Math.ceil(pieces.reduce((sum, { length, count }) => sum + length * count, 0) / rollLength);
}

function firstFitRolls(problem: CuttingProblem): number {
  return fitFirst(layTape(problem)).reduce((sum, { times }) => sum + times, 0);
}

export const CUTTING_AND_PACKING: readonly Check[] = [
  ...[1, 2, 3].flatMap((m): readonly Check[] => [
    { id: `Johnson / optimum, m = ${m}`, source: JOHNSON, expected: 9 * m, ours: () => planCuts(johnsonsWorst(m)).rollCount },
    { id: `Johnson / first-fit-decreasing, m = ${m}`, source: JOHNSON, expected: 11 * m, ours: () => firstFitRolls(johnsonsWorst(m)) },
  ]),
  { id: 'Martello and Toth / L1', source: MARTELLO_AND_TOTH, expected: 3, ours: () => lengthBound(MARTELLO_AND_TOTH_ITEMS) },
  { id: 'Martello and Toth / lower bound', source: MARTELLO_AND_TOTH, expected: 4, ours: () => planCuts(MARTELLO_AND_TOTH_ITEMS).lowerBound },
  { id: 'Martello and Toth / optimum', source: MARTELLO_AND_TOTH, expected: 4, ours: () => planCuts(MARTELLO_AND_TOTH_ITEMS).rollCount },
  ...[60, 120, 249, 501].flatMap((items): readonly Check[] => {
    const triplets = falkenauerTriplets(items / 3, items);
    return [
      { id: `Falkenauer / lower bound, ${items} items`, source: FALKENAUER, expected: items / 3, ours: () => planCuts(triplets).lowerBound },
      { id: `Falkenauer / optimum, ${items} items`, source: FALKENAUER, expected: items / 3, ours: () => planCuts(triplets).rollCount },
    ];
  }),
];

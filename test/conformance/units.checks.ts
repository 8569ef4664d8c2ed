import { parseLength, UNITS_PER_MILLIMETRE } from '../../shared-core/units/index.ts';
import type { Check, Source } from './figure.ts';

const NIST: Source = { name: 'NIST SP 811: exact lengths of inch, foot and yard', how: 'memory' };

const EXACT_LENGTHS: readonly (readonly [typed: string, metric: string, millimetres: number])[] = [
  ['1 in', '25.4 mm', 25.4],
  ['1 ft', '0.3048 m', 304.8],
  ['1 yd', '0.9144 m', 914.4],
];

const unitsOf = (typed: string) => {
  const read = parseLength(typed);
  return read.ok ? read.value : read.faults;
};

export const UNITS: readonly Check[] = EXACT_LENGTHS.flatMap(([typed, metric, millimetres]): readonly Check[] => [
  { id: `units / ${typed} is ${metric}`, source: NIST, expected: unitsOf(metric), ours: () => unitsOf(typed) },
  // A tenth of a millimetre is a whole number of units, so the product is taken in tenths.
  { id: `units / ${typed} in units`, source: NIST, expected: Math.round(millimetres * 10) * (UNITS_PER_MILLIMETRE / 10), ours: () => unitsOf(typed) },
]);

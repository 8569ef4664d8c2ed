import { isSaid } from '../../../shared-core/base/index.ts';
import type { CheckedDelivery } from '../../../shared-core/ordering/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import { compare } from '../../parts/found.ts';
import { type Finding, rankOf } from './say-package.ts';

export type PackageColumn = 'number' | 'pattern' | 'run' | 'rolls' | 'damaged' | 'missing' | 'received' | 'state';

interface Row {
  readonly checked: CheckedDelivery;
  readonly finding: Finding;
}

const VALUES: Readonly<Record<PackageColumn, (row: Row) => string | number>> = {
  number: ({ checked }) => checked.index,
  pattern: ({ checked }) => checked.delivery.patternNumber,
  run: ({ checked }) => checked.delivery.run,
  rolls: ({ checked }) => checked.delivery.rolls,
  damaged: ({ checked }) => checked.delivery.damaged,
  missing: ({ checked }) => checked.delivery.short,
  received: ({ checked }) => checked.delivery.received ?? '',
  state: ({ finding }) => rankOf(finding),
};

/** The places in the house's list of the packages of which every word typed is said, sorted by a column; what is alike as it was recorded. */
export function numbersInOrder(rows: readonly Row[], column: PackageColumn, isBackwards: boolean, filter: string): readonly number[] {
  const holds = ({ checked: { delivery }, finding }: Row) => isSaid(filter, [delivery.patternNumber, say`run ${delivery.run}`, delivery.received ?? '', finding.words]);
  const value = VALUES[column];
  const way = isBackwards ? -1 : 1;
  return rows.filter(holds).toSorted((one, other) => way * compare(value(one), value(other))).map(({ checked }) => checked.index);
}

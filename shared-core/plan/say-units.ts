import type { House } from '../house/index.ts';

const UNIT_WORDS = { wallcovering: 'roll', border: 'spool', lining: 'roll', mural: 'mural', paint: 'tin' } as const;

/**
 * So many of what a covering is bought in, in the trade's word for it.
 *
 * Example: 3 of a border are '3 spools', 1 of a mural is '1 mural'.
 */
export function sayUnits(house: House, covering: string, count: number): string {
  const found = house.coverings.find(({ id }) => id === covering);
  const word = found?.kind === 'wallcovering' && found.soldBy ? 'piece' : UNIT_WORDS[found?.kind ?? 'wallcovering'];
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}

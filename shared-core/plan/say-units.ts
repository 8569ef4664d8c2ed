import type { House } from '../house/index.ts';
import { say } from '../words/index.ts';

/**
 * So many of what a covering is bought in, in the trade's word for it.
 *
 * Example: 3 of a border are '3 spools', 1 of a mural is '1 mural'.
 */
export function sayUnits(house: House, covering: string, count: number): string {
  const found = house.coverings.find(({ id }) => id === covering);
  const isOne = count === 1;
  if (found?.kind === 'wallcovering' && found.soldBy) return isOne ? say`${count} piece` : say`${count} pieces`;
  switch (found?.kind) {
    case 'border':
      return isOne ? say`${count} spool` : say`${count} spools`;
    case 'mural':
      return isOne ? say`${count} mural` : say`${count} murals`;
    case 'paint':
      return isOne ? say`${count} tin` : say`${count} tins`;
    default:
      return sayRolls(count);
  }
}

/** Example: '1 roll', '9 rolls'. */
export function sayRolls(count: number): string {
  return count === 1 ? say`${count} roll` : say`${count} rolls`;
}

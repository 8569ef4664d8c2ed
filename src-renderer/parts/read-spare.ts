import { say } from '../../shared-core/words/index.ts';

export const SPARE_TAKES = say`The spare is a whole number of rolls, or a percentage of those needed such as 10%.`;

/** A spare as it was typed: so many rolls, or a percentage; null where it is neither. */
export function readSpare(typed: string): number | string | null {
  const plain = typed.trim();
  if (/^\d+$/.test(plain)) return Number(plain);
  return /^\d+([.,]\d)?\s*%$/.test(plain) ? plain : null;
}

import { type House, nameCovering } from '../../../shared-core/house/index.ts';
import { choosePacks, type ReturnLine, saleUnits } from '../../../shared-core/ordering/index.ts';
import { say } from '../../../shared-core/words/index.ts';

/** Why rolls go back, or need not come. */
export function sayWhy(house: House, { covering, run, why }: ReturnLine): string {
  switch (why) {
    case 'not-needed':
      return say`more than the rooms and the spare take`;
    case 'not-sent':
      return say`more than the rooms and the spare take, and still to come: ask the supplier to keep it`;
    case 'wrong-pattern':
      return say`came for ${nameCovering(house, covering)}`;
    case 'run-not-ordered':
      return say`run ${run ?? ''} was not ordered`;
    case 'not-kept':
      return say`not kept when it came`;
  }
}

/**
 * Rolls in the packs they are sold in; empty where they are sold one by one or are no whole packs.
 *
 * Example: 5 rolls of what is sold in doubles and singles are '2 × 2 + 1 × 1'.
 */
export function sayPacks(house: House, { covering: id, rolls }: ReturnLine): string {
  const covering = house.coverings.find((one) => one.id === id);
  if (!covering || covering.kind === 'paint') return '';
  const units = saleUnits(covering as Parameters<typeof saleUnits>[0], house);
  const { packs, lacking } = choosePacks(rolls, units, rolls);
  if (lacking > 0 || packs.every((pack) => pack.rolls === 1)) return '';
  return packs.map((pack) => `${pack.count} × ${pack.rolls}`).join(' + ');
}

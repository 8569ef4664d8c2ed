import type { Paint } from '../../../shared-core/house/index.ts';
import { sayDecimal } from '../../../shared-core/words/index.ts';

/** A tin as its fields show it. */
export interface TypedTin {
  readonly litres: string;
  readonly price: string;
}

export function tinsOf(paint: Paint): readonly TypedTin[] {
  return (paint.soldIn ?? []).map(({ litres, price }) => ({ litres: sayDecimal(String(litres)), price: price ?? '' }));
}

/** The tins as facts; null where the litres of one are no number above 0. */
export function readTins(typed: readonly TypedTin[]): readonly { readonly litres: number; readonly price?: string }[] | null {
  const tins = typed.map(({ litres, price }) => ({ litres: Number(litres.trim().replace(',', '.')), ...(price.trim() === '' ? {} : { price: price.trim() }) }));
  return tins.every(({ litres }) => Number.isFinite(litres) && litres > 0) ? tins : null;
}

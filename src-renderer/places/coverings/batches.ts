import type { Paint } from '../../../shared-core/house/index.ts';
import { sayDecimal } from '../../../shared-core/words/index.ts';

/** A batch of paint as its fields show it. */
export interface TypedBatch {
  readonly batch: string;
  readonly litres: string;
  readonly opened: string;
  readonly place: string;
}

export function batchesOf(paint: Paint): readonly TypedBatch[] {
  return (paint.batches ?? []).map(({ batch, litres, opened, place }) => ({ batch, litres: litres === undefined ? '' : sayDecimal(String(litres)), opened: opened ?? '', place: place ?? '' }));
}

/**
 * Batches as facts, what nobody said left out; null where the litres of one are no number above 0.
 *
 * Example: batch S-0417 with '2,5' litres, nothing said of the rest, is `{batch: 'S-0417', litres: 2.5}`.
 */
export function readBatches(typed: readonly TypedBatch[]): readonly Readonly<Record<string, string | number>>[] | null {
  const batches = typed.map(({ batch, litres, opened, place }): Readonly<Record<string, string | number>> => ({
    batch: batch.trim(),
    ...(litres.trim() === '' ? {} : { litres: Number(litres.trim().replace(',', '.')) }),
    ...(opened.trim() === '' ? {} : { opened: opened.trim() }),
    ...(place.trim() === '' ? {} : { place: place.trim() }),
  }));
  return batches.every(({ litres }) => litres === undefined || Number(litres) > 0) ? batches : null;
}

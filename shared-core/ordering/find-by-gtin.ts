import { sameGtin } from '../units/index.ts';

/** The sale units of coverings, as far as a GTIN is looked for; a tin has no rolls. */
export interface SoldCoverings {
  readonly coverings: readonly {
    readonly id: string;
    readonly soldIn?: readonly ({ readonly rolls: number; readonly gtin?: string | undefined } | { readonly litres: number })[] | undefined;
  }[];
}

/** What a GTIN stands for: a sale unit of a covering. */
export interface FoundUnit {
  readonly covering: string;
  readonly rolls: number;
}

/**
 * The covering and the sale unit that have a GTIN; null where none has, or where it stands for more than one thing.
 *
 * One pack at two prices is one thing. Example: 'fern' sold in doubles with the GTIN 614141000012: a scanned
 * 00614141000012 is 2 rolls of 'fern'.
 */
export function findByGtin({ coverings }: SoldCoverings, gtin: string): FoundUnit | null {
  const found = coverings.flatMap(({ id, soldIn = [] }) =>
    soldIn.flatMap((unit) => ('rolls' in unit && unit.gtin !== undefined && sameGtin(unit.gtin, gtin) ? [{ covering: id, rolls: unit.rolls }] : [])),
  );
  const [first] = found;
  return first && found.every(({ covering, rolls }) => covering === first.covering && rolls === first.rolls) ? first : null;
}

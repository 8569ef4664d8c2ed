import { type Covering, type House, nameCovering } from '../../../shared-core/house/index.ts';
import { readDay, sayNoDay } from '../../parts/read-day.ts';
import { say } from '../../../shared-core/words/index.ts';

/** The coverings that come in rolls, spools or panels, so that packages of them come. */
export function deliveredCoverings(house: House): readonly Covering[] {
  return house.coverings.filter(({ kind }) => kind !== 'paint');
}

/** The coverings that are called by what a label says; capitals tell none apart. */
export function coveringsWithNumber(house: House, label: string): readonly Covering[] {
  const said = label.trim().toLowerCase();
  return deliveredCoverings(house).filter(({ id }) => nameCovering(house, id).toLowerCase() === said);
}

/** That a label's number is of no covering, or of more than one, and what has to be said then. */
export function sayUnknown(house: House, label: string): string {
  const number = label.trim();
  return coveringsWithNumber(house, label).length === 0
    ? say`No covering of this house has the number ${number}: for which pattern did it come?`
    : say`More than one covering of this house has the number ${number}: for which pattern did it come?`;
}

/** A day as typed: none, or a day of the calendar; otherwise what is wrong with it. */
export function received(typed: string): { readonly received?: string } | { readonly trouble: string } {
  const day = typed.trim();
  if (day === '') return {};
  return readDay(day) === null ? { trouble: sayNoDay(day) } : { received: day };
}

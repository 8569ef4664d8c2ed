import type { House } from '../house/index.ts';
import { type Area, areaOf, UNITS_PER_FOOT } from '../units/index.ts';

const squareFeet = (count: number): Area => areaOf(count * UNITS_PER_FOOT ** 2);

/** More paint than this, disturbed in a room inside, falls under US law (40 CFR 745.83, read). */
export const LEAD_LAW_AREA = squareFeet(6);
/** The same of housing with US federal help (24 CFR 35.1350(d), read). */
export const LEAD_FEDERAL_AREA = squareFeet(2);
/** Up to about so much mould a householder takes on (US EPA, read). */
export const MOULD_AREA = squareFeet(10);
/** What stands higher than 8 ft (2.4 m) is reached from a ladder or a trestle (common practice, no source). */
export const REACHED_FROM_FLOOR = 8 * UNITS_PER_FOOT;

/** The first year of building from which lead paint is no longer expected (US: 40 CFR 745, read). */
const LEAD_FREE_FROM = 1978;
/** The same where another country is named: its own ban may be later; the latest we know of is the United Kingdom's of 1992 (memory). */
const LEAD_FREE_ELSEWHERE_FROM = 1993;

/** The last year that 'the mid-1980s' may mean in the US, with some years to be sure (our reading), and of the United Kingdom. */
const ASBESTOS_UNTIL = { US: 1989, elsewhere: 2000 };

/**
 * Whether old paint in a house has to be taken for lead paint.
 *
 * A year that is not known is taken for an old one. Example: a house of 1977 is, one of 1978 in the US is not.
 */
export function isLeadExpected({ built, country }: Pick<House, 'built' | 'country'>): boolean {
  return built === undefined || built < (country === undefined || country === 'US' ? LEAD_FREE_FROM : LEAD_FREE_ELSEWHERE_FROM);
}

/** The last year in which a coating or a filler of a country may hold asbestos; where the country is not known, the later. */
export function lastAsbestosYear(country: string | undefined): number {
  return country === 'US' ? ASBESTOS_UNTIL.US : ASBESTOS_UNTIL.elsewhere;
}

/**
 * Whether asbestos has to be expected in what was made in one of these years; one year that is surely later clears it.
 *
 * Example: a coating of 2005 in a house of 1931 is clear, one of an unknown year in that house is not.
 */
export function isAsbestosExpected(country: string | undefined, years: readonly (number | undefined)[]): boolean {
  return years.every((year) => year === undefined || year <= lastAsbestosYear(country));
}

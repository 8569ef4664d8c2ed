import type { Surface, SurfaceKind } from '../house/index.ts';
import { say } from '../words/index.ts';

/** How much more paint a surface takes than a smooth one that drinks none, in percent of that: in its first coat, and in each later one. */
export interface CoatFactors {
  readonly first: number;
  readonly later: number;
  readonly words: string;
  readonly source: string;
}

const COMMON_PRACTICE = say`common practice, no source; what the tin says comes first`;
const SMOOTH = { first: 100, later: 100, source: COMMON_PRACTICE };

/** Starting points for every kind of surface; a tin often has figures of its own. */
export const COAT_FACTORS: Readonly<Record<SurfaceKind, CoatFactors>> = {
  'new-plaster': { first: 125, later: 100, words: say`new plaster drinks the first coat`, source: COMMON_PRACTICE },
  'old-plaster': { ...SMOOTH, words: say`old plaster, as smooth` },
  'gypsum-board': { first: 110, later: 100, words: say`the card of gypsum board drinks some of the first coat`, source: COMMON_PRACTICE },
  'painted-matt': { ...SMOOTH, words: say`painted matt, as smooth` },
  'painted-gloss': { ...SMOOTH, words: say`painted gloss, as smooth` },
  'paper-strippable': { ...SMOOTH, words: say`papered, as smooth` },
  'paper-overpainted': { ...SMOOTH, words: say`papered and painted over, as smooth` },
  'paper-vinyl': { ...SMOOTH, words: say`vinyl paper, as smooth` },
  wood: { ...SMOOTH, words: say`wood, as smooth` },
  tile: { ...SMOOTH, words: say`tile, as smooth` },
  textured: { first: 130, later: 130, words: say`a textured coating has more surface than its size`, source: COMMON_PRACTICE },
};

/**
 * What a surface takes, by its kind; where its kind is not recorded, as a smooth one.
 *
 * Example: two coats on a textured coating take 260 % of one coat on a smooth wall, on new plaster 225 %.
 */
export function coatFactors(surface: Pick<Surface, 'kind'> | undefined): CoatFactors {
  return surface ? COAT_FACTORS[surface.kind] : { ...SMOOTH, words: say`what is on it is not recorded; taken as smooth` };
}

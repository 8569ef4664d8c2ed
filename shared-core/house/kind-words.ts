import type { Covering, Opening } from './types.ts';
import { say } from '../words/index.ts';

/** A covering of each kind, as a message names one. */
export const A_COVERING: Readonly<Record<Covering['kind'], string>> = {
  wallcovering: say`a wallcovering`,
  border: say`a border`,
  lining: say`a lining`,
  mural: say`a mural`,
  paint: say`a paint`,
};

/** An opening of each kind, as one names it beside its wall. */
export const OPENING_WORDS: Readonly<Record<Opening['kind'], string>> = {
  door: say`door`,
  window: say`window`,
  archway: say`archway`,
  fireplace: say`fireplace`,
  furniture: say`fitted furniture`,
};

/** The same before its id in a message. */
export const THE_OPENING: Readonly<Record<Opening['kind'], string>> = {
  door: say`the door`,
  window: say`the window`,
  archway: say`the archway`,
  fireplace: say`the fireplace`,
  furniture: say`the fitted furniture`,
};

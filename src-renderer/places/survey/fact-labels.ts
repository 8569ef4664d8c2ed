import { say } from '../../../shared-core/words/index.ts';

/** What the fields of a thing on a wall are called, by the fact that each holds. */
export const labelsOf = (thing: string) => ({
  from: say`Distance from the left of ${thing}`,
  width: say`width of ${thing}`,
  height: say`height of ${thing}`,
  sill: say`sill of ${thing}`,
});

export const NEXT_OPENING_LABELS = {
  from: say`Distance from the left of the next opening`,
  width: say`width of the next opening`,
  height: say`height of the next opening`,
  sill: say`sill of the next opening`,
};

export const NEXT_PIECE_LABELS = {
  from: say`Distance from the left of the next piece`,
  width: say`width of the next piece`,
  height: say`height of the next piece`,
};

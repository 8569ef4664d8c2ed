import type { Words } from '../say.ts';

/** The German of what `src-renderer/places/house` says. */
export const PLACE_HOUSE: Words = {};

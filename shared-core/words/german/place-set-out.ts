import type { Words } from '../say.ts';

/** The German of what `src-renderer/places/set-out` says. */
export const PLACE_SET_OUT: Words = {};

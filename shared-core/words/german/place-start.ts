import type { Words } from '../say.ts';

/** The German of what `src-renderer/places/start` says. */
export const PLACE_START: Words = {};

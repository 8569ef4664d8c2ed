import type { Words } from '../say.ts';

/** The German of what `src-renderer/places/survey` says. */
export const PLACE_SURVEY: Words = {};

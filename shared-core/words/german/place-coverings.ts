import type { Words } from '../say.ts';

/** The German of what `src-renderer/places/coverings` says. */
export const PLACE_COVERINGS: Words = {};

import type { Words } from '../say.ts';

/** The German of what `src-renderer/places/order` says. */
export const PLACE_ORDER: Words = {};

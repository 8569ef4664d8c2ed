import type { Words } from '../say.ts';

/** The German of what `src-renderer/places/deliveries` says. */
export const PLACE_DELIVERIES: Words = {};

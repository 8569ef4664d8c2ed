import type { Words } from '../say.ts';

/** The German of what `shared-core/house` says. */
export const HOUSE: Words = {};

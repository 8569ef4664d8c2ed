import type { Words } from '../say.ts';

/** The German of what `shared-core/units` says. */
export const UNITS: Words = {};

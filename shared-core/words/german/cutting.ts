import type { Words } from '../say.ts';

/** The German of what `shared-core/cutting` says. */
export const CUTTING: Words = {};

import type { Words } from '../say.ts';

/** The German of what `shared-core/drawing` says. */
export const DRAWING: Words = {};

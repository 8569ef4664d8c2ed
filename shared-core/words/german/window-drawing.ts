import type { Words } from '../say.ts';

/** The German of what `src-renderer/drawing` says. */
export const WINDOW_DRAWING: Words = {};

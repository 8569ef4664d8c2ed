import type { Words } from '../say.ts';

/** The German of what `src-renderer/parts` says. */
export const WINDOW_PARTS: Words = {};

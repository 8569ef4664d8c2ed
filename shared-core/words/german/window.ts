import type { Words } from '../say.ts';

/** The German of what `src-renderer` says. */
export const WINDOW: Words = {};

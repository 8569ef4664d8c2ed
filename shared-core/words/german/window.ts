import type { Words } from '../say.ts';

/** The German of what the files of `src-renderer` beside its folders say. */
export const WINDOW: Words = {};

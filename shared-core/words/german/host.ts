import type { Words } from '../say.ts';

/** The German of what `src-main` says. */
export const HOST: Words = {};

import type { Words } from '../say.ts';

/** The German of what `src-renderer/host` says. */
export const WINDOW_HOST: Words = {};

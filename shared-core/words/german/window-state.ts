import type { Words } from '../say.ts';

/** The German of what `src-renderer/state` says. */
export const WINDOW_STATE: Words = {};

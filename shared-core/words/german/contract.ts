import type { Words } from '../say.ts';

/** The German of what `shared-core/contract` says. */
export const CONTRACT: Words = {};

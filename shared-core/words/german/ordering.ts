import type { Words } from '../say.ts';

/** The German of what `shared-core/ordering` says. */
export const ORDERING: Words = {};

import type { Words } from '../say.ts';

/** The German of what `shared-core/plan` says. */
export const PLAN: Words = {};

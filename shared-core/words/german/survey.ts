import type { Words } from '../say.ts';

/** The German of what `shared-core/survey` says. */
export const SURVEY: Words = {};

import type { Words } from '../say.ts';

/** The German of what `shared-core/words` says. */
export const WORDS: Words = {
  '{0} and {1}': '{0} und {1}',
};

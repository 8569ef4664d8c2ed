import { inject } from 'vitest';

/** How many of a long set are run: in the usual tests a share of it, but so many at least; all of them by test:long. */
export function shareOf(whole: number, least: number): number {
  return Math.max(Math.min(whole, least), Math.ceil(whole * inject('share')));
}

/** Whether the long sets are run whole; what takes long and can't be shared is left to that. */
export const IS_LONG = inject('share') === 1;

import { say } from '../words/index.ts';
import { LARGEST_CALL_BYTES } from './host.ts';

/** That the argument of a call is larger than any is. */
export const TOO_LARGE_CALL = say`This is larger than the ${LARGEST_CALL_BYTES / 1_000_000} MB that Struckline takes at once; a house is smaller. Check that it is the right file.`;

import type { Words } from '../say.ts';
import { PREP_PAINT } from './prep-paint.ts';

/** The German of what `shared-core/prep` says. */
export const PREP: Words = { ...PREP_PAINT };

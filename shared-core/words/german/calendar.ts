import type { Words } from '../say.ts';
import { CALENDAR_JOBS } from './calendar-jobs.ts';

/** The German of what `shared-core/calendar` says. */
export const CALENDAR: Words = { ...CALENDAR_JOBS };

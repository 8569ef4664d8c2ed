import type { Work } from '../../../shared-core/house/index.ts';
import { say } from '../../../shared-core/words/index.ts';

export type Weekday = Work['days'][number];

/** As they stand over a column. */
export const SHORT_WEEKDAYS: Readonly<Record<Weekday, string>> = { mon: say`Mon`, tue: say`Tue`, wed: say`Wed`, thu: say`Thu`, fri: say`Fri`, sat: say`Sat`, sun: say`Sun` };

export const WEEKDAY_WORDS: Readonly<Record<Weekday, string>> = {
  mon: say`Monday`,
  tue: say`Tuesday`,
  wed: say`Wednesday`,
  thu: say`Thursday`,
  fri: say`Friday`,
  sat: say`Saturday`,
  sun: say`Sunday`,
};

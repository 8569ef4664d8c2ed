import type { Language } from '../say.ts';
import { CALENDAR } from './calendar.ts';
import { CONTRACT } from './contract.ts';
import { COSTING } from './costing.ts';
import { DRAWING } from './drawing.ts';
import { HOST } from './host.ts';
import { HOUSE } from './house.ts';
import { ORDERING } from './ordering.ts';
import { PLACE_CALENDAR } from './place-calendar.ts';
import { PLACE_COVERINGS } from './place-coverings.ts';
import { PLACE_DELIVERIES } from './place-deliveries.ts';
import { PLACE_HOUSE } from './place-house.ts';
import { PLACE_ORDER } from './place-order.ts';
import { PLACE_PAPERWORK } from './place-paperwork.ts';
import { PLACE_PREP } from './place-prep.ts';
import { PLACE_SET_OUT } from './place-set-out.ts';
import { PLACE_START } from './place-start.ts';
import { PLACE_SURVEY } from './place-survey.ts';
import { PLAN } from './plan.ts';
import { PREP } from './prep.ts';
import { SETTING_OUT } from './setting-out.ts';
import { SURVEY } from './survey.ts';
import { UNITS } from './units.ts';
import { WINDOW } from './window.ts';
import { WINDOW_DRAWING } from './window-drawing.ts';
import { WINDOW_HOST } from './window-host.ts';
import { WINDOW_PARTS } from './window-parts.ts';
import { WINDOW_STATE } from './window-state.ts';
import { WORDS } from './words.ts';

export const GERMAN: Language = {
  code: 'de',
  name: 'Deutsch',
  words: {
    ...WORDS,
    ...UNITS,
    ...HOUSE,
    ...SURVEY,
    ...SETTING_OUT,
    ...ORDERING,
    ...PREP,
    ...CALENDAR,
    ...COSTING,
    ...PLAN,
    ...DRAWING,
    ...CONTRACT,
    ...HOST,
    ...WINDOW,
    ...WINDOW_HOST,
    ...WINDOW_STATE,
    ...WINDOW_PARTS,
    ...WINDOW_DRAWING,
    ...PLACE_HOUSE,
    ...PLACE_START,
    ...PLACE_SURVEY,
    ...PLACE_PREP,
    ...PLACE_COVERINGS,
    ...PLACE_SET_OUT,
    ...PLACE_ORDER,
    ...PLACE_DELIVERIES,
    ...PLACE_CALENDAR,
    ...PLACE_PAPERWORK,
  },
  decimalMark: ',',
  months: ['Januar', 'Februar', 'März', 'April', 'Mai', 'Juni', 'Juli', 'August', 'September', 'Oktober', 'November', 'Dezember'],
  writeDay: (day, month, year) => `${day}. ${month} ${year}`,
};

import type { Language } from '../say.ts';
import { CONTRACT } from './contract.ts';
import { DRAWING } from './drawing.ts';
import { HOST } from './host.ts';
import { HOUSE } from './house.ts';
import { ORDERING } from './ordering.ts';
import { PLAN } from './plan.ts';
import { SETTING_OUT } from './setting-out.ts';
import { SURVEY } from './survey.ts';
import { UNITS } from './units.ts';
import { WINDOW } from './window.ts';
import { WORDS } from './words.ts';

export const GERMAN: Language = {
  code: 'de',
  name: 'Deutsch',
  words: { ...WORDS, ...UNITS, ...HOUSE, ...SURVEY, ...SETTING_OUT, ...ORDERING, ...PLAN, ...DRAWING, ...CONTRACT, ...HOST, ...WINDOW },
  decimalMark: ',',
  months: ['Januar', 'Februar', 'März', 'April', 'Mai', 'Juni', 'Juli', 'August', 'September', 'Oktober', 'November', 'Dezember'],
  writeDay: (day, month, year) => `${day}. ${month} ${year}`,
};

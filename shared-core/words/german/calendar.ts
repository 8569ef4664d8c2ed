import type { Words } from '../say.ts';
import { CALENDAR_JOBS } from './calendar-jobs.ts';

/** The German of what `shared-core/calendar` says. */
export const CALENDAR: Words = {
  ...CALENDAR_JOBS,
  '‘{0}’': '„{0}“',
  '‘{0}’ in {1}': '„{0}“ in {1}',
  'What it needs is delivered on {0}.': 'Was dafür gebraucht wird, kommt am {0}.',
  '{0} was chosen for it.': 'Dafür ist der {0} gewählt.',
  'It waits for {0}, which dries until {1} on {2}.': 'Vorher muss {0} trocknen: bis {1} Uhr am {2}.',
  'It waits for {0}, which is done at {1} on {2}.': 'Vorher muss {0} fertig sein: um {1} Uhr am {2}.',
  'Its room has to stay usable until {0} can be used again, after {1}.': 'Der Raum muss benutzbar bleiben, bis {0} wieder benutzbar ist: nach dem {1}.',
  'Work begins on {0}.': 'Die Arbeit beginnt am {0}.',
  'No two people are free for so long any earlier.': 'Früher sind keine zwei Leute so lange frei.',
  'Nobody is free for so long any earlier.': 'Früher ist niemand so lange frei.',
  'It takes two people, and there is only one: somebody has to lend a hand.': 'Dafür braucht es zwei Leute, und es gibt nur einen: Jemand muss mit anfassen.',
  '{0} is no working day.': 'Der {0} ist kein Arbeitstag.',
  '{0} working day, on {1}.': '{0} Arbeitstag, am {1}.',
  '{0} working days, until {1}; no calendar takes fewer.': '{0} Arbeitstage, bis {1}; kein Kalender braucht weniger.',
  '{0} working days, until {1}; fewer than {2} will not do.': '{0} Arbeitstage, bis {1}; weniger als {2} reichen nicht.',
  '{0} working days, until {1}.': '{0} Arbeitstage, bis {1}.',
  '{0} to {1}': '{0} bis {1}',
  'done by others': 'machen andere',
  'one person': 'einer allein',
  'two people': 'zu zweit',
  '{0}, {1}': '{0}, {1}',
};

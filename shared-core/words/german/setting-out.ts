import type { Words } from '../say.ts';

/** The German of what `shared-core/setting-out` says. */
export const SETTING_OUT: Words = {
  '{0} joint {1}': '{0} Teilstück {1}',
  'ceiling {0}': 'Decke {0}',
  'ceiling {0} part {1}': 'Decke {0} Teilstück {1}',
  '{0} left': '{0} links',
  '{0} right': '{0} rechts',
  '{0} head': '{0} Sturz',
  '{0} sill': '{0} Brüstung',
  '{0} above': '{0} oben',
  '{0} between': '{0} Mitte',
  '{0} below': '{0} unten',
  '{0} patch': '{0} Passstück',
  '{0} course {1}': '{0} Reihe {1}',
  'panel {0}': 'Teil {0}',
};

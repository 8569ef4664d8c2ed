import type { SurfaceKind, SurfaceState } from '../../../shared-core/house/index.ts';
import { say } from '../../../shared-core/words/index.ts';

export const KIND_WORDS: Readonly<Record<SurfaceKind, string>> = {
  'new-plaster': say`new plaster`,
  'old-plaster': say`old plaster`,
  'gypsum-board': say`gypsum board`,
  'painted-matt': say`painted, matt`,
  'painted-gloss': say`painted, gloss`,
  'paper-strippable': say`papered, strips dry`,
  'paper-overpainted': say`papered and painted over`,
  'paper-vinyl': say`vinyl on paper`,
  'wood': say`wood`,
  'tile': say`tile`,
  'textured': say`textured coating`,
};

export const STATE_WORDS: Readonly<Record<SurfaceState, string>> = {
  cracked: say`cracked`,
  flaking: say`flaking`,
  damp: say`damp`,
  mould: say`mould`,
  nicotine: say`nicotine`,
  grease: say`grease`,
  holes: say`holes`,
};

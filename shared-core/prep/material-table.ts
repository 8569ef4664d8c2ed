import type { MaterialNeed } from './prep-plan.ts';
import { say } from '../words/index.ts';

interface Material {
  readonly words: string;
  readonly unit: MaterialNeed['unit'];
}

/** What preparation and pasting use up, by what a house calls it when it says how it is sold. */
export const MATERIALS = {
  stripper: { words: say`wallpaper stripper, undiluted`, unit: 'ml' },
  'mould-treatment': { words: say`mould treatment`, unit: 'ml' },
  'sugar-soap': { words: say`sugar soap`, unit: 'g' },
  degreaser: { words: say`degreaser`, unit: 'ml' },
  filler: { words: say`filler`, unit: 'g' },
  'jointing-filler': { words: say`jointing filler`, unit: 'g' },
  'skim-filler': { words: say`skimming filler`, unit: 'g' },
  abrasive: { words: say`sheets of abrasive`, unit: 'pieces' },
  'bonding-coat': { words: say`bonding coat`, unit: 'ml' },
  stabiliser: { words: say`stabilising primer`, unit: 'ml' },
  'stain-block': { words: say`stain block`, unit: 'ml' },
  knotting: { words: say`knotting`, unit: 'ml' },
  'mist-coat': { words: say`matt paint for a mist coat`, unit: 'ml' },
  'adhesion-primer': { words: say`adhesion primer`, unit: 'ml' },
  'wallcovering-primer': { words: say`wallcovering primer`, unit: 'ml' },
  'board-sealer': { words: say`board sealer`, unit: 'ml' },
  'wood-primer': { words: say`wood primer`, unit: 'ml' },
  size: { words: say`size, made up`, unit: 'ml' },
  paste: { words: say`paste, made up`, unit: 'ml' },
  adhesive: { words: say`ready-mixed adhesive`, unit: 'ml' },
} as const satisfies Readonly<Record<string, Material>>;

export type MaterialId = keyof typeof MATERIALS;
export const MATERIAL_IDS = Object.keys(MATERIALS) as readonly MaterialId[];

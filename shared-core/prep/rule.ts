import type { SurfaceKind, SurfaceState } from '../house/index.ts';
import type { CautionKind } from './caution-kinds.ts';
import type { MaterialId } from './material-table.ts';
import type { Next } from './met-surface.ts';
import type { SurfaceOf } from './prep-plan.ts';
import { say } from '../words/index.ts';

/** The order in which a surface is prepared. */
export const PHASES = ['look', 'remove', 'treat', 'fill', 'sand', 'seal', 'prime', 'ready'] as const;

export const MINUTES_PER_HOUR = 60;
export const MINUTES_PER_DAY = 24 * MINUTES_PER_HOUR;

export const COMMON_PRACTICE = say`common practice, no source`;

/** What is done to a surface where it is so and so: one line of the table. */
export interface Rule {
  readonly id: string;
  readonly phase: (typeof PHASES)[number];
  /** Where it is done; everywhere unless said. */
  readonly on?: readonly SurfaceOf['kind'][];
  /** What the surface is; anything unless said. */
  readonly kinds?: readonly SurfaceKind[];
  /** What is the matter with it, one of these at least; nothing needs to be unless said. */
  readonly states?: readonly SurfaceState[];
  /** What comes on it, one of these at least. */
  readonly next: readonly Next[];
  /** Only where asbestos has to be expected in it. */
  readonly isForSuspected?: true;
  readonly words: (where: string) => string;
  /** How much of the surface it takes: all, the share that its states hold for, or what paper covers. */
  readonly over: 'whole' | 'affected' | 'papered';
  /** Of one person. */
  readonly minutes: number;
  readonly per: 'square-metre' | 'surface' | 'room';
  /** So many millilitres, grams or pieces for so many square metres. */
  readonly materials: readonly { readonly material: MaterialId; readonly amount: number; readonly squareMetres: number }[];
  readonly waitMinutes: number;
  readonly people: 1 | 2;
  readonly checks: readonly string[];
  /** What it may set off; which of them hold, the facts say. Heights, stairs and textured coatings need no naming. */
  readonly cautions: readonly CautionKind[];
  readonly source: string;
}

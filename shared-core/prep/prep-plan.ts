import type { OpeningRule } from '../house/index.ts';
import type { Area, Money, SpreadingRate } from '../units/index.ts';

/** A surface of a room: a wall by its id, the ceiling, or the woodwork. */
export type SurfaceOf = { readonly kind: 'wall'; readonly wall: string } | { readonly kind: 'ceiling' } | { readonly kind: 'woodwork' };

/** So much of a material, in whole steps of its own unit: millilitres or grams, sheets or pieces. */
export interface MaterialUse {
  readonly material: string;
  readonly amount: number;
}

/** Something to be done to surfaces of one room, made by one rule of the table. */
export interface Task {
  /** Unlike any other of the house, and the same as long as its room, its rule and its surfaces are. */
  readonly id: string;
  readonly room: string;
  readonly rule: string;
  /** 'Strip the paper off walls A and B'. */
  readonly words: string;
  readonly surfaces: readonly SurfaceOf[];
  readonly area: Area;
  /** Of one person, whole minutes. */
  readonly minutes: number;
  readonly people: 1 | 2;
  /** How long nothing may follow it, in minutes of the clock: drying, soaking. */
  readonly waitMinutes: number;
  /** The ids of the tasks that are done before it. */
  readonly after: readonly string[];
  readonly materials: readonly MaterialUse[];
  /** What is read or tried before it, such as a moisture reading. */
  readonly checks: readonly string[];
  /** The ids of the cautions that stand beside it. */
  readonly cautions: readonly string[];
  /** A published source, or 'common practice, no source'. */
  readonly source: string;
}

/** What can hurt somebody in a room, with the threshold at which more is asked. */
export interface Caution {
  /** Unlike any other of the house: its kind and its room. */
  readonly id: string;
  readonly kind: string;
  readonly room: string;
  /** What it is and what to do. */
  readonly words: string;
  /** From where on the law or a publication asks for more, and whether that is reached here. */
  readonly threshold: string | null;
  /** Whether that is reached, or has to be taken for reached; null where there is nothing to reach. */
  readonly isReached: boolean | null;
  /** 'Ask a licensed …'. */
  readonly ask: string;
  readonly source: string;
}

/** A material and how much of it the whole house takes, as it is sold. */
export interface MaterialNeed {
  readonly material: string;
  /** What one calls it: 'filler'. */
  readonly words: string;
  readonly unit: 'ml' | 'g' | 'pieces';
  readonly amount: number;
  /** As the house buys it, at least cost; null where nothing is said of how it is sold. */
  readonly packs: readonly { readonly amount: number; readonly count: number }[] | null;
  readonly price: Money | null;
  readonly rooms: readonly string[];
}

/** A surface of a room that one paint covers. */
export interface PaintedSurface {
  readonly room: string;
  readonly surface: SurfaceOf;
  /** Of a wall, which may have several. */
  readonly band: string | null;
  /** All of it, and what the rule takes off for openings and adds for their covered reveals; each rounded to the unit of area. */
  readonly gross: Area;
  readonly deducted: Area;
  readonly reveals: Area;
  /** What is painted: the gross less the deducted and with the reveals. */
  readonly area: Area;
  readonly coats: number;
  /** How much the surface takes of its first coat and of each later one, in percent: 100 where it is smooth. */
  readonly firstFactor: number;
  readonly factor: number;
  /** Its share of the whole; all shares together are the whole exactly. Null where the spreading rate is not known. */
  readonly millilitres: number | null;
}

/** One paint for the whole house. */
export interface PaintNeed {
  readonly covering: string;
  /** Room by room as the house has them. */
  readonly surfaces: readonly PaintedSurface[];
  readonly rule: OpeningRule;
  /** Null where neither a spreading rate nor solids and film are known. */
  readonly spreading: SpreadingRate | null;
  /** Whole millilitres, rounded up once. */
  readonly millilitres: number | null;
  /** The largest first; null where the need is not known or nothing is said of how it is sold. */
  readonly tins: readonly { readonly litres: number; readonly count: number }[] | null;
  /** Null where a tin has no price. */
  readonly price: Money | null;
}

/** What the surfaces of a house want before, and as, they are covered. */
export interface PrepPlan {
  readonly tasks: readonly Task[];
  readonly cautions: readonly Caution[];
  readonly materials: readonly MaterialNeed[];
  readonly paints: readonly PaintNeed[];
}

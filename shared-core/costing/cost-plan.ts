import type { Money } from '../units/index.ts';

/** One line of what the work costs and what the customer pays for it. */
export interface CostLine {
  readonly kind: 'covering' | 'paint' | 'material' | 'labour';
  /** The covering, the material or the job it stands for. */
  readonly of: string;
  readonly words: string;
  /** The room of labour; null for what is bought for the house together. */
  readonly room: string | null;
  /** Of labour, those of all its people together. */
  readonly minutes: number | null;
  /** Of labour, what it took them so far; null where nothing was recorded. */
  readonly spentMinutes: number | null;
  /** Net of tax; null where no price or rate is known. */
  readonly cost: Money | null;
}

/** What the work costs, and the price asked for it. */
export interface CostPlan {
  readonly lines: readonly CostLine[];
  /** Null where something has no price. */
  readonly materials: Money | null;
  readonly labour: Money | null;
  readonly markup: Money | null;
  /** What rounding up to the house's multiple adds. */
  readonly rounding: Money | null;
  /** Before tax: materials, labour, markup and rounding. */
  readonly net: Money | null;
  readonly tax: Money | null;
  readonly gross: Money | null;
  /** What has no price or rate yet, in words. */
  readonly missing: readonly string[];
  /** What was spent and worked so far, against what was planned for it. */
  readonly actual: { readonly minutesPlanned: number; readonly minutesSpent: number; readonly spent: Money; readonly planned: Money | null };
}

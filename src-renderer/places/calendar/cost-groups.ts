import type { CostLine, CostPlan } from '../../../shared-core/costing/index.ts';
import { type Money, moneyOf } from '../../../shared-core/units/index.ts';

/** The labour of one room together; null for what belongs to none. */
export interface LabourOfRoom {
  readonly room: string | null;
  readonly lines: readonly CostLine[];
  readonly minutes: number;
  /** Null where no rate is known. */
  readonly cost: Money | null;
}

export type CostGroup =
  | { readonly kind: Exclude<CostLine['kind'], 'labour'>; readonly lines: readonly CostLine[] }
  | { readonly kind: 'labour'; readonly rooms: readonly LabourOfRoom[] };

const GOODS = ['covering', 'paint', 'material'] as const;

/**
 * The lines of a cost plan by kind: coverings, paints and materials line by line, labour together for each room.
 *
 * Example: two jobs of a room, 90 min for 63.00 and 30 min for 21.00, are 120 min for 84.00.
 */
export function groupCost({ lines }: Pick<CostPlan, 'lines'>): readonly CostGroup[] {
  const goods = GOODS.map((kind) => ({ kind, lines: lines.filter((line) => line.kind === kind) })).filter((group) => group.lines.length > 0);
  const byRoom = Map.groupBy(lines.filter(({ kind }) => kind === 'labour'), ({ room }) => room);
  const rooms = [...byRoom].map(([room, own]): LabourOfRoom => ({
    room,
    lines: own,
    minutes: own.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0),
    cost: own.reduce<Money | null>((sum, { cost }) => (sum === null || cost === null ? null : moneyOf(sum + cost)), moneyOf(0)),
  }));
  return rooms.length > 0 ? [...goods, { kind: 'labour', rooms }] : goods;
}

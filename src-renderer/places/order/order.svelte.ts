import type { Covering, House, RunQuantity } from '../../../shared-core/house/index.ts';
import type { CutList, OrderLine } from '../../../shared-core/ordering/index.ts';
import { moneyOf, type Money } from '../../../shared-core/units/index.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import type { HouseState } from '../../state/house.svelte.ts';

/** The order's lines of one pattern number, and the rolls they are cut from. */
export interface PatternOrder {
  readonly covering: Covering;
  readonly lines: readonly OrderLine[];
  readonly cutLists: readonly CutList[];
}

export type RunList = 'stock' | 'offers';

/** The bulk order grouped by pattern, and the runs that the user knows of. */
export class OrderSheet {
  readonly #house: HouseState;
  trouble = $state<Readonly<Record<RunList, string | null>>>({ stock: null, offers: null });

  readonly patterns: readonly PatternOrder[] = $derived.by(() => groupByPattern(this.#house.planner.planned ?? this.#house.shown, this.#house.plan?.order ?? [], this.#house.plan?.cuts ?? []));
  readonly rollsTogether: number = $derived.by(() => sum(this.#cutLines, ({ rollsNeeded }) => rollsNeeded));
  readonly rollsByRoom: number = $derived.by(() => sum(this.#cutLines, ({ rollsByRoom }) => rollsByRoom));
  /** Null where a line has no price. */
  readonly total: Money | null = $derived.by(() => (this.#lines.every(({ price }) => price !== null) ? moneyOf(sum(this.#lines, ({ price }) => price ?? 0)) : null));

  constructor(house: HouseState) {
    this.#house = house;
  }

  get #lines(): readonly OrderLine[] {
    return this.#house.plan?.order ?? [];
  }

  /** The lines of what is cut from rolls; murals and goods by the length are not. */
  get #cutLines(): readonly OrderLine[] {
    return this.#lines.filter(({ problems, running }) => problems.length > 0 && running === null);
  }

  get house(): House {
    return this.#house.planner.planned ?? this.#house.shown;
  }

  async setRun(list: RunList, index: number, change: Partial<RunQuantity>): Promise<string | null> {
    const entries = this.#house.saved[list].map((entry, place) => (place === index ? { ...entry, ...change } : entry));
    return this.#set(list, entries);
  }

  async addRun(list: RunList, covering: string, run: string, rolls: string): Promise<boolean> {
    const trouble = run.trim() === '' ? 'The run wants its number, as it stands on the label.' : /^\d+$/.test(rolls.trim()) ? null : 'The rolls are a whole number.';
    const refused = trouble ?? (await this.#set(list, [...this.#house.saved[list], { covering, run: run.trim(), rolls: Number(rolls) }]));
    this.trouble = { ...this.trouble, [list]: refused };
    return refused === null;
  }

  async removeRun(list: RunList, index: number): Promise<void> {
    this.trouble = { ...this.trouble, [list]: await this.#set(list, this.#house.saved[list].filter((_, place) => place !== index)) };
  }

  async #set(list: RunList, entries: readonly RunQuantity[]): Promise<string | null> {
    const copies = entries.map((entry) => ({ ...entry }));
    return sayFaults(await this.#house.edit(list === 'stock' ? { kind: 'set-stock', stock: copies } : { kind: 'set-offers', offers: copies }));
  }
}

function groupByPattern(house: House, lines: readonly OrderLine[], cuts: readonly CutList[]): readonly PatternOrder[] {
  return house.coverings.flatMap((covering) => {
    const own = lines.filter((line) => line.covering === covering.id);
    return own.length === 0 ? [] : [{ covering, lines: own, cutLists: cuts.filter((list) => list.covering === covering.id) }];
  });
}

function sum(lines: readonly OrderLine[], figure: (line: OrderLine) => number): number {
  return lines.reduce((total, line) => total + figure(line), 0);
}

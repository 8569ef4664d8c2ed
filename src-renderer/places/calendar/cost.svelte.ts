import { type CostFacts, type CostLine, type CostPlan, type CostWorking, type CostWorkings, explainCost, explainCostLine, type Quote, quoteOf } from '../../../shared-core/costing/index.ts';
import type { Expense, House } from '../../../shared-core/house/index.ts';
import { type Money, parseMoney, showMoney } from '../../../shared-core/units/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import { readRate } from '../../parts/read-rate.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import type { CalendarSheet } from './calendar.svelte.ts';
import { type CostGroup, groupCost, type LabourOfRoom } from './cost-groups.ts';
import { costFactsOf } from './plan-facts.ts';
import { nameRoomOf } from './say-calendar.ts';
import { changedTasks } from '../../state/changed-tasks.ts';
import { readDay, sayNoDay } from '../../parts/read-day.ts';
import { readMinutes } from './typed-work.ts';

/** What the work costs, what was spent of it, and the edits that record it. */
export class CostSheet {
  readonly #house: HouseState;
  readonly #calendar: CalendarSheet;
  /** Why an expense could not be taken or removed. */
  trouble = $state<string | null>(null);
  #room = $state<string | null>(null);

  readonly cost: CostPlan | null = $derived.by(() => this.#house.plan?.cost ?? null);
  readonly #facts: CostFacts | null = $derived.by(() => this.#house.plan && costFactsOf(this.house, this.#house.plan));
  readonly groups: readonly CostGroup[] = $derived.by(() => (this.cost ? groupCost(this.cost) : []));
  readonly workings: CostWorkings | null = $derived.by(() => this.#facts && this.cost && explainCost(this.#facts, this.cost));
  readonly quote: Quote | null = $derived.by(() => this.#facts && this.cost && quoteOf({ house: this.house, cost: this.cost, jobs: this.#facts.jobs }));
  readonly labour: readonly CostLine[] = $derived.by(() => this.cost?.lines.filter(({ kind }) => kind === 'labour') ?? []);
  /** Rooms in which somebody works, and null for the house where work belongs to none. */
  readonly rooms: readonly (string | null)[] = $derived.by(() => [...new Set(this.labour.map(({ room }) => room))]);

  constructor(house: HouseState, calendar: CalendarSheet) {
    this.#house = house;
    this.#calendar = calendar;
  }

  /** The house that the cost was reckoned of. */
  get house(): House {
    return this.#calendar.house;
  }

  show(money: Money | null): string | null {
    return money === null ? null : showMoney(money, this.house.currency);
  }

  nameRoom(room: string | null): string {
    return nameRoomOf(this.house, room);
  }

  explain(line: CostLine): readonly CostWorking[] {
    return this.#facts ? explainCostLine(this.#facts, line) : [];
  }

  /** The lines of one room's labour, each under what it is. */
  explainRoom({ lines, cost }: LabourOfRoom): readonly CostWorking[] {
    const each = lines.flatMap((line) => [{ text: `${line.words}:` }, ...this.explain(line)]);
    return cost === null || lines.length === 1 ? each : [...each, { text: say`Together ${showMoney(cost, this.house.currency)}.` }];
  }

  /** The room whose minutes are typed in. */
  get room(): string | null {
    const { rooms } = this;
    return rooms.includes(this.#room) ? this.#room : (rooms[0] ?? null);
  }

  chooseRoom(room: string | null): void {
    this.#room = room;
  }

  get work(): House['work'] {
    return this.#house.saved.work;
  }

  /** The rate of an hour or the multiple to which the price is rounded up, as typed. */
  changeMoney = (fact: 'rate' | 'rounding') => async (typed: string): Promise<string | null> => {
    if (typed.trim() === '') return this.#calendar.changeWork({ [fact]: undefined });
    const money = parseMoney(typed, this.#house.saved.currency);
    if (!money.ok) return say`${money.faults.map(({ message }) => message).join(' ')}. Nothing was changed.`;
    return this.#calendar.changeWork({ [fact]: typed.trim() });
  };

  changeShare = (fact: 'markup' | 'tax') => async (typed: string): Promise<string | null> => {
    if (typed.trim() === '') return this.#calendar.changeWork({ [fact]: undefined });
    const rate = readRate(typed);
    return rate === null ? say`A share is from 0 to 100 %, such as 7.25. Nothing was changed.` : this.#calendar.changeWork({ [fact]: rate });
  };

  /** What one person was at a job, as its field shows it. */
  spentOn(job: string): string {
    const spent = this.#house.saved.tasks.find(({ task }) => task === job)?.spent;
    return spent === undefined ? '' : String(spent);
  }

  changeSpent = (job: string) => async (typed: string): Promise<string | null> => {
    const spent = typed.trim() === '' ? undefined : readMinutes(typed);
    if (spent === null) return say`This takes minutes, or hours such as 1:30 or 1.5 h.`;
    return sayFaults(await this.#house.edit({ kind: 'set-tasks', tasks: changedTasks(this.#house.saved.tasks, job, { spent }) }));
  };

  get expenses(): readonly Expense[] {
    return this.#house.saved.expenses;
  }

  async addExpense(what: string, cost: string, day: string): Promise<boolean> {
    const trouble = what.trim() === '' ? say`Say first what it was spent on.` : this.#troubleOf(cost, day);
    this.trouble = trouble ?? (await this.#setExpenses([...this.expenses, { what: what.trim(), cost: cost.trim(), ...(day.trim() === '' ? {} : { day: day.trim() }) }]));
    return this.trouble === null;
  }

  changeExpense = (index: number, fact: 'what' | 'cost' | 'day') => async (typed: string): Promise<string | null> => {
    const text = typed.trim();
    const trouble = fact === 'what' ? (text === '' ? say`Say first what it was spent on.` : null) : this.#troubleOf(fact === 'cost' ? text : '0', fact === 'day' ? text : '');
    if (trouble !== null) return trouble;
    return this.#setExpenses(
      this.expenses.map((expense, place) => {
        if (place !== index) return expense;
        const { day: _day, ...rest } = expense;
        return fact === 'day' ? { ...rest, ...(text === '' ? {} : { day: text }) } : { ...expense, [fact]: text };
      }),
    );
  };

  async removeExpense(index: number): Promise<void> {
    this.trouble = await this.#setExpenses(this.expenses.filter((_, place) => place !== index));
  }

  #troubleOf(cost: string, day: string): string | null {
    const money = parseMoney(cost, this.#house.saved.currency);
    if (!money.ok) return say`${money.faults.map(({ message }) => message).join(' ')}. Nothing was changed.`;
    return day.trim() === '' || readDay(day) !== null ? null : sayNoDay(day);
  }

  async #setExpenses(expenses: readonly Expense[]): Promise<string | null> {
    return sayFaults(await this.#house.edit({ kind: 'set-expenses', expenses: expenses.map((expense) => ({ ...expense })) }));
  }
}

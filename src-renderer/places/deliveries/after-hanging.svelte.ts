import type { House } from '../../../shared-core/house/index.ts';
import type { LeftOfRun } from '../../../shared-core/ordering/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import { readDay, sayNoDay } from '../../parts/read-day.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import { today } from '../../parts/today.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import { notYetKept } from './leftovers.ts';
import { type RunsOfRoom, runsOfRoom, withHung, withoutHung } from './rooms.ts';

/** A leftover in the spelling in which it is sent. */
type Written = Omit<House['leftovers'][number], 'length'> & { readonly length: string };

/** Which rooms hang already, and what is kept for repairs: the edits that record it. */
export class AfterHanging {
  readonly #house: HouseState;
  trouble = $state<Readonly<Record<'rooms' | 'leftovers', string | null>>>({ rooms: null, leftovers: null });
  /** What somebody had chosen for a room before it was ticked as hung. */
  #chosenBefore: House['runChoices'] = [];

  constructor(house: HouseState) {
    this.#house = house;
  }

  runsOf(room: string): RunsOfRoom {
    const { plan, saved } = this.#house;
    return plan ? runsOfRoom(saved, plan, room) : { trouble: say`The rooms are being planned.` };
  }

  /** Records that a room hangs from the runs it is planned from, or takes that away again. */
  setHung(room: string, isHung: boolean): void {
    const { saved } = this.#house;
    const found = this.runsOf(room);
    if (isHung && 'trouble' in found) return;
    const choices = isHung && 'runs' in found ? withHung(saved, room, found.runs, today()) : withoutHung(saved, room, this.#chosenBefore);
    if (isHung) this.#chosenBefore = [...this.#chosenBefore.filter((choice) => choice.room !== room), ...saved.runChoices.filter((choice) => choice.room === room)];
    this.trouble = { ...this.trouble, rooms: sayFaults(this.#house.editAtOnce({ kind: 'set-run-choices', runChoices: choices.map((choice) => ({ ...choice })) })) };
  }

  /** The day on which a room was hung, for the house's record; nothing takes it away. */
  changeDay = (room: string) => async (typed: string): Promise<string | null> => {
    const day = typed.trim() === '' ? undefined : readDay(typed);
    if (day === null) return sayNoDay(typed);
    const runChoices = this.#house.saved.runChoices.map(({ day: before, ...choice }) => (choice.room === room && choice.hung ? { ...choice, ...(day === undefined ? {} : { day }) } : { ...choice, ...(before === undefined ? {} : { day: before }) }));
    return sayFaults(await this.#house.edit({ kind: 'set-run-choices', runChoices }));
  };

  keep(left: LeftOfRun): void {
    this.#say(this.#house.editAtOnce(this.#edit([...this.#written, ...notYetKept(this.#house.saved, left)])));
  }

  change = async (index: number, change: Partial<Written>): Promise<string | null> => sayFaults(await this.#house.edit(this.#edit(this.#written.map((one, place) => (place === index ? { ...one, ...change } : one)))));

  changeCount = (index: number) => async (typed: string) => (/^\d{1,5}$/.test(typed.trim()) ? this.change(index, { count: Number(typed) }) : say`The count is a whole number from 1.`);

  changePlace = (index: number) => async (typed: string) => {
    const leftovers = this.#written.map((one, at) => {
      const { place: _before, ...rest } = one;
      if (at !== index) return one;
      return typed.trim() === '' ? rest : { ...rest, place: typed.trim() };
    });
    return sayFaults(await this.#house.edit(this.#edit(leftovers)));
  };

  remove(index: number): void {
    this.#say(this.#house.editAtOnce(this.#edit(this.#written.filter((_, place) => place !== index))));
  }

  get #written(): readonly Written[] {
    return this.#house.saved.leftovers.map((one) => ({ ...one, length: one.length.typed }));
  }

  #edit(leftovers: readonly Written[]) {
    return { kind: 'set-leftovers' as const, leftovers: leftovers.map((one) => ({ ...one })) };
  }

  #say(faults: Parameters<typeof sayFaults>[0]): void {
    this.trouble = { ...this.trouble, leftovers: sayFaults(faults) };
  }
}

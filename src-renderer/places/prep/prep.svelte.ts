import { type Edit, type Room, SURFACE_STATES, type Surface, type SurfaceKind, type SurfaceState, type TaskChoice } from '../../../shared-core/house/index.ts';
import type { Task } from '../../../shared-core/prep/index.ts';
import { say, sayDecimal, sayList } from '../../../shared-core/words/index.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import { changedTasks } from '../../state/changed-tasks.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import { KIND_WORDS, STATE_WORDS } from './surface-words.ts';


/** A wall by its id, the ceiling, or the woodwork; walls and the two others have keys that cannot be alike. */
export type SurfaceKey = `wall:${string}` | 'ceiling' | 'woodwork';

export interface RoomSurface {
  readonly key: SurfaceKey;
  readonly name: string;
  readonly surface: Surface | undefined;
}

/** The surfaces of the room that is looked at, those that are picked, and the edits made to all of them at once. */
export class PrepSheet {
  readonly #house: HouseState;
  #picked = $state.raw<{ readonly room: string; readonly keys: readonly SurfaceKey[] } | null>(null);

  constructor(house: HouseState) {
    this.#house = house;
  }

  get room(): Room | null {
    return this.#house.room;
  }

  get surfaces(): readonly RoomSurface[] {
    const { room } = this;
    if (!room) return [];
    return [
      ...room.walls.map(({ id, surface }): RoomSurface => ({ key: `wall:${id}`, name: say`wall ${id}`, surface })),
      { key: 'ceiling', name: say`ceiling`, surface: room.ceilingSurface },
      ...(room.woodwork ? [{ key: 'woodwork' as const, name: say`woodwork`, surface: room.woodwork.surface }] : []),
    ];
  }

  /** What an entry is for; every wall where nothing was picked. */
  get picked(): readonly SurfaceKey[] {
    const { room } = this;
    const keys = this.surfaces.map(({ key }) => key);
    const own = this.#picked?.room === room?.id ? (this.#picked?.keys.filter((key) => keys.includes(key)) ?? []) : [];
    return own.length > 0 ? own : keys.filter((key) => key.startsWith('wall:'));
  }

  toggle(key: SurfaceKey): void {
    const { room, picked } = this;
    if (!room) return;
    const isOwnChoice = this.#picked?.room === room.id;
    const keys = !isOwnChoice ? [key] : picked.includes(key) ? picked.filter((one) => one !== key) : [...picked, key];
    this.#picked = keys.length > 0 ? { room: room.id, keys } : null;
  }

  pickWalls(): void {
    this.#picked = null;
  }

  /** What all that are picked have in common of one fact; undefined where they differ. */
  common<Value>(of: (surface: Surface | undefined) => Value): Value | undefined {
    const [first, ...others] = this.surfaces.filter(({ key }) => this.picked.includes(key)).map(({ surface }) => of(surface));
    return others.every((other) => other === first) ? first : undefined;
  }

  setKind = (kind: SurfaceKind | null): Promise<string | null> => this.#change((surface) => kind && { states: [], affected: 100, ...surface, kind });

  toggleState(state: SurfaceState): Promise<string | null> {
    const isOfAll = this.hasState(state);
    return this.#changeKnown((surface) => ({ ...surface, states: isOfAll ? surface.states.filter((one) => one !== state) : SURFACE_STATES.filter((one) => one === state || surface.states.includes(one)) }));
  }

  hasState(state: SurfaceState): boolean {
    return this.common((surface) => surface?.states.includes(state) ?? false) === true;
  }

  setAffected = async (typed: string): Promise<string | null> => {
    const share = typed.trim().replace(/\s*%$/, '');
    return /^\d{1,3}$/.test(share) ? this.#changeKnown((surface) => ({ ...surface, affected: Number(share) })) : say`This takes a share in percent, from 1 to 100.`;
  };

  setYear = async (typed: string): Promise<string | null> => {
    if (typed.trim() === '') return this.#changeKnown(({ year: _known, ...surface }) => surface);
    return /^\d{4}$/.test(typed.trim()) ? this.#changeKnown((surface) => ({ ...surface, year: Number(typed) })) : say`This takes a year, such as 1974.`;
  };

  /** A state or an age of what is not known itself is nothing yet. */
  async #changeKnown(by: (surface: Surface) => Surface): Promise<string | null> {
    if (this.picked.every((key) => this.#surfaceOf(key) === undefined)) return say`Say first what it is.`;
    return this.#change((surface) => surface && by(surface));
  }

  /** Changes all that are picked in one edit. */
  async #change(by: (surface: Surface | undefined) => Surface | null | undefined): Promise<string | null> {
    const { room } = this;
    const surfaces = this.picked.map((key) => ({ of: key === 'ceiling' || key === 'woodwork' ? key : { wall: key.slice('wall:'.length) }, surface: written(by(this.#surfaceOf(key))) }));
    return room && sayFaults(await this.#house.edit({ kind: 'set-surfaces', room: room.id, surfaces }));
  }

  #surfaceOf(key: SurfaceKey): Surface | undefined {
    return this.surfaces.find((one) => one.key === key)?.surface;
  }

  changeRoom = async (facts: Record<string, boolean | null>): Promise<string | null> => {
    const { room } = this;
    return room && sayFaults(await this.#house.edit({ kind: 'change-room', room: room.id, facts }));
  };

  setBuilt = async (typed: string): Promise<string | null> => {
    if (typed.trim() === '') return this.#changeHouse({ built: null });
    return /^\d{4}$/.test(typed.trim()) ? this.#changeHouse({ built: Number(typed) }) : say`This takes a year, such as 1931.`;
  };

  setCountry = (typed: string): Promise<string | null> => this.#changeHouse({ country: typed.trim() === '' ? null : typed.trim().toUpperCase() });

  choiceOf(task: string): TaskChoice | undefined {
    return this.#house.saved.tasks.find((choice) => choice.task === task);
  }

  /** The hours of a task as its field shows them, to a hundredth. */
  hoursOf({ id, minutes }: Task): string {
    return sayDecimal(String(Math.round(((this.choiceOf(id)?.minutes ?? minutes) / 60) * 100) / 100));
  }

  setHours = async ({ id }: Task, typed: string): Promise<string | null> => {
    if (typed.trim() === '') return this.#choose(id, { minutes: undefined });
    const hours = Number(typed.trim().replace(',', '.'));
    return Number.isFinite(hours) && hours >= 0 ? this.#choose(id, { minutes: Math.round(hours * 60) }) : say`This takes hours, such as 1.5; nothing for ours.`;
  };

  toggleDone({ id }: Task): Promise<string | null> {
    return this.#choose(id, { done: this.choiceOf(id)?.done ? undefined : true });
  }

  toggleOthers({ id }: Task): Promise<string | null> {
    return this.#choose(id, { isOthers: this.choiceOf(id)?.isOthers ? undefined : true });
  }

  /** What a material is sold in, as its field shows it: '1000 at 9.50; 5000 at 38'. */
  packsOf(material: string): string {
    const own = this.#house.saved.materials.find((one) => one.material === material);
    return own?.packs.map(({ amount, price }) => (price === undefined ? String(amount) : say`${amount} at ${price}`)).join('; ') ?? '';
  }

  setPacks = async (material: string, typed: string): Promise<string | null> => {
    const others = this.#house.saved.materials.filter((one) => one.material !== material).map((one) => ({ ...one, packs: one.packs.map((pack) => ({ ...pack })) }));
    const packs = typed.trim() === '' ? [] : typed.split(';').map(readPack);
    if (packs.includes(null)) return say`This takes amounts and their prices, such as ‘1000 at 9.50; 5000 at 38’.`;
    const own = packs.length === 0 ? [] : [{ material, packs: packs as { amount: number; price?: string }[] }];
    return sayFaults(await this.#house.edit({ kind: 'set-materials', materials: [...others, ...own] }));
  };

  async #choose(task: string, change: Partial<Pick<TaskChoice, 'minutes' | 'isOthers' | 'done'>>): Promise<string | null> {
    return sayFaults(await this.#house.edit({ kind: 'set-tasks', tasks: changedTasks(this.#house.saved.tasks, task, change) }));
  }

  async #changeHouse(facts: Record<string, number | string | null>): Promise<string | null> {
    return sayFaults(await this.#house.edit({ kind: 'change-house', facts }));
  }
}

/** 'painted, gloss; cracked and holes over 20 % of it; 1974'; what is not known is said. */
export function saySurface(surface: Surface | undefined): string {
  if (!surface) return say`not known`;
  const states = surface.states.map((state) => STATE_WORDS[state]);
  const state = states.length === 0 ? say`sound` : surface.affected === 100 ? sayList(states) : say`${sayList(states)} over ${surface.affected} % of it`;
  return [KIND_WORDS[surface.kind], state, ...(surface.year === undefined ? [] : [String(surface.year)])].join('; ');
}

type WrittenSurface = Extract<Edit, { kind: 'set-surfaces' }>['surfaces'][number]['surface'];

function written(surface: Surface | null | undefined): WrittenSurface {
  return surface ? { ...surface, states: [...surface.states] } : null;
}

const PACK = /^\s*(\d+(?:[.,]\d+)?)\s*(?:\p{L}+\s*)?(\d+(?:[.,]\d+)?)?\s*$/u;

/** '1000 at 9.50' as a pack and its price; null where it is none. */
function readPack(typed: string): { readonly amount: number; readonly price?: string } | null {
  const [, amount, price] = PACK.exec(typed) ?? [];
  return amount === undefined ? null : { amount: Number(amount.replace(',', '.')), ...(price === undefined ? {} : { price: price.replace(',', '.') }) };
}

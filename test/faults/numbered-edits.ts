import { createHash } from 'node:crypto';
import { type House, newHouse, writeDocument } from '../../shared-core/house/index.ts';
import { HouseStore, type StoredHouse } from '../../src-main/store/index.ts';

/** How many rooms a session keeps at most, so that its house stays small however long it goes on. */
const MOST_ROOMS = 6;

export const firstHouse = (): House => newHouse('Session', 'metric', 'EUR');

/** The change that follows a revision: the same one whoever makes it, so that what a file must hold is known from its revision. */
export async function makeChange(store: HouseStore, { house, revision, undo, redo }: StoredHouse) {
  const turn = revision % 7;
  if (turn === 3 && undo !== null) return store.undo(revision);
  if (turn === 4 && redo !== null) return store.redo(revision);
  if (turn === 6 && undo !== null) return store.undo(revision);
  if (turn === 0 || house.rooms.length === 0) {
    const id = `room${revision}`;
    const walls = [1, 2, 3, 4].map((wall) => ({ id: `W${wall}`, length: `${2 + wall / 4} m`, height: '2.4 m', note: `Revision ${revision}, wall ${wall}. ${'Uneven plaster. '.repeat(revision % 40)}` }));
    return store.edit({ kind: 'add-room', room: { id, name: `Room ${revision}`, walls } }, revision);
  }
  if (house.rooms.length > MOST_ROOMS) return store.edit({ kind: 'remove-room', room: house.rooms[0]!.id }, revision);
  if (turn === 1) return store.edit({ kind: 'change-house', facts: { name: `House of revision ${revision}` } }, revision);
  return store.edit({ kind: 'change-wall', room: house.rooms[0]!.id, wall: 'W1', facts: { length: `${3 + (revision % 50) / 10} m` } }, revision);
}

/** All that a reader sees of a stored house, in few characters. */
export function printOf({ house, revision, undo, redo }: StoredHouse): string {
  return createHash('sha256').update(JSON.stringify([writeDocument(house), revision, undo, redo])).digest('hex');
}

/** What a file holds at each revision of a session: worked out by a store of its own that nothing disturbs. */
export class UndisturbedSession {
  readonly #store: HouseStore;
  readonly #prints: string[];
  #state: StoredHouse;

  private constructor(store: HouseStore, state: StoredHouse) {
    this.#store = store;
    this.#state = state;
    this.#prints = [printOf(state)];
  }

  static async start(path: string): Promise<UndisturbedSession> {
    const made = await HouseStore.create(path, firstHouse());
    if (!made.ok) throw new Error(JSON.stringify(made.faults));
    const read = await made.value.read();
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    return new UndisturbedSession(made.value, read.value);
  }

  async printAt(revision: number): Promise<string> {
    while (this.#prints.length <= revision) {
      const changed = await makeChange(this.#store, this.#state);
      if (!changed.ok) throw new Error(`revision ${this.#state.revision}: ${JSON.stringify(changed.failure)}`);
      this.#state = changed.value;
      this.#prints.push(printOf(this.#state));
    }
    return this.#prints[revision]!;
  }

  close(): Promise<void> {
    return this.#store.close();
  }
}

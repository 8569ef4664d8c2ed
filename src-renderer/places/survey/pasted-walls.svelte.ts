import type { Room, Wall } from '../../../shared-core/house/index.ts';
import { type Ends, readWallTable, WALL_COLUMNS, type WallTable } from '../../../shared-core/survey/index.ts';
import { lengthOf, parseMeasure, showLength } from '../../../shared-core/units/index.ts';
import { say, sayList } from '../../../shared-core/words/index.ts';
import { sayFault, sayFaults } from '../../parts/say-fault.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import { pieceName } from './room-extras.svelte.ts';
import type { TableInHand } from './table-in-hand.ts';

interface Pasted {
  readonly text: string;
  readonly isOpen: boolean;
  readonly isReplacing: boolean;
  readonly refused: string | null;
}

const NOTHING: Pasted = { text: '', isOpen: false, isReplacing: false, refused: null };

/** A table of walls pasted for the room that is looked at, until it is taken; it waits there while another room is looked at. */
export class PastedWalls implements TableInHand {
  readonly #house: HouseState;
  readonly #height: () => Ends | null;
  readonly columns = WALL_COLUMNS;
  #byRoom = $state.raw<Readonly<Record<string, Pasted>>>({});

  readonly #room: Room | null = $derived.by(() => this.#house.room);
  readonly #pasted: Pasted = $derived.by(() => (this.#room && this.#byRoom[this.#room.id]) ?? NOTHING);
  /** Where there are no walls yet there is nothing to replace. */
  readonly canReplace: boolean = $derived.by(() => (this.#room?.walls.length ?? 0) > 0);
  readonly isReplacing: boolean = $derived.by(() => this.canReplace && this.#pasted.isReplacing);
  readonly #read: WallTable | null = $derived.by(() =>
    this.isOpen && this.#room && this.text.trim() !== '' ? readWallTable(this.text, this.#house.saved, this.#room, { isReplacing: this.isReplacing, height: this.#height() }) : null,
  );
  readonly rows = $derived.by(() => this.#read?.rows ?? []);
  readonly faults: readonly string[] = $derived.by(() => this.#read?.faults.map(sayFault) ?? []);
  readonly edit = $derived.by(() => this.#read?.edit ?? null);

  constructor(house: HouseState, height: () => Ends | null) {
    this.#house = house;
    this.#height = height;
  }

  get text(): string {
    return this.#pasted.text;
  }

  get isOpen(): boolean {
    return this.#pasted.isOpen;
  }

  set isOpen(isOpen: boolean) {
    this.#set({ isOpen });
  }

  get refused(): string | null {
    return this.#pasted.refused;
  }

  get summary(): string {
    const lengths = this.edit?.walls.map(({ length }) => parseMeasure(length)) ?? [];
    const total = lengths.reduce((sum, length) => (length.ok ? sum + length.value.length : sum), 0);
    const together = showLength(lengthOf(total), this.#house.shown.lengths);
    return lengths.length === 1 ? say`1 wall, ${together} together.` : say`${lengths.length} walls, ${together} together.`;
  }

  /** What is lost with each wall that has no row, in sentences. */
  get going(): readonly string[] {
    const room = this.#room;
    return this.#there(false).map(({ id, openings }) => {
      const pieces = room?.furniture.filter(({ wall }) => wall === id).map(pieceName) ?? [];
      const photos = this.#house.saved.photos.filter((photo) => photo.room === room?.id && photo.wall === id).length;
      const shown = photos === 0 ? [] : [photos === 1 ? say`its photo` : say`its ${photos} photos`];
      const hanging = room?.bands.some(({ walls }) => walls.includes(id)) ? [say`what hangs there`] : [];
      const lost = [...openings.map((opening) => opening.id), ...pieces, ...shown, ...hanging];
      return lost.length > 0 ? say`Wall ${id} goes, and with it ${sayList(lost)}.` : say`Wall ${id} goes.`;
    });
  }

  /** The openings of the walls that have a row, in words; empty where there are none. */
  get staying(): string {
    const walls = this.#there(true).filter(({ openings }) => openings.length > 0);
    return sayList(walls.map(({ id, openings }) => say`${sayList(openings.map((opening) => opening.id))} in wall ${id}`));
  }

  /** Of the walls whose place is taken, those that have a row in the table or have none. */
  #there(hasRow: boolean): readonly Wall[] {
    const { edit } = this;
    return this.isReplacing && edit ? (this.#room?.walls.filter((wall) => edit.walls.some(({ id }) => id === wall.id) === hasRow) ?? []) : [];
  }

  type(text: string): void {
    this.#set({ text, refused: null });
  }

  /** Opens with rows that were pasted elsewhere, under those that stand here already. */
  open(rows: string): void {
    this.type(this.text.trim() === '' ? rows : `${this.text.trimEnd()}\n${rows}`);
    this.isOpen = true;
  }

  setReplacing(isReplacing: boolean): void {
    this.#set({ isReplacing, refused: null });
  }

  take(): boolean {
    if (!this.edit) return false;
    const refused = sayFaults(this.#house.editAtOnce(this.edit));
    this.#set(refused === null ? { text: '', refused } : { refused });
    return refused === null;
  }

  #set(changed: Partial<Pasted>): void {
    if (this.#room) this.#byRoom = { ...this.#byRoom, [this.#room.id]: { ...this.#pasted, ...changed } };
  }
}

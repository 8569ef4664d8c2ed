import { LARGEST_ROOM_TABLE_BYTES, readRoomTable, ROOM_COLUMNS, type RoomTable, writeRoomTable } from '../../../shared-core/survey/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import { sayFault, sayFaults } from '../../parts/say-fault.ts';
import { saveFile } from '../../host/save-file.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import type { TableInHand } from './table-in-hand.ts';

/** A table of rooms from a file or pasted, until its rooms are added to the house; and the house's rooms as such a table. */
export class RoomsInHand implements TableInHand {
  readonly #house: HouseState;
  readonly columns = ROOM_COLUMNS;
  text = $state('');
  isOpen = $state(false);
  refused = $state<string | null>(null);

  readonly #read: RoomTable | null = $derived.by(() => (this.isOpen && this.text.trim() !== '' ? readRoomTable(this.text, this.#house.saved) : null));
  readonly rows = $derived.by(() => this.#read?.rows ?? []);
  readonly faults: readonly string[] = $derived.by(() => this.#read?.faults.map(sayFault) ?? []);
  readonly edit = $derived.by(() => this.#read?.edit ?? null);
  /** The names of rooms to be added that the house has already. */
  readonly sameNames: readonly string[] = $derived.by(() => [...new Set(this.edit?.rooms.map(({ name }) => name) ?? [])].filter((name) => this.#house.saved.rooms.some((room) => room.name === name)));

  constructor(house: HouseState) {
    this.#house = house;
  }

  get summary(): string {
    const rooms = this.edit?.rooms ?? [];
    const walls = rooms.reduce((sum, room) => sum + (room.walls?.length ?? 0), 0);
    const openings = rooms.reduce((sum, room) => sum + (room.walls ?? []).reduce((all, wall) => all + (wall.openings?.length ?? 0), 0), 0);
    const roomsSaid = rooms.length === 1 ? say`${rooms.length} room` : say`${rooms.length} rooms`;
    const wallsSaid = walls === 1 ? say`${walls} wall` : say`${walls} walls`;
    const openingsSaid = openings === 1 ? say`${openings} opening` : say`${openings} openings`;
    return say`${roomsSaid} with ${wallsSaid} and ${openingsSaid}.`;
  }

  type(text: string): void {
    this.text = text;
    this.refused = null;
  }

  async readFile(file: File): Promise<void> {
    this.refused = null;
    if (file.size > LARGEST_ROOM_TABLE_BYTES) {
      this.refused = say`${file.name} is ${file.size} bytes, far larger than a table of rooms. Check that it is the right file.`;
      return;
    }
    try {
      this.text = new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
      if (this.text.trim() === '') this.refused = say`There is nothing in ${file.name}.`;
    } catch {
      this.refused = say`${file.name} is not text in UTF-8; a table of rooms is CSV text. Save it as CSV in UTF-8 first.`;
    }
  }

  take(): boolean {
    const { edit } = this;
    if (!edit) return false;
    this.refused = sayFaults(this.#house.editAtOnce(edit));
    if (this.refused !== null) return false;
    this.text = '';
    this.#house.roomId = edit.rooms[0]?.id ?? this.#house.roomId;
    return true;
  }

  writeOut(): void {
    const { file, saved } = this.#house;
    saveFile(say`${file.replace(/\.struckline$/, '')} rooms.csv`, writeRoomTable(saved), 'text/csv');
  }
}

import { freeId } from '../../../shared-core/base/index.ts';
import { type Edit, encodeHouse, type Opening, OPENING_WORDS, REVEAL_SIDES, type Room, USUAL_SIDES, type Wall, withoutNotes } from '../../../shared-core/house/index.ts';
import { type Ends, heightText, mirrorRoom, nextWallId, readTurnTyped, TURN_HELP, turnText } from '../../../shared-core/survey/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import { alikeOpenings, emptyOpening, type NewOpening, type OpeningKind, openingLike } from './new-opening.ts';
import { OpeningHand } from './opening-hand.svelte.ts';
import { PastedWalls } from './pasted-walls.svelte.ts';
import { RoomExtras } from './room-extras.svelte.ts';
import { RoomsInHand } from './rooms-in-hand.svelte.ts';
import { type Facts, readFloorLineTyped, readHeightTyped, wallCalled } from './typed-facts.ts';
import { WallPhotos } from './wall-photos.svelte.ts';

export type RevealSide = (typeof REVEAL_SIDES)[number];

/** Of a room, in characters. */
const LONGEST_NAME = 80;

/** The survey sheet of one room: what is typed in it, and the edits that it makes. */
export class SurveySheet {
  readonly #house: HouseState;
  wallId = $state<string | null>(null);
  /** The wall being typed at the foot of the sheet. */
  newWall = $state({ length: '', turn: turnText('inside') });
  newWallTrouble = $state<string | null>(null);
  #newHeight = $state.raw<{ readonly text: string; readonly height: Ends } | null>(null);
  newOpening = $state.raw<NewOpening>(emptyOpening('door'));
  newOpeningTrouble = $state<string | null>(null);
  // By room, so that what is half typed in one waits there while another is looked at.
  readonly #extras = new Map<string, RoomExtras>();
  // By wall, so that photos go on being made small while another wall is looked at.
  readonly #photos = new Map<string, WallPhotos>();
  readonly hand: OpeningHand;
  readonly pastedWalls: PastedWalls;
  readonly roomsInHand: RoomsInHand;

  constructor(house: HouseState) {
    this.#house = house;
    this.hand = new OpeningHand(house, this);
    this.pastedWalls = new PastedWalls(house, () => this.#heightOfNew);
    this.roomsInHand = new RoomsInHand(house);
  }

  get room(): Room | null {
    return this.#house.room;
  }

  get wall(): Wall | null {
    const walls = this.room?.walls ?? [];
    return walls.find(({ id }) => id === this.wallId) ?? walls[0] ?? null;
  }

  /** The height that a new wall gets: as typed, else that of the last wall, else as in the room measured before on the storey. */
  get height(): string {
    const last = this.#lastHeight;
    return this.#newHeight?.text ?? (last ? heightText(last) : '');
  }

  get #heightOfNew(): Ends | null {
    const last = this.#lastHeight;
    return this.#newHeight?.height ?? (last ? ('typed' in last ? last.typed : [last[0].typed, last[1].typed]) : null);
  }

  get #lastHeight(): Wall['height'] | undefined {
    return this.room?.walls.at(-1)?.height ?? this.roomOfHeight?.walls.at(-1)?.height;
  }

  /** The room from which the height of one without walls is taken as long as none is typed; null where there is none. */
  get roomOfHeight(): Room | null {
    const { room } = this;
    if (!room || room.walls.length > 0 || this.#newHeight) return null;
    return this.#house.saved.rooms.findLast(({ id, storey, walls }) => id !== room.id && storey === room.storey && walls.length > 0) ?? null;
  }

  extrasOf(room: string): RoomExtras {
    const extras = this.#extras.get(room) ?? new RoomExtras(this.#house, room);
    this.#extras.set(room, extras);
    return extras;
  }

  photosOf(room: string, wall: string): WallPhotos {
    const key = JSON.stringify([room, wall]);
    const photos = this.#photos.get(key) ?? new WallPhotos(this.#house, room, wall);
    this.#photos.set(key, photos);
    return photos;
  }

  addRoom(): void {
    const id = this.#freeRoomId();
    // Rooms are measured storey by storey.
    const { storey } = this.room ?? {};
    this.#startRoom({ kind: 'add-room', room: { id, name: say`Room ${id.slice('room'.length)}`, ...(storey === undefined ? {} : { storey }) } }, id);
  }

  /** Looks at the wall that was typed, in any case, or goes on looking at the same; gives what was wrong. */
  lookAtWall(typed: string): string | null {
    if (typed.trim() === '') return null;
    const ids = this.room?.walls.map(({ id }) => id) ?? [];
    const found = wallCalled(typed.trim(), ids);
    if (found !== undefined) {
      if (found !== this.wall?.id) this.newOpeningTrouble = null;
      this.wallId = found;
    }
    return found !== undefined ? null : say`‘${typed}’ is no wall of this room; its walls are ${ids.join(', ')}.`;
  }

  /** Whether anything of the next opening is typed but its kind. */
  get isOpeningBegun(): boolean {
    const { from, width, height, like } = this.newOpening;
    return like !== null || [from, width, height].some((typed) => typed.trim() !== '');
  }

  /** A room with the same facts, or with those of its mirror image, under a name of its own; notes and photos are of the other room. */
  copyRoom(room: Room, isMirrored: boolean): void {
    const { saved } = this.#house;
    const id = this.#freeRoomId();
    const names = saved.rooms.map(({ name }) => name);
    const copy = { ...withoutNotes(isMirrored ? mirrorRoom(room, saved.lengths) : room), id, name: nextName(room.name, names) };
    const [written] = encodeHouse({ ...saved, rooms: [copy] }).rooms ?? [];
    this.#startRoom({ kind: 'add-room', room: written } as Edit, id);
  }

  #startRoom(edit: Edit, id: string): void {
    this.#newHeight = null;
    this.wallId = null;
    this.newWallTrouble = null;
    this.#house.editAtOnce(edit);
    this.#house.roomId = id;
  }

  #freeRoomId(): string {
    const taken = new Set(this.#house.saved.rooms.map(({ id }) => id));
    let number = taken.size + 1;
    while (taken.has(`room${number}`)) number += 1;
    return `room${number}`;
  }

  removeRoom(room: Room): Promise<unknown> {
    return this.#house.edit({ kind: 'remove-room', room: room.id });
  }

  changeRoom = (facts: Record<string, string | null>) => this.#make((room) => ({ kind: 'change-room', room: room.id, facts }));

  /** Sets the height of new walls, and of every wall that had the height shown before. */
  async setHeight(typed: string): Promise<string | null> {
    const read = readHeightTyped(typed, this.#house.shown.lengths);
    if ('trouble' in read) return read.trouble;
    const { height } = read;
    const before = this.height;
    const same = this.room?.walls.filter((wall) => heightText(wall.height) === before).map(({ id }) => id) ?? [];
    const trouble = same.length === 0 ? null : await this.#make((room) => ({ kind: 'change-walls', room: room.id, walls: same, facts: { height } }));
    if (trouble === null) this.#newHeight = same.length === 0 ? { text: typed, height } : null;
    return trouble;
  }

  changeWall = (wall: string, facts: Record<string, Ends | null>) => this.#make((room) => ({ kind: 'change-wall', room: room.id, wall, facts }));

  previewWall(wall: string, typed: string | null): void {
    const { room } = this;
    this.#house.preview(room && typed !== null ? { kind: 'change-wall', room: room.id, wall, facts: { length: typed } } : null);
  }

  previewNewWall(typed: string | null): void {
    const { room } = this;
    const height = this.#heightOfNew;
    this.#house.preview(room && typed !== null && height !== null ? { kind: 'add-wall', room: room.id, wall: { id: this.nextWallId(room), length: typed, height } } : null);
  }

  addWall(): boolean {
    const { room } = this;
    const { length, turn } = this.newWall;
    const read = readTurnTyped(turn);
    const height = this.#heightOfNew;
    if (!room) return false;
    this.newWallTrouble =
      length === '' ? say`A wall wants its length.` : height === null ? say`Say how high the walls are, in the field above.` : read === null ? TURN_HELP : null;
    if (this.newWallTrouble || read === null || height === null) return false;
    const id = this.nextWallId(room);
    this.newWallTrouble = sayFaults(this.#house.editAtOnce({ kind: 'add-wall', room: room.id, wall: { id, length, height, turn: read } }));
    if (this.newWallTrouble) return false;
    this.newWall = { length: '', turn: turnText('inside') };
    this.wallId = id;
    return true;
  }

  removeWall = (wall: string) => this.#make((room) => ({ kind: 'remove-wall', room: room.id, wall }));

  async setWallHeight(wall: string, typed: string): Promise<string | null> {
    const read = readHeightTyped(typed, this.#house.shown.lengths);
    return 'trouble' in read ? read.trouble : this.changeWall(wall, { height: read.height });
  }

  async setTurn(wall: string, typed: string): Promise<string | null> {
    const turn = readTurnTyped(typed);
    return turn === null ? TURN_HELP : this.changeWall(wall, { turn });
  }

  async setFloorLine(wall: string, typed: string): Promise<string | null> {
    const read = readFloorLineTyped(typed, this.#house.shown.lengths);
    return 'trouble' in read ? read.trouble : this.changeWall(wall, { base: read.base });
  }

  changeOpening = (opening: string, facts: Facts) =>
    this.#make((room) => ({ kind: 'change-opening', room: room.id, wall: this.wall!.id, opening, facts }));

  setRevealDepth(opening: Opening, typed: string): Promise<string | null> {
    const sides = [...(opening.reveal?.sides ?? USUAL_SIDES)];
    return this.changeOpening(opening.id, { reveal: typed === '' ? null : { depth: typed, sides } });
  }

  async toggleRevealSide({ id, reveal }: Opening, side: RevealSide): Promise<string | null> {
    if (!reveal) return null;
    const sides = REVEAL_SIDES.filter((other) => reveal.sides.includes(other) !== (other === side));
    // Its depth is not thrown away for a side too few.
    if (sides.length === 0) return say`A reveal is covered on one side at least; empty its depth if none is.`;
    return this.changeOpening(id, { reveal: { depth: reveal.depth.typed, sides } });
  }

  removeOpening = (opening: string) => this.#make((room) => ({ kind: 'remove-opening', room: room.id, wall: this.wall!.id, opening }));

  typeOpening(facts: Partial<NewOpening>): void {
    this.newOpening = { ...this.newOpening, ...facts };
  }

  /** Openings of the house that the next one can be like. */
  get alike() {
    return this.room ? alikeOpenings(this.#house.saved, this.room.id) : [];
  }

  /** A kind, or an opening that the next one is like in all but its place. */
  chooseNewKind(chosen: string): void {
    const alike = this.alike.find(({ key }) => key === chosen);
    const kind = chosen as OpeningKind;
    const { from, sill } = this.newOpening;
    if (alike) this.newOpening = openingLike(alike, from);
    else this.typeOpening({ kind, like: null, reveal: null, sill: sill === '' || sill === '0 in' ? emptyOpening(kind).sill : sill });
  }

  addOpening(): boolean {
    const { room, wall } = this;
    const { kind, from, width, height, sill, reveal } = this.newOpening;
    if (!room || !wall) return false;
    const missing = [from === '' && say`how far it is from the left end`, width === '' && say`its width`, height === '' && say`its height`, sill === '' && say`the height of its sill`].find(Boolean);
    this.newOpeningTrouble = missing ? say`The ${OPENING_WORDS[kind]} wants ${missing}.` : null;
    if (this.newOpeningTrouble) return false;
    const id = freeId(kind, wall.openings.map((opening) => opening.id));
    const opening = { id, kind, from, width, height, sill, ...this.entranceOf(kind), ...(reveal ? { reveal } : {}) };
    this.newOpeningTrouble = sayFaults(this.#house.editAtOnce({ kind: 'add-opening', room: room.id, wall: wall.id, opening } as Edit));
    if (this.newOpeningTrouble) return false;
    this.newOpening = emptyOpening('door');
    return true;
  }

  /** The first door of a room is taken for its entrance. */
  entranceOf(kind: OpeningKind): { readonly entrance?: true } {
    const isFirstDoor = kind === 'door' && !this.room?.walls.some(({ openings }) => openings.some(({ entrance }) => entrance));
    return isFirstDoor ? { entrance: true } : {};
  }

  nextWallId(room: Room): string {
    return nextWallId(room.walls.map(({ id }) => id));
  }

  async #make(edit: (room: Room) => Edit): Promise<string | null> {
    const { room } = this;
    return room ? sayFaults(await this.#house.edit(edit(room))) : null;
  }
}

/** 'Bed 1' is followed by 'Bed 2', 'Hall' too by 'Hall 2', the first that no room has. */
function nextName(name: string, taken: readonly string[]): string {
  const [, stem, number] = /^(.*?)(?:\s+(\d{1,4}))?$/u.exec(name)!;
  for (let next = Number(number ?? 1) + 1; ; next += 1) {
    const end = ` ${next}`;
    const found = `${stem!.slice(0, LONGEST_NAME - end.length)}${end}`;
    if (!taken.includes(found)) return found;
  }
}

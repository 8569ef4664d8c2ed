import { type Fault, idFor } from '../../../shared-core/base/index.ts';
import { type Furniture, nameCovering, type Rail, type Room } from '../../../shared-core/house/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import { type Facts, readWallsTyped, wallsText, writeFacts } from './typed-facts.ts';

export type NextRail = Readonly<Record<'name' | 'at' | 'width' | 'walls', string>>;
export type NextPiece = Readonly<Record<'name' | 'wall' | 'from' | 'width' | 'height', string>>;

/** What a thing can't be added without, in the order in which it is typed. */
type Wanted<Thing> = readonly (readonly [key: keyof Thing & string, words: string])[];

const NO_RAIL: NextRail = { name: '', at: '', width: '', walls: wallsText(undefined) };
const NO_PIECE: NextPiece = { name: '', wall: '', from: '', width: '', height: '' };

const RAIL_WANTS: Wanted<NextRail> = [['at', say`its height above the floor`], ['width', say`how high it is itself`]];
const PIECE_WANTS: Wanted<NextPiece> = [['from', say`how far it is from the left end`], ['width', say`its width`], ['height', say`its height`]];

/** The rails and the furniture of one room, and what is typed for the next of each. */
export class RoomExtras {
  readonly #house: HouseState;
  readonly #roomId: string;
  nextRail = $state.raw(NO_RAIL);
  nextPiece = $state.raw(NO_PIECE);
  railTrouble = $state<string | null>(null);
  pieceTrouble = $state<string | null>(null);

  constructor(house: HouseState, roomId: string) {
    this.#house = house;
    this.#roomId = roomId;
  }

  get #room(): Room | null {
    return this.#house.saved.rooms.find(({ id }) => id === this.#roomId) ?? null;
  }

  typeRail(facts: Partial<NextRail>): void {
    this.nextRail = { ...this.nextRail, ...facts };
  }

  typePiece(facts: Partial<NextPiece>): void {
    this.nextPiece = { ...this.nextPiece, ...facts };
  }

  get isRailBegun(): boolean {
    return isBegun(this.nextRail, NO_RAIL);
  }

  get isPieceBegun(): boolean {
    return isBegun({ ...this.nextPiece, wall: '' }, NO_PIECE);
  }

  /** Adds the rail that was typed; gives the fact to type next: the first of the next one, or what this one wants. */
  addRail(): keyof NextRail {
    const room = this.#room;
    const { name, at, width, walls } = this.nextRail;
    if (!room) return 'name';
    const missing = RAIL_WANTS.find(([key]) => this.nextRail[key] === '');
    const read = readWallsTyped(walls, room.walls.map(({ id }) => id));
    this.railTrouble = missing ? say`The rail wants ${missing[1]}.` : 'trouble' in read ? read.trouble : null;
    if (missing) return missing[0];
    if ('trouble' in read) return 'walls';
    const id = idFor(name, 'rail', room.rails.map((rail) => rail.id));
    const rail = { id, ...named(name), at, width, ...(read.walls ? { walls: read.walls } : {}) };
    this.railTrouble = sayRailFaults(this.#house.editAtOnce({ kind: 'change-room', room: room.id, facts: { rails: [...room.rails.map(writeFacts), rail] } }));
    if (this.railTrouble) return 'at';
    this.nextRail = NO_RAIL;
    return 'name';
  }

  addPiece(wall: string): keyof NextPiece {
    const room = this.#room;
    const { name, from, width, height } = this.nextPiece;
    if (!room) return 'name';
    const missing = PIECE_WANTS.find(([key]) => this.nextPiece[key] === '');
    this.pieceTrouble = missing ? say`The piece wants ${missing[1]}.` : null;
    if (missing) return missing[0];
    const id = idFor(name, 'piece', room.furniture.map((piece) => piece.id));
    const piece = { id, ...named(name), wall, from, width, height };
    this.pieceTrouble = sayFaults(this.#house.editAtOnce({ kind: 'change-room', room: room.id, facts: { furniture: [...room.furniture.map(writeFacts), piece] } }));
    if (this.pieceTrouble) return 'from';
    this.nextPiece = NO_PIECE;
    return 'name';
  }

  changeRail = (id: string, facts: Facts) => this.#setRails((rails) => rails.map((rail) => (rail.id === id ? withFacts(rail, facts) : writeFacts(rail))));

  setRailWalls = async (id: string, typed: string): Promise<string | null> => {
    const read = readWallsTyped(typed, this.#room?.walls.map((wall) => wall.id) ?? []);
    return 'trouble' in read ? read.trouble : this.changeRail(id, { walls: read.walls });
  };

  async removeRail({ id }: Rail): Promise<void> {
    const band = this.#room?.bands.find(({ from, to }) => [from, to].some((edge) => typeof edge === 'object' && 'rail' in edge && edge.rail === id));
    this.railTrouble = band
      ? `${say`${nameCovering(this.#house.saved, band.covering)} begins or ends at this rail; give it another edge in Coverings first.`} ${say`Nothing was changed.`}`
      : await this.#setRails((rails) => rails.filter((rail) => rail.id !== id).map(writeFacts));
  }

  changePiece = (id: string, facts: Facts) => this.#setFurniture((pieces) => pieces.map((piece) => (piece.id === id ? withFacts(piece, facts) : writeFacts(piece))));

  async removePiece({ id }: Furniture): Promise<void> {
    this.pieceTrouble = await this.#setFurniture((pieces) => pieces.filter((piece) => piece.id !== id).map(writeFacts));
  }

  async #setRails(change: (rails: readonly Rail[]) => Facts[]): Promise<string | null> {
    const room = this.#room;
    return room && sayRailFaults(await this.#house.edit({ kind: 'change-room', room: room.id, facts: { rails: change(room.rails) } }));
  }

  async #setFurniture(change: (pieces: readonly Furniture[]) => Facts[]): Promise<string | null> {
    const room = this.#room;
    return room && sayFaults(await this.#house.edit({ kind: 'change-room', room: room.id, facts: { furniture: change(room.furniture) } }));
  }
}

/** How a rail is told from the others of its room, and where it stands as its field says it. */
export const railName = (rail: Rail): string => rail.name ?? rail.id;
export const railWalls = (rail: Rail): string => wallsText(rail.walls);
export const pieceName = (piece: Furniture): string => piece.name ?? piece.id;

const RAIL_WORDS: Readonly<Record<string, string>> = { at: say`height above the floor`, width: say`its own height` };

/** A rail's width in the document is its height to who looks at a wall, and so the field says. */
function sayRailFaults(faults: readonly Fault[]): string | null {
  return sayFaults(
    faults.map((fault) => {
      const [, key = ''] = /\.rails\[\d+\]\.(\w+)$/.exec(fault.path) ?? [];
      const words = RAIL_WORDS[key];
      return words === undefined ? fault : { path: '', message: `${words} ${fault.message}` };
    }),
  );
}

function named(name: string): { name?: string } {
  return name.trim() === '' ? {} : { name: name.trim() };
}

function isBegun<Thing extends object>(typed: Thing, empty: Thing): boolean {
  return JSON.stringify(typed) !== JSON.stringify(empty);
}

/** Within a list nothing takes away what is null, so that it is left out here. */
function withFacts(thing: object, facts: Facts): Facts {
  return Object.fromEntries(Object.entries({ ...writeFacts(thing), ...facts }).filter(([, value]) => value !== null));
}

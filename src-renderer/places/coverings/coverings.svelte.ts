import { freeId, idFor } from '../../../shared-core/base/index.ts';
import { type Band, type Border, type Covering, type Edit, encodeHouse, endsOf, type Room } from '../../../shared-core/house/index.ts';
import { type LengthStyle, lengthOf, parseMeasure, printLength, showLength } from '../../../shared-core/units/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import { readSpare, SPARE_TAKES } from '../../parts/read-spare.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import { NEW_WORDS } from './say-covering.ts';
import { readTins, type TypedTin } from './tins.ts';
import { readBatches, type TypedBatch } from './batches.ts';

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };
type Facts = Record<string, Json>;

export type NewKind = Covering['kind'];

interface NewCovering {
  readonly kind: NewKind;
  readonly patternNumber: string;
  readonly name: string;
  readonly width: string;
  /** Of a mural, the height of its panels. */
  readonly rollLength: string;
  readonly repeat: string;
  /** Of a mural alone. */
  readonly panels: string;
  /** Of a paint alone. */
  readonly spreadingRate: string;
}

/** Where a band begins or ends that goes as far as its walls do. */
const EDGE_WORDS = { floor: say`floor`, ceiling: say`ceiling` };

/** The coverings of the house, the one that is looked at, and the edits its sheet makes. */
export class CoveringsSheet {
  readonly #house: HouseState;
  chosenId = $state<string | null>(null);
  /** The covering being typed; null while one that exists is looked at. */
  draft = $state<NewCovering | null>(null);
  draftTrouble = $state<string | null>(null);
  ceilingTrouble = $state<string | null>(null);
  bandTrouble = $state<Readonly<Record<string, string | null>>>({});

  constructor(house: HouseState) {
    this.#house = house;
  }

  get chosen(): Covering | null {
    const { coverings } = this.#house.saved;
    return coverings.find(({ id }) => id === this.chosenId) ?? coverings[0] ?? null;
  }

  begin(kind: NewCovering['kind']): void {
    this.draft = { kind, patternNumber: '', name: '', width: '', rollLength: '', repeat: '', panels: '', spreadingRate: '' };
    this.draftTrouble = null;
  }

  async add(): Promise<boolean> {
    const { draft } = this;
    if (!draft) return false;
    const { kind, patternNumber, name, width, rollLength, repeat, panels, spreadingRate } = draft;
    const lengthName = { wallcovering: say`the length of a roll`, border: say`the length of a spool`, lining: say`the length of a roll`, mural: say`the height of its panels`, paint: '' }[kind];
    const missing = [
      kind === 'mural' && !/^\d+$/.test(panels.trim()) && say`the number of its panels, a whole one`,
      kind === 'paint' && name === '' && say`the name of the paint`,
      kind !== 'paint' && width === '' && (kind === 'mural' ? say`the width of a panel` : say`its width`),
      kind !== 'paint' && rollLength === '' && lengthName,
    ].find(Boolean);
    this.draftTrouble = missing ? NEW_WORDS[kind].lacks(missing) : null;
    if (missing) return false;
    const id = idFor(name || patternNumber, kind, this.#house.saved.coverings.map((covering) => covering.id));
    const named = { id, ...(patternNumber ? { patternNumber } : {}), ...(name ? { name } : {}) };
    const covering =
      kind === 'paint'
        ? { ...named, kind, ...(spreadingRate ? { spreadingRate } : {}) }
        : kind === 'mural'
          ? { ...named, kind, panels: Number(panels), panelWidth: width, panelHeight: rollLength }
          : { ...named, kind, width, rollLength, ...(repeat && kind !== 'lining' ? { repeat } : {}) };
    this.draftTrouble = sayFaults(await this.#house.edit({ kind: 'add-covering', covering }));
    if (this.draftTrouble) return false;
    this.draft = null;
    this.chosenId = id;
    return true;
  }

  change = async (facts: Facts): Promise<string | null> => {
    const { chosen } = this;
    return chosen && sayFaults(await this.#house.edit({ kind: 'change-covering', covering: chosen.id, facts }));
  };

  previewLength = (key: string) => (typed: string | null): void => {
    const { chosen } = this;
    this.#house.preview(chosen && typed !== null ? { kind: 'change-covering', covering: chosen.id, facts: { [key]: typed } } : null);
  };

  changeText = (key: string) => (typed: string) => this.change({ [key]: typed.trim() === '' ? null : typed.trim() });

  changeNumber = (key: string) => async (typed: string) => {
    if (typed.trim() === '') return this.change({ [key]: null });
    return /^\d+$/.test(typed.trim()) ? this.change({ [key]: Number(typed) }) : say`This takes a whole number.`;
  };

  changeSpare = async (typed: string) => {
    if (typed.trim() === '') return this.change({ spareRolls: null });
    const rule = readSpare(typed);
    return rule === null ? SPARE_TAKES : this.change({ spareRolls: rule });
  };

  /** No repeat means that strips need not match, and none without one can. */
  changeRepeat = async (typed: string): Promise<string | null> => {
    const parsed = parseMeasure(typed);
    const isNone = parsed.ok && parsed.value.length === 0;
    return this.change({ repeat: typed, ...(isNone && this.chosen?.kind === 'wallcovering' ? { match: 'free', dropBy: null } : {}) });
  };

  /** Goods by the length come in pieces of their supplier's; a roll's length is what one has in common with the other. */
  changeSale = (sale: 'rolls' | 'length') => {
    const { chosen } = this;
    if (chosen?.kind !== 'wallcovering') return;
    if (sale === 'rolls') return this.change({ soldBy: null, rollLength: chosen.soldBy?.pieceLength.typed ?? null });
    const unit = this.#house.shown.lengths === 'metric' ? '1 m' : '1 yd';
    return this.change({ rollLength: null, soldIn: null, soldBy: { length: unit, pieceLength: chosen.rollLength?.typed ?? unit } });
  };

  changeSoldBy = (key: 'length' | 'pieceLength' | 'minimum' | 'price') => async (typed: string): Promise<string | null> => {
    const { chosen } = this;
    if (chosen?.kind !== 'wallcovering' || !chosen.soldBy) return null;
    const { length, pieceLength, minimum, price } = chosen.soldBy;
    const facts = { length: length.typed, pieceLength: pieceLength.typed, minimum: minimum?.typed ?? '', price: price ?? '', [key]: typed.trim() };
    return this.change({ soldBy: Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== '')) });
  };

  changeMatch = (match: 'free' | 'straight' | 'drop') => this.change({ match, dropBy: match === 'drop' ? '1/2' : null });

  changeUnit(index: number, unit: TypedUnit): Promise<string | null> {
    const units = saleUnits(this.chosen).map((other, place) => (place === index ? unit : other));
    return this.#setUnits(units);
  }

  addUnit(): Promise<string | null> {
    return this.#setUnits([...saleUnits(this.chosen), { rolls: '1', price: '', atLeast: '', gtin: '' }]);
  }

  removeUnit(index: number): Promise<string | null> {
    return this.#setUnits(saleUnits(this.chosen).filter((_, place) => place !== index));
  }

  async #setUnits(units: readonly TypedUnit[]): Promise<string | null> {
    if (units.some(({ rolls }) => !/^\d+$/.test(rolls.trim()))) return say`A sale unit takes a whole number of rolls.`;
    if (units.some(({ atLeast }) => !/^\d*$/.test(atLeast.trim()))) return say`The least number of a sale unit is a whole number.`;
    const soldIn = units.map(({ rolls, price, atLeast, gtin }) => ({
      rolls: Number(rolls),
      ...(price.trim() === '' ? {} : { price: price.trim() }),
      ...(atLeast.trim() === '' ? {} : { atLeast: Number(atLeast) }),
      ...(gtin.trim() === '' ? {} : { gtin: gtin.replace(/[\s-]/g, '') }),
    }));
    return this.change({ soldIn: soldIn.length === 0 ? null : soldIn });
  }

  setTins = (typed: readonly TypedTin[]): Promise<string | null> => {
    const tins = readTins(typed);
    return tins ? this.change({ soldIn: tins.length === 0 ? null : tins.map((tin) => ({ ...tin })) }) : Promise.resolve(say`A tin takes its litres, such as 2.5.`);
  };

  setBatches = (typed: readonly TypedBatch[]): Promise<string | null> => {
    const batches = readBatches(typed);
    return batches ? this.change({ batches: batches.length === 0 ? null : batches.map((batch) => ({ ...batch })) }) : Promise.resolve(say`A batch takes its litres, such as 2.5, or nothing.`);
  };

  /** Paints the woodwork of a room with the chosen paint in place of what painted it, or no longer. */
  async toggleWoodwork(room: Room): Promise<void> {
    const { chosen } = this;
    if (!chosen) return;
    // As it is written out: what else is known of the woodwork stays.
    const [written] = encodeHouse({ ...this.#house.saved, rooms: [room] }).rooms ?? [];
    const woodwork = room.woodwork?.covering === chosen.id ? null : { ...written?.woodwork, covering: chosen.id };
    this.ceilingTrouble = await this.#edit({ kind: 'change-room', room: room.id, facts: { woodwork } } as Edit);
  }

  /** The picture of one repeat of the chosen covering, as a data URL. */
  get picture(): string | null {
    return this.#house.saved.pictures.find(({ covering }) => covering === this.chosen?.id)?.image ?? null;
  }

  setPicture = (image: string | null): Promise<string | null> => {
    const { chosen } = this;
    return this.#edit(chosen && { kind: 'set-picture', covering: chosen.id, image });
  };

  remove(): Promise<string | null> {
    const { chosen } = this;
    return this.#edit(chosen && { kind: 'remove-covering', covering: chosen.id });
  }

  /** The bands of the chosen covering, room by room. */
  get hung(): readonly { readonly room: Room; readonly band: Band }[] {
    const { chosen } = this;
    return this.#house.saved.rooms.flatMap((room) => room.bands.filter(({ covering }) => covering === chosen?.id).map((band) => ({ room, band })));
  }

  get walledRooms(): readonly Room[] {
    return this.#house.saved.rooms.filter((room) => room.walls.length > 0);
  }

  /** Rooms with walls in which the chosen covering does not hang yet. */
  get bareRooms(): readonly Room[] {
    const hung = new Set(this.hung.map(({ room }) => room.id));
    return this.walledRooms.filter((room) => !hung.has(room.id));
  }

  /** Hangs the chosen covering overhead in place of what hung there, or takes it down. */
  async toggleCeiling(room: Room): Promise<void> {
    const { chosen } = this;
    if (!chosen) return;
    const ceiling = room.ceiling?.covering === chosen.id ? null : { covering: chosen.id, ...(room.ceiling?.along === undefined ? {} : { along: room.ceiling.along }) };
    this.ceilingTrouble = await this.#edit({ kind: 'change-room', room: room.id, facts: { ceiling } });
  }

  async hang(room: Room): Promise<void> {
    const { chosen } = this;
    if (!chosen) return;
    // A mural hangs on one wall, the one that is looked at most.
    const walls = chosen.kind === 'mural' ? [room.focalWall ?? room.walls[0]!.id] : room.walls.map((wall) => wall.id);
    const id = freeId({ border: 'border', lining: 'lining', wallcovering: 'main', mural: 'mural', paint: 'paint' }[chosen.kind], room.bands.map((band) => band.id));
    const band = { id, covering: chosen.id, walls, ...(chosen.kind === 'border' ? underCeiling(room, chosen, this.#house.shown.lengths) : {}) };
    this.bandTrouble = { ...this.bandTrouble, [room.id]: await this.#edit({ kind: 'add-band', room: room.id, band }) };
  }

  takeDown = (room: string, band: string) => this.#edit({ kind: 'remove-band', room, band });

  changeBand = (room: string, band: string, facts: Facts) => this.#edit({ kind: 'change-band', room, band, facts });

  async toggleWall(room: Room, band: Band, wall: string): Promise<void> {
    const walls = room.walls.map(({ id }) => id).filter((id) => (id === wall ? !band.walls.includes(id) : band.walls.includes(id)));
    const facts: Facts = { walls, ...(band.layout && !layoutStands(band.layout, walls) ? { layout: null } : {}) };
    const trouble = await (walls.length === 0 ? this.takeDown(room.id, band.id) : this.changeBand(room.id, band.id, facts));
    this.bandTrouble = { ...this.bandTrouble, [room.id]: trouble };
  }

  sayEdge = (room: Room, edge: Band['from' | 'to']): string => {
    if (typeof edge === 'string') return EDGE_WORDS[edge];
    if ('rail' in edge) return nameRail(room, edge.rail);
    // What we reckoned ourselves is exact in millimetres and read in the house's own unit.
    return / mm$/.test(edge.typed) && this.#house.shown.lengths === 'imperial' ? showLength(edge.length, 'imperial') : edge.typed;
  };

  /** What a band may begin or end at that has a name: the end of the walls, or a rail. */
  edgesOf = (room: Room, key: 'from' | 'to'): readonly string[] => [EDGE_WORDS[key === 'from' ? 'floor' : 'ceiling'], ...room.rails.map(({ id }) => nameRail(room, id))];

  setEdge = (room: Room, band: string, key: 'from' | 'to') => async (typed: string) => {
    const end = key === 'from' ? 'floor' : 'ceiling';
    const plain = typed.trim().toLowerCase();
    if ([end, EDGE_WORDS[end].toLowerCase()].some((word) => word.startsWith(plain))) return this.changeBand(room.id, band, { [key]: end });
    const rail = room.rails.find(({ id }) => plain === id.toLowerCase() || plain === nameRail(room, id).toLowerCase());
    if (rail) return this.changeBand(room.id, band, { [key]: { rail: rail.id } });
    const parsed = parseMeasure(typed, this.#house.shown.lengths);
    if (!parsed.ok) return say`This takes ${this.edgesOf(room, key).map((name) => say`‘${name}’`).join(', ')} or a height above the floor. ${parsed.faults.map(({ message }) => message).join(' ')}.`;
    return this.changeBand(room.id, band, { [key]: parsed.value.typed });
  };

  async #edit(edit: Edit | null): Promise<string | null> {
    return edit && sayFaults(await this.#house.edit(edit));
  }
}

/** A sale unit as its fields show it. */
export interface TypedUnit {
  readonly rolls: string;
  readonly price: string;
  /** How many at least when any is bought; empty for one. */
  readonly atLeast: string;
  readonly gtin: string;
}

/** The covering's sale units as the sheet's fields show them. */
export function saleUnits(covering: Covering | null): readonly TypedUnit[] {
  if (!covering || !isEditable(covering)) return [];
  return (covering.soldIn ?? []).map(({ rolls, price, atLeast, gtin }) => ({ rolls: String(rolls), price: price ?? '', atLeast: atLeast === 1 ? '' : String(atLeast), gtin: gtin ?? '' }));
}

export function isEditable(covering: Covering): covering is Exclude<Covering, { kind: 'paint' }> {
  return covering.kind !== 'paint';
}

function nameRail(room: Room, id: string): string {
  return room.rails.find((rail) => rail.id === id)?.name ?? id;
}

/** A border's usual place: its upper edge at the ceiling of the lowest wall. */
function underCeiling(room: Room, border: Border, style: LengthStyle): { readonly from: string; readonly to: string } {
  const lowest = Math.min(...room.walls.map((wall) => Math.min(endsOf(wall.height).left, endsOf(wall.height).right)));
  const print = (height: number) => printLength(lengthOf(Math.max(0, height)), style);
  return { from: print(lowest - border.width.length), to: print(lowest) };
}

function layoutStands(layout: NonNullable<Band['layout']>, walls: readonly string[]): boolean {
  return walls.includes(layout.start.wall) && (layout.kill === 'start' || walls.includes(layout.kill.wall));
}

import { say, sayDay } from '../../shared-core/words/index.ts';
import { squeeze, wordsTyped } from '../../shared-core/base/index.ts';
import { type Band, type Covering, type House, nameCovering, nameSupplier, OPENING_WORDS, type Room, type Wall } from '../../shared-core/house/index.ts';
import { CEILING, type HousePlan, nameRoom, sayUnits } from '../../shared-core/plan/index.ts';
import type { Place } from './places.ts';

/** Something in the house that can be gone to. */
export interface Found {
  /** Its own among all that can be found. */
  readonly key: string;
  readonly name: string;
  /** What it is, and what sets it apart from others of that name. */
  readonly what: string;
  readonly place: Place;
  readonly room?: string;
  /** What its row or button bears as `data-find`; null of a place as a whole. */
  readonly mark: string | null;
}

/** All that can be found in a house, squeezed once so that every keystroke only compares. */
export type Findable = readonly Entry[];

interface Entry {
  readonly found: Found;
  readonly name: string;
  /** Where in the squeezed name a word of it begins. */
  readonly beginnings: readonly number[];
  readonly said: string;
}

/** Of the rooms that a line of the order is for. */
const ROOMS_NAMED = 3;

/** What others call the same; the app uses the first word and finds it by these too, in another language by the English ones as well. */
const PLACE_WORDS: Readonly<Partial<Record<Place, string>>> = {
  'house': say`overview glance progress open questions cost`,
  'survey': say`rooms walls measure tape`,
  'coverings': say`patterns wallcovering wallpaper border lining mural paint sample book`,
  'set-out': say`setting out strips drops lengths seams kill point plumb line`,
  'order': say`buy rolls price supplier runs batches lots`,
  'deliveries': say`packages parcels received came leftovers`,
  'paperwork': say`papers documents print pdf quote estimate job sheet cut list shopping record mail`,
};
const RUN_WORDS = say`run batch lot dye shade`;
const HUNG_WORDS = say`strips drops lengths set out hung`;
const KINDS: Readonly<Record<Covering['kind'], string>> = {
  wallcovering: say`wallcovering`,
  border: say`border`,
  lining: say`lining`,
  mural: say`mural`,
  paint: say`paint`,
};
const KIND_WORDS: Readonly<Record<Covering['kind'], string>> = {
  wallcovering: say`wallcovering wallpaper paper pattern`,
  border: say`border frieze pattern`,
  lining: say`lining paper liner`,
  mural: say`mural picture panels pattern`,
  paint: say`paint colour color emulsion`,
};

/**
 * All that can be found in a house, in the order in which equals are shown.
 *
 * `plan` is null as long as nothing is planned: what is on the order comes with it. `places` are the places as the
 * window calls them.
 */
export function findableIn(house: House, plan: HousePlan | null, places: Readonly<Partial<Record<Place, string>>>): Findable {
  return [
    ...Object.entries(places).map(([place, name]) => entry({ key: markOf('place', place), name, what: say`place`, place: place as Place, mark: null }, [PLACE_WORDS[place as Place] ?? ''])),
    ...house.rooms.map((room) => entry(roomFound(room), [room.storey ?? '', 'room'])),
    ...storeys(house),
    ...house.coverings.map((covering) => coveringEntry(house, covering)),
    ...suppliers(house, plan),
    ...runs(house, plan),
    ...orders(house),
    ...packages(house),
    ...leftovers(house),
    ...house.rooms.flatMap((room) => hangings(house, room)),
    ...house.rooms.flatMap((room) => room.walls.map((wall) => wallEntry(room, wall))),
  ];
}

/**
 * What every word typed is said of: what is called so first, then what begins so, then the rest; `most` of them at most.
 *
 * `left` is how many more there are.
 */
export function findIn(findable: Findable, typed: string, most: number): { readonly found: readonly Found[]; readonly left: number } {
  const words = wordsTyped(typed);
  if (words.length === 0) return { found: [], left: 0 };
  const whole = words.join('');
  const ranks: Found[][] = [[], [], [], []];
  for (const { found, name, beginnings, said } of findable) {
    if (!words.every((word) => said.includes(word))) continue;
    const rank = name === whole ? 0 : name.startsWith(whole) ? 1 : words.every((word) => beginnings.some((from) => name.startsWith(word, from))) ? 2 : 3;
    ranks[rank]!.push(found);
  }
  const all = ranks.flat();
  return { found: all.slice(0, most), left: Math.max(0, all.length - most) };
}

function entry(found: Found, alsoSaid: readonly string[]): Entry {
  const words = found.name.split(/[\s,]+/).map(squeeze);
  const beginnings = words.map((_, index) => words.slice(0, index).join('').length);
  return { found, name: words.join(''), beginnings, said: [squeeze(found.name), squeeze(found.what), ...alsoSaid.map(squeeze)].join(' ') };
}

/** As `data-find` has it: of a room 'room bed1'. */
function markOf(...parts: readonly (string | number | boolean)[]): string {
  return parts.join(' ');
}

function roomFound({ id, name, storey }: Room): Found {
  return { key: markOf('room', id), name, what: [say`room`, ...(storey === undefined ? [] : [storey])].join(', '), place: 'survey', room: id, mark: markOf('room', id) };
}

function storeys(house: House): readonly Entry[] {
  const byStorey = Map.groupBy(house.rooms.filter(({ storey }) => storey !== undefined), ({ storey }) => storey!);
  return [...byStorey].map(([name, rooms]) => {
    const what = rooms.length === 1 ? say`storey of ${rooms.length} room` : say`storey of ${rooms.length} rooms`;
    return entry({ ...roomFound(rooms[0]!), key: markOf('storey', name), name, what }, [say`floor level`]);
  });
}

function coveringEntry(house: House, { id, kind, name, patternNumber, supplier, note }: Covering): Entry {
  const called = nameCovering(house, id);
  const what = [KINDS[kind], patternNumber && name, supplier && say`from ${nameSupplier(house, supplier)}`].filter(Boolean).join(', ');
  return entry({ key: markOf('covering', id), name: called, what, place: 'coverings', mark: markOf('covering', id) }, [KIND_WORDS[kind], supplier ?? '', note ?? '']);
}

/** A supplier of whom something is to be bought stands on the order, the others with their coverings. */
function suppliers(house: House, plan: HousePlan | null): readonly Entry[] {
  const named = new Set([...house.coverings.flatMap(({ supplier }) => supplier ?? []), ...house.orders.flatMap(({ supplier }) => supplier ?? [])]);
  const supplierOf = (covering: string) => house.coverings.find(({ id }) => id === covering)?.supplier;
  return [...named].map((id) => {
    const isOnOrder = plan?.order.some(({ covering }) => supplierOf(covering) === id) ?? false;
    const first = house.coverings.find(({ supplier }) => supplier === id);
    const order = house.orders.findLast(({ supplier }) => supplier === id);
    const where = isOnOrder
      ? ({ place: 'order', mark: markOf('supplier', id) } as const)
      : first ? ({ place: 'coverings', mark: markOf('covering', first.id) } as const) : ({ place: 'order', mark: markOf('placed', order!.id) } as const);
    return entry({ key: markOf('supplier', id), name: nameSupplier(house, id), what: say`supplier`, ...where }, [id, house.suppliers.find((one) => one.id === id)?.note ?? '', say`shop merchant`]);
  });
}

function runs(house: House, plan: HousePlan | null): readonly Entry[] {
  const run = (key: string, covering: string, number: string | null, what: string): Entry =>
    entry({ key, name: number === null ? say`${nameCovering(house, covering)}, run not known` : say`Run ${number} of ${nameCovering(house, covering)}`, what, place: 'order', mark: key }, [RUN_WORDS, ...sayCovering(house, covering)]);
  const planned = (plan?.order ?? []).map(({ covering, run: number, toBuy, shortfall, rooms }) =>
    run(markOf('line', covering, number ?? '', shortfall > 0), covering, number, say`on the order: ${sayUnits(house, covering, toBuy)} to buy for ${sayRooms(house, rooms)}`),
  );
  const sayListed = (list: 'stock' | 'offers', units: string) => (list === 'stock' ? say`${units} in hand` : say`${units} on offer`);
  const listed = (['stock', 'offers'] as const).flatMap((list) =>
    house[list].map((one, index) => run(markOf(list, index), one.covering, one.run, sayListed(list, sayUnits(house, one.covering, one.rolls)))),
  );
  const placed = house.orders.flatMap(({ id, lines }) =>
    lines.flatMap((line, index) => (line.run === undefined ? [] : [run(markOf('placed', id, index), line.covering, line.run, say`${sayUnits(house, line.covering, line.rolls)} in order ${id}`)])),
  );
  return [...planned, ...listed, ...placed];
}

function orders(house: House): readonly Entry[] {
  return house.orders.map(({ id, placed, supplier, note, lines }) => {
    const what = supplier === undefined ? say`placed ${sayDay(placed)}` : say`placed ${sayDay(placed)} with ${nameSupplier(house, supplier)}`;
    return entry({ key: markOf('order', id), name: say`Order ${id}`, what, place: 'order', mark: markOf('placed', id) }, ['order', placed, note ?? '', ...lines.map(({ covering, patternNumber }) => patternNumber ?? nameCovering(house, covering))]);
  });
}

function packages(house: House): readonly Entry[] {
  return house.deliveries.map(({ covering, patternNumber, run, rolls, received }, index) => {
    const units = sayUnits(house, covering, rolls);
    const what = received === undefined ? say`package ${index + 1}, ${units}` : say`package ${index + 1}, ${units} come ${sayDay(received)}`;
    return entry({ key: markOf('package', index), name: say`Run ${run} of ${patternNumber}`, what, place: 'deliveries', mark: markOf('package', index) }, [say`label parcel delivery`, received ?? '', RUN_WORDS, ...sayCovering(house, covering)]);
  });
}

function leftovers(house: House): readonly Entry[] {
  return house.leftovers.map(({ covering, run, length, count, place }, index) => {
    const called = nameCovering(house, covering);
    const name = run === undefined ? called : say`Run ${run} of ${called}`;
    const what = [say`leftover, ${count} × ${length.typed}`, ...(place === undefined ? [] : [place])].join(', ');
    return entry({ key: markOf('leftover', index), name, what, place: 'deliveries', mark: markOf('leftover', index) }, [say`kept for repairs remnant offcut`, RUN_WORDS, ...sayCovering(house, covering)]);
  });
}

function hangings(house: House, room: Room): readonly Entry[] {
  const hung = (band: string, covering: string, what: string) =>
    entry({ key: markOf('hung', room.id, band), name: say`${nameCovering(house, covering)} in ${room.name}`, what, place: 'set-out', room: room.id, mark: markOf('band', band) }, [HUNG_WORDS, room.storey ?? '', ...sayCovering(house, covering)]);
  const onWalls = ({ walls }: Band) => (walls.length === 1 ? say`hung on wall ${walls[0]!}` : say`hung on walls ${walls.join(', ')}`);
  return [...room.bands.map((band) => hung(band.id, band.covering, onWalls(band))), ...(room.ceiling ? [hung(CEILING, room.ceiling.covering, say`hung on the ceiling`)] : [])];
}

function wallEntry(room: Room, { id, length, openings }: Wall): Entry {
  const has = openings.map(({ kind }) => OPENING_WORDS[kind]);
  const what = [say`wall of ${length.typed}`, ...has].join(', ');
  return entry({ key: markOf('wall', room.id, id), name: say`Wall ${id} of ${room.name}`, what, place: 'survey', room: room.id, mark: markOf('wall', id) }, [room.storey ?? '', 'wall', ...openings.map(({ kind }) => kind)]);
}

function sayRooms(house: House, rooms: readonly string[]): string {
  const names = rooms.slice(0, ROOMS_NAMED).map((room) => nameRoom(house, room)).join(', ');
  return rooms.length > ROOMS_NAMED ? say`${names} and ${rooms.length - ROOMS_NAMED} more` : names;
}

function sayCovering(house: House, id: string): readonly string[] {
  const covering = house.coverings.find((one) => one.id === id);
  return covering ? [covering.name ?? '', covering.supplier ?? ''] : [];
}

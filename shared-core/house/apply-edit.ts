import { z } from 'zod';
import { bad, fault, good, type Outcome } from '../base/index.ts';
import { covering as coveringSchema } from './covering.ts';
import { decodeFacts } from './document.ts';
import { type DecodedEdit, type Edit, editSchema, LIST_EDITS } from './edit.ts';
import { houseFacts, houseLists } from './house.ts';
import { findFaults } from './invariants.ts';
import { photo as photoSchema } from './photo.ts';
import { sayKnown } from './report.ts';
import { band as bandSchema, opening as openingSchema, room as roomSchema, wall as wallSchema } from './room.ts';
import { facts } from './accepted.ts';
import type { House, PlacedOrder, Room, Surface, Wall } from './types.ts';
import { say } from '../words/index.ts';

interface Identified {
  readonly id: string;
}

const houseFactsSchema = facts(say`the facts of the house`, houseFacts);

/**
 * Applies one edit to a house; facts in, a new house out, the old one untouched.
 *
 * Refused with every fault named where the edit is not understood, points at what is not there, or would leave facts
 * that contradict one another (an opening past its wall's end, say). What did not change keeps its identity, so that
 * a store can tell by `===` what to write.
 */
export function applyEdit(house: House, edit: Edit): Outcome<House> {
  const decoded = decodeFacts(editSchema, edit, '');
  if (!decoded.ok) return decoded;
  const outcome = change(house, decoded.value);
  if (!outcome.ok) return outcome;
  const faults = findFaults(outcome.value);
  return faults.length > 0 ? bad(faults) : outcome;
}

function change(house: House, edit: DecodedEdit): Outcome<House> {
  switch (edit.kind) {
    case 'replace-house':
      return good(edit.house as House);
    case 'change-house': {
      const kept = Object.fromEntries(['format', 'version', ...Object.keys(houseLists)].map((key) => [key, house[key as keyof House]]));
      const own = Object.fromEntries(Object.keys(houseFacts).map((key) => [key, house[key as keyof House]]));
      const changed = overlay(houseFactsSchema, own, edit.facts, '');
      return changed.ok ? good({ ...changed.value, ...kept } as House) : changed;
    }
    case 'add-covering':
      return good({ ...house, coverings: [...house.coverings, edit.covering] } as House);
    case 'change-covering':
      return within(house.coverings, edit.covering, 'covering', (covering) => overlay(coveringSchema, covering, edit.facts, 'covering'), (coverings) => ({ ...house, coverings }) as House);
    case 'remove-covering': {
      const used = whereUsed(house, edit.covering);
      if (used.length > 0) return fault('covering', say`is still used by ${used.join(', ')}; take it away there first`);
      return without(house.coverings, edit.covering, 'covering', (coverings) => withPicture({ ...house, coverings }, edit.covering, null));
    }
    case 'add-room':
      return good({ ...house, rooms: [...house.rooms, edit.room] } as House);
    case 'add-rooms':
      return good({ ...house, rooms: [...house.rooms, ...edit.rooms] } as House);
    case 'remove-room':
      return without(house.rooms, edit.room, 'room', (rooms) => forgetRoom({ ...house, rooms }, edit.room));
    case 'set-suppliers':
    case 'set-stock':
    case 'set-offers':
    case 'set-orders':
    case 'set-deliveries':
    case 'set-returns':
    case 'set-leftovers':
    case 'set-matching':
    case 'set-run-choices':
    case 'set-tasks':
    case 'set-materials':
    case 'set-expenses': {
      const list = LIST_EDITS[edit.kind];
      const changed = { ...house, [list]: edit[list as keyof typeof edit] } as House;
      return good(edit.kind === 'set-deliveries' ? { ...changed, orders: afterRemoval(house, changed.deliveries) } : changed);
    }
    case 'place-order':
      return good(placeOrder(house, edit.order as PlacedOrder));
    case 'set-picture': {
      if (!house.coverings.some(({ id }) => id === edit.covering)) return notThere(house.coverings, edit.covering, 'covering');
      return good(withPicture(house, edit.covering, edit.image));
    }
    case 'add-photos':
      return good({ ...house, photos: [...house.photos, ...edit.photos] });
    case 'change-photo':
      return within(house.photos, edit.photo, 'photo', (photo) => overlay(photoSchema, photo, edit.facts, 'photo'), (photos) => ({ ...house, photos }));
    case 'remove-photo':
      return without(house.photos, edit.photo, 'photo', (photos) => ({ ...house, photos }));
    default:
      return within(house.rooms, edit.room, 'room', (room) => changeRoom(room, edit), (rooms) => forgetPhotos({ ...house, rooms }));
  }
}

type RoomEdit = Extract<DecodedEdit, { room: string }>;

function changeRoom(room: Room, edit: Exclude<RoomEdit, { kind: 'remove-room' }>): Outcome<Room> {
  switch (edit.kind) {
    case 'change-room':
      return overlay(roomSchema, room, edit.facts, 'room') as Outcome<Room>;
    case 'set-surfaces':
      return edit.surfaces.reduce<Outcome<Room>>((changed, { of, surface }) => (changed.ok ? setSurface(changed.value, of, surface ?? undefined) : changed), good(room));
    case 'add-wall':
      return good({ ...room, walls: [...room.walls, edit.wall] } as Room);
    case 'add-walls':
      return good({ ...room, walls: [...room.walls, ...edit.walls] } as Room);
    case 'replace-walls':
      return good({ ...withoutRow(room, edit.walls).reduce(forgetWall, room), walls: edit.walls } as Room);
    case 'change-walls':
      return edit.walls.reduce<Outcome<Room>>(
        (changed, wall) => (changed.ok ? changeRoom(changed.value, { kind: 'change-wall', room: edit.room, wall, facts: edit.facts }) : changed),
        good(room),
      );
    case 'remove-wall':
      return without(room.walls, edit.wall, 'wall', (walls) => forgetWall({ ...room, walls }, edit.wall));
    case 'add-band':
      return good({ ...room, bands: [...room.bands, edit.band] } as Room);
    case 'change-band':
      return within(room.bands, edit.band, 'band', (band) => overlay(bandSchema, band, edit.facts, 'band'), (bands) => ({ ...room, bands }) as Room);
    case 'remove-band':
      return without(room.bands, edit.band, 'band', (bands) => ({ ...room, bands }));
    default:
      return within(room.walls, edit.wall, 'wall', (wall) => changeWall(wall, edit), (walls) => ({ ...room, walls }));
  }
}

/** The walls of a room that are not among those that take their place. */
function withoutRow({ walls }: Room, taking: readonly Identified[]): readonly string[] {
  return walls.map(({ id }) => id).filter((id) => !taking.some((wall) => wall.id === id));
}

type WallEdit = Extract<DecodedEdit, { kind: 'change-wall' | 'add-opening' | 'change-opening' | 'remove-opening' }>;

type Surfaces = Extract<DecodedEdit, { kind: 'set-surfaces' }>['surfaces'][number];

function setSurface(room: Room, of: Surfaces['of'], surface: Surface | undefined): Outcome<Room> {
  if (of === 'ceiling') return good(withFact(room, 'ceilingSurface', surface));
  if (of === 'woodwork') return room.woodwork ? good({ ...room, woodwork: withFact(room.woodwork, 'surface', surface) }) : fault('surfaces', say`name the woodwork, which is not painted in ${room.name}; say first what it is painted with`);
  return within(room.walls, of.wall, 'wall', (wall) => good(withFact(wall, 'surface', surface)), (walls) => ({ ...room, walls }));
}

/** Without the key where there is no fact. */
function withFact<Facts extends object, Key extends keyof Facts>(facts: Facts, key: Key, fact: Facts[Key] | undefined): Facts {
  const { [key]: _before, ...rest } = facts;
  return (fact === undefined ? rest : { ...rest, [key]: fact }) as Facts;
}

function changeWall(wall: Wall, edit: WallEdit): Outcome<Wall> {
  switch (edit.kind) {
    case 'change-wall':
      return overlay(wallSchema, wall, edit.facts, 'wall') as Outcome<Wall>;
    case 'add-opening':
      return good({ ...wall, openings: [...wall.openings, edit.opening] } as Wall);
    case 'change-opening':
      return within(wall.openings, edit.opening, 'opening', (opening) => overlay(openingSchema, opening, edit.facts, 'opening'), (openings) => ({ ...wall, openings }) as Wall);
    case 'remove-opening':
      return without(wall.openings, edit.opening, 'opening', (openings) => ({ ...wall, openings }));
  }
}

/** Everything of a house that points at a covering, in words. */
function whereUsed(house: House, covering: string): readonly string[] {
  const rooms = house.rooms.filter((room) => room.ceiling?.covering === covering || room.woodwork?.covering === covering || room.bands.some((band) => band.covering === covering));
  const lists: readonly (readonly [string, readonly { readonly covering?: string | undefined }[]])[] = [
    [say`the rolls in hand`, house.stock],
    [say`what can still be had`, house.offers],
    [say`the placed orders`, house.orders.flatMap(({ lines }) => lines)],
    [say`the deliveries`, house.deliveries],
    [say`what went back`, house.returns],
    [say`the leftovers`, house.leftovers],
    [say`rooms that must match`, house.matching],
    [say`the choices of run`, house.runChoices],
  ];
  return [...rooms.map(({ name }) => name), ...lists.filter(([, list]) => list.some((entry) => entry.covering === covering)).map(([words]) => words)];
}

/** An order beside those before it; what it takes of an offer can be had no more. */
function placeOrder(house: House, order: PlacedOrder): House {
  const left = new Map<string, number>();
  for (const { covering, run, rolls } of order.lines) left.set(JSON.stringify([covering, run]), (left.get(JSON.stringify([covering, run])) ?? 0) + rolls);
  const offers = house.offers.map((offer) => {
    const key = JSON.stringify([offer.covering, offer.run]);
    const taken = Math.min(offer.rolls, left.get(key) ?? 0);
    left.set(key, (left.get(key) ?? 0) - taken);
    return { ...offer, rolls: offer.rolls - taken };
  });
  return { ...house, offers, orders: [...house.orders, order] };
}

/** Where packages are taken out of the list, fewer stand before the orders that came after them. */
function afterRemoval({ deliveries, orders }: House, left: House['deliveries']): House['orders'] {
  const removed = deliveries.length - left.length;
  if (removed <= 0 || orders.every(({ earlier }) => earlier === 0)) return orders;
  const differs = deliveries.findIndex((delivery, index) => JSON.stringify(delivery) !== JSON.stringify(left[index]));
  return orders.map((order) => (order.earlier > differs ? { ...order, earlier: Math.max(differs, order.earlier - removed) } : order));
}

/** What was said of a room that is gone; orders that went out for it stay as they were. */
function forgetRoom(house: House, room: string): House {
  const matching = house.matching.map((one) => ({ ...one, rooms: one.rooms.filter((id) => id !== room) })).filter(({ rooms }) => rooms.length > 1);
  return forgetPhotos({ ...house, matching, runChoices: house.runChoices.filter((choice) => choice.room !== room) });
}

/** The photos of a room or a wall that is gone go with it. */
function forgetPhotos(house: House): House {
  const photos = house.photos.filter(({ room, wall }) => house.rooms.some(({ id, walls }) => id === room && walls.some((one) => one.id === wall)));
  return photos.length === house.photos.length ? house : { ...house, photos };
}

/** The pictures in their order, one covering's set anew, added or taken away. */
function withPicture(house: House, covering: string, image: string | null): House {
  const isThere = house.pictures.some((picture) => picture.covering === covering);
  if (image === null) return isThere ? { ...house, pictures: house.pictures.filter((picture) => picture.covering !== covering) } : house;
  if (!isThere) return { ...house, pictures: [...house.pictures, { covering, image }] };
  return { ...house, pictures: house.pictures.map((picture) => (picture.covering === covering ? { covering, image } : picture)) };
}

/** What hung on a wall that is gone hangs on the others; a choice that pointed at it is open again. */
function forgetWall(room: Room, wall: string): Room {
  const bands = room.bands
    .map((band) => {
      if (!band.walls.includes(wall)) return band;
      const { layout, runMayChange, ...rest } = band;
      const pointsAtWall = layout && (layout.start.wall === wall || (layout.kill !== 'start' && layout.kill.wall === wall));
      const corners = runMayChange?.filter((id) => id !== wall) ?? [];
      return { ...rest, walls: band.walls.filter((id) => id !== wall), ...(corners.length > 0 ? { runMayChange: corners } : {}), ...(layout && !pointsAtWall ? { layout } : {}) };
    })
    .filter((band) => band.walls.length > 0);
  const { focalWall, ceiling, ...rest } = room;
  const rails = room.rails
    .map((rail) => (rail.walls ? { ...rail, walls: rail.walls.filter((id) => id !== wall) } : rail))
    .filter(({ walls }) => walls?.length !== 0);
  const overhead = ceiling && (ceiling.along === wall ? { covering: ceiling.covering, position: ceiling.position } : ceiling);
  return { ...rest, bands, rails, furniture: room.furniture.filter((piece) => piece.wall !== wall), ...(overhead ? { ceiling: overhead } : {}), ...(focalWall !== undefined && focalWall !== wall ? { focalWall } : {}) };
}

/** The facts of one thing with some of them written anew, read again by its schema. */
function overlay<Schema extends z.ZodType>(schema: Schema, current: unknown, changed: Readonly<Record<string, unknown>>, at: string): Outcome<z.output<Schema>> {
  if ('id' in changed) return fault(at === '' ? 'id' : `${at}.id`, say`is what other facts point at and stays as it is`);
  const written = { ...(z.encode(schema, current as z.output<Schema>) as Record<string, unknown>), ...changed };
  const kept = Object.fromEntries(Object.entries(written).filter(([, value]) => value !== null && value !== undefined));
  return decodeFacts(schema, kept, at);
}

function within<Item extends Identified, Changed, Whole>(
  list: readonly Item[],
  id: string,
  what: string,
  changeItem: (item: Item) => Outcome<Changed>,
  rebuild: (list: readonly (Item | Changed)[]) => Whole,
): Outcome<Whole> {
  const item = list.find((candidate) => candidate.id === id);
  if (!item) return notThere(list, id, what);
  const changed = changeItem(item);
  return changed.ok ? good(rebuild(list.map((candidate) => (candidate === item ? changed.value : candidate)))) : changed;
}

function without<Item extends Identified, Whole>(list: readonly Item[], id: string, what: string, rebuild: (list: readonly Item[]) => Whole): Outcome<Whole> {
  if (!list.some((candidate) => candidate.id === id)) return notThere(list, id, what);
  return good(rebuild(list.filter((candidate) => candidate.id !== id)));
}

function notThere(list: readonly Identified[], id: string, what: string) {
  return fault(what, say`is "${id}", which is not there; there are ${sayKnown(list)}`);
}

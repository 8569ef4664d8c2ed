import { z } from 'zod';
import { facts, id, listOf, oneOf } from './accepted.ts';
import { covering } from './covering.ts';
import { house, houseLists, pictureImage } from './house.ts';
import { placedOrder } from './order-facts.ts';
import { MOST_PHOTOS_OF_WALL, photo } from './photo.ts';
import { band, MOST_WALLS, opening, room, wall } from './room.ts';
import { surface } from './surface-facts.ts';
import { say } from '../words/index.ts';

const changedFacts = z.record(z.string().max(60), z.json(), { error: say`takes the changed facts by their keys` });

const edit = <Kind extends string, Shape extends z.ZodRawShape>(kind: Kind, shape: Shape) =>
  facts(say`the edit ${kind}`, { kind: z.literal(kind), ...shape });

const walls = room.shape.walls.unwrap();

/**
 * One thing that the user changes, as it is sent, saved and undone.
 *
 * A `change-…` edit carries the changed facts alone, written as in the exchange document; null takes an optional
 * fact away again.
 */
export const editSchema = z.discriminatedUnion('kind', [
  edit('change-house', { facts: changedFacts }),
  edit('replace-house', { house }),
  edit('add-covering', { covering }),
  edit('change-covering', { covering: id(), facts: changedFacts }),
  edit('remove-covering', { covering: id() }),
  edit('add-room', { room }),
  edit('add-rooms', { rooms: houseLists.rooms.unwrap() }),
  edit('change-room', { room: id(), facts: changedFacts }),
  edit('remove-room', { room: id() }),
  edit('set-surfaces', {
    room: id(),
    /** Of walls by their ids, of the ceiling and of the woodwork; null: nothing is known of it any more. */
    surfaces: listOf(facts(say`what a surface is`, { of: z.union([facts(say`a wall`, { wall: id() }), oneOf(['ceiling', 'woodwork'])]), surface: surface.nullable() }), say`surfaces`, MOST_WALLS + 2),
  }),
  edit('add-wall', { room: id(), wall }),
  edit('add-walls', { room: id(), walls }),
  edit('replace-walls', { room: id(), walls }),
  edit('change-wall', { room: id(), wall: id(), facts: changedFacts }),
  edit('change-walls', { room: id(), walls: listOf(id(), say`ids of walls`, 200), facts: changedFacts }),
  edit('remove-wall', { room: id(), wall: id() }),
  edit('add-opening', { room: id(), wall: id(), opening }),
  edit('change-opening', { room: id(), wall: id(), opening: id(), facts: changedFacts }),
  edit('remove-opening', { room: id(), wall: id(), opening: id() }),
  edit('add-band', { room: id(), band }),
  edit('change-band', { room: id(), band: id(), facts: changedFacts }),
  edit('remove-band', { room: id(), band: id() }),
  edit('set-suppliers', { suppliers: houseLists.suppliers.unwrap() }),
  edit('set-stock', { stock: houseLists.stock.unwrap() }),
  edit('set-offers', { offers: houseLists.offers.unwrap() }),
  edit('place-order', { order: placedOrder }),
  edit('set-orders', { orders: houseLists.orders.unwrap() }),
  edit('set-deliveries', { deliveries: houseLists.deliveries.unwrap() }),
  edit('set-returns', { returns: houseLists.returns.unwrap() }),
  edit('set-leftovers', { leftovers: houseLists.leftovers.unwrap() }),
  edit('set-matching', { matching: houseLists.matching.unwrap() }),
  edit('set-run-choices', { runChoices: houseLists.runChoices.unwrap() }),
  edit('set-tasks', { tasks: houseLists.tasks.unwrap() }),
  edit('set-materials', { materials: houseLists.materials.unwrap() }),
  edit('set-expenses', { expenses: houseLists.expenses.unwrap() }),
  edit('set-picture', { covering: id(), image: pictureImage.nullable() }),
  edit('add-photos', { photos: listOf(photo, say`photos`, MOST_PHOTOS_OF_WALL).min(1, { error: say`holds no photo; it takes one or more` }) }),
  edit('change-photo', { photo: id(), facts: changedFacts }),
  edit('remove-photo', { photo: id() }),
], { error: say`is not an edit; it takes an object with a kind that names one` });

/** The edits that set a list as a whole, and the list each sets. */
export const LIST_EDITS = {
  'set-suppliers': 'suppliers',
  'set-stock': 'stock',
  'set-offers': 'offers',
  'set-orders': 'orders',
  'set-deliveries': 'deliveries',
  'set-returns': 'returns',
  'set-leftovers': 'leftovers',
  'set-matching': 'matching',
  'set-run-choices': 'runChoices',
  'set-tasks': 'tasks',
  'set-materials': 'materials',
  'set-expenses': 'expenses',
} as const;

/** An edit as it is sent: in the exchange document's spelling. */
export type Edit = z.input<typeof editSchema>;
export type DecodedEdit = z.output<typeof editSchema>;

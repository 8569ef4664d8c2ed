import { z } from 'zod';
import { facts, id, LENGTH_EXAMPLES, listOf, measure, oneOf, takes, text, yesOrNo } from './accepted.ts';

export const OPENING_KINDS = ['door', 'window', 'archway', 'fireplace', 'furniture'] as const;

/** What interrupts a wall: measured from the wall's left end and from its floor line. */
export const opening = facts('an opening', {
  id: id(),
  kind: oneOf(OPENING_KINDS),
  entrance: yesOrNo().prefault(false),
  from: measure,
  width: measure,
  sill: measure.prefault('0 in'),
  height: measure,
});

const leftAndRight = z.union([measure, z.tuple([measure, measure])], {
  error: takes(`${LENGTH_EXAMPLES}, or two of them for the left and the right end`),
});

const TURN_WORDS = ['inside', 'outside', 'straight'];

/** The corner at a wall's right end: a word for 90 degrees, or the interior angle in degrees. */
const turn = z.string({ error: takes('"inside", "outside", "straight" or an interior angle such as "135"') }).refine(
  (written) => TURN_WORDS.includes(written) || (/^\d{1,3}(\.\d{1,2})?$/.test(written) && Number(written) >= 10 && Number(written) <= 350),
  { error: takes('"inside", "outside", "straight" or an interior angle from "10" to "350" degrees') },
);

/** A wall, left to right for somebody standing inside the room. */
export const wall = facts('a wall', {
  id: id(),
  length: measure,
  height: leftAndRight,
  base: leftAndRight.prefault('0 in'),
  turn: turn.prefault('inside'),
  plumbRight: measure.optional(),
  openings: listOf(opening, 'openings', 50).prefault([]),
});

const place = { wall: id(), at: measure.prefault('0 in') };

/** The user's own choice of where the first line is struck, the order of hanging and the last joint. */
export const layout = facts('a layout', {
  start: facts('a start', { ...place, edge: oneOf(['left', 'centre', 'right']).optional() }),
  direction: oneOf(['right', 'left', 'both']).prefault('right'),
  kill: z
    .union([z.literal('start'), facts('a kill point', place)], { error: takes('"start", or a wall and a place on it') })
    .prefault('start'),
});

/** A covering on chosen walls from a height to a height, both above the wall's floor line. */
export const band = facts('a band', {
  id: id(),
  covering: id(),
  walls: listOf(id(), 'ids of walls', 200).min(1, { error: 'names no wall; it takes the ids of one or more walls of the room' }),
  from: z.union([z.literal('floor'), measure], { error: takes(`"floor", or ${LENGTH_EXAMPLES}`) }).prefault('floor'),
  to: z.union([z.literal('ceiling'), measure], { error: takes(`"ceiling", or ${LENGTH_EXAMPLES}`) }).prefault('ceiling'),
  position: measure.prefault('0 in'),
  layout: layout.optional(),
});

export const room = facts('a room', {
  id: id(),
  name: text('the name of the room', 80),
  storey: text('a storey', 80).optional(),
  walls: listOf(wall, 'walls', 200).prefault([]),
  focalWall: id().optional(),
  bands: listOf(band, 'bands', 100).prefault([]),
  ceiling: facts('a ceiling', { covering: id() }).optional(),
});

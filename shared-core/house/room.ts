import { z } from 'zod';
import { facts, id, LENGTH_EXAMPLES, listOf, measure, note, oneOf, takes, text, wholeNumber, yesOrNo } from './accepted.ts';
import { surface, woodwork } from './surface-facts.ts';
import { say } from '../words/index.ts';

export const OPENING_KINDS = ['door', 'window', 'archway', 'fireplace', 'furniture'] as const;

export const REVEAL_SIDES = ['left', 'right', 'head', 'sill'] as const;
/** What is covered where only the depth was said: all that a door and a window both have. */
export const USUAL_SIDES: readonly (typeof REVEAL_SIDES)[number][] = ['left', 'right', 'head'];

/** The sides of an opening that are covered as the wall is, and how deep they go. */
const reveal = facts(say`a reveal`, {
  depth: measure,
  sides: listOf(oneOf(REVEAL_SIDES), say`sides of a reveal`, 4).min(1, { error: say`names no side; it takes "left", "right", "head" or "sill"` }),
});

/** What interrupts a wall: measured from the wall's left end and from its floor line. */
export const opening = facts(say`an opening`, {
  id: id(),
  kind: oneOf(OPENING_KINDS),
  entrance: yesOrNo().prefault(false),
  from: measure,
  width: measure,
  sill: measure.prefault('0 in'),
  height: measure,
  reveal: reveal.optional(),
});

const leftAndRight = z.union([measure, z.tuple([measure, measure])], {
  error: takes(say`${LENGTH_EXAMPLES}, or two of them for the left and the right end`),
});

const TURN_WORDS = ['inside', 'outside', 'straight'];

/** The corner at a wall's right end: a word for 90 degrees, or the interior angle in degrees. */
const turn = z.string({ error: takes(say`"inside", "outside", "straight" or an interior angle such as "135"`) }).refine(
  (written) => TURN_WORDS.includes(written) || (/^\d{1,3}(\.\d{1,2})?$/.test(written) && Number(written) >= 10 && Number(written) <= 350),
  { error: takes(say`"inside", "outside", "straight" or an interior angle from "10" to "350" degrees`) },
);

export const MOST_OPENINGS = 50;

/** A wall, left to right for somebody standing inside the room. */
export const wall = facts(say`a wall`, {
  id: id(),
  length: measure,
  height: leftAndRight,
  base: leftAndRight.prefault('0 in'),
  turn: turn.prefault('inside'),
  plumbRight: measure.optional(),
  openings: listOf(opening, say`openings`, MOST_OPENINGS).prefault([]),
  surface: surface.optional(),
  note: note().optional(),
});

const place = { wall: id(), at: measure.prefault('0 in') };

/** The user's own choice of where the first line is struck, the order of hanging and the last joint. */
export const layout = facts(say`a layout`, {
  start: facts(say`a start`, { ...place, edge: oneOf(['left', 'centre', 'right']).optional() }),
  direction: oneOf(['right', 'left', 'both']).prefault('right'),
  kill: z
    .union([z.literal('start'), facts(say`a kill point`, place)], { error: takes(say`"start", or a wall and a place on it`) })
    .prefault('start'),
});

/** A strip of wood or plaster along walls: from the floor line to its lower edge, and how high it is itself. */
export const rail = facts(say`a rail`, {
  id: id(),
  name: text(say`what the rail is, such as "picture rail"`, 60).optional(),
  walls: listOf(id(), say`ids of walls`, 200).min(1, { error: say`names no wall; it takes the ids of one or more walls of the room` }).optional(),
  at: measure,
  width: measure,
});

/** What stands against a wall and is papered behind: a bed's head, a chest. */
export const furniture = facts(say`a piece of furniture`, {
  id: id(),
  name: text(say`what the piece is, such as "headboard"`, 60).optional(),
  wall: id(),
  from: measure,
  width: measure,
  height: measure,
});

const atRail = facts(say`an edge at a rail`, { rail: id() });

/** A line of a mural that has to be level, such as a horizon: below the mural's top, and where it stands above the floor line. */
const levelLine = facts(say`a level line`, { below: measure, at: measure });

/** A covering on chosen walls from a height to a height, both above the wall's floor line. */
export const band = facts(say`a band`, {
  id: id(),
  covering: id(),
  walls: listOf(id(), say`ids of walls`, 200).min(1, { error: say`names no wall; it takes the ids of one or more walls of the room` }),
  from: z.union([z.literal('floor'), measure, atRail], { error: takes(say`"floor", a rail such as {"rail": "dado"}, or ${LENGTH_EXAMPLES}`) }).prefault('floor'),
  to: z.union([z.literal('ceiling'), measure, atRail], { error: takes(say`"ceiling", a rail such as {"rail": "dado"}, or ${LENGTH_EXAMPLES}`) }).prefault('ceiling'),
  /** Where the pattern stands in its repeat at the datum: the highest top of the stretch, or a height above the room's level datum. */
  position: measure.prefault('0 in'),
  datum: measure.optional(),
  /** Of a border at the ceiling: level, and not along it. */
  level: yesOrNo().prefault(false),
  /** Of a mural. */
  firstPanel: wholeNumber(1, 200, say`the number of a panel`).optional(),
  levelLine: levelLine.optional(),
  /** Walls at whose right-hand inside corner the next strip may come from another run. */
  runMayChange: listOf(id(), say`ids of walls`, 200).optional(),
  layout: layout.optional(),
});

/** What hangs overhead, its strips along a wall: the one with the largest window unless another is named. */
export const ceiling = facts(say`a ceiling`, {
  covering: id(),
  along: id().optional(),
  position: measure.prefault('0 in'),
});

/** Far more than a room has. */
export const MOST_WALLS = 200;
export const MOST_RAILS = 50;
export const MOST_FURNITURE = 100;

export const room = facts(say`a room`, {
  id: id(),
  name: text(say`the name of the room`, 80),
  storey: text(say`a storey`, 80).optional(),
  walls: listOf(wall, say`walls`, MOST_WALLS).prefault([]),
  focalWall: id().optional(),
  rails: listOf(rail, say`rails`, MOST_RAILS).prefault([]),
  furniture: listOf(furniture, say`pieces of furniture`, MOST_FURNITURE).prefault([]),
  bands: listOf(band, say`bands`, 100).prefault([]),
  ceiling: ceiling.optional(),
  ceilingSurface: surface.optional(),
  woodwork: woodwork.optional(),
  /** A stair tower: its walls are reached from ladders over stairs. */
  stairs: yesOrNo().optional(),
  /** It has to be used while the work goes on: no other such room is out of use on the same day. */
  keptUsable: yesOrNo().optional(),
  note: note().optional(),
});

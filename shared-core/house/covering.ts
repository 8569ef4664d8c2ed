import { z } from 'zod';
import { checkGtin } from '../units/index.ts';
import { facts, fraction, id, listOf, measure, oneOf, percent, price, quoteValue, spare, takes, text, wholeNumber, yesOrNo } from './accepted.ts';
import { day } from './work-facts.ts';
import { say } from '../words/index.ts';

const gtin = z.string({ error: takes(say`the 8, 12, 13 or 14 digits under the bar code`) }).superRefine((written, context) => {
  const checked = checkGtin(written);
  if (!checked.ok) context.addIssue({ code: 'custom', message: say`is ${quoteValue(written)}: ${checked.faults.map(({ message }) => message).join(' ')}` });
});

const rollPack = facts(say`a sale unit`, {
  rolls: wholeNumber(1, 1000),
  price: price.optional(),
  /** How many of it at least, when any is bought. */
  atLeast: wholeNumber(1, 1000).prefault(1),
  /** The article number on the package's bar code. */
  gtin: gtin.optional(),
});

const tin = facts(say`a tin`, {
  litres: z.number({ error: takes(say`the litres in a tin, above 0`) }).positive({ error: takes(say`the litres in a tin, above 0`) }),
  price: price.optional(),
});

/** Paint of one batch, which may differ in shade from another: how much of it came, when it was opened, where the rest is kept. */
const batch = facts(say`a batch of paint`, {
  batch: text(say`a batch number`, 60),
  litres: z.number({ error: takes(say`litres of paint, above 0`) }).positive({ error: takes(say`litres of paint, above 0`) }).optional(),
  opened: day.optional(),
  place: text(say`where it is kept`, 120).optional(),
});

const soldBy = facts(say`a sale by the length`, {
  length: measure,
  minimum: measure.optional(),
  pieceLength: measure,
  price: price.optional(),
});

const named = {
  id: id(),
  name: text(say`the name of the covering`).optional(),
  patternNumber: text(say`a pattern number`, 60).optional(),
  supplier: text(say`a supplier`, 60).optional(),
  material: text(say`a material`, 60).optional(),
  note: text(say`a note`, 2000).optional(),
};

const spareRolls = spare.optional();
const paste = text(say`how it is pasted`, 60).optional();
const bookingMinutes = wholeNumber(0, 600).optional();
const soldInRolls = listOf(rollPack, say`sale units`, 20).optional();

/** A wallcovering hung in strips from rolls. */
export const wallcovering = facts(say`a wallcovering`, {
  ...named,
  kind: z.literal('wallcovering'),
  width: measure,
  rollLength: measure.optional(),
  singlesPerRoll: wholeNumber(1, 20).prefault(1),
  repeat: measure.prefault('0 in'),
  match: oneOf(['free', 'straight', 'drop']).optional(),
  dropBy: fraction.optional(),
  horizontalRepeat: measure.optional(),
  rollStart: oneOf(['anywhere', 'at-repeat']).prefault('anywhere'),
  reverseAlternate: yesOrNo().prefault(false),
  sequence: oneOf(['preferred', 'required']).prefault('preferred'),
  panels: oneOf(['roll-width', 'equal']).prefault('roll-width'),
  selvedge: measure.prefault('0 in'),
  seam: oneOf(['butt', 'double-cut']).prefault('butt'),
  seamOverlap: measure.optional(),
  paste,
  bookingMinutes,
  spareRolls,
  soldIn: soldInRolls,
  soldBy: soldBy.optional(),
});

/** A border, hung along the wall from spools. */
export const border = facts(say`a border`, {
  ...named,
  kind: z.literal('border'),
  width: measure,
  rollLength: measure,
  repeat: measure.prefault('0 in'),
  rollStart: oneOf(['anywhere', 'at-repeat']).prefault('anywhere'),
  paste,
  bookingMinutes,
  spareRolls,
  soldIn: soldInRolls,
});

export const lining = facts(say`a lining`, {
  ...named,
  kind: z.literal('lining'),
  width: measure,
  rollLength: measure,
  direction: oneOf(['across', 'up-and-down']).prefault('across'),
  spareRolls,
  soldIn: soldInRolls,
});

export const mural = facts(say`a mural`, {
  ...named,
  kind: z.literal('mural'),
  panels: wholeNumber(1, 200),
  panelWidth: measure,
  panelHeight: measure,
  spareRolls,
  soldIn: soldInRolls,
});

export const paint = facts(say`a paint`, {
  ...named,
  kind: z.literal('paint'),
  spreadingRate: text(say`a spreading rate, such as "12 m2/L"`, 40).optional(),
  /** In percent of its volume, and how thick one coat dries, in micrometres: what it spreads to where the tin does not say. */
  solids: percent.optional(),
  film: wholeNumber(1, 2000, say`a dry film in micrometres`).optional(),
  coats: wholeNumber(1, 20).prefault(2),
  soldIn: listOf(tin, say`tins`, 20).optional(),
  batches: listOf(batch, say`batches`, 100).optional(),
});

const KINDS = ['wallcovering', 'border', 'lining', 'mural', 'paint'] as const;

export const covering = z.discriminatedUnion('kind', [wallcovering, border, lining, mural, paint], {
  error: (issue) =>
    typeof issue.input === 'object' && issue.input !== null
      ? takes(KINDS.map((kind) => `"${kind}"`).join(say` or `))({ input: (issue.input as { kind?: unknown }).kind })
      : takes(say`a covering, an object with a kind`)(issue),
});

import { facts, id, listOf, measure, nameAndAddress, oneOf, percent, price, text, wholeNumber, yesOrNo } from './accepted.ts';
import { day } from './work-facts.ts';
import { say } from '../words/index.ts';

const run = text(say`a run number`, 60);
const rolls = wholeNumber(0, 100_000);
const note = text(say`a note`, 2000);

/** Tax on what is bought: its rate, and whether the prices hold it already. */
export const tax = facts(say`a tax`, { rate: percent, included: yesOrNo().prefault(false) });

/** What is known of a supplier beyond the name that coverings give it. */
export const supplier = facts(say`a supplier`, {
  id: text(say`a supplier, as the coverings name it`, 60),
  name: text(say`the name of a supplier`, 120).optional(),
  address: text(say`the address of a supplier`, 500).optional(),
  tax: tax.optional(),
  note: note.optional(),
});

/** Rolls of one run: in hand before this order, or to be had from the supplier. */
export const runQuantity = facts(say`rolls of a run`, { covering: id(), run, rolls });

/** A package as it came: the rolls its label says, and how many of those are damaged or not in it. */
export const delivery = facts(say`a delivery`, {
  covering: id(),
  patternNumber: text(say`the pattern number on the label`, 60),
  run,
  rolls,
  damaged: rolls.prefault(0),
  short: rolls.prefault(0),
  received: day.optional(),
  /** Of what was not ordered so: whether it is kept all the same. Until that is said it counts for no room. */
  decision: oneOf(['keep', 'send-back']).optional(),
});

/** One line of an order as it went out; a line without a run asks for one run, whichever it is. */
const placedLine = facts(say`a line of a placed order`, {
  covering: id(),
  patternNumber: text(say`a pattern number`, 60).optional(),
  run: run.optional(),
  rolls,
  packs: listOf(facts(say`a number of sale units`, { rolls: wholeNumber(1, 1000), count: wholeNumber(1, 100_000) }), say`sale units`, 20).prefault([]),
  /** Of goods by the length. */
  length: measure.optional(),
  price: price.optional(),
  rooms: listOf(id(), say`ids of rooms`, 2000).prefault([]),
  /** Rolls that the supplier has taken off it again. */
  takenOff: rolls.prefault(0),
  /** Nothing more of it will come. */
  closed: yesOrNo().prefault(false),
});

/** An order as it was placed: it stays as it was, whatever the house becomes. */
export const placedOrder = facts(say`a placed order`, {
  id: id(),
  placed: day,
  /** When the supplier says that it comes. */
  expected: day.optional(),
  /** How many packages had been recorded before it: those did not come for it. */
  earlier: wholeNumber(0, 5000).prefault(0),
  supplier: text(say`a supplier`, 60).optional(),
  tax: tax.optional(),
  note: note.optional(),
  /** As the house had them when it was placed. */
  deliverTo: nameAndAddress().optional(),
  deliverBy: day.optional(),
  /** Which run each room was to hang from when it was placed, from what was in hand too. */
  sharing: listOf(facts(say`rooms of a run`, { covering: id(), run: run.optional(), rooms: listOf(id(), say`ids of rooms`, 2000) }), say`shares`, 1000).prefault([]),
  lines: listOf(placedLine, say`lines of an order`, 500).min(1, { error: say`is empty; an order has one line or more` }),
});

/** Rolls that went back to the supplier. */
export const returned = facts(say`a return`, { covering: id(), run, rolls: wholeNumber(1, 100_000), sent: day.optional() });

/** What is kept for repairs after hanging: so many lengths of a run, or whole rolls as one length each. */
export const leftover = facts(say`a leftover`, {
  covering: id(),
  run: run.optional(),
  length: measure,
  count: wholeNumber(1, 10_000).prefault(1),
  place: text(say`where it is kept`, 120).optional(),
});

/** Rooms that are seen together and must not differ in shade: of one covering, or of each that they share. */
export const matching = facts(say`rooms that must match`, {
  covering: id().optional(),
  rooms: listOf(id(), say`ids of rooms`, 200).min(2, { error: say`names fewer than two rooms; it takes the ids of two or more` }),
});

/** A run that the user has chosen for a room, or that it has been hung from, and on which day. */
export const runChoice = facts(say`a choice of run`, { covering: id(), room: id(), run, hung: yesOrNo().prefault(false), day: day.optional() });

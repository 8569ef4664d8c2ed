import { assert } from '../base/index.ts';
import { explainCount } from '../cutting/index.ts';
import { type Area, areaOf, ceilDivide, floorDivide, inches, type Length } from '../units/index.ts';

/** What textbooks take a room to be: so many strips, all as long as the longest, and so much wall. */
export interface TextbookRoom {
  readonly roll: { readonly width: Length; readonly length: Length };
  /** 0 for a free match. */
  readonly repeat: Length;
  /** Where rolls begin at their repeat: how far into it the strips begin. Null where they may begin anywhere. */
  readonly lead: Length | null;
  readonly strips: number;
  /** Of one strip, trims included. */
  readonly length: Length;
  /** Of the wall, openings taken off. */
  readonly area: Area;
}

export interface TextbookCount {
  /** Null where the way gives no count: no strip in a roll, or a repeat that its chart does not go up to. */
  readonly rolls: number | null;
  /** The chance, from 0 to 1, that so many rolls do not give all the strips. */
  readonly chanceShort: number;
}

/** The counts of one room, or of several that are counted one by one. */
export interface TextbookCounts {
  readonly strips: number;
  readonly wholeRepeats: TextbookCount;
  readonly oneRepeatMore: TextbookCount;
  readonly byArea: TextbookCount;
}

/**
 * Counts a room's rolls in the three ways of textbooks, to be shown beside the safe count and never to be ordered by.
 *
 * Shapes: lengths in units, chances as plain numbers for reading. Rules: a roll holds as many strips as it holds times
 * the strip rounded up to whole repeats; or times the strip (height and trims) and one repeat more; or the wall's area
 * goes by a roll's usable yield (see `usableYield`). What hangs over doors and under windows is left to the offcuts.
 * The chance is that of so many rolls each cut at one place of the pattern, any start of a roll as likely as another
 * (see `chanceOfShort`); rolls that begin at their repeat leave nothing to chance.
 * Example: 16 strips of 2400 mm from rolls of 10050 mm with a repeat of 625 mm: in whole repeats 4 a roll, 4 rolls, and
 * with 475/625 that a roll gives 3 they fall short by 1 - (150/625)^4, more than 99 times in 100; with a repeat more
 * 3 a roll, 6 rolls, which never do.
 */
export function countByTextbook(room: TextbookRoom): TextbookCounts {
  const { roll, repeat, lead, strips, length, area } = room;
  const { textbook, best } = explainCount({ rollLength: roll.length, repeat, length, count: strips });
  const rollsOf = (perRoll: number) => (perRoll === 0 ? null : ceilDivide(strips, perRoll));
  const usable = usableYield(roll.width, roll.length, repeat);
  const judged = (rolls: number | null): TextbookCount => {
    if (rolls === null) return { rolls, chanceShort: 1 };
    if (lead === null) return { rolls, chanceShort: chanceOfShort({ rolls, strips, mostPerRoll: best.perRoll, chanceOfOneLess: chanceOfOneLess(room) }) };
    const given = explainCount({ rollLength: Math.max(1, roll.length - lead), repeat, length, count: strips }).best.perRoll;
    return { rolls, chanceShort: rolls * given < strips ? 1 : 0 };
  };
  return {
    strips,
    wholeRepeats: judged(textbook.rolls),
    oneRepeatMore: judged(rollsOf(floorDivide(roll.length, length + repeat))),
    byArea: judged(usable === null || usable === 0 ? null : ceilDivide(area, usable)),
  };
}

/** That a roll gives one strip less than the most that any roll gives: what it loses before its first strip is more than it can spare. */
function chanceOfOneLess({ roll, repeat, length }: TextbookRoom): number {
  if (repeat === 0 || length > roll.length) return 0;
  const { spacing } = explainCount({ rollLength: roll.length, repeat, length, count: 1 });
  return Math.max(0, repeat - ((roll.length - length) % spacing)) / repeat;
}

/**
 * The chance that rolls do not give so many strips, each roll giving one less than the most with the same chance.
 *
 * Rule: the number of rolls that give one less is spread binomially; they fall short where it is above what the rolls
 * can spare. 0 where even rolls that all give one less are enough, so wherever a textbook's yield is under the best.
 * Example: 4 rolls for 16 strips, at most 4 a roll, one less with 0.76: 1 - 0.24 ** 4 = 0.9967. For 15 strips one roll
 * may give less: 1 - 0.24 ** 4 - 4 * 0.76 * 0.24 ** 3 = 0.9547.
 */
export function chanceOfShort({ rolls, strips, mostPerRoll, chanceOfOneLess: chance }: { readonly rolls: number; readonly strips: number; readonly mostPerRoll: number; readonly chanceOfOneLess: number }): number {
  assert(chance >= 0 && chance <= 1, `${chance} is a chance`);
  const spared = rolls * mostPerRoll - strips;
  if (spared < 0) return 1;
  if (spared >= rolls || chance === 0) return 0;
  if (chance === 1) return 1;
  // In logarithms: the chance that none of a thousand rolls gives less is below what a number can hold.
  let logarithm = rolls * Math.log(1 - chance);
  let short = 0;
  for (let fewer = 1; fewer <= rolls; fewer += 1) {
    logarithm += Math.log(((rolls - fewer + 1) / fewer) * (chance / (1 - chance)));
    if (fewer > spared) short += Math.exp(logarithm);
  }
  return Math.min(1, short);
}

/** Up to which repeat a roll yields how much: what is usable of the rolls that the chart is made for. */
const YIELDS = [
  { repeat: inches(6), squareFeet: 25 },
  { repeat: inches(12), squareFeet: 22 },
  { repeat: inches(18), squareFeet: 20 },
  { repeat: inches(23), squareFeet: 18 },
] as const;

/**
 * How much wall a roll is reckoned to cover; null for repeats above 23 in, to which the chart does not go.
 *
 * Source: the Wallcoverings Association's measuring text, usable square feet of a European single roll, 20 1/2 in by
 * 16 1/2 ft (451/16 sq ft), by its repeat; read. Other rolls are reckoned in proportion to their area (our own).
 * Example: of a roll of 20 1/2 in by 33 ft with a repeat of 12 in 44 sq ft.
 */
export function usableYield(width: Length, length: Length, repeat: Length): Area | null {
  const row = YIELDS.find((one) => repeat <= one.repeat);
  return row ? areaOf(floorDivide(width * length, 451) * 16 * row.squareFeet) : null;
}

/**
 * The counts of rooms that are counted and bought one by one.
 *
 * Example: rooms of 4 and 6 rolls that fall short by chances of 0.5 and 0.2 are 10 rolls, and in one or the other they
 * fall short by 1 - 0.5 * 0.8 = 0.6.
 */
export function addTextbookCounts(rooms: readonly TextbookCounts[]): TextbookCounts {
  const add = (of: (room: TextbookCounts) => TextbookCount): TextbookCount => ({
    rolls: rooms.reduce<number | null>((sum, room) => (sum === null ? null : addRolls(sum, of(room).rolls)), 0),
    chanceShort: 1 - rooms.reduce((enough, room) => enough * (1 - of(room).chanceShort), 1),
  });
  return {
    strips: rooms.reduce((sum, { strips }) => sum + strips, 0),
    wholeRepeats: add(({ wholeRepeats }) => wholeRepeats),
    oneRepeatMore: add(({ oneRepeatMore }) => oneRepeatMore),
    byArea: add(({ byArea }) => byArea),
  };
}

function addRolls(sum: number, rolls: number | null): number | null {
  return rolls === null ? null : sum + rolls;
}

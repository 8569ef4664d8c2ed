import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type House } from '../../shared-core/house/index.ts';
import { isRollGoods, rollOf } from '../../shared-core/ordering/index.ts';
import { explainOrderLine, type HousePlan, planHouse } from '../../shared-core/plan/index.ts';
import { inches, parseLength } from '../../shared-core/units/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { documentOf, exampleDocument, houseOf, type Loose, room, wallcovering } from '../builders.ts';

type Line = HousePlan['order'][number];

/** The one line of an order, and its working as texts. */
function workingOf(facts: Loose) {
  const house = houseOf(facts);
  const { order } = planHouse(house);
  const [line] = order;
  const { needed, toBuy, price } = explainOrderLine(house, line!);
  return { line: line!, needed: needed.map(({ text }) => text), toBuy: toBuy.map(({ text }) => text), price: price.map(({ text }) => text) };
}

/** A room of so many strips of 100 in at one phase. */
const strips = (count: number, covering: Loose, facts: Loose = {}) => documentOf({ coverings: [wallcovering({ soldIn: [{ rolls: 1 }], ...covering })], rooms: [room([`${20 * count} in`])], ...facts });

const unitsIn = (text: string) => {
  const parsed = parseLength(text);
  if (!parsed.ok) throw new Error(`'${text}' is no length`);
  return parsed.value;
};

/** Lengths are shown to the nearest sixteenth of an inch; two of them may be off by as much. */
const READING = inches(1 / 16);
const expectNear = (read: number, meant: number) => expect(Math.abs(read - meant)).toBeLessThanOrEqual(READING);

/** What a text says in numbers, by a pattern that has to be there. */
function numbersIn(text: string | undefined, pattern: RegExp): readonly string[] {
  const found = text === undefined ? null : pattern.exec(text);
  if (!found) throw new Error(`'${text}' does not read ${pattern}`);
  return found.slice(1);
}

/** Recomputes every line of a working from the numbers that stand in it. */
function expectRightArithmetic(house: House, line: Line, pieces: number): void {
  const { needed, toBuy, price } = explainOrderLine(house, line);
  const texts = needed.map(({ text }) => text);
  const covering = house.coverings.find(({ id }) => id === line.covering)!;
  if (!isRollGoods(covering)) throw new Error('goods in rolls');

  const [all, list, , others] = numbersIn(texts[0], /^(\d+) pieces: (.+?)( and (\d+) other lengths)?\.$/);
  const listed = list!.split(', ').map((term) => numbersIn(term, /^(\d+) × (.+)$/));
  const counted = listed.reduce((sum, [count]) => sum + Number(count), 0);
  expect(Number(all)).toBe(pieces);
  if (others === undefined) expect(counted).toBe(pieces);
  else expect(counted).toBeLessThan(pieces);
  const shown = listed.map(([, length]) => unitsIn(length!));
  expect(shown).toEqual(shown.toSorted((one, other) => other - one));

  const safe = texts.find((text) => text.startsWith('A roll of'));
  const { repeat, rollStart, rollLength } = rollOf(covering);
  expect(safe !== undefined).toBe(rollStart === 'anywhere' && repeat > 0);
  if (safe) {
    const [whole, wide, left] = numbersIn(safe, /^A roll of (.+) may begin anywhere in the repeat of (.+): from its first cut it surely gives (.+)\.$/).map(unitsIn);
    for (const [read, meant] of [[whole, rollLength], [wide, repeat], [left, rollLength - repeat]]) expectNear(read!, meant!);
  }

  const every = texts.find((text) => text.startsWith('A piece every'));
  if (every) {
    const [spaced, perRoll] = numbersIn(every, /^A piece every (.+) keeps the match: (\d+) to a roll\.$/);
    const spacing = unitsIn(spaced!);
    // The least whole number of repeats that a piece fits in.
    const length = shown[0]!;
    expectNear(spacing, repeat === 0 ? length : Math.round(spacing / repeat) * repeat);
    expect(spacing - length).toBeLessThanOrEqual(repeat + READING);
    expect(spacing - length).toBeGreaterThanOrEqual(-READING);
    expect(line.rollsNeeded).toBe(Math.ceil(pieces / Number(perRoll)));
  }

  const [needs, spare, inHand, wanted] = numbersIn(toBuy[0]!.text, /^(\d+) needed \+ (\d+) spare - (\d+) in hand = (\d+)\.$/).map(Number);
  expect(needs).toBe(line.rollsNeeded);
  expect(wanted).toBe(Math.max(0, needs! + spare! - inHand!));
  const sold = toBuy.map(({ text }) => text).find((text) => text.startsWith('As sold'));
  expect(sold !== undefined).toBe(line.toBuy > 0);
  if (sold) {
    const [terms, total, , more] = numbersIn(sold, /^As sold: (.+) = (\d+)(, (\d+) more than wanted)?\.$/);
    const rolls = terms!.split(' + ').reduce((sum, term) => sum + term.split(' × ').reduce((product, factor) => product * Number(factor), 1), 0);
    expect([rolls, Number(total)]).toEqual([line.toBuy, line.toBuy]);
    expect(Number(more ?? 0)).toBe(Math.max(0, line.toBuy - wanted!));
  }

  if (line.price === null || line.toBuy === 0) return;
  const [sums, total] = numbersIn(price[0]!.text, /^(.+) = (\d+\.\d\d) [A-Z]{3}\.$/);
  const minor = (amount: string) => Math.round(Number(amount) * 100);
  const sum = sums!.split(' + ').reduce((before, term) => {
    const [count, each] = term.split(' × ');
    return before + Number(count) * minor(each!);
  }, 0);
  expect([sum, minor(total!)]).toEqual([line.price, line.price]);
}

const piecesCut = (plan: HousePlan, line: Line) => plan.cuts.filter(({ covering, run }) => covering === line.covering && run === line.run).reduce((sum, { rolls }) => sum + rolls.reduce((count, { cuts }) => count + cuts.length, 0), 0);

describe('the working of an order line', () => {
  test('is right arithmetic for every line of the demo house, whatever is in hand', () => {
    for (const rolls of [0, 2, 40]) {
      const demo = demoHouse();
      const house = { ...demo, stock: rolls === 0 ? [] : demo.coverings.map(({ id }) => ({ covering: id, run: '1', rolls })), offers: demo.coverings.map(({ id }) => ({ covering: id, run: '1', rolls: 90 })) };
      const plan = planHouse(house);
      expect(plan.order.length).toBeGreaterThan(3);
      for (const line of plan.order) expectRightArithmetic(house, line, piecesCut(plan, line));
    }
  });

  test('is right arithmetic for whatever is sold at whatever price', () => {
    const sold = fc.uniqueArray(fc.record({ rolls: fc.integer({ min: 1, max: 4 }), price: fc.integer({ min: 1, max: 9_999 }).map((minor) => `${Math.floor(minor / 100)}.${String(minor % 100).padStart(2, '0')}`) }), { minLength: 1, maxLength: 3, selector: ({ rolls, price }) => `${rolls} ${price}` });
    const facts = fc.record({ sold, sides: fc.tuple(fc.integer({ min: 50, max: 300 }), fc.integer({ min: 50, max: 300 })), heights: fc.tuple(fc.integer({ min: 80, max: 100 }), fc.integer({ min: 80, max: 100 })), repeat: fc.integer({ min: 0, max: 25 }), rollStart: fc.constantFrom('anywhere', 'at-repeat'), stock: fc.integer({ min: 0, max: 4 }), spareRolls: fc.integer({ min: 0, max: 2 }) });
    fc.assert(
      fc.property(facts, ({ sold: soldIn, sides: [across, deep], heights, repeat, rollStart, stock, spareRolls }) => {
        const walls = heights.map((height) => ({ height: `${height} in` }));
        const document = documentOf({
          coverings: [wallcovering({ repeat: `${repeat} in`, rollStart, soldIn, spareRolls })],
          rooms: [room([across, deep, across, deep].map((length) => `${length} in`), {}, [...walls, ...walls])],
          ...(stock > 0 ? { stock: [{ covering: 'paper', run: '1', rolls: stock }], offers: [{ covering: 'paper', run: '1', rolls: 500 }] } : {}),
        });
        const house = houseOf(document);
        const plan = planHouse(house);
        for (const line of plan.order) expectRightArithmetic(house, line, piecesCut(plan, line));
      }),
      { numRuns: 150 },
    );
  });

  test('of rolls that begin at their repeat counts from where the first piece begins in it', () => {
    // In a repeat of 20 in the first piece begins 18 in into it, and four of 100 in end 418 in on, within 420 in.
    expect(workingOf(strips(12, { rollLength: '420 in', rollStart: 'at-repeat' })).needed).toEqual([
      `12 pieces: 12 × 8' 4".`,
      `A piece every 8' 4" keeps the match: 4 to a roll.`,
      'Cut together: 3 rolls. No way of cutting takes fewer.',
    ]);
    // With a repeat of 21 in a piece begins 19 in into it and the next 105 in on; of 420 in 401 in are left, and the fourth
    // would end 415 in on.
    const { line, needed } = workingOf(strips(12, { rollLength: '420 in', repeat: '21 in', rollStart: 'at-repeat' }));
    expect(line.rollsNeeded).toBe(4);
    expect(needed[1]).toBe(`A piece every 8' 9" keeps the match: 3 to a roll.`);
  });

  test('says how many singles that is, and what of the spare is lacking', () => {
    const facts = exampleDocument();
    facts.offers = [{ covering: 'fern', run: '1', rolls: 9 }];
    expect(workingOf(facts).toBuy).toEqual(['9 needed + 1 spare - 0 in hand = 10.', 'As sold: 4 × 2 + 1 × 1 = 9.', "The run's offer ends there: 1 of the spare is lacking.", 'The supplier calls that 18 single rolls.']);
  });

  test('says what is bought beyond what is wanted, and what has no price', () => {
    const { toBuy, price } = workingOf(strips(9, { repeat: '0 in', spareRolls: 0, soldIn: [{ rolls: 2 }] }));
    expect(toBuy).toEqual(['3 needed + 0 spare - 0 in hand = 3.', 'As sold: 2 × 2 = 4, 1 more than wanted.']);
    expect(price).toEqual(['A sale unit of this covering has no price yet.']);
  });

  test('of one size sold at two prices shows the one that is paid', () => {
    const { price } = workingOf(strips(9, { repeat: '0 in', spareRolls: 0, soldIn: [{ rolls: 1, price: '9.00' }, { rolls: 1, price: '7.50' }] }));
    expect(price).toEqual(['3 × 7.50 = 22.50 USD.']);
  });

  test('of rooms that may not share rolls says so, and claims no more than it knows', () => {
    const rooms = ['one', 'other'].map((id) => room(['80 in'], { id, name: id }));
    const facts = (pooling: string) => documentOf({ rules: { pooling }, coverings: [wallcovering({ repeat: '0 in' })], rooms });
    expect(workingOf(facts('room')).needed.slice(1)).toEqual(['Each room from rolls of its own: 4 rolls. No way of cutting them so takes fewer.']);
    expect(workingOf(facts('house')).needed.slice(-2)).toEqual(['Cut together: 3 rolls. No way of cutting takes fewer.', 'Room by room: 4 rolls.']);
  });
});

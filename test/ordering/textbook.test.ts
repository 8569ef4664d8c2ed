import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addTextbookCounts, chanceOfShort, countByTextbook, type TextbookCounts, type TextbookRoom, usableYield } from '../../shared-core/ordering/index.ts';
import { inches, lengthOf, millimetres, rectangleArea, showArea } from '../../shared-core/units/index.ts';
import { USABLE_YIELD } from '../conformance/rolls-and-strips.ts';

const ROOM: TextbookRoom = {
  roll: { width: millimetres(530), length: millimetres(10_050) },
  repeat: millimetres(625),
  lead: null,
  strips: 16,
  length: millimetres(2_400),
  area: rectangleArea(millimetres(8_480), millimetres(2_300)),
};

describe('the ways of textbooks', () => {
  test('16 strips of 2.40 m, repeat 0.625 m: 4 rolls in whole repeats, 6 with a repeat more', () => {
    const { wholeRepeats, oneRepeatMore, byArea } = countByTextbook(ROOM);
    expect(wholeRepeats.rolls).toBe(4);
    expect(wholeRepeats.chanceShort).toBeCloseTo(1 - (150 / 625) ** 4, 12);
    expect(oneRepeatMore).toEqual({ rolls: 6, chanceShort: 0 });
    // 24.6 in: the chart ends at 23 in.
    expect(byArea).toEqual({ rolls: null, chanceShort: 1 });
  });

  test('by area: 19.5 m² at a repeat of 53 cm, 3.4 m² a roll, are 6 rolls', () => {
    const room = { ...ROOM, repeat: millimetres(530) };
    expect(showArea(usableYield(room.roll.width, room.roll.length, room.repeat)!, 'metric')).toBe('3.40 m²');
    expect(countByTextbook(room).byArea.rolls).toBe(6);
  });

  test('a free match leaves nothing to chance: so many rolls do or do not', () => {
    expect(countByTextbook({ ...ROOM, repeat: millimetres(0) })).toMatchObject({ wholeRepeats: { rolls: 4, chanceShort: 0 }, byArea: { rolls: 5, chanceShort: 0 } });
    expect(countByTextbook({ ...ROOM, repeat: millimetres(0), area: rectangleArea(millimetres(4_000), millimetres(2_300)) }).byArea).toEqual({ rolls: 2, chanceShort: 1 });
  });

  test('rolls that begin at their repeat give what they give', () => {
    // 500 mm before the first strip leave 9550 mm: two spacings of 2500 and a strip of 2400 are 7400, three are 9900.
    expect(countByTextbook({ ...ROOM, lead: millimetres(500) }).wholeRepeats).toEqual({ rolls: 4, chanceShort: 1 });
    expect(countByTextbook({ ...ROOM, lead: millimetres(150) }).wholeRepeats).toEqual({ rolls: 4, chanceShort: 0 });
  });

  test('a strip longer than a roll has no count', () => {
    expect(countByTextbook({ ...ROOM, length: millimetres(10_100) }).wholeRepeats).toEqual({ rolls: null, chanceShort: 1 });
  });

  test('fall short as often as rolls that are cut from a place drawn by lot', () => {
    const lengths = fc.record({ roll: fc.integer({ min: 20, max: 120 }), repeat: fc.integer({ min: 1, max: 12 }), length: fc.integer({ min: 5, max: 40 }), strips: fc.integer({ min: 1, max: 5 }) });
    fc.assert(
      fc.property(lengths, ({ roll, repeat, length, strips }) => {
        fc.pre(length <= roll);
        // A strip is lost at whole units only: one start between each two stands for all there.
        const starts = Array.from({ length: repeat }, (_, at) => at + 0.5);
        const givenFrom = (start: number) => {
          let [given, at] = [0, start];
          while (at + length <= roll) {
            given += 1;
            at += Math.ceil(length / repeat) * repeat;
          }
          return given;
        };
        const { wholeRepeats, oneRepeatMore } = countByTextbook({ ...ROOM, roll: { width: ROOM.roll.width, length: lengthOf(roll) }, repeat: lengthOf(repeat), length: lengthOf(length), strips });
        for (const { rolls, chanceShort } of [wholeRepeats, oneRepeatMore]) {
          if (rolls === null || rolls > 3) continue;
          const drawn = Array.from({ length: rolls }).reduce<readonly number[]>((sums) => sums.flatMap((sum) => starts.map((start) => sum + givenFrom(start))), [0]);
          expect(chanceShort).toBeCloseTo(drawn.filter((sum) => sum < strips).length / drawn.length, 9);
        }
      }),
    );
  });
});

describe('the chance that rolls do not do', () => {
  test.each([
    [{ rolls: 4, strips: 16, mostPerRoll: 4, chanceOfOneLess: 0.76 }, 1 - 0.24 ** 4],
    [{ rolls: 4, strips: 15, mostPerRoll: 4, chanceOfOneLess: 0.76 }, 1 - 0.24 ** 4 - 4 * 0.76 * 0.24 ** 3],
    [{ rolls: 6, strips: 16, mostPerRoll: 4, chanceOfOneLess: 0.76 }, 0],
    [{ rolls: 3, strips: 16, mostPerRoll: 4, chanceOfOneLess: 0.1 }, 1],
    [{ rolls: 4, strips: 16, mostPerRoll: 4, chanceOfOneLess: 1 }, 1],
    [{ rolls: 0, strips: 0, mostPerRoll: 4, chanceOfOneLess: 0.5 }, 0],
  ])('%o is %d', (asked, chance) => {
    expect(chanceOfShort(asked)).toBeCloseTo(chance, 12);
  });

  test('is right for more rolls than a product of chances can be told for', () => {
    // Half of 4,000 rolls give one less, and as many may.
    expect(chanceOfShort({ rolls: 4_000, strips: 14_000, mostPerRoll: 4, chanceOfOneLess: 0.5 })).toBeCloseTo(0.4937, 3);
  });
});

test('the usable yield is that of the chart, for its own rolls and twice as long', () => {
  for (const { repeat, squareFeet } of USABLE_YIELD.rows) {
    expect(showArea(usableYield(inches(20.5), inches(198), inches(repeat))!, 'imperial')).toBe(`${squareFeet}.0 sq ft`);
    expect(showArea(usableYield(inches(20.5), inches(396), inches(repeat))!, 'imperial')).toBe(`${2 * squareFeet}.0 sq ft`);
  }
  expect(showArea(usableYield(inches(20.5), inches(396), inches(12))!, 'imperial')).toBe('44.0 sq ft');
  expect(usableYield(inches(20.5), inches(198), inches(23.5))).toBeNull();
});

test('rooms counted one by one fall short where one of them does', () => {
  const counts = (rolls: number | null, chanceShort: number): TextbookCounts => ({ strips: 3, wholeRepeats: { rolls, chanceShort }, oneRepeatMore: { rolls: 2, chanceShort: 0 }, byArea: { rolls: null, chanceShort: 1 } });
  const all = addTextbookCounts([counts(4, 0.5), counts(6, 0.2)]);
  expect(all).toMatchObject({ strips: 6, wholeRepeats: { rolls: 10 }, oneRepeatMore: { rolls: 4, chanceShort: 0 }, byArea: { rolls: null, chanceShort: 1 } });
  expect(all.wholeRepeats.chanceShort).toBeCloseTo(0.6, 12);
  expect(addTextbookCounts([])).toEqual({ strips: 0, wholeRepeats: { rolls: 0, chanceShort: 0 }, oneRepeatMore: { rolls: 0, chanceShort: 0 }, byArea: { rolls: 0, chanceShort: 0 } });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planCost, quoteOf } from '../../shared-core/costing/index.ts';
import { moneyOf } from '../../shared-core/units/index.ts';
import { paintNeed } from '../calendar/house-to-work.ts';
import { factsOf, job, material, pricedHouse, STUBE } from './costs.ts';

const quoted = (house: Parameters<typeof factsOf>[0], facts: Parameters<typeof factsOf>[1] = {}) => {
  const all = factsOf(house, facts);
  return quoteOf({ house, cost: planCost(all), jobs: all.jobs });
};

describe('a quote', () => {
  const work = { rate: '42.00', markup: '15', tax: '19', rounding: '10' };
  // Materials of 420.00 with 63.00 of markup and labour of 126.00 are 609.00: 610.00.
  const jobs = [job('wash', 60), job('fill', 30), job('hang', 90, { kind: 'hanging' }), job('strip', 0, { isOthers: true, words: 'Strip the paper' })];
  const house = pricedHouse({ work });
  const quote = quoted(house, { materials: [material('filler', 12_00)], paints: [paintNeed('lime', [], 1, { price: moneyOf(348_00) })], jobs });

  test('has lines by room and kind, markup and rounding in them, that add up to its net', () => {
    expect(quote.lines).toEqual([
      { room: null, kind: 'coverings', words: 'Wallcoverings', included: ['P-1'], amount: 69_11 },
      { room: null, kind: 'paints', words: 'Paints', included: ['lime'], amount: 400_86 },
      { room: null, kind: 'materials', words: 'Materials of the preparation', included: ['filler'], amount: 13_82 },
      { room: 'room', kind: 'preparation', words: 'Preparing the surfaces', included: ['Do wash', 'Do fill'], amount: 63_11 },
      { room: 'room', kind: 'hanging', words: 'Hanging', included: ['Do hang'], amount: 63_10 },
    ]);
    expect(quote).toMatchObject({ net: 610_00, taxRate: '19', tax: 115_90, gross: 725_90, missing: [] });
  });

  test('says what is not in it', () => {
    expect(quote.excluded).toEqual(['Stube: Strip the paper (somebody else does it)', 'Damage that shows only once the surfaces are bare']);
    const bare = pricedHouse({ stock: [{ covering: 'paper', run: '7', rolls: 4 }, { covering: 'paper', run: '8', rolls: 1 }] });
    expect(quoted(bare).excluded).toEqual(['P-1 that was in hand before', 'Tax']);
    expect(quoted(bare)).toMatchObject({ lines: [], net: 0, taxRate: null });
  });

  test('has no amounts while something has no price', () => {
    const open = quoted(pricedHouse(), { jobs });
    expect(open.lines.map(({ amount }) => amount)).toEqual([null, null, null]);
    expect(open).toMatchObject({ net: null, gross: null, missing: ['What an hour of work costs is not known.'] });
  });

  test('of rooms alike keeps them apart', () => {
    const two = pricedHouse({ work, rooms: [STUBE, { ...STUBE, id: 'hall', name: 'Flur' }] });
    expect(quoted(two, { jobs: [job('a', 10), job('b', 10, { room: 'hall' })] }).lines.map(({ room, kind }) => [room, kind])).toEqual([[null, 'coverings'], ['room', 'preparation'], ['hall', 'preparation']]);
  });
});

test('its lines add up to its net to the smallest unit, none below its cost', () => {
  const facts = fc.record({
    prices: fc.array(fc.integer({ min: 0, max: 100_000 }), { maxLength: 5 }),
    minutes: fc.array(fc.integer({ min: 0, max: 600 }), { maxLength: 5 }),
    markup: fc.integer({ min: 0, max: 100 }),
    rounding: fc.integer({ min: 0, max: 20_000 }),
  });
  fc.assert(
    fc.property(facts, ({ prices, minutes, markup, rounding }) => {
      const house = pricedHouse({ work: { rate: '37.77', markup: String(markup), rounding: (rounding / 100).toFixed(2) } });
      const all = factsOf(house, { order: [], materials: prices.map((one, index) => material(`m${index}`, one)), jobs: minutes.map((one, index) => job(`j${index}`, one, { room: `r${index}` })) });
      const cost = planCost(all);
      const quote = quoteOf({ house, cost, jobs: all.jobs });
      expect(quote.lines.reduce((sum, { amount }) => sum + amount!, 0)).toBe(cost.net);
      const labour = new Map(cost.lines.filter(({ kind }) => kind === 'labour').map((line) => [line.room, line.cost!]));
      for (const { room, amount } of quote.lines) if (room !== null) expect(amount).toBeGreaterThanOrEqual(labour.get(room)!);
    }),
    { numRuns: 300 },
  );
});

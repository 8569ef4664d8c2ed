import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { explainCost, explainCostLine, findPurchases, planCost } from '../../shared-core/costing/index.ts';
import { percentOf } from '../../shared-core/ordering/index.ts';
import { moneyOf } from '../../shared-core/units/index.ts';
import { metricPaper, paintNeed } from '../calendar/house-to-work.ts';
import { costOf, factsOf, job, material, pricedHouse } from './costs.ts';

const WORK = { rate: '42.00', markup: '15', tax: '19', rounding: '10' };

describe('the cost of a house', () => {
  const house = pricedHouse({ work: WORK });
  const facts = factsOf(house, {
    materials: [material('filler', 12_00)],
    paints: [paintNeed('lime', [], 1, { price: moneyOf(348_00) })],
    jobs: [job('fill', 45, { people: 2 }), job('look', 0)],
  });
  const cost = planCost(facts);

  test('is materials of 420.00, labour of 63.00 and markup of 63.00: 546.00, rounded up to 550.00, with 19 % of tax 654.50', () => {
    expect(cost.lines).toEqual([
      { kind: 'covering', of: 'paper', words: 'P-1', room: null, minutes: null, spentMinutes: null, cost: 60_00 },
      { kind: 'paint', of: 'lime', words: 'lime', room: null, minutes: null, spentMinutes: null, cost: 348_00 },
      { kind: 'material', of: 'filler', words: 'filler', room: null, minutes: null, spentMinutes: null, cost: 12_00 },
      { kind: 'labour', of: 'fill', words: 'Do fill', room: 'room', minutes: 90, spentMinutes: null, cost: 63_00 },
    ]);
    expect(cost).toMatchObject({ materials: 420_00, labour: 63_00, markup: 63_00, rounding: 4_00, net: 550_00, tax: 104_50, gross: 654_50, missing: [] });
  });

  test('shows its working, each rounding with its rule', () => {
    const workings = explainCost(facts, cost);
    expect(workings.materials.map(({ text }) => text)).toEqual(['P-1: 60.00 EUR.', 'lime: 348.00 EUR.', 'filler: 12.00 EUR.', 'Together 420.00 EUR.']);
    expect(workings.markup).toEqual([{ text: '15 % of 420.00 EUR = 63.00 EUR.', rule: 'rounded once to the smallest unit of money, a half up' }]);
    expect(workings.net).toEqual([
      { text: '420.00 EUR of materials + 63.00 EUR of labour + 63.00 EUR of markup = 546.00 EUR.' },
      { text: '4.00 EUR more up to a multiple of 10.00 EUR = 550.00 EUR.', rule: 'the price is rounded up, never down' },
    ]);
    expect(workings.tax[0]!.text).toBe('19 % of 550.00 EUR = 104.50 EUR.');
    expect(workings.gross).toEqual([{ text: '550.00 EUR + 104.50 EUR of tax = 654.50 EUR.' }]);
    expect(explainCostLine(facts, cost.lines[3]!)).toEqual([
      { text: '45 min.' },
      { text: '2 people × 45 min = 90 min.' },
      { text: '90 min at 42.00 EUR an hour = 63.00 EUR.', rule: 'rounded once to the smallest unit of money, a half up' },
    ]);
    expect(explainCostLine(facts, cost.lines[0]!)).toEqual([{ text: 'to buy: 60.00 EUR.', rule: 'prices as typed' }]);
  });

  test('without markup, tax and rounding is materials and labour', () => {
    const plain = pricedHouse({ work: { rate: '42.00' } });
    expect(costOf(plain, { jobs: [job('a', 60)] })).toMatchObject({ markup: 0, rounding: 0, net: 102_00, tax: 0, gross: 102_00 });
    const workings = explainCost(factsOf(plain), costOf(plain, { jobs: [job('a', 60)] }));
    expect([workings.markup, workings.tax].flat().map(({ text }) => text)).toEqual(['None was said.', 'None was said.']);
    expect(workings.net).toHaveLength(1);
  });

  test('of 126 min at 42.00 an hour is 88.20; of 90 min of two people 126.00', () => {
    const jobs = [job('a', 126), job('b', 90, { people: 2 })];
    const own = factsOf(pricedHouse({ work: { rate: '42.00' } }), { order: [], jobs });
    expect(planCost(own).lines.map(({ cost }) => cost)).toEqual([88_20, 126_00]);
    expect(explainCostLine(own, planCost(own).lines[0]!)[1]!.text).toBe('126 min at 42.00 EUR an hour = 88.20 EUR.');
  });

  test('rounds the labour of each job once, a half up', () => {
    // 1 min at 0.30 an hour is half a cent; 7 min at 41.00 are 4.78333.
    expect(costOf(pricedHouse({ work: { rate: '0.30' } }), { jobs: [job('a', 1)] }).labour).toBe(1);
    expect(costOf(pricedHouse({ work: { rate: '41.00' } }), { jobs: [job('a', 7), job('b', 7)] }).labour).toBe(4_78 * 2);
  });
});

describe('what has no price', () => {
  test('is named, and what takes it is not known', () => {
    const house = pricedHouse({ work: { markup: '10' } }, { soldIn: [{ rolls: 1 }] });
    const cost = costOf(house, {
      materials: [material('filler', null), material('size', null, { packs: null }), material('tape', null, { amount: 0 })],
      paints: [paintNeed('lime', [], 1, { millilitres: null }), paintNeed('gloss', []), paintNeed('spare', [], 1, { millilitres: 0 })],
      jobs: [job('wash', 30), job('fill', 30)],
    });
    expect(cost.missing).toEqual([
      'P-1 has no price.',
      'How far lime spreads is not known.',
      'gloss has no price.',
      'filler has no price.',
      'What size is sold in is not known.',
      'What an hour of work costs is not known.',
    ]);
    expect(cost).toMatchObject({ materials: null, labour: null, markup: null, rounding: null, net: null, tax: null, gross: null });
    const workings = explainCost(factsOf(house), cost);
    expect(workings.net.map(({ text }) => text)).toEqual(cost.missing);
    expect(workings.materials.at(-1)).toEqual({ text: 'Not all of it has a price.' });
    expect(explainCostLine(factsOf(house), cost.lines[0]!)).toEqual([{ text: 'P-1 has no price.' }]);
  });

  test('of labour alone leaves the materials known; without work none is asked for', () => {
    expect(costOf(pricedHouse(), { jobs: [job('a', 1)] })).toMatchObject({ materials: 60_00, markup: 0, labour: null, net: null });
    expect(costOf(pricedHouse(), { jobs: [job('a', 0)] })).toMatchObject({ labour: 0, net: 60_00, missing: [] });
  });
});

describe('materials', () => {
  const order = (facts: object = {}, line: object = {}) => ({ id: '1', placed: '2026-03-02', supplier: 'north', ...facts, lines: [{ covering: 'paper', rolls: 4, price: '60.00', rooms: ['room'], ...line }] });

  test('that were ordered cost what the order says, and only what is still to be bought beside it', () => {
    expect(costOf(pricedHouse({ orders: [order()] })).materials).toBe(60_00);
    // Three of four are ordered at 50.00; one more is bought at 15.00.
    const house = pricedHouse({ orders: [order({}, { rolls: 3, price: '50.00' })] });
    const cost = costOf(house);
    expect(cost.lines).toMatchObject([{ kind: 'covering', cost: 65_00 }]);
    expect(explainCostLine(factsOf(house), cost.lines[0]!).map(({ text }) => text)).toEqual(['order 1: 50.00 EUR.', 'to buy: 15.00 EUR.', 'Together 65.00 EUR.']);
  });

  test('that do not come are not paid', () => {
    // The supplier took one of four off: three at 45.00 and one more at 15.00.
    const house = pricedHouse({ orders: [order({}, { takenOff: 1 })] });
    const cost = costOf(house);
    expect(cost.materials).toBe(60_00);
    expect(explainCostLine(factsOf(house), cost.lines[0]!).map(({ text }) => text)).toEqual(['order 1: 60.00 EUR × 3 of 4 rolls that come.', 'Together 45.00 EUR.', 'to buy: 15.00 EUR.', 'Together 60.00 EUR.']);
  });

  test('that were ordered without a price are named with their order', () => {
    expect(costOf(pricedHouse({ orders: [order({}, { price: undefined })] })).missing).toEqual(['P-1 has no price in order 1.']);
  });

  test('are net of the tax that their prices hold: the supplier’s, the house’s, the order’s', () => {
    const north = { suppliers: [{ id: 'north', tax: { rate: '20', included: true } }] };
    expect(costOf(pricedHouse(north)).materials).toBe(50_00);
    expect(costOf(pricedHouse({ tax: { rate: '20', included: true } }, { supplier: undefined })).materials).toBe(50_00);
    expect(costOf(pricedHouse({ tax: { rate: '20' } })).materials).toBe(60_00);
    // An order keeps its own tax, whatever the supplier's is now.
    expect(costOf(pricedHouse({ ...north, orders: [order({ tax: { rate: '50', included: true } })] })).materials).toBe(40_00);
    const house = pricedHouse({ ...north, materials: [{ material: 'filler', supplier: 'north', packs: [{ amount: 500, price: '1.00' }] }] });
    const facts = factsOf(house, { materials: [material('filler', 1_00), material('size', 1_00)] });
    expect(planCost(facts).lines.map(({ cost }) => cost)).toEqual([50_00, 83, 1_00]);
    expect(explainCostLine(facts, planCost(facts).lines[1]!)).toEqual([
      { text: 'to buy: 1.00 EUR.', rule: 'prices as typed' },
      { text: 'Without the 20 % of tax that it holds: 0.83 EUR.', rule: 'tax is reckoned once over all that is bought together, then shared by the prices' },
    ]);
  });

  test('of 60.00 and 60.00 that hold 20 % are 50.00 and 50.00 net', () => {
    const house = pricedHouse({ tax: { rate: '20', included: true } });
    const purchases = findPurchases(factsOf(house, { order: [], materials: [material('filler', 60_00), material('size', 60_00)] }));
    expect(purchases.map(({ price, net }) => [price, net])).toEqual([[60_00, 50_00], [60_00, 50_00]]);
  });

  test('of one order have their tax taken out once', () => {
    // 0.04 that hold 20 % are 0.03 net; each alone would be 0.02.
    const two = { id: '1', placed: '2026-03-02', tax: { rate: '20', included: true }, lines: ['paper', 'moss'].map((covering) => ({ covering, rolls: 4, price: '0.02', rooms: [] })) };
    const house = pricedHouse({ coverings: ['paper', 'moss'].map((id) => metricPaper({ id, patternNumber: id })), orders: [two] });
    expect(costOf(house).lines.map(({ words, cost }) => [words, cost])).toEqual([['paper', 2], ['moss', 1]]);
  });

  test('of one supplier have their tax taken out once, and share it to the cent', () => {
    // 0.06 that holds 20 % is 0.05; 0.02 alone would be 0.0167, so 0.02, three times.
    const house = pricedHouse({ suppliers: [{ id: 'north', tax: { rate: '20', included: true } }], materials: ['a', 'b', 'c'].map((id) => ({ material: id, supplier: 'north', packs: [{ amount: 1 }] })) });
    const cost = costOf(house, { order: [], materials: ['a', 'b', 'c'].map((id) => material(id, 2)) });
    expect([cost.materials, ...cost.lines.map((line) => line.cost)]).toEqual([5, 2, 2, 1]);
  });
});

test('what was worked and spent stands against what was planned', () => {
  const house = pricedHouse({
    work: { rate: '42.00' },
    tasks: [{ task: 'fill', spent: 50 }, { task: 'wash', minutes: 10 }, { task: 'gone', spent: 5 }],
    expenses: [{ what: 'filler', cost: '12.50' }, { what: 'tape', cost: '3' }],
  });
  const facts = factsOf(house, { jobs: [job('fill', 45, { people: 2 }), job('wash', 10)] });
  const cost = planCost(facts);
  expect(cost.actual).toEqual({ minutesPlanned: 100, minutesSpent: 105, spent: 15_50, planned: 60_00 });
  expect(cost.lines.filter(({ kind }) => kind === 'labour').map(({ minutes, spentMinutes }) => [minutes, spentMinutes])).toEqual([[90, 100], [10, null]]);
  expect(explainCost(facts, cost).actual.map(({ text }) => text)).toEqual(['105 min spent - 100 min planned = 5 min too many.', '60.00 EUR planned for materials - 15.50 EUR spent = 44.50 EUR left.']);
  const dear = { ...cost, actual: { ...cost.actual, minutesSpent: 40, spent: moneyOf(61_00) } };
  expect(explainCost(facts, dear).actual.map(({ text }) => text)).toEqual(['100 min planned - 40 min spent = 60 min left.', '61.00 EUR spent - 60.00 EUR planned for materials = 1.00 EUR too much.']);
  expect(explainCost(facts, { ...cost, actual: { ...cost.actual, planned: null } }).actual[1]!.text).toBe('15.50 EUR spent; what was planned for it is not known.');
});

test('parts add up, markup is exact to half a unit, and rounding up never goes below nor as far as a multiple more', () => {
  const price = fc.integer({ min: 0, max: 1_000_000 });
  const rate = fc.integer({ min: 0, max: 100_000 }).map((thousandths) => (thousandths / 1000).toFixed(3));
  const money = fc.integer({ min: 0, max: 100_000 }).map((cents) => (cents / 100).toFixed(2));
  const facts = fc.record({ prices: fc.array(price, { maxLength: 5 }), minutes: fc.array(fc.integer({ min: 0, max: 5000 }), { maxLength: 5 }), hour: money, markup: rate, tax: rate, rounding: money, held: rate });
  fc.assert(
    fc.property(facts, ({ prices, minutes, hour, markup, tax, rounding, held }) => {
      const materials = prices.map((one, index) => material(`m${index}`, one));
      const house = pricedHouse({
        work: { rate: hour, markup, tax, rounding },
        tax: { rate: held, included: true },
      });
      const cost = costOf(house, { order: [], materials, jobs: minutes.map((one, index) => job(`j${index}`, one, { people: index % 2 === 0 ? 1 : 2 })) });
      const sum = (kind: (line: (typeof cost.lines)[number]) => boolean) => cost.lines.filter(kind).reduce((total, line) => total + line.cost!, 0);
      expect(sum(({ kind }) => kind !== 'labour')).toBe(cost.materials);
      expect(sum(({ kind }) => kind === 'labour')).toBe(cost.labour);
      expect(cost.materials! + cost.labour! + cost.markup! + cost.rounding!).toBe(cost.net);
      expect(cost.net! + cost.tax!).toBe(cost.gross);
      const apart = BigInt(cost.markup!) * 100_000n - BigInt(cost.materials!) * BigInt(markup.replace('.', ''));
      expect(apart <= 50_000n && apart > -50_000n).toBe(true);
      const multiple = Number(rounding.replace('.', ''));
      expect(cost.rounding! >= 0 && cost.rounding! < Math.max(1, multiple)).toBe(true);
      if (multiple > 0) expect(cost.net! % multiple).toBe(0);
      expect(cost.missing).toEqual([]);
    }),
    { numRuns: 300 },
  );
});

test('so many percent of an amount are exact where doubles are not', () => {
  expect(percentOf(moneyOf(420_00), '7.25')).toBe(30_45);
  expect(percentOf(moneyOf(9_007_199_254_740_00), '100')).toBe(9_007_199_254_740_00);
  // 900,719,925,474,099 × 33,333 / 100,000 = 300,236,972,758,281.4…
  expect(percentOf(moneyOf(9_007_199_254_740_99), '33.333')).toBe(300_236_972_758_281);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { choosePacks, type Pack } from '../../shared-core/prep/index.ts';
import { moneyOf } from '../../shared-core/units/index.ts';
import { type Loose } from '../builders.ts';
import { oneWall, prepared } from './prepared.ts';

/** Every way of buying, one offer after the other; the best of them. */
function bestByTrying(need: number, offers: readonly Pack[]): readonly [cost: number, amount: number, packs: number] {
  const isPriced = offers.every(({ price }) => price !== null);
  const judge = (counts: readonly number[]): readonly [number, number, number] => [
    isPriced ? counts.reduce((sum, count, index) => sum + count * offers[index]!.price!, 0) : 0,
    counts.reduce((sum, count, index) => sum + count * offers[index]!.amount, 0),
    counts.reduce((sum, count) => sum + count, 0),
  ];
  let best: readonly [number, number, number] = [Infinity, Infinity, Infinity];
  const isBetter = (one: typeof best, other: typeof best) => (one[0] - other[0] || one[1] - other[1] || one[2] - other[2]) < 0;
  const go = (counts: readonly number[], left: number): void => {
    if (left <= 0) {
      const judged = judge([...counts, ...offers.slice(counts.length).map(() => 0)]);
      if (isBetter(judged, best)) best = judged;
      return;
    }
    const offer = offers[counts.length];
    if (!offer) return;
    for (let count = 0; count <= Math.ceil(left / offer.amount); count += 1) go([...counts, count], left - count * offer.amount);
  };
  go([], need);
  return best;
}

const offer = (isPriced: boolean) => fc.record({ amount: fc.integer({ min: 1, max: 12 }), price: isPriced ? fc.integer({ min: 0, max: 40 }).map(moneyOf) : fc.constant(null) });

describe('packs', () => {
  test('by hand', () => {
    const offers = [{ amount: 5, price: moneyOf(300) }, { amount: 2, price: moneyOf(150) }];
    expect(choosePacks(12, offers)).toMatchObject({ counts: [2, 1], price: 750 });
    expect(choosePacks(0, offers)).toMatchObject({ counts: [0, 0], price: 0 });
    expect(choosePacks(3200, [{ amount: 5000, price: moneyOf(1200) }, { amount: 2000, price: moneyOf(600) }])).toMatchObject({ counts: [0, 2], price: 1200 });
    expect(choosePacks(6, [{ amount: 5, price: null }, { amount: 4, price: moneyOf(1) }])).toMatchObject({ counts: [0, 2], price: null });
  });

  test('are those that every way of buying is tried for', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), fc.boolean().chain((isPriced) => fc.array(offer(isPriced), { minLength: 1, maxLength: 3 })), (need, offers) => {
        const { counts, price } = choosePacks(need, offers);
        const [cost, amount, packs] = bestByTrying(need, offers);
        expect(counts.reduce((sum, count, index) => sum + count * offers[index]!.amount, 0)).toBe(amount);
        expect(counts.reduce((sum, count) => sum + count, 0)).toBe(packs);
        if (price !== null) expect(price).toBe(cost);
      }),
      { numRuns: 500 },
    );
  });

  test('of a need beyond all that is tried are the best by the amount, and what is left exactly', () => {
    const offers = [{ amount: 454, price: moneyOf(500) }, { amount: 2268, price: moneyOf(2000) }];
    const { counts } = choosePacks(20_000_000, offers);
    // 8818 large ones hold 19,999,224; the 776 g left are one more large one at 20.00 or two small at 10.00.
    expect(counts).toEqual([2, 8818]);
  });
});

describe('the materials of a house', () => {
  const filled = { kind: 'old-plaster', states: ['holes'], affected: 100 };
  const materials = (house: Loose = {}) => prepared(oneWall(filled, 'paper', { house })).materials;

  test('are what its tasks use, and the paste of what hangs', () => {
    expect(materials().map(({ material, unit, amount, packs, rooms }) => [material, unit, amount, packs, rooms])).toEqual([
      ['filler', 'g', 4000, null, ['room']],
      ['abrasive', 'pieces', 5, null, ['room']],
      ['size', 'ml', 1000, null, ['room']],
      ['paste', 'ml', 1800, null, ['room']],
    ]);
  });

  test('are bought at least cost in the packs that the house names', () => {
    const own = [{ material: 'filler', packs: [{ amount: 2500, price: '7.00' }, { amount: 1000, price: '4.00' }, { amount: 500.5 }] }];
    expect(materials({ materials: own })[0]).toMatchObject({ packs: [{ amount: 1000, count: 4 }], price: null });
    expect(materials({ materials: [{ material: 'filler', packs: own[0]!.packs.slice(0, 2) }] })[0]).toMatchObject({ packs: [{ amount: 2500, count: 2 }], price: 1400 });
    // Two packs of half a litre hold the litre of size exactly; a thousandth less in each, and it takes a third.
    expect(materials({ materials: [{ material: 'size', packs: [{ amount: 500, price: '1.00' }] }] })[2]).toMatchObject({ packs: [{ amount: 500, count: 2 }] });
    expect(materials({ materials: [{ material: 'size', packs: [{ amount: 499.999, price: '1.00' }] }] })[2]).toMatchObject({ packs: [{ amount: 499.999, count: 3 }], price: 300 });
  });

  test('leave out what somebody else does', () => {
    expect(materials({ tasks: [{ task: 'room:prepare:fill-holes', isOthers: true }] }).map(({ material }) => material)).toEqual(['abrasive', 'size', 'paste']);
  });

  test('are pooled over rooms', () => {
    const house = oneWall(filled, 'paper');
    const [room] = house.rooms;
    const { materials: pooled } = prepared({ ...house, rooms: [room!, { ...room!, id: 'other' }] });
    expect(pooled.map(({ amount, rooms }) => [amount, rooms.join(' ')])).toEqual([[8000, 'room other'], [10, 'room other'], [2000, 'room other'], [3600, 'room other']]);
  });

  test('hold paste by how the covering is pasted', () => {
    const pasteOf = (paste: string | undefined, kind = 'wallcovering') => {
      const house = oneWall(undefined, 'own', { house: { coverings: [{ id: 'own', kind, width: '50 cm', rollLength: '10 m', paste }] } });
      return prepared(house).materials.map(({ material, amount }) => [material, amount]);
    };
    expect([pasteOf(undefined), pasteOf('paste the wall'), pasteOf('prepasted'), pasteOf('clear adhesive'), pasteOf('self-adhesive')]).toEqual([[['paste', 1800]], [['paste', 1800]], [], [['adhesive', 2500]], []]);
    expect(prepared(oneWall(undefined, 'lining')).materials).toMatchObject([{ material: 'paste', amount: 2000 }]);
    expect(prepared(oneWall(undefined, 'paint')).materials).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { findDifference, findReturns } from '../../shared-core/ordering/difference.ts';
import { keepLedger, type OrderLine } from '../../shared-core/ordering/index.ts';
import type { Loose } from '../builders.ts';
import { came, FERN, fernHouse, placed, planOf, rolls, strips } from './fern-house.ts';

const runsOf = (facts: Loose) => planOf(facts).runs[0]!;
const inThrees = [{ rolls: 3, price: null, atLeast: 1 }];
const inDoubles = { ...FERN, soldIn: [{ rolls: 2, price: '84.00' }] };
const ONE_SPARE = { rules: { spareRolls: 1 } };

describe('a difference order', () => {
  test('where 10 of run 2214 were ordered and came and 12 are needed is 2 of it, which may be gone', () => {
    // 22 strips are 8 rolls and 14 are 5; 36 together are 12.
    const facts = { rooms: [strips('bed', 22), strips('hall', 14)], orders: [placed([{ run: '2214', rolls: 10 }])], deliveries: [came('2214', 10)] };
    expect(runsOf(facts).difference).toEqual([{ covering: 'fern', run: '2214', rolls: 2, rooms: ['hall'], isOffered: false }]);
    expect(runsOf({ ...facts, offers: [rolls('2214', 5)] }).difference).toEqual([{ covering: 'fern', run: '2214', rolls: 2, rooms: ['bed', 'hall'], isOffered: true }]);
  });

  test('is none before anything was ordered, and none where the order is enough', () => {
    expect(runsOf({ rooms: [strips('bed', 9)], offers: [rolls('1', 2)] }).difference).toEqual([]);
    expect(runsOf({ rooms: [strips('bed', 9)], orders: [placed([{ run: '1', rolls: 3 }])] }).difference).toEqual([]);
  });

  test('of an order of any one run asks for the run that comes, whose number is not known', () => {
    expect(runsOf({ rooms: [strips('bed', 15)], orders: [placed([{ rolls: 3 }])] }).difference).toEqual([{ covering: 'fern', run: null, rolls: 2, rooms: ['bed'], isOffered: false }]);
  });

  test('of a run that still offers some is what it offers, the spare as far as that goes', () => {
    const [bought] = runsOf({ rules: { spareRolls: 3 }, rooms: [strips('bed', 15)], orders: [placed([{ run: '1', rolls: 5 }])], offers: [rolls('1', 1)] }).difference;
    expect(bought).toEqual({ covering: 'fern', run: '1', rolls: 1, rooms: ['bed'], isOffered: true });
  });

  test('where nobody knows a way out is what is lacking, of the run that comes', () => {
    const ledger = keepLedger(fernHouse({ orders: [placed([{ run: '1', rolls: 5 }])] }), 'fern');
    const short = { run: null, rooms: ['bed'], toBuy: 7, shortfall: 7, spareLacking: 0 } as unknown as OrderLine;
    expect(findDifference(ledger, [short], [])).toEqual([{ covering: 'fern', run: null, rolls: 7, rooms: ['bed'], isOffered: false }]);
    expect(findDifference(ledger, [short], [{ kind: 'untie', rooms: ['bed'] }, { kind: 'another-run', rolls: 6, rooms: ['bed'] }, { kind: 'ask-for-more', run: '1', rolls: 8 }])).toMatchObject([{ run: null, rolls: 6 }]);
  });
});

describe('what goes back', () => {
  const bought = { ...ONE_SPARE, coverings: [inDoubles], rooms: [strips('bed', 24)], orders: [placed([{ run: '2214', rolls: 12, packs: [{ rolls: 2, count: 6 }] }])] };

  test('of 12 of run 2214 that came in doubles, 8 needed and 1 spare, is one double; the third roll stays', () => {
    expect(runsOf({ ...bought, deliveries: [came('2214', 12)] }).returns).toEqual([{ covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 2, why: 'not-needed' }]);
  });

  test('need not be sent where it has not come, in whole sale units too', () => {
    const returns = (come: number) => runsOf({ ...bought, rooms: [strips('bed', 12)], deliveries: [came('2214', come)] }).returns.map(({ rolls: count, why }) => [count, why]);
    // 4 needed and 1 spare: 7 too many of the 12.
    expect([0, 4, 7, 8, 9, 12].map((come) => returns(come))).toEqual([
      [[6, 'not-sent']],
      [[6, 'not-sent']],
      [[4, 'not-sent'], [2, 'not-needed']],
      [[4, 'not-sent'], [2, 'not-needed']],
      [[2, 'not-sent'], [4, 'not-needed']],
      [[6, 'not-needed']],
    ]);
  });

  test('is in the units that the run was ordered in, else in those it is sold in', () => {
    const orders = (packs: Loose) => [placed([{ run: '1', rolls: 9, ...packs }])];
    const returns = (packs: Loose) => runsOf({ coverings: [inDoubles], rooms: [strips('bed', 12)], orders: orders(packs), deliveries: [came('1', 9)] }).returns.map((one) => one.rolls);
    // 5 too many: of threes 3, of threes and singles 5, of doubles 4.
    expect([returns({ packs: [{ rolls: 3, count: 3 }] }), returns({ packs: [{ rolls: 3, count: 2 }, { rolls: 1, count: 3 }] }), returns({})]).toEqual([[3], [5], [4]]);
  });

  test('is never what was in hand before any order', () => {
    expect(runsOf({ rooms: [strips('bed', 3)], stock: [rolls('1', 9)] }).returns).toEqual([]);
    expect(runsOf({ rooms: [strips('bed', 3)], stock: [rolls('1', 9)], orders: [placed([{ run: '1', rolls: 2 }])], deliveries: [came('1', 2)] }).returns).toMatchObject([{ rolls: 2, why: 'not-needed' }]);
  });

  test('is nothing that is not needed while a room waits for a run', () => {
    const facts = { rooms: [strips('bed', 27)], orders: [placed([{ run: '1', rolls: 8 }])], deliveries: [came('1', 8), came('1', 2, { patternNumber: 'X-1' })] };
    expect(runsOf(facts)).toMatchObject({ difference: [{ run: '1', rolls: 1 }], returns: [{ patternNumber: 'X-1', rolls: 2, why: 'wrong-pattern' }] });
  });

  test('of a wrong pattern does at once, of a wrong run once it is decided, less what has gone', () => {
    const facts = (decision: Loose, more: Loose = {}) => ({ rooms: [strips('bed', 9)], orders: [placed([{ run: '1', rolls: 3 }])], deliveries: [came('2', 4, { damaged: 1, ...decision }), came('1', 5, { patternNumber: 'X-1' })], ...more });
    const wrong = { covering: 'fern', patternNumber: 'X-1', run: '1', rolls: 5, why: 'wrong-pattern' };
    expect(runsOf(facts({})).returns).toEqual([wrong]);
    expect(runsOf(facts({ decision: 'send-back' })).returns).toEqual([{ covering: 'fern', patternNumber: 'K-2041', run: '2', rolls: 3, why: 'run-not-ordered' }, wrong]);
    expect(runsOf(facts({ decision: 'send-back' }, { returns: [rolls('2', 3), rolls('1', 2)] })).returns).toEqual([{ ...wrong, rolls: 3 }]);
  });

  test('of a covering that hangs nowhere any more is all that was ordered of it', () => {
    const facts = { rooms: [{ id: 'bed', name: 'Bed' }], orders: [placed([{ run: '1', rolls: 10 }])] };
    expect(planOf(facts)).toMatchObject({ order: [], runs: [{ difference: [], returns: [{ rolls: 10, why: 'not-sent' }] }] });
    expect(planOf({ ...facts, deliveries: [came('1', 10)] })).toMatchObject({ order: [], runs: [{ returns: [{ rolls: 10, why: 'not-needed' }] }] });
  });

  test('without lines and without packs of its own is in the units given', () => {
    const ledger = keepLedger(fernHouse({ orders: [placed([{ run: '1', rolls: 7 }])] }), 'fern');
    expect(findReturns(ledger, [], 'K-2041', inThrees)).toEqual([{ covering: 'fern', patternNumber: 'K-2041', run: '1', rolls: 6, why: 'not-sent' }]);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit, type Edit, type House } from '../../shared-core/house/index.ts';
import { draftOrder, explainInHand, explainOnOrder, explainOrderLine, planHouse, toBePlaced } from '../../shared-core/plan/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

/** A room of so many strips of 100 in, three to a roll of 30 ft without a match. */
const strips = (id: string, count: number) => room([`${20 * count} in`], { id, name: id });
const offer = (run: string, rolls: number) => ({ covering: 'paper', run, rolls });

function houseWith(rooms: readonly Loose[], facts: Loose = {}, covering: Loose = {}): House {
  return houseOf(documentOf({ coverings: [wallcovering({ repeat: '0 in', ...covering })], rooms, ...facts }));
}

function after(house: House, ...edits: readonly Edit[]): House {
  return edits.reduce<House>((edited, edit) => {
    const outcome = applyEdit(edited, edit);
    if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
    return outcome.value;
  }, house);
}

function placed(house: House): House {
  const draft = draftOrder(house, planHouse(house).order, null, '2026-03-02');
  return draft ? after(house, draft) : house;
}

const came = (house: House, run: string, rolls: number) => after(house, { kind: 'set-deliveries', deliveries: [...house.deliveries.map((one) => ({ ...one })), { covering: 'paper', patternNumber: 'P-1', run, rolls }] });
const sharing = (house: House) => planHouse(house).order.map(({ run, rooms, onOrder, toBuy }) => ({ run, rooms, onOrder, toBuy }));

describe('placing an order', () => {
  test('leaves the rooms on their runs and nothing to buy, the spare included', () => {
    // In doubles with a spare of 2: 14 strips are 5 rolls, 7 with the spare, 4 packs.
    const house = houseWith([strips('a', 10), strips('b', 4)], { offers: [offer('1', 23), offer('4', 16)] }, { spareRolls: 2, soldIn: [{ rolls: 2, price: '84.00' }] });
    expect(sharing(house)).toEqual([{ run: '1', rooms: ['a', 'b'], onOrder: 0, toBuy: 8 }]);
    expect(sharing(placed(house))).toEqual([{ run: '1', rooms: ['a', 'b'], onOrder: 8, toBuy: 0 }]);
  });

  test('of whatever house changes no room and asks for nothing more; what then comes as ordered lets every room start', () => {
    const facts = fc.record({
      sizes: fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 4 }),
      runs: fc.array(fc.record({ inHand: fc.integer({ min: 0, max: 4 }), offered: fc.integer({ min: 0, max: 20 }) }), { minLength: 1, maxLength: 3 }),
      pack: fc.integer({ min: 1, max: 3 }),
      spareRolls: fc.oneof(fc.integer({ min: 0, max: 2 }), fc.constantFrom('10%', '25%')),
    });
    fc.assert(
      fc.property(facts, ({ sizes, runs, pack, spareRolls }) => {
        const rooms = sizes.map((count, index) => strips(`r${index}`, count));
        const lists = { offers: runs.map(({ offered }, index) => offer(`${index}`, offered)), stock: runs.map(({ inHand }, index) => offer(`${index}`, inHand)) };
        const house = houseWith(rooms, lists, { spareRolls, soldIn: [{ rolls: pack, price: '10.00' }] });
        const before = planHouse(house).order;
        fc.pre(before.every(({ shortfall }) => shortfall === 0));
        const ordered = placed(house);
        const now = planHouse(ordered);
        expect(now.order.map(({ run, rooms: hung }) => [run, hung])).toEqual(before.map(({ run, rooms: hung }) => [run, hung]));
        for (const line of now.order) expect(line).toMatchObject({ toBuy: 0, spareLacking: before.find(({ run }) => run === line.run)!.spareLacking });
        expect(now.runs.flatMap(({ difference }) => difference)).toEqual([]);
        const arrived = (ordered.orders[0]?.lines ?? []).reduce((one, line) => came(one, line.run!, line.rolls), ordered);
        const plan = planHouse(arrived);
        expect(plan.readiness.every(({ state }) => state === 'ready')).toBe(true);
        expect(plan.order.every(({ toBuy, onOrder }) => toBuy === 0 && onOrder === 0)).toBe(true);
      }),
      { numRuns: 120 },
    );
  });

  test('takes nothing for it that had come before', () => {
    // 30 strips are 10 rolls; 8 came before anything was ordered, so 2 are bought, once.
    const house = came(houseWith([strips('a', 30)], { offers: [offer('1', 30)] }, { spareRolls: 0 }), '1', 8);
    expect(sharing(house)).toEqual([{ run: '1', rooms: ['a'], onOrder: 0, toBuy: 2 }]);
    expect(sharing(placed(house))).toEqual([{ run: '1', rooms: ['a'], onOrder: 2, toBuy: 0 }]);
    expect(sharing(came(placed(house), '1', 2))).toEqual([{ run: '1', rooms: ['a'], onOrder: 0, toBuy: 0 }]);
  });

  test('still takes only what came after it where an earlier package is taken out of the list', () => {
    const house = placed(came(came(houseWith([strips('a', 30)], { offers: [offer('1', 30)] }, { spareRolls: 0 }), '1', 3), '1', 5));
    const [first] = house.deliveries;
    const without = after(house, { kind: 'set-deliveries', deliveries: [{ ...first! }] });
    expect(without.orders.map(({ earlier }) => earlier)).toEqual([1]);
    expect(planHouse(without).order).toMatchObject([{ inHand: 3, onOrder: 2, toBuy: 5 }]);
  });

  test('leaves out rooms that no run has where the supplier has named the runs, and asks for any one run where none was named', () => {
    const rooms = [strips('a', 9), strips('b', 30)];
    const named = houseWith(rooms, { offers: [offer('1', 5)] }, { spareRolls: 0 });
    expect(placed(named).orders[0]!.lines).toMatchObject([{ run: '1', rolls: 3, rooms: ['a'] }]);
    // What is to pay is what is placed: 3 rolls at 10.00, not the 13 that both rooms want.
    const priced = houseWith(rooms, { offers: [offer('1', 5)] }, { spareRolls: 0, soldIn: [{ rolls: 1, price: '10.00' }] });
    expect(toBePlaced(priced, planHouse(priced).order)).toMatchObject([{ lines: [{ run: '1' }], gross: 30_00 }]);
    const unnamed = houseWith(rooms, { stock: [offer('1', 3)] }, { spareRolls: 0 });
    expect(placed(unnamed).orders[0]!.lines).toMatchObject([{ rolls: 10, rooms: ['b'] }]);
    expect(placed(unnamed).orders[0]!.lines[0]!.run).toBeUndefined();
    expect(planHouse(placed(unnamed)).order).toMatchObject([{ run: '1', rooms: ['a'], shortfall: 0 }, { run: null, rooms: ['b'], onOrder: 10, toBuy: 0, shortfall: 0 }]);
  });
});

describe('a placed line', () => {
  const of = (lines: readonly Loose[], deliveries: readonly Loose[]) => {
    const house = houseWith([strips('a', 30)], { orders: [{ id: '1', placed: '2026-03-02', lines: lines.map((line) => ({ covering: 'paper', ...line })) }], deliveries: deliveries.map((one) => ({ covering: 'paper', patternNumber: 'P-1', ...one })) }, { spareRolls: 0 });
    return planHouse(house).runs[0]!.ledger;
  };

  test('that asks for any one run is filled by a run that another line names, once that has its own', () => {
    const { lines, deliveries } = of([{ run: '1', rolls: 8 }, { rolls: 10 }], [{ run: '1', rolls: 12 }]);
    expect(lines).toMatchObject([{ run: '1', received: 8, outstanding: 0 }, { run: '1', received: 4, outstanding: 6 }]);
    expect(deliveries).toMatchObject([{ verdict: 'counts', tooMany: 0 }]);
  });

  test('of which the supplier has taken some off expects no more of those', () => {
    const ledger = of([{ run: '1', rolls: 8, takenOff: 3 }], [{ run: '1', rolls: 4 }]);
    expect(ledger.lines).toMatchObject([{ index: 0, received: 4, outstanding: 1, notComing: 3 }]);
    expect(explainOnOrder(ledger, '1')).toEqual([{ text: 'Order 1: 8 ordered - 4 come - 3 that will not come = 1 still to come.' }]);
    expect(explainOnOrder(ledger, '2')).toEqual([{ text: 'None of it was ordered.' }]);
  });
});

test('goods by the length that were ordered are there by their length, and a grown room wants the rest', () => {
  const vinyl = { rollLength: undefined, soldBy: { length: '1 yd', pieceLength: '30 yd', price: '10.00' } };
  const house = placed(houseWith([strips('a', 3)], {}, vinyl));
  // Three strips of 100 in are 300 in: 9 yd.
  expect(planHouse(house).order).toMatchObject([{ onOrder: 1, toBuy: 0, running: { units: 0, wanted: 0 }, price: 0 }]);
  const grown = after(house, { kind: 'change-wall', room: 'a', wall: 'A', facts: { length: '100 in' } });
  // Five strips are 500 in, 176 more than 9 yd: 5 yd.
  expect(planHouse(grown).order).toMatchObject([{ running: { units: 5 }, price: 50_00 }]);
});

test('two rooms hang from one run where two would take a spare each', () => {
  // Ten strips are 4 rolls, in doubles 4; twenty are 7, with the spare 8.
  const house = houseWith([strips('a', 10), strips('b', 10)], { offers: [offer('1', 30), offer('2', 30)] }, { soldIn: [{ rolls: 2, price: '84.00' }] });
  expect(sharing(house)).toEqual([{ run: '1', rooms: ['a', 'b'], onOrder: 0, toBuy: 8 }]);
});

test('a room that hangs already took what was there, whatever it was counted to take', () => {
  // 24 strips are counted 8 rolls; it was hung from 7.
  const house = houseWith([strips('a', 24), strips('b', 3)], { stock: [offer('9', 7), offer('7', 1)], runChoices: [{ covering: 'paper', room: 'a', run: '9', hung: true }] }, { spareRolls: 0 });
  const plan = planHouse(house);
  expect(plan.order).toMatchObject([{ run: '9', rooms: ['a'], toBuy: 0, shortfall: 0 }, { run: '7', rooms: ['b'], toBuy: 0, shortfall: 0 }]);
  expect(plan.problems).toEqual([]);
  expect(explainOrderLine(house, plan.order[0]!).toBuy.map(({ text }) => text)).toEqual(['8 needed + 0 spare - 7 in hand = 1.', '1 of that not: what hangs already took no more than was there.']);
});

test('what is in hand is added up from stock, packages and what went back', () => {
  const house = came(houseWith([strips('a', 9)], { stock: [offer('1', 2)], returns: [{ covering: 'paper', run: '1', rolls: 1 }] }), '1', 8);
  expect(explainInHand(house, planHouse(house).runs[0]!.ledger, '1').map(({ text }) => text)).toEqual(['2 in stock before the order.', '8 came.', '1 went back.', '2 + 8 - 1 = 9 in hand.']);
});

test('a package in hand is told with its day and what of it is not sound', () => {
  const delivery = { covering: 'paper', patternNumber: 'P-1', run: '1', rolls: 8, damaged: 2, short: 1, received: '2026-03-02', decision: 'keep' };
  const house = houseWith([strips('a', 9)], { deliveries: [delivery] });
  expect(explainInHand(house, planHouse(house).runs[0]!.ledger, '1').map(({ text }) => text)).toEqual(['8 came on 2 Mar 2026, 2 of them damaged, 1 missing: 5.', '5 in hand.']);
});

import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../shared-core/house/index.ts';
import { draftOrder, planHouse } from '../../shared-core/plan/index.ts';
import { documentOf, exampleDocument, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const DAY = '2026-03-02';

function draftOf(document: Loose, supplier: string | null) {
  const house = houseOf(document);
  return { house, draft: draftOrder(house, planHouse(house).order, supplier, DAY) };
}

describe('an order that is placed', () => {
  test('writes down lines, packs, prices and rooms as they are: the worked room', () => {
    const { draft } = draftOf(exampleDocument(), 'north');
    expect(draft?.order).toMatchObject({ id: '1', placed: DAY, supplier: 'north' });
    expect(draft?.order.lines[0]).toEqual({ covering: 'fern', patternNumber: 'K-2041', rolls: 10, packs: [{ rolls: 2, count: 5 }], price: '420.00', rooms: ['bed1'] });
  });

  test('holds one supplier, with the tax that holds for it and the note of the house', () => {
    const document = { ...exampleDocument(), orderNote: 'Leave with the neighbour', tax: { rate: '7.25' }, suppliers: [{ id: 'north', tax: { rate: '20', included: true } }] };
    expect(draftOf(document, 'north').draft?.order).toMatchObject({ note: 'Leave with the neighbour', tax: { rate: '20', included: true } });
    expect(draftOf(document, null).draft?.order.tax).toEqual({ rate: '7.25', included: false });
    expect(draftOf(document, null).draft?.order.lines.map(({ covering }) => covering)).not.toContain('fern');
    expect(draftOf(document, 'south').draft).toBeNull();
  });

  test('keeps where and by when the house wants it, and stays so when the house changes; without either has none', () => {
    const { house, draft } = draftOf({ ...exampleDocument(), deliverTo: 'Alder, Mill Lane 3\nby the back gate', deliverBy: '2026-03-20' }, 'north');
    expect(draft?.order).toMatchObject({ deliverTo: 'Alder, Mill Lane 3\nby the back gate', deliverBy: '2026-03-20' });
    const placed = applyEdit(house, draft!);
    const moved = placed.ok ? applyEdit(placed.value, { kind: 'change-house', facts: { deliverTo: 'The shop', deliverBy: null } }) : placed;
    expect(moved).toMatchObject({ ok: true, value: { deliverTo: 'The shop', orders: [{ deliverTo: 'Alder, Mill Lane 3\nby the back gate', deliverBy: '2026-03-20' }] } });
    expect(Object.keys(draftOf(exampleDocument(), 'north').draft!.order).filter((key) => key.startsWith('deliver'))).toEqual([]);
  });

  test('leaves nothing to buy, its offers lowered, and the next one has the next number', () => {
    const document = documentOf({ coverings: [wallcovering({ repeat: '0 in', soldIn: [{ rolls: 1 }] })], rooms: [room(['180 in'])], offers: [{ covering: 'paper', run: '7', rolls: 9 }] });
    const { house, draft } = draftOf(document, null);
    // Nine strips of 100 in, three to a roll, and a spare.
    expect(draft?.order.lines).toMatchObject([{ run: '7', rolls: 4 }]);
    const placed = applyEdit(house, draft!);
    expect(placed.ok).toBe(true);
    if (!placed.ok) return;
    expect(placed.value.offers).toEqual([{ covering: 'paper', run: '7', rolls: 5 }]);
    const [line] = planHouse(placed.value).order;
    expect(line).toMatchObject({ run: '7', onOrder: 4, inHand: 0, toBuy: 0 });
    expect(draftOrder(placed.value, [line!], null, DAY)).toBeNull();
    expect(draftOrder(placed.value, [{ ...line!, toBuy: 1 }], null, DAY)?.order.id).toBe('2');
  });

  test('of goods by the length says the length', () => {
    const vinyl = wallcovering({ rollLength: undefined, repeat: '0 in', soldBy: { length: '1 yd', pieceLength: '30 yd', price: '10.00' } });
    const { draft } = draftOf(documentOf({ coverings: [vinyl], rooms: [room(['60 in'])] }), null);
    // Three strips of 100 in are 300 in, 9 yd.
    expect(draft?.order.lines).toMatchObject([{ length: "27'", price: '90.00' }]);
    expect(draft?.order.lines[0]).not.toHaveProperty('packs');
  });
});

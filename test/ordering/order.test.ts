import { describe, expect, test } from 'vitest';
import { isRollGoods, rollOf } from '../../shared-core/ordering/index.ts';
import { piecesOf, planHouse } from '../../shared-core/plan/index.ts';
import { modulo } from '../../shared-core/units/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { documentOf, exampleDocument, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const orderOf = (change: (document: Loose) => void = () => {}) => {
  const document = exampleDocument();
  change(document);
  return planHouse(houseOf(document)).order.filter(({ covering }) => covering === 'fern');
};

describe('a line of the order', () => {
  test('without stock, offers or deliveries has no run and no shortfall', () => {
    expect(orderOf()).toMatchObject([{ run: null, rollsNeeded: 9, spare: 1, inHand: 0, toBuy: 10, packs: [{ rolls: 2, count: 5 }], price: 420_00, shortfall: 0, isProvenMinimum: true }]);
  });

  test('takes off what is in hand of its run: stock and sound deliveries', () => {
    const [line] = orderOf((d) => {
      d.stock = [{ covering: 'fern', run: '2214', rolls: 2 }];
      d.deliveries = [{ covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 3, damaged: 1 }];
      d.offers = [{ covering: 'fern', run: '2214', rolls: 20 }];
    });
    expect(line).toMatchObject({ run: '2214', inHand: 4, toBuy: 6, packs: [{ rolls: 2, count: 3 }], price: 252_00, shortfall: 0 });
  });

  test('buys nothing where enough is in hand', () => {
    expect(orderOf((d) => (d.stock = [{ covering: 'fern', run: '2214', rolls: 12 }]))).toMatchObject([{ run: '2214', inHand: 12, toBuy: 0, packs: [], price: 0 }]);
  });

  test('gives up its spare before a room, and says so', () => {
    expect(orderOf((d) => (d.offers = [{ covering: 'fern', run: '2214', rolls: 9 }]))).toMatchObject([{ run: '2214', toBuy: 9, packs: [{ rolls: 2, count: 4 }, { rolls: 1, count: 1 }], spareLacking: 1 }]);
  });

  test('of rooms that no run can hang says by how much', () => {
    expect(orderOf((d) => (d.offers = [{ covering: 'fern', run: '2214', rolls: 8 }]))).toMatchObject([{ run: null, rooms: ['bed1'], shortfall: 9, inHand: 0, toBuy: 10 }]);
  });

  test("takes the covering's own spare before the house's", () => {
    expect(orderOf((d) => (d.coverings[0].spareRolls = 0))[0]).toMatchObject({ spare: 0, toBuy: 9 });
    expect(orderOf((d) => { delete d.coverings[0].spareRolls; d.rules.spareRolls = 3; })[0]).toMatchObject({ spare: 3, toBuy: 12 });
  });
});

describe('rooms of one pattern', () => {
  const two = (pooling: string) => {
    // Three strips of 100 in to a roll of 30 ft without a match: 4 strips a room take 2 rolls, 8 strips of both 3.
    const rooms = ['one', 'other'].map((id) => room(['80 in'], { id, name: id }));
    return planHouse(houseOf(documentOf({ rules: { pooling }, coverings: [wallcovering({ repeat: '0 in' })], rooms })));
  };

  test('share rolls, and what that saves stands beside', () => {
    expect(two('house').order).toMatchObject([{ rooms: ['one', 'other'], rollsNeeded: 3, rollsByRoom: 4, lowerBound: 3, isProvenMinimum: true }]);
  });

  test('keep to themselves where the house says so', () => {
    expect(two('room').order).toMatchObject([{ rollsNeeded: 4, rollsByRoom: 4 }]);
  });
});

test('every piece of the demo house is cut once, from inside its roll, at its place in the pattern whatever the roll begins with', () => {
  const house = demoHouse();
  const plan = planHouse(house);
  const wanted = plan.rooms.flatMap((found) => found.bands.flatMap((band) => piecesOf(band).map(({ label }) => `${band.covering} ${found.id} ${band.id} ${label}`)));
  const cut = plan.cuts.flatMap(({ covering, rolls }) => rolls.flatMap(({ cuts }) => cuts.map(({ placed }) => `${covering} ${placed.room} ${placed.band} ${placed.piece.label}`)));
  expect(cut.toSorted()).toEqual(wanted.toSorted());
  expect(new Set(cut).size).toBe(cut.length);

  for (const list of plan.cuts) {
    const covering = house.coverings.find(({ id }) => id === list.covering)!;
    if (!isRollGoods(covering)) throw new Error('cut from rolls');
    const { repeat } = rollOf(covering);
    const line = plan.order.find(({ covering: id, run }) => id === list.covering && run === list.run)!;
    expect(list.rolls).toHaveLength(line.rollsNeeded);
    for (const { cuts } of list.rolls) {
      for (let start = 0; start < Math.max(1, repeat); start += Math.max(1, Math.floor(repeat / 97))) {
        // The roll begins `start` into the pattern; the first cut is made where its phase comes first.
        const first = repeat === 0 ? 0 : modulo(cuts[0]!.placed.piece.phase - start, repeat);
        let end = 0;
        for (const { placed, from } of cuts) {
          const at = first + from;
          expect(at).toBeGreaterThanOrEqual(end);
          if (repeat > 0) expect(modulo(start + at, repeat)).toBe(placed.piece.phase);
          end = at + placed.piece.length;
        }
        expect(end).toBeLessThanOrEqual(covering.rollLength.length);
      }
    }
  }
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isRollGoods, leftOfRoll, rollOf } from '../../shared-core/ordering/index.ts';
import { inches, lengthOf, modulo } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { came, FERN, fernHouse, placed, planOf, rolls, strips } from './fern-house.ts';

const readinessOf = (facts: Loose) => planOf(facts).readiness.map(({ room: id, state, waits }) => [id, state, ...waits.map((wait) => `${wait.rolls} of ${wait.covering} ${wait.run ?? '?'}${wait.isOnOrder ? ' on order' : ''}`)]);

describe('rooms can start', () => {
  test('with 8 in hand, bed 1 of 6 and a hall of 4, 9 together: bed 1 can, the hall waits for 1', () => {
    // 16 strips are 6 rolls, 11 are 4; 27 together are 9.
    expect(readinessOf({ rooms: [strips('bed1', 16), strips('hall', 11)], stock: [rolls('2214', 8)], offers: [rolls('2214', 4)] })).toEqual([['bed1', 'ready'], ['hall', 'waits', '1 of fern 2214']]);
  });

  test('in the order of the house; a room that must wait holds no rolls back from those after it', () => {
    const facts = { rooms: [strips('large', 18), strips('small', 6), strips('closet', 3)], stock: [rolls('1', 3)], offers: [rolls('1', 9)] };
    expect(readinessOf(facts)).toEqual([['large', 'waits', '6 of fern 1'], ['small', 'ready'], ['closet', 'ready']]);
  });

  test('once all that they lack is on its way, which is said; of a run that is not known too', () => {
    const rooms = [strips('bed', 9)];
    expect(readinessOf({ rooms, orders: [placed([{ run: '1', rolls: 3 }])], deliveries: [came('1', 1)] })).toEqual([['bed', 'waits', '2 of fern 1 on order']]);
    expect(readinessOf({ rooms, orders: [placed([{ rolls: 3 }])] })).toEqual([['bed', 'waits', '3 of fern ? on order']]);
    expect(readinessOf({ rooms, orders: [placed([{ run: '1', rolls: 2 }])], offers: [rolls('1', 1)] })).toEqual([['bed', 'waits', '3 of fern 1']]);
    expect(readinessOf({ rooms })).toEqual([['bed', 'waits', '3 of fern ?']]);
  });

  test('only where every covering that hangs in them is there, each of its own run', () => {
    const moss = { ...FERN, id: 'moss', patternNumber: 'K-2050' };
    const two = strips('bed', 6, { walls: [{ id: 'A', length: '123 in', height: '8 ft', turn: 'straight' }, { id: 'B', length: '61.5 in', height: '8 ft' }], bands: [{ id: 'main', covering: 'fern', walls: ['A'] }, { id: 'other', covering: 'moss', walls: ['B'] }] });
    const facts = (count: number) => ({ coverings: [FERN, moss], rooms: [two], stock: [rolls('1', 2), { covering: 'moss', run: '9', rolls: count }], offers: [{ covering: 'moss', run: '9', rolls: 2 }] });
    expect(readinessOf(facts(1))).toEqual([['bed', 'ready']]);
    expect(readinessOf(facts(0))).toEqual([['bed', 'waits', '1 of moss 9']]);
  });

  test('where they change runs in a corner once each part is there', () => {
    const walls = [{ id: 'A', length: '61.5 in', height: '8 ft' }, { id: 'B', length: '61.5 in', height: '8 ft' }];
    const bands = [{ id: 'main', covering: 'fern', walls: ['A', 'B'], runMayChange: ['A'], layout: { start: { wall: 'A' } } }];
    const facts = (inHand: number) => ({ rules: { spareRolls: 0, insideWrap: '0 in' }, rooms: [{ id: 'bed', name: 'Bed', walls, bands }], stock: [rolls('1', 1), rolls('2', inHand)], offers: [rolls('2', 1 - inHand)] });
    expect(readinessOf(facts(1))).toEqual([['bed', 'ready']]);
    expect(readinessOf(facts(0))).toEqual([['bed', 'waits', '1 of fern 2']]);
  });

  test('is not said of rooms in which nothing from rolls hangs', () => {
    expect(readinessOf({ rooms: [{ id: 'bath', name: 'Bath' }, strips('bed', 3)], stock: [rolls('1', 1)] })).toEqual([['bed', 'ready']]);
  });
});

describe('what is left', () => {
  test("of a roll of 33 ft with a repeat of 21 in and three strips of 8' 4\" every 8' 9\" is 5' 5\" at the least", () => {
    const roll = { rollLength: inches(396), repeat: inches(21) };
    const threeStrips = planOf({ rooms: [strips('bed', 3)] }).cuts[0]!.rolls[0]!;
    expect(threeStrips.cuts.map(({ from }) => from)).toEqual([0, inches(105), inches(210)]);
    expect(leftOfRoll(threeStrips, { ...roll, rollStart: 'anywhere' })).toBe(inches(65));
    expect(leftOfRoll(threeStrips, { ...roll, rollStart: 'at-repeat' })).toBe(inches(86));
    expect(leftOfRoll({ cuts: [] }, { ...roll, rollStart: 'at-repeat' })).toBe(inches(396));
  });

  test("of 10 rolls in hand of which 9 are cut, each leaving 65 in, is one whole roll and 9 lengths of 5' 5\"", () => {
    expect(planOf({ rooms: [strips('bed', 27)], stock: [rolls('1', 10)] }).left).toEqual([{ covering: 'fern', run: '1', wholeRolls: 1, lengths: [{ length: inches(65), count: 9 }] }]);
  });

  test("is counted by its lengths, the longest first, from the house's least length up", () => {
    // 7 strips: two rolls of three, and one of one strip that leaves 396 - 21 - 100 = 275 in.
    const left = (keptFrom: string) => planOf({ rules: { spareRolls: 0, keptFrom }, rooms: [strips('bed', 7)], stock: [rolls('1', 3)] }).left;
    expect(left('65 in')).toEqual([{ covering: 'fern', run: '1', wholeRolls: 0, lengths: [{ length: inches(275), count: 1 }, { length: inches(65), count: 2 }] }]);
    expect(left('66 in')).toMatchObject([{ lengths: [{ length: inches(275), count: 1 }] }]);
    expect(left('276 in')).toEqual([]);
  });

  test('counts what is on order and to be bought: the spare, and what sale units bring too many', () => {
    const left = (facts: Loose) => planOf({ rooms: [strips('bed', 9)], ...facts }).left[0]!.wholeRolls;
    expect(left({ rules: { spareRolls: 2 } })).toBe(2);
    expect(left({ orders: [placed([{ run: '1', rolls: 5 }])] })).toBe(2);
    expect(left({ coverings: [{ ...FERN, soldIn: [{ rolls: 2 }] }] })).toBe(1);
  });

  test('of goods by the length is nothing, of murals the whole ones', () => {
    const vinyl = wallcovering({ rollLength: undefined, repeat: '0 in', soldBy: { length: '1 yd', pieceLength: '30 yd' } });
    expect(planHouse(houseOf(documentOf({ coverings: [vinyl], rooms: [room(['100 in'])] }))).left).toEqual([]);
    const mural = { id: 'paper', kind: 'mural', panels: 4, panelWidth: '1 m', panelHeight: '3 m', spareRolls: 1 };
    expect(planHouse(houseOf(documentOf({ coverings: [mural], rooms: [room(['100 in'])] }))).left).toEqual([{ covering: 'paper', run: null, wholeRolls: 1, lengths: [] }]);
  });

  test('of every roll cut is there wherever in the repeat the roll begins', () => {
    const counts = fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(counts, fc.integer({ min: 80, max: 130 }), fc.constantFrom('anywhere', 'at-repeat'), (sizes, height, rollStart) => {
        const house = fernHouse({ coverings: [{ ...FERN, rollStart }], rooms: sizes.map((count, index) => strips(`r${index}`, count, { walls: [{ id: 'A', length: `${count * 20.5} in`, height: `${height} in` }] })) });
        const [covering] = house.coverings;
        if (!covering || !isRollGoods(covering)) throw new Error('goods in rolls');
        const roll = rollOf(covering);
        for (const cut of planHouse(house).cuts.flatMap((list) => list.rolls)) {
          const left = leftOfRoll(cut, roll);
          expect(left).toBeGreaterThanOrEqual(0);
          const starts = rollStart === 'at-repeat' ? [0] : [0, 1, inches(7), roll.repeat - 1];
          for (const start of starts) {
            const first = rollStart === 'at-repeat' ? 0 : modulo(cut.cuts[0]!.placed.piece.phase - start, lengthOf(roll.repeat));
            const end = Math.max(...cut.cuts.map(({ from, placed: { piece } }) => first + from + piece.length));
            expect(roll.rollLength - end).toBeGreaterThanOrEqual(left);
          }
        }
      }),
      { numRuns: 25 },
    );
  });
});

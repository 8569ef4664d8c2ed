import { describe, expect, test } from 'vitest';
import { planHouse } from '../../shared-core/plan/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

/** Rooms of so many strips of 100 in, three to a roll of 30 ft without a match; each strip is 20 in wide. */
function planOf(strips: readonly number[], facts: Loose = {}, covering: Loose = {}) {
  const rooms = strips.map((count, index) => room([`${20 * count} in`], { id: `r${index + 1}`, name: `Room ${index + 1}` }));
  return planHouse(houseOf(documentOf({ coverings: [wallcovering({ repeat: '0 in', ...covering })], rooms, ...facts })));
}

const offer = (run: string, rolls: number) => ({ covering: 'paper', run, rolls });
const doubles = { soldIn: [{ rolls: 2, price: '40.00' }] };

describe('what a run can give', () => {
  test('is what is sold of its offer: seven rolls in doubles are six', () => {
    // 21 strips take 7 rolls; six can be bought, so the room hangs from no run.
    const plan = planOf([21], { offers: [offer('1', 7)] }, doubles);
    expect(plan.order).toMatchObject([{ run: null, rooms: ['r1'], rollsNeeded: 7, shortfall: 7, toBuy: 8, price: 160_00 }]);
    expect(plan.problems.map(({ message }) => message)).toEqual(['No run of P-1 can hang Room 1: 7 rolls of one run wanted; as it is sold, run 1 has 6. Ask for 1 roll more of run 1: then every room hangs.']);
  });

  test('and what is in hand, whatever it was sold in', () => {
    const plan = planOf([21], { offers: [offer('1', 7)], stock: [offer('1', 1)] }, doubles);
    expect(plan.order).toMatchObject([{ run: '1', inHand: 1, rollsNeeded: 7, toBuy: 6, shortfall: 0, spareLacking: 1 }]);
    expect(plan.problems).toEqual([]);
  });

  test('is weighed before rooms are given to runs', () => {
    // Room 1 takes 3 rolls, room 2 takes 2. Of three rolls of run 1 two can be bought, of run 2 four.
    const plan = planOf([9, 6], { offers: [offer('1', 3), offer('2', 5)] }, { ...doubles, spareRolls: 0 });
    expect(plan.order).toMatchObject([
      { run: '1', rooms: ['r2'], toBuy: 2, shortfall: 0 },
      { run: '2', rooms: ['r1'], toBuy: 4, shortfall: 0 },
    ]);
  });

  test('leaves the spare lacking before a room', () => {
    const [line] = planOf([18], { offers: [offer('1', 7)] }, doubles).order;
    expect(line).toMatchObject({ run: '1', rollsNeeded: 6, spare: 1, toBuy: 6, spareLacking: 1, shortfall: 0 });
  });
});

import { describe, expect, test } from 'vitest';
import { planHouse } from '../../shared-core/plan/index.ts';
import { countClashes, seamsOf } from '../../shared-core/setting-out/index.ts';
import { inches } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const lining = (facts: Loose = {}) => ({ id: 'line', kind: 'lining', width: '22 in', rollLength: '33 ft', ...facts });
const lined = (lengths: readonly string[], facts: Loose = {}, wallFacts: readonly Loose[] = []) => {
  const walls = lengths.map((_, index) => String.fromCharCode(65 + index));
  return room(lengths, { bands: [{ id: 'under', covering: 'line', walls, ...facts }] }, wallFacts);
};

function planOf(roomFacts: Loose, coverings: readonly Loose[], rules: Loose = {}) {
  const house = houseOf(documentOf({ coverings, rooms: [roomFacts], rules }));
  return { house, plan: planHouse(house) };
}

describe('lining across', () => {
  const lengths = (roomFacts: Loose, facts: Loose = {}) => {
    const [band] = planOf(roomFacts, [lining(facts)]).plan.rooms[0]!.bands;
    if (band?.kind !== 'lengths') throw new Error('lengths');
    return band.stretches.flatMap((stretch) => stretch.lengths.flatMap(({ pieces }) => pieces)).map(({ label, length, top, bottom }) => [label, length / inches(1), top / inches(1), bottom / inches(1)]);
  };

  test('hangs in courses from the top, the last as high as what is left', () => {
    // 96 in take four courses of 22 in and one of 8 in; each wall is 148 in and an inch at both ends.
    expect(lengths(lined(['148 in']))).toEqual([
      ['A1 course 1', 150, 96, 74],
      ['A1 course 2', 150, 74, 52],
      ['A1 course 3', 150, 52, 30],
      ['A1 course 4', 150, 30, 8],
      ['A1 course 5', 150, 8, 0],
    ]);
  });

  test('stops at an opening that takes a course whole, goes past one that does not', () => {
    const window = { id: 'w', kind: 'window', from: '50 in', width: '40 in', sill: '30 in', height: '44 in' };
    expect(lengths(lined(['148 in'], {}, [{ openings: [window] }])).map(([label, length]) => [label, length])).toEqual([
      ['A1 course 1', 150],
      ['A1 course 2', 52],
      ['A2 course 2', 60],
      ['A1 course 3', 52],
      ['A2 course 3', 60],
      ['A1 course 4', 150],
      ['A1 course 5', 150],
    ]);
  });

  test('is ordered with everything else, each piece cut once', () => {
    const { plan } = planOf(lined(['148 in', '122 in', '148 in', '122 in']), [lining({ soldIn: [{ rolls: 1, price: '7.00' }], spareRolls: 0 })]);
    // Ten lengths of 150 in and ten of 124 in from rolls of 396 in: two long ones or three short ones, or one and one, to a roll.
    expect(plan.order).toMatchObject([{ covering: 'line', rollsNeeded: 9, lowerBound: 9, inHand: 0, price: 63_00 }]);
    expect(plan.cuts[0]!.rolls.flatMap(({ cuts }) => cuts)).toHaveLength(20);
    expect(plan.warnings).toEqual([]);
  });
});

describe('lining up and down', () => {
  const both = (lengths: readonly string[], liningWidth: string) => {
    const walls = lengths.map((_, index) => String.fromCharCode(65 + index));
    const facts = room(lengths, { bands: [{ id: 'under', covering: 'line', walls }, { id: 'main', covering: 'paper', walls }] });
    const { house, plan } = planOf(facts, [lining({ width: liningWidth, direction: 'up-and-down' }), wallcovering()]);
    const [under, main] = plan.rooms[0]!.bands;
    if (under?.kind !== 'strips' || main?.kind !== 'strips') throw new Error('strips');
    return { house, under: under.stretches[0]!, main: main.stretches[0]! };
  };

  test('keeps all its seams off those of what hangs over it where widths allow', () => {
    const { house, under, main } = both(['200 in'], '20 in');
    expect(under.strips.length).toBeGreaterThan(9);
    expect(countClashes(under, seamsOf(main), house.rules)).toBe(0);
  });

  test('keeps off as many as can be where they do not', () => {
    const { house, under, main } = both(['200 in', '150 in', '200 in', '150 in'], '22 in');
    const above = seamsOf(main);
    const best = countClashes(under, above, house.rules);
    expect(best).toBeLessThan(above.length / 2);
  });

  test('alone begins at the first inside corner', () => {
    const { plan } = planOf(lined(['100 in', '100 in', '100 in', '100 in']), [lining({ direction: 'up-and-down' })]);
    const [band] = plan.rooms[0]!.bands;
    expect(band?.kind === 'strips' && band.stretches[0]!.start).toEqual({ wall: 'A', at: 0 });
  });
});

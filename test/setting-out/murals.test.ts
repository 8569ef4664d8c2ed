import { describe, expect, test } from 'vitest';
import { planHouse } from '../../shared-core/plan/index.ts';
import { inches, millimetres } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room } from '../builders.ts';

const mural = (facts: Loose = {}) => ({ id: 'lake', kind: 'mural', patternNumber: 'M-7', panels: 4, panelWidth: '1 m', panelHeight: '2.7 m', soldIn: [{ rolls: 1, price: '210.00' }], ...facts });
const on = (lengths: readonly string[], walls: readonly string[], facts: Loose = {}) => room(lengths, { bands: [{ id: 'picture', covering: 'lake', walls }], ...facts });
const planOf = (rooms: readonly Loose[], facts: Loose = {}, house: Loose = {}) => planHouse(houseOf(documentOf({ lengths: 'metric', coverings: [mural(facts)], rooms, ...house })));

function panelsOf(plan: ReturnType<typeof planHouse>) {
  const [band] = plan.rooms[0]!.bands;
  if (band?.kind !== 'strips') throw new Error('panels are drawn as strips');
  return band.stretches[0]!.strips.map(({ number, cutWidth, parts }) => [number, cutWidth / millimetres(1), parts.map(({ wall, from }) => `${wall} ${from / millimetres(1)}`).join(', ')]);
}

describe('a mural', () => {
  test('is centred: what it is wider is cut off in halves, outer panels trimmed', () => {
    expect(panelsOf(planOf([on(['3.4 m'], ['A'])]))).toEqual([
      [1, 700, 'A 0'],
      [2, 1000, 'A 700'],
      [3, 1000, 'A 1700'],
      [4, 700, 'A 2700'],
    ]);
  });

  test('leaves out panels that fall beside the wall', () => {
    expect(panelsOf(planOf([on(['1.8 m'], ['A'])])).map(([number, width]) => [number, width])).toEqual([[2, 900], [3, 900]]);
  });

  test('turns an inside corner with its wrap', () => {
    const panels = panelsOf(planOf([on(['2 m', '1.5 m'], ['A', 'B'])]));
    expect(panels.reduce((sum, [, width]) => sum + Number(width), 0)).toBe(3500 + inches(0.125) / millimetres(1));
  });

  test('too small is a problem that says by how much', () => {
    const plan = planOf([on(['4.5 m'], ['A'], { walls: [{ id: 'A', length: '4.5 m', height: '2.8 m' }] })]);
    expect(plan.problems).toEqual([{ place: 'coverings', room: 'room', message: 'The mural M-7 is 50 cm too narrow and 10 cm too low for wall A of Room. Choose a larger one, or hang it on less.' }]);
    expect(planOf([on(['4 m'], ['A'])]).problems).toEqual([]);
  });

  test('is ordered once for each place, without a spare unless its facts ask for one', () => {
    const rooms = [on(['3.4 m'], ['A']), { ...on(['3 m'], ['A']), id: 'other', name: 'Other' }];
    expect(planOf(rooms).order).toMatchObject([{ covering: 'lake', patternNumber: 'M-7', rooms: ['room', 'other'], rollsNeeded: 2, isProvenMinimum: true, spare: 0, toBuy: 2, price: 420_00 }]);
    expect(planOf(rooms, { spareRolls: 1 }).order[0]).toMatchObject({ spare: 1, toBuy: 3 });
    expect(planOf(rooms, {}, { stock: [{ covering: 'lake', run: '5', rolls: 2 }] }).order).toMatchObject([{ run: '5', inHand: 2, toBuy: 0 }]);
  });
});

import { describe, expect, test } from 'vitest';
import { cutSheet, planHouse, sayMark } from '../../shared-core/plan/index.ts';
import { inches } from '../../shared-core/units/index.ts';
import { documentOf, exampleHouse, houseOf, type Loose, room, wallcovering } from '../builders.ts';

function sheetOf(house: ReturnType<typeof houseOf>, covering: string) {
  const plan = planHouse(house);
  return cutSheet(house, plan, plan.cuts.find((list) => list.covering === covering)!);
}

describe('the cut list', () => {
  test('says of a roll what is cut, for which wall, at which mark and what is left: the worked room', () => {
    const [first, ...others] = sheetOf(exampleHouse(), 'fern');
    expect(first).toMatchObject({ number: 1, left: inches(65), isKept: true });
    expect(first!.cuts).toHaveLength(3);
    // The top of a strip stands a trim of 2 in above the ceiling: 19 in into the repeat of 21 in, wherever it hangs.
    for (const cut of first!.cuts) expect(cut).toMatchObject({ room: 'Front bedroom', length: inches(100), mark: inches(19), isOffcut: false, isTurned: false });
    expect(first!.cuts.map(({ from }) => from)).toEqual([0, inches(105), inches(210)]);
    const cuts = [first!, ...others].flatMap((roll) => roll.cuts);
    expect(cuts).toHaveLength(27);
    expect(new Set(cuts.map(({ where }) => where))).toEqual(new Set(['wall A', 'walls A and B', 'wall B', 'walls B and C', 'wall C', 'walls C and D', 'wall D']));
  });

  test('says of a border which walls it runs along', () => {
    const cuts = sheetOf(exampleHouse(), 'ivy').flatMap((roll) => roll.cuts);
    expect(cuts.map(({ where }) => where).toSorted()).toEqual(['wall A', 'wall B', 'wall C', 'wall D']);
  });

  test('has no marks without a match, and names what comes from an offcut and what is turned', () => {
    const door = { id: 'd', kind: 'door', from: '20 in', width: '20 in', height: '60 in' };
    const facts: Loose = { coverings: [wallcovering({ repeat: '0 in', reverseAlternate: true })], rooms: [room(['80 in'], {}, [{ openings: [door] }])] };
    const cuts = sheetOf(houseOf(documentOf(facts)), 'paper').flatMap((roll) => roll.cuts);
    expect(cuts.map(({ label, mark, isOffcut, isTurned }) => [label, mark, isOffcut, isTurned])).toEqual([
      ['A1', null, false, false],
      ['A3', null, false, false],
      ['A4', null, false, true],
      ['A2 above', null, true, true],
    ]);
  });

  test('leaves what is shorter than the house keeps', () => {
    const keeping = (keptFrom: string) => sheetOf(houseOf(documentOf({ rules: { keptFrom }, coverings: [wallcovering({ repeat: '0 in' })], rooms: [room(['60 in'])] })), 'paper');
    // Three strips of 100 in leave 60 in of 30 ft.
    expect(keeping('60 in')).toMatchObject([{ left: inches(60), isKept: true }]);
    expect(keeping('61 in')).toMatchObject([{ left: inches(60), isKept: false }]);
  });

  test('is empty of a mural, which is not cut from rolls', () => {
    const house = houseOf(documentOf({ coverings: [{ id: 'paper', kind: 'mural', panels: 2, panelWidth: '60 in', panelHeight: '100 in' }], rooms: [room(['100 in'])] }));
    expect(sheetOf(house, 'paper')).toEqual([]);
  });
});

test('a mark is said as it is looked for on the roll', () => {
  expect(sayMark(inches(19), { lengths: 'imperial' })).toBe('1\' 7" into the repeat');
  expect(sayMark(inches(0), { lengths: 'imperial' })).toBe('at the repeat');
});

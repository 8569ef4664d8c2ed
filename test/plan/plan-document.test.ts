import { describe, expect, test } from 'vitest';
import { nameCovering } from '../../shared-core/house/index.ts';
import { countStrips, nameRoom, planDocument, planHouse, sayLayout, sayUnits } from '../../shared-core/plan/index.ts';
import type { LayoutOption } from '../../shared-core/setting-out/index.ts';
import { inches, type Length, lengthOf } from '../../shared-core/units/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { documentOf, exampleDocument, exampleHouse, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const printed = (document: Loose): Loose => {
  const house = houseOf(document);
  return JSON.parse(JSON.stringify(planDocument(house, planHouse(house))));
};

describe("the plan of the exchange document's example as JSON", () => {
  const plan = printed(exampleDocument());

  test('gives its border by hand: four lengths, four spools, 7 in over', () => {
    // 540 in are 26 repeats of 20 1/2 in and 7 in; a spool surely gives 159 1/2 in, no two of 150 and 124 in.
    expect(plan.rooms[0].bands[1]).toEqual({
      id: 'top', covering: 'ivy', strips: 4, pieces: 4, start: { wall: 'A', at: '0 in' }, kill: { wall: 'A', at: '0 in' }, mismatch: '7 in', rollsAlone: 4,
      stretches: [{
        walls: ['A', 'B', 'C', 'D'], closed: true, start: { wall: 'A', at: '0 in' }, kill: { wall: 'A', at: '0 in' }, mismatch: '7 in',
        // At the ceiling: half of 6 3/4 in below it; 148 in are 7 spaces of 2 ft at most, 122 in are 6.
        marks: [['A', 8], ['B', 7], ['C', 8], ['D', 7]].map(([wall, count]) => ({ wall, from: 'ceiling', distance: '3 3/8 in', count })),
      }],
    });
    expect(plan.order[1]).toEqual({ covering: 'ivy', patternNumber: 'K-2099', run: null, rooms: ['bed1'], rollsNeeded: 4, provenMinimum: true, lowerBound: 4, rollsByRoom: 4, spare: 1, inHand: 0, toBuy: 5, packs: [{ rolls: 1, count: 5 }], price: '90.00' });
    expect(plan.cuts[1].rolls.flatMap(({ pieces }: Loose) => pieces.map(({ piece, from, length }: Loose) => [piece, from, length])).toSorted()).toEqual([
      ['A1', '0 in', `12' 6"`],
      ['B1', '0 in', `10' 4"`],
      ['C1', '0 in', `12' 6"`],
      ['D1', '0 in', `10' 4"`],
    ]);
  });

  test('cuts three pieces of the wallcovering from each roll, 8\' 9" apart', () => {
    for (const { pieces } of plan.cuts[0].rolls) {
      expect(pieces.map(({ from, length }: Loose) => [from, length])).toEqual([['0 in', `8' 4"`], [`8' 9"`, `8' 4"`], [`17' 6"`, `8' 4"`]]);
    }
  });

  test('closes, has no problems, and says what its vinyl asks for', () => {
    expect([plan.rooms[0].closingError, plan.problems]).toEqual(['0 in', []]);
    expect(plan.warnings.map(({ message }: { readonly message: string }) => message)).toEqual([
      'K-2041 is vinyl and laps on itself in corners: have vinyl-to-vinyl adhesive for the laps.',
      'The border K-2099 goes over vinyl in Front bedroom: it wants vinyl-to-vinyl adhesive, and the vinyl hung before it, dry.',
    ]);
  });
});

describe('a plan as JSON', () => {
  test('says where each of several stretches begins, and no kill point where there is none', () => {
    const facts = room(['100 in', '80 in', '70 in', '80 in'], { bands: [{ id: 'main', covering: 'paper', walls: ['A', 'C'], layout: { start: { wall: 'C', at: '10 in' } } }] });
    const [band] = printed(documentOf({ coverings: [wallcovering()], rooms: [facts] })).rooms[0].bands;
    expect(band).toMatchObject({ kill: null, mismatch: null });
    expect(band.stretches).toMatchObject([{ walls: ['A'], closed: false, kill: null, mismatch: null }, { walls: ['C'], closed: false, start: { wall: 'C', at: '10 in' } }]);
  });

  test('of a drop match says how far apart in height the ends stand', () => {
    const facts = room(['60 in', '30 in', '60 in', '30 in']);
    facts.bands[0].layout = { start: { wall: 'A', at: '0 in' } };
    const [band] = printed(documentOf({ rules: { insideWrap: '0 in' }, coverings: [wallcovering({ repeat: '24 in', match: 'drop', dropBy: '1/2' })], rooms: [facts] })).rooms[0].bands;
    expect(band.stretches[0]).toMatchObject({ mismatch: '0 in', verticalMismatch: `1'` });
  });

  test('in metric prints metric, in its currency its decimals', () => {
    const facts = documentOf({ lengths: 'metric', currency: 'JPY', coverings: [wallcovering({ width: '53 cm', rollLength: '10.05 m', repeat: '0 cm', soldIn: [{ rolls: 1, price: '3200' }] })], rooms: [{ ...room(['2.12 m']), walls: [{ id: 'A', length: '2.12 m', height: '2.4 m' }] }], rules: { trim: '5 cm' } });
    const plan = printed(facts);
    // Four strips of 2.50 m from a roll of 10.05 m, and a spare.
    expect(plan.order).toMatchObject([{ rollsNeeded: 1, toBuy: 2, price: '6400' }]);
    expect(plan.cuts[0].rolls[0].pieces.map(({ from, length }: Loose) => [from, length])).toEqual([['0 mm', '2.5 m'], ['2.5 m', '2.5 m'], ['5 m', '2.5 m'], ['7.5 m', '2.5 m']]);
  });

  test('is null where a price is not known, and silent of a shortfall where there is none', () => {
    const plan = printed(documentOf({ coverings: [wallcovering()], rooms: [room(['100 in'])] }));
    expect(plan.order[0].price).toBeNull();
    expect(Object.keys(plan.order[0])).not.toContain('shortfall');
    expect(Object.keys(plan.order[0])).not.toContain('spareLacking');
  });
});

function frozen<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null) {
    Object.values(value).forEach(frozen);
    Object.freeze(value);
  }
  return value;
}

test('planning changes nothing of the facts, and what was planned in between changes nothing of a plan', () => {
  const house = frozen(exampleHouse());
  const plan = frozen(planHouse(house));
  const document = planDocument(house, plan);
  planHouse(demoHouse());
  for (let index = 0; index < 3; index += 1) {
    const other = exampleDocument();
    other.rooms[0].walls[0].length = `${140 + index} in`;
    delete other.rooms[0].bands[0].layout;
    planHouse(houseOf(other));
  }
  expect(planHouse(exampleHouse())).toEqual(plan);
  expect(planDocument(house, plan)).toEqual(document);
});

test('strips are counted with those that only turn a lap, lengths by what hangs in one', () => {
  const house = houseOf(documentOf({ coverings: [wallcovering({ repeat: '0 in' })], rooms: [room(['100 in', '100 in', '100 in', '99.625 in'])] }));
  const [band] = planHouse(house, 'instant').rooms[0]!.bands;
  expect(countStrips(band!)).toBe(21);
});

describe('words', () => {
  const house = houseOf(
    documentOf({
      coverings: [wallcovering(), { id: 'edge', kind: 'border', name: 'Edge', width: '6 in', rollLength: '15 ft' }, { id: 'line', kind: 'lining', width: '22 in', rollLength: '33 ft' }, { id: 'lake', kind: 'mural', panels: 2, panelWidth: '1 m', panelHeight: '2 m' }, { id: 'chalk', kind: 'paint' }],
      rooms: [room(['100 in'])],
    }),
  );

  test.each([
    ['edge', 3, '3 spools'],
    ['edge', 1, '1 spool'],
    ['lake', 1, '1 mural'],
    ['lake', 0, '0 murals'],
    ['paper', 1, '1 roll'],
    ['line', 2, '2 rolls'],
    ['chalk', 2, '2 tins'],
    ['gone', 2, '2 rolls'],
  ])('for what %s is bought in: %i are %s', (covering, count, words) => {
    expect(sayUnits(house, covering, count)).toBe(words);
  });

  test('for a covering: its pattern number, else its name, else its id', () => {
    expect(['paper', 'edge', 'line', 'gone'].map((id) => nameCovering(house, id))).toEqual(['P-1', 'Edge', 'line', 'gone']);
    expect(['room', 'gone'].map((id) => nameRoom(house, id))).toEqual(['Room', 'gone']);
  });

  const option: LayoutOption = {
    layout: { start: { wall: 'A', at: lengthOf(0) }, edge: 'left', direction: 'right', kill: 'start' },
    rolls: 9,
    mismatch: { amount: inches(7.375), side: 'over', vertical: lengthOf(0) },
    visibleMismatch: 0,
    slivers: 0,
    outsideSeams: 0,
    strips: 27,
    killKind: 'entrance-corner',
    startKind: 'kill',
  };
  const say = (facts: Partial<LayoutOption>) => sayLayout({ ...option, ...facts }, 'imperial').join(' ');
  const mismatch = (amount: Length, side: 'over' | 'short' | 'none', vertical: Length) => ({ mismatch: { amount, side, vertical } });

  test('for a layout on offer', () => {
    expect(say({})).toBe('9 rolls. The ends meet in the corner by the entrance, 7 3/8 in over. No slivers. Struck there and hung round to the right.');
    expect(sayLayout(option, 'metric')[1]).toBe('The ends meet in the corner by the entrance, 18.7 cm over.');
    expect(say({ rolls: 1, slivers: 1, killKind: null, mismatch: null, startKind: 'seam-centred' })).toBe('1 roll. 1 sliver. A seam is centred on wall A.');
    expect(say({ slivers: 3, outsideSeams: 2, startKind: 'strip-centred' })).toContain('3 slivers, 2 at an outside corner. A strip is centred on wall A.');
    expect(say({ startKind: 'corner' })).toContain('Struck at a corner of wall A.');
    expect(say({ startKind: 'opening' })).toContain('Struck at the side of an opening on wall A.');
  });

  test('for where its ends meet, and how', () => {
    const kill = { wall: 'C', at: inches(20) };
    expect(say({ killKind: 'corner', layout: { ...option.layout, kill } })).toContain('The ends meet in the corner at the left of wall C, 7 3/8 in over.');
    expect(say({ killKind: 'over-opening', layout: { ...option.layout, kill } })).toContain('The ends meet at the side of an opening on wall C, 7 3/8 in over.');
    expect(say({ ...mismatch(lengthOf(0), 'none', lengthOf(0)) })).toContain('in the corner by the entrance, with no mismatch.');
    expect(say({ ...mismatch(lengthOf(0), 'none', inches(10.5)) })).toContain('in the corner by the entrance, 10 1/2 in apart in height.');
    expect(say({ ...mismatch(inches(3), 'short', inches(10.5)) })).toContain('in the corner by the entrance, 3 in short and 10 1/2 in apart in height.');
  });
});

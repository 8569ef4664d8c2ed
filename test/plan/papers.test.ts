import { describe, expect, test } from 'vitest';
import { isForTwo } from '../../shared-core/calendar/index.ts';
import { isRollGoods } from '../../shared-core/ordering/index.ts';
import { papersOf, planHouse, sayPlacesOnRoll, surelyLong, toolsFor, usualPaperSize } from '../../shared-core/plan/index.ts';
import { inches } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const planned = (parts: Loose) => {
  const house = houseOf(documentOf(parts));
  return { house, plan: planHouse(house) };
};

describe('the papers of a house', () => {
  test('with one room hung from one supplier and no day to begin are seven', () => {
    const { house, plan } = planned({ coverings: [wallcovering({ supplier: 'north' })], rooms: [room(['120 in', '100 in', '120 in', '100 in'])] });
    expect(papersOf(house, plan).map(({ kind, of }) => [kind, of])).toEqual([['order', 'north'], ['goods-in', null], ['job-sheet', 'room'], ['cut-list', null], ['shopping-list', null], ['quote', null], ['record', null]]);
  });

  test('are none where there is no room', () => {
    const { house, plan } = planned({});
    expect(papersOf(house, plan)).toEqual([]);
  });

  test('are usually on the paper of the country, else of the units', () => {
    const sizes = [{ country: 'CA', lengths: 'metric' }, { country: 'IE', lengths: 'imperial' }, { lengths: 'imperial' }, { lengths: 'metric' }].map((facts) => usualPaperSize(houseOf(documentOf(facts))));
    expect(sizes).toEqual(['letter', 'a4', 'letter', 'a4']);
  });
});

test('tools are those of the work: a trough for what is prepasted, a template for a border', () => {
  const tools = (coverings: readonly Loose[], bands: readonly Loose[]) => {
    const { house, plan } = planned({ coverings, rooms: [room(['120 in', '100 in', '120 in', '100 in'], { bands })] });
    return toolsFor(house, plan, 'room');
  };
  const band = { id: 'main', covering: 'paper', walls: ['A', 'B', 'C', 'D'] };
  const border = { id: 'trail', kind: 'border', width: '6 in', rollLength: '15 ft', paste: 'prepasted' };
  const prepasted = tools([wallcovering({ paste: 'prepasted' })], [band]);
  expect(prepasted).toContain('water trough');
  expect(prepasted.join()).not.toMatch(/paste brush|template/);
  expect(tools([wallcovering(), border], [band, { id: 'rail', covering: 'trail', walls: ['A'], from: '40 in', to: '46 in' }])).toEqual(expect.arrayContaining(['paste, bucket and paste brush or roller', 'template for the height of the pencil marks']));
  expect(tools([wallcovering()], [])).toEqual([]);
});

test('a whole strip takes two people where it is longer than one hangs', () => {
  const { house } = planned({});
  const strip = (top: number) => ({ part: 'full' as const, top: inches(top), bottom: inches(0) });
  expect([144, 156].map((top) => isForTwo(strip(top), house.rules))).toEqual([false, true]);
  expect(isForTwo({ ...strip(156), part: 'above' }, house.rules)).toBe(false);
});

test('places on a roll are measured from the first cut where a roll may begin anywhere, else from its start', () => {
  const said = [{}, { rollStart: 'at-repeat' }, { match: 'free', repeat: '0 in' }].map((facts) => {
    const [paper] = houseOf(documentOf({ coverings: [wallcovering(facts)] })).coverings;
    if (!paper || !isRollGoods(paper)) throw new Error('a paper from rolls');
    return sayPlacesOnRoll(paper);
  });
  expect(said.map((words) => /first cut/.test(words))).toEqual([true, false, false]);
});

test('what is left is never said to be longer than it is', () => {
  expect(surelyLong(inches(10), 'imperial')).toBe(inches(10));
  expect(surelyLong((inches(10) - 1) as never, 'imperial')).toBe(inches(9 + 15 / 16));
});

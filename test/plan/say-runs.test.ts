import { describe, expect, test } from 'vitest';
import type { WayOut } from '../../shared-core/ordering/index.ts';
import { explainRuns, planHouse, sayRun, sayWayOut } from '../../shared-core/plan/index.ts';
import type { Loose } from '../builders.ts';
import { FERN, fernHouse, placed, rolls, strips } from '../ordering/fern-house.ts';

const named = (id: string, name: string, count: number) => strips(id, count, { name });
const BED = named('bed', 'Front bedroom', 14);
const HALL = named('hall', 'Hall', 10);

function linesOf(facts: Loose) {
  const house = fernHouse({ rooms: [BED, HALL], ...facts });
  const plan = planHouse(house);
  return explainRuns(house, plan.runs[0]!, plan.order);
}
const textsOf = (facts: Loose) => linesOf(facts).map(({ text }) => text);

test('a run is called by its number, or as the one that is on its way', () => {
  expect([sayRun('2214'), sayRun(null)]).toEqual(['run 2214', 'the run on its way']);
});

describe('why rooms hang from their runs', () => {
  test('is said run by run: what it covers and leaves, or that it is not needed and what there is of it', () => {
    // 24 strips are 8 rolls.
    expect(textsOf({ stock: [rolls('2214', 9)], offers: [rolls('2215', 2)] })).toEqual([
      'Run 2214 covers Front bedroom and Hall: 8 rolls of 9, 1 over.',
      'Run 2215 is not needed (2 rolls on offer).',
      'No room mixes runs.',
    ]);
    expect(textsOf({ stock: [rolls('2214', 9), rolls('7', 1)], offers: [rolls('7', 1)], orders: [placed([{ run: '7', rolls: 3 }, { run: '2214', rolls: 1 }])] })[1]).toBe('Run 7 is not needed (1 in hand, 3 on order, 1 roll on offer).');
  });

  test('names a run of which there is nothing by its number alone', () => {
    expect(textsOf({ stock: [rolls('2214', 9), rolls('2207', 0)] })[1]).toBe('Run 2207 is not needed.');
  });

  test('names rooms that must match', () => {
    expect(textsOf({ stock: [rolls('2214', 9)], matching: [{ rooms: ['bed', 'hall'] }] })).toContain('Front bedroom and Hall must match, so they hang from one run.');
  });

  test('says whether a better way is ruled out', () => {
    expect(linesOf({ stock: [rolls('2214', 9)] }).at(-1)!.rule).toBe('most rooms first, then the fewest rolls bought, then the least left over: no other way of sharing the runs out is better');
    const house = fernHouse({ rooms: [BED, HALL], stock: [rolls('2214', 9)] });
    const plan = planHouse(house);
    expect(explainRuns(house, { ...plan.runs[0]!, isBestAssignment: false }, plan.order).at(-1)!.rule).toMatch(/the best that was found; a better way is not ruled out$/);
  });

  test('of a run on its way says what it covers, and not what hangs from none', () => {
    expect(textsOf({ orders: [placed([{ rolls: 10 }])] })[0]).toBe('The run on its way covers Front bedroom and Hall: 8 rolls of 10, 2 over.');
    expect(textsOf({ orders: [placed([{ rolls: 6 }])], offers: [rolls('7', 1)] })).toEqual(['Run 7 is not needed (1 roll on offer).', 'The run on its way covers Hall: 4 rolls of 6, 2 over.', 'No room mixes runs.']);
  });

  test('of a room that changes runs in a corner does not say that no room mixes them', () => {
    const walls = [{ id: 'A', length: '61.5 in', height: '8 ft' }, { id: 'B', length: '61.5 in', height: '8 ft' }];
    const bands = [{ id: 'main', covering: 'fern', walls: ['A', 'B'], runMayChange: ['A'], layout: { start: { wall: 'A' } } }];
    expect(textsOf({ rules: { spareRolls: 0, insideWrap: '0 in' }, rooms: [{ id: 'bed', name: 'Bedroom', walls, bands }], stock: [rolls('1', 1), rolls('2', 1)] }).map((text) => text.split(':')[0])).toEqual([
      'Run 1 covers Bedroom',
      'Run 2 covers Bedroom',
      'In Bedroom the run changes in a corner; no wall mixes runs.',
    ]);
  });
});

describe('a way out is said', () => {
  const house = fernHouse({ rooms: [BED, HALL], coverings: [FERN, { id: 'ivy', kind: 'border', width: '6 in', rollLength: '5 m' }] });
  const WAYS: readonly (readonly [string, WayOut, string])[] = [
    ['fern', { kind: 'ask-for-more', run: '2214', rolls: 2 }, 'Ask for 2 rolls more of run 2214: then every room hangs.'],
    ['fern', { kind: 'ask-for-more', run: null, rolls: 1 }, 'Ask for 1 roll more of the run on its way: then every room hangs.'],
    ['ivy', { kind: 'ask-for-more', run: '5', rolls: 3 }, 'Ask for 3 spools more of run 5: then every room hangs.'],
    ['fern', { kind: 'untie', rooms: ['bed', 'hall'] }, 'Let Front bedroom and Hall hang from different runs: then every room hangs.'],
    ['fern', { kind: 'choose-otherwise', rooms: ['hall'] }, 'Let the run of Hall be chosen anew: then every room hangs.'],
    ['fern', { kind: 'change-at-corner', room: 'bed', walls: ['B'] }, 'Let the run change in Front bedroom at the inside corner after wall B: then every room hangs.'],
    ['fern', { kind: 'another-run', rolls: 4, rooms: ['hall'] }, 'Wait with Hall until another run has 4 rolls.'],
  ];

  test.each(WAYS)('of %s: %j', (covering, way, words) => {
    expect(sayWayOut(house, covering, way)).toBe(words);
  });
});

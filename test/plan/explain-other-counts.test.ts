import { describe, expect, test } from 'vitest';
import { explainOtherCounts, type OtherCounts, planHouse, sayShort } from '../../shared-core/plan/index.ts';
import { millimetres } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, room, wallcovering } from '../builders.ts';

const house = houseOf(documentOf({ lengths: 'metric', coverings: [wallcovering()], rooms: [room(['320 in'])] }));
const line = { ...planHouse(house).order[0]!, rollsNeeded: 6 };
const NONE: OtherCounts = { leastWhenLooking: null, ifAtRepeat: null, atLowerTolerance: null };
const texts = (counts: Partial<OtherCounts>) => explainOtherCounts(house, line, { ...NONE, ...counts }).map(({ text }) => text);

describe('what other rolls would take', () => {
  test('is said of who looks at each roll first', () => {
    expect(texts({ leastWhenLooking: 4 })).toEqual(['Looking at where each roll begins before it is cut might save up to 2; on fewer than 4 rolls nobody can rely.']);
    expect(texts({ leastWhenLooking: 6 })).toEqual(['Looking at where each roll begins before it is cut makes no fewer rolls sure.']);
    expect(explainOtherCounts(house, { ...line, isProvenMinimum: false }, { ...NONE, leastWhenLooking: 4 })).toEqual([]);
  });

  test('is said of rolls that begin at a repeat', () => {
    expect(texts({ ifAtRepeat: { rolls: 4, isProven: true } })).toEqual(['From rolls that all begin at a repeat 4 rolls would do, 2 fewer.']);
    expect(texts({ ifAtRepeat: { rolls: 6, isProven: false } })).toEqual(['From rolls that all begin at a repeat it takes 6 rolls too.']);
    expect(texts({})).toEqual([]);
  });

  test.each([
    [8, true, true, '8 rolls, 2 more.'],
    [8, false, true, 'at most 8 rolls, 2 more.'],
    [6, true, true, '6 rolls too.'],
    [5, true, true, '5 rolls, 1 fewer, since the narrower strips fall better.'],
    [6, true, false, '6 rolls too. A piece is too long for such a roll.'],
  ])('is said of the smallest rolls: %d, proved %s, every piece given %s', (rolls, isProven, isEveryPieceGiven, told) => {
    const [text] = texts({ atLowerTolerance: { rolls, isProven, isEveryPieceGiven, width: millimetres(522), rollLength: millimetres(9_900) } });
    expect(text).toBe(`From the smallest rolls that may be sold as this size, 52.2 cm by 9.9 m, it takes ${told}`);
  });
});

test.each([
  [0, 'never short'],
  [0.001, 'short in under 1 of 100'],
  [0.01, 'short in 1 of 100'],
  [0.76, 'short in 76 of 100'],
  [0.9967, 'short in over 99 of 100'],
  [1, 'short'],
])('a chance of %d is said as %s', (chanceShort, said) => {
  expect(sayShort({ rolls: 4, chanceShort })).toBe(said);
  expect(sayShort({ rolls: null, chanceShort })).toBe('no count');
});

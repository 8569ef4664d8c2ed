import { describe, expect, test } from 'vitest';
import { cutPieces, cuttingProblem, isRollGoods, longestPiece, type PlacedPiece, rollOf } from '../../shared-core/ordering/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { inches } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

function goods(facts: Loose) {
  const [covering] = houseOf(documentOf({ coverings: [facts] })).coverings;
  if (!covering || !isRollGoods(covering)) throw new Error('goods in rolls');
  return covering;
}

const piece = (name: string, length: number, phase = 0): PlacedPiece => ({ room: name, band: 'main', piece: { label: 'A1', strip: 0, part: 'full', length: inches(length), phase: inches(phase), top: inches(length), bottom: inches(0), upperEdge: inches(length) } });
const fern = (facts: Loose = {}) => goods(wallcovering({ rollLength: '33 ft', repeat: '21 in', ...facts }));

describe('a roll as it is cut', () => {
  test('has the repeat and the start of its covering, and neither for a free match or lining', () => {
    expect(rollOf(fern())).toEqual({ rollLength: inches(396), repeat: inches(21), rollStart: 'anywhere' });
    expect(rollOf(fern({ match: 'free' }))).toEqual({ rollLength: inches(396), repeat: 0, rollStart: 'at-repeat' });
    expect(rollOf(goods({ id: 'line', kind: 'lining', width: '22 in', rollLength: '33 ft' }))).toEqual({ rollLength: inches(396), repeat: 0, rollStart: 'at-repeat' });
    expect(rollOf(goods({ id: 'ivy', kind: 'border', width: '6 in', rollLength: '15 ft', repeat: '20 in', rollStart: 'at-repeat' }))).toEqual({ rollLength: inches(180), repeat: inches(20), rollStart: 'at-repeat' });
  });

  test('surely gives its length, less a repeat or less what lies above the piece', () => {
    expect(longestPiece(fern())).toBe(inches(375));
    expect(longestPiece(fern({ rollStart: 'at-repeat' }), inches(19))).toBe(inches(377));
    expect(longestPiece(fern({ rollStart: 'at-repeat' }))).toBe(inches(396));
    expect(longestPiece(fern({ match: 'free' }))).toBe(inches(396));
  });

  test('is what a wallcovering, a border or a lining comes in, no other goods', () => {
    const { coverings } = houseOf(documentOf({ coverings: [wallcovering({ id: 'a', rollLength: undefined, soldBy: { length: '1 yd', pieceLength: '30 yd' } }), { id: 'b', kind: 'mural', panels: 1, panelWidth: '1 m', panelHeight: '2 m' }, { id: 'c', kind: 'paint' }] }));
    expect(coverings.map(isRollGoods)).toEqual([false, false, false]);
  });
});

describe('pieces pooled', () => {
  test('are one type where length and phase are alike, whichever room they hang in', () => {
    const { problem, members } = cuttingProblem(fern(), [piece('a', 100), piece('b', 100), piece('a', 100, 3), piece('a', 90)]);
    expect(problem.pieces).toEqual([
      { length: inches(100), phase: 0, count: 2 },
      { length: inches(100), phase: inches(3), count: 1 },
      { length: inches(90), phase: 0, count: 1 },
    ]);
    expect(members.map((group) => group.map((one) => one.room))).toEqual([['a', 'b'], ['a'], ['a']]);
  });

  test('are named again in the cuts, rooms in their order; what no roll gives is set aside', () => {
    const cutting = cutPieces(fern(), [piece('a', 100), piece('b', 100), piece('c', 376), piece('d', 100), piece('e', 100)], 'usual');
    expect(cutting.impossible.map((one) => one.room)).toEqual(['c']);
    const rolls = cutting.rolls();
    expect(rolls.map(({ number, cuts }) => [number, cuts.length]).toSorted((one, other) => one[1]! - other[1]!).map(([, cuts]) => cuts)).toEqual([1, 3]);
    expect(rolls.flatMap(({ cuts }) => cuts.map(({ placed }) => placed.room))).toEqual(['a', 'b', 'd', 'e']);
  });
});

test('rooms are never cut together into more rolls than they take apart', () => {
  // Two rooms of a drop of two fifths: cut apart they take 15 rolls, and pooled no way of 15 is found at once.
  const drop = wallcovering({ width: '18 in', rollLength: '412 in', repeat: '27 in', match: 'drop', dropBy: '2/5', rollStart: 'at-repeat', spareRolls: 0 });
  const of = (id: string, across: number, deep: number, height: number, from: number) => {
    const door = { id: 'door', kind: 'door', entrance: true, from: `${from} in`, width: '31 in', height: '78 in' };
    return room([across, deep, across, deep].map((length) => `${length} in`), { id, name: id }, [{ openings: [door] }, {}, {}, {}].map((facts) => ({ ...facts, height: `${height} in` })));
  };
  const [line] = planHouse(houseOf(documentOf({ coverings: [drop], rooms: [of('one', 65, 125, 96, 0), of('other', 117, 133, 99, 16)] }))).order;
  expect(line!.rollsNeeded).toBeLessThanOrEqual(line!.rollsByRoom);
  expect(line!.rollsByRoom).toBe(15);
  expect(line!.lowerBound).toBeLessThanOrEqual(line!.rollsNeeded);
});

import { describe, expect, it } from 'vitest';
import { FAMILIES, type Instance, instances } from '../bench/cutting/instances.ts';
import { piecesOf } from '../bench/cutting/rooms.ts';

const ALL = instances();
const HOUSES = ALL.filter(({ family }) => family !== 'triplets');

const pieceCount = ({ problem }: Instance) => problem.pieces.reduce((sum, { count }) => sum + count, 0);
const rangeOf = (values: readonly number[]) => [Math.min(...values), Math.max(...values)];

describe('the pieces of a room', () => {
  const window = { from: 500, width: 1_200, sill: 900, head: 2_100 };
  const room = { perimeter: 4 * 530, height: 2_400, openings: [window], times: 1 };
  const hanging = { repeat: 640, isHalfDrop: false, position: 0, trim: 50 };

  it('go from ceiling to floor, or above and below an opening that a strip lies within', () => {
    expect(piecesOf([room], hanging)).toEqual([
      { length: 2_500, phase: 590, count: 2 },
      { length: 1_000, phase: 170, count: 2 },
      { length: 400, phase: 590, count: 2 },
    ]);
  });

  it('stay whole at an opening that the strip only reaches into', () => {
    expect(piecesOf([{ ...room, openings: [{ ...window, from: 531 }] }], hanging)).toContainEqual({ length: 2_500, phase: 590, count: 3 });
  });

  it('have half a repeat more at every second strip of a half-drop', () => {
    expect(piecesOf([room], { ...hanging, isHalfDrop: true })).toEqual([
      { length: 2_500, phase: 270, count: 1 },
      { length: 2_500, phase: 590, count: 1 },
      { length: 1_000, phase: 170, count: 1 },
      { length: 1_000, phase: 490, count: 1 },
      { length: 400, phase: 270, count: 1 },
      { length: 400, phase: 590, count: 1 },
    ]);
  });

  it('take a last strip for what is left of the wall, and are counted for each room of a kind', () => {
    expect(piecesOf([{ perimeter: 531, height: 2_400, openings: [], times: 7 }], { ...hanging, repeat: 0 })).toEqual([{ length: 2_500, phase: 0, count: 14 }]);
  });
});

describe('the problems that cutting is measured on', () => {
  it('are the same every time', () => {
    expect(instances('3 rooms')).toEqual(instances('3 rooms'));
    expect(instances('hotel 1000')[0]!.problem.pieces[0]).toEqual({ length: 3_080, phase: 0, count: 3_244 });
  });

  it('have a name each, which says family, repeat, match, roll start and seed', () => {
    expect(new Set(ALL.map(({ name }) => name)).size).toBe(ALL.length);
    expect(ALL[0]!.name).toBe('3 rooms, 0, free, anywhere, seed 1');
    expect(ALL.map(({ name }) => name)).toContain('40 rooms, 640, half-drop, at-repeat, seed 10');
    expect(FAMILIES.map((family) => instances(family).length)).toEqual([170, 170, 170, 170, 170, 170, 40]);
  });

  it('are of whole millimetres, each type once, with phases in the repeat and lengths that a roll gives', () => {
    for (const { name, problem } of HOUSES) {
      const { rollLength, repeat, pieces } = problem;
      expect(new Set(pieces.map(({ length, phase }) => `${length} ${phase}`)).size, name).toBe(pieces.length);
      for (const { length, phase, count } of pieces) {
        expect([rollLength, length, phase, count].every(Number.isSafeInteger), name).toBe(true);
        expect(length >= 100 && length <= 3_200 + 2 * 75 && length <= rollLength - repeat, `${name}: ${length}`).toBe(true);
        expect(phase >= 0 && (phase < repeat || phase === 0) && count > 0, name).toBe(true);
      }
    }
  });

  it.each([
    ['3 rooms', [75, 107], [1, 15]],
    ['10 rooms', [266, 328], [3, 28]],
    ['40 rooms', [1_103, 1_246], [10, 64]],
    ['hotel 300', [7_876, 9_996], [8, 36]],
    ['hotel 1000', [26_162, 32_746], [9, 39]],
    ['40 rooms measured', [1_129, 1_247], [51, 157]],
  ] as const)('of %s have %j pieces and %j types', (family, pieces, types) => {
    const some = instances(family);
    expect(rangeOf(some.map(pieceCount))).toEqual(pieces);
    expect(rangeOf(some.map(({ problem }) => problem.pieces.length))).toEqual(types);
  });

  it('have two phases for each strip of a half-drop, and one for all full strips of a straight match', () => {
    const phasesOfLongest = ({ problem }: Instance) => problem.pieces.filter(({ length }) => length === problem.pieces[0]!.length).length;
    for (const instance of instances('40 rooms')) expect(phasesOfLongest(instance), instance.name).toBe(instance.name.includes('half-drop') ? 2 : 1);
  });

  it('among the triplets fill every roll with three pieces', () => {
    for (const { name, problem, fewest } of instances('triplets')) {
      const sum = problem.pieces.reduce((whole, { length, count }) => whole + length * count, 0);
      expect(sum, name).toBe(fewest! * problem.rollLength);
      expect(name).toContain(`t${3 * fewest!}`);
    }
    expect(new Set(instances('triplets').map(pieceCount))).toEqual(new Set([60, 120, 249, 501]));
  });
});

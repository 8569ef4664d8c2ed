import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CLOSING_ERROR_WORTH_A_LOOK, drawOutline, goesAllRound, readTurn } from '../../shared-core/survey/index.ts';
import { areaOf, inches, millimetres } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, room } from '../builders.ts';

function roomOf(walls: readonly (readonly [length: string, turn: string])[]) {
  const [found] = houseOf(documentOf({ rooms: [room(walls.map(([length]) => length), { bands: [] }, walls.map(([, turn]) => ({ turn })))] })).rooms;
  return found!;
}

const turns = (...angles: readonly string[]) => roomOf(angles.map((angle) => ['2 m', angle]));

/** The outside corner of an L, cut away by the rest of its rectangle. */
const lShape = ({ across, deep, cutAcross, cutDeep }: { readonly across: number; readonly deep: number; readonly cutAcross: number; readonly cutDeep: number }) =>
  [
    [across, 'inside'],
    [deep - cutDeep, 'inside'],
    [cutAcross, 'outside'],
    [cutDeep, 'inside'],
    [across - cutAcross, 'inside'],
    [deep, 'inside'],
  ] as const;

const lengths = fc.record({ across: fc.integer({ min: 1_000, max: 9_000 }), deep: fc.integer({ min: 1_000, max: 9_000 }), cutAcross: fc.integer({ min: 1, max: 999 }), cutDeep: fc.integer({ min: 1, max: 999 }) });

describe('the turn of a corner', () => {
  test.each([
    ['89.99', 'inside', 8_999],
    ['10', 'inside', 1_000],
    ['179.9', 'inside', 17_990],
    ['180.00', 'straight', 18_000],
    ['180.01', 'outside', 18_001],
    ['350', 'outside', 35_000],
  ])('of %s degrees is %s', (turn, kind, interiorAngle) => {
    expect(readTurn(turn)).toEqual({ kind, interiorAngle });
  });
});

describe('whether walls go all round', () => {
  test('is judged by the corners turning 360 degrees, 10 degrees off at most', () => {
    // Four right angles turn 360 degrees; each degree that a corner is wider turns one less.
    expect(goesAllRound(turns('90', '90', '90', '100'))).toBe(true);
    expect(goesAllRound(turns('90', '90', '90', '100.01'))).toBe(false);
    expect(goesAllRound(turns('90', '90', '90', '80'))).toBe(true);
    expect(goesAllRound(turns('90', '90', '90', '79.99'))).toBe(false);
  });

  test('takes three walls at least: two that turn back on themselves are no room', () => {
    expect(goesAllRound(turns('60', '60', '60'))).toBe(true);
    expect(goesAllRound(turns('10', '10'))).toBe(false);
    expect(goesAllRound(roomOf([]))).toBe(false);
  });

  test('an outside corner turns back what an inside one turned', () => {
    expect(goesAllRound(turns('inside', 'inside', 'outside', 'inside', 'inside', 'inside'))).toBe(true);
    expect(goesAllRound(turns('inside', 'inside', 'outside', 'inside', 'inside'))).toBe(false);
    expect(goesAllRound(turns('inside', 'straight', 'inside', 'inside', 'inside'))).toBe(true);
  });
});

describe('the closing error', () => {
  test('is the way straight from the last end to the first', () => {
    // 3 in too long along one side and 4 in along the other: 5 in as the crow flies.
    const { closingError } = drawOutline(roomOf([['103 in', 'inside'], ['104 in', 'inside'], ['100 in', 'inside'], ['100 in', 'inside']]));
    expect(closingError).toBe(inches(5));
  });

  test('of 25 mm is worth no look yet', () => {
    expect(CLOSING_ERROR_WORTH_A_LOOK).toBe(millimetres(25));
  });

  test('of a row of walls that does not go round is the way from end to end', () => {
    const outline = drawOutline(roomOf([['3 m', 'inside'], ['4 m', 'inside']]));
    expect(outline).toMatchObject({ isClosed: false, closingError: millimetres(5_000), perimeter: millimetres(7_000) });
    expect(outline.points).toHaveLength(3);
  });

  test('of no walls at all is none', () => {
    expect(drawOutline(roomOf([]))).toEqual({ points: [{ x: 0, y: 0 }], closingError: 0, isClosed: false, perimeter: 0, floorArea: 0 });
  });
});

describe('a bay of two corners of 135 degrees', () => {
  // A square of 4 m with one corner cut off across: 1 m off both sides, so √2 m along the cut.
  const bay = roomOf([['3 m', '135'], [`${Math.SQRT2.toFixed(6)} m`, '135'], ['3 m', 'inside'], ['4 m', 'inside'], ['4 m', 'inside']]);

  test('turns by 45 degrees twice', () => {
    expect(goesAllRound(bay)).toBe(true);
    const [, , third, fourth] = drawOutline(bay).points;
    expect(third!.x / millimetres(1)).toBeCloseTo(4_000, 1);
    expect(third!.y / millimetres(1)).toBeCloseTo(1_000, 1);
    expect(fourth!.y / millimetres(1)).toBeCloseTo(4_000, 1);
  });

  test('closes within what its cut was rounded by, less the corner in its area', () => {
    const outline = drawOutline(bay);
    expect(outline.closingError).toBeLessThanOrEqual(2);
    expect(outline.floorArea / millimetres(1_000) ** 2).toBeCloseTo(16 - 0.5, 4);
  });
});

test('every L closes exactly, and its area is its rectangle less what is cut out', () => {
  fc.assert(
    fc.property(lengths, fc.nat(5), (sizes, from) => {
      const walls = lShape(sizes).map(([length, turn]) => [`${length} mm`, turn] as const);
      const outline = drawOutline(roomOf([...walls.slice(from), ...walls.slice(0, from)]));
      const { across, deep, cutAcross, cutDeep } = sizes;
      expect(outline).toMatchObject({
        isClosed: true,
        closingError: 0,
        perimeter: millimetres(2 * (across + deep)),
        floorArea: areaOf(millimetres(1) ** 2 * (across * deep - cutAcross * cutDeep)),
      });
    }),
    { numRuns: 200 },
  );
});

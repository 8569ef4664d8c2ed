import { describe, expect, test } from 'vitest';
import { drawOutline, goesAllRound, readTurn } from '../../shared-core/survey/index.ts';
import { areaOf, inches, millimetres } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, room } from '../builders.ts';

function outlineOf(lengths: readonly string[], turns: readonly string[] = []) {
  const [found] = houseOf(documentOf({ rooms: [{ ...room(lengths, { bands: [] }, turns.map((turn) => ({ turn }))) }] })).rooms;
  return { outline: drawOutline(found!), isRound: goesAllRound(found!) };
}

test.each([
  ['inside', 'inside', 9_000],
  ['outside', 'outside', 27_000],
  ['straight', 'straight', 18_000],
  ['135', 'inside', 13_500],
  ['180', 'straight', 18_000],
  ['225.5', 'outside', 22_550],
  ['90.05', 'inside', 9_005],
])('a turn of %s is an %s corner', (turn, kind, interiorAngle) => {
  expect(readTurn(turn)).toEqual({ kind, interiorAngle });
});

describe('the outline', () => {
  test('of a rectangle closes exactly round its area', () => {
    const { outline } = outlineOf(['4 m', '3 m', '4 m', '3 m']);
    expect(outline).toMatchObject({ isClosed: true, closingError: 0, perimeter: millimetres(14_000), floorArea: areaOf(millimetres(4000) * millimetres(3000)) });
    expect(outline.points.map(({ x, y }) => [x, y])).toEqual([[0, 0], [millimetres(4000), 0], [millimetres(4000), millimetres(3000)], [0, millimetres(3000)], [0, 0]]);
  });

  test('of an L turns outwards once', () => {
    const { outline } = outlineOf(['5 m', '4 m', '2 m', '1 m', '3 m', '3 m'], ['inside', 'inside', 'inside', 'outside', 'inside', 'inside']);
    expect(outline).toMatchObject({ isClosed: true, closingError: 0, floorArea: areaOf(millimetres(1000) * millimetres(1000) * 17) });
  });

  test('of a room with its corners cut off closes within the rounding of its drawing', () => {
    const side = '1 m';
    const { outline } = outlineOf(Array.from({ length: 8 }, () => side), Array.from({ length: 8 }, () => '135'));
    expect(outline.isClosed).toBe(true);
    expect(outline.closingError).toBeLessThanOrEqual(2);
    // A regular octagon of side 1 m has an area of 2 (1 + √2) square metres.
    expect(outline.floorArea / millimetres(1000) ** 2).toBeCloseTo(2 * (1 + Math.SQRT2), 4);
  });

  test('shows by how much a wrong length misses', () => {
    const { outline } = outlineOf([`12' 4"`, `10' 2"`, `12' 4"`, `10' 4"`]);
    expect(outline).toMatchObject({ isClosed: true, closingError: inches(2) });
  });

  test('of three walls of four does not go all the way round, of four with a wrong one it does', () => {
    expect(outlineOf(['4 m', '3 m', '4 m']).isRound).toBe(false);
    expect(outlineOf(['4 m', '3 m', '4 m', '1 m']).isRound).toBe(true);
    expect(outlineOf(['4 m', '3 m', '4 m', '3 m'], ['89', '91', '88', '90']).isRound).toBe(true);
    expect(outlineOf(['4 m']).isRound).toBe(false);
  });
});

import { describe, expect, test } from 'vitest';
import { drawBorder, drawElevation, type Drawing, fittingScale, layOut, type Mark, type Shape, tileOf } from '../../shared-core/drawing/index.ts';
import { hungBand } from '../../shared-core/house/index.ts';
import { motifOf } from '../../shared-core/drawing/motif.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { inches, modulo, UNITS_PER_MILLIMETRE } from '../../shared-core/units/index.ts';
import { tileTransform, tilingsOf } from '../../src-renderer/drawing/picture-tiles.ts';
import { documentOf, houseOf, type Loose } from '../builders.ts';
import { setOutRoom, WORKED } from './rooms.ts';

const PICTURES = { pictures: new Set(['fern']) };
const WALL = [{ id: 'A', length: '100 in', height: '96 in' }];
const HALF_DROP = { match: 'drop', dropBy: '1/2' };
const view = { width: 1100, height: 360, textHeight: 14, zoom: 1, panX: 0, panY: 0 };

const picturesIn = ({ shapes }: Drawing) => shapes.filter((shape): shape is Extract<Shape, { kind: 'picture' }> => shape.kind === 'picture');
const inInches = (units: number) => units / inches(1);
/** Where each strip's repeats begin, from the left and above the floor, in inches; negative is below the floor. */
const origins = (drawing: Drawing) => picturesIn(drawing).map(({ x, y }) => [inInches(x), inInches(-y)]);

/** A wall 100 in long and 96 in high: strips lay 20 in, the repeat is 21 in, the trim 2 in, the first line at the left end. */
const hung = (covering: object = {}, band: object = {}, walls: Parameters<typeof setOutRoom>[0] = WALL) => drawElevation(setOutRoom(walls, band, { width: '20 in', ...covering }).facts, 'imperial', PICTURES);

describe('a picture of one repeat', () => {
  test('of a straight match stands at the same height on every strip', () => {
    // Strip i begins at 20 i in. Each piece's top edge is 96 + 2 in high and lies (96 - 98) mod 21 = 19 in into the
    // repeat, so one begins at 98 + 19 = 117 in, which is 96 + 21: a whole repeat above the ceiling.
    const drawing = hung();
    expect(origins(drawing)).toEqual([[0, 117], [20, 117], [40, 117], [60, 117], [80, 117]]);
    expect(picturesIn(drawing).map(({ picture, width, height, fall, isTurned }) => [picture, inInches(width), inInches(height), fall, isTurned])).toEqual(Array(5).fill(['fern', 20, 21, 0, false]));
  });

  test('of a half-drop stands half a repeat apart on every other strip', () => {
    // The drop of the odd strips is 21 / 2 = 10 1/2 in: (96 - 98 + 10.5) mod 21 = 8.5, and 98 + 8.5 = 106.5 in.
    expect(origins(hung(HALF_DROP))).toEqual([[0, 117], [20, 106.5], [40, 117], [60, 106.5], [80, 117]]);
  });

  test('moves with the pattern at the top and with the first line', () => {
    // 3 in lower in the repeat: (3 + 96 - 98) mod 21 = 1, and 98 + 1 = 99 in. Strip 0 stands at 50 in, strip -3 at -10 in.
    const drawing = hung({}, { position: '3 in', layout: { start: { wall: 'A', at: '50 in' } } });
    expect(origins(drawing)).toEqual([[-10, 99], [10, 99], [30, 99], [50, 99], [70, 99], [90, 99]]);
  });

  test('fills what the strip covers, over and under an opening each piece by its own phase', () => {
    const window = { id: 'window', kind: 'window', from: '15 in', width: '30 in', sill: '30 in', height: '40 in' };
    const drawing = hung({}, {}, [{ ...WALL[0]!, openings: [window] }]);
    const [above, below] = picturesIn(drawing).filter(({ x }) => x === inches(20));
    // Over the window: 96 + 2 in again. Under it: its top edge is 30 + 2 in, (96 - 32) mod 21 = 1, and 32 + 1 = 33 in:
    // three repeats below 96 in.
    expect([above, below].map((shape) => inInches(-shape!.y))).toEqual([117, 33]);
    expect(below!.areas.map((points) => points.map(({ x, y }) => [inInches(x), inInches(-y)]))).toEqual([[[20, 30], [40, 30], [40, 0], [20, 0]]]);
  });

  test('runs on over the corners of a room in one grid, wraps included', () => {
    const drawing = drawElevation(setOutRoom(WORKED).facts, 'imperial', PICTURES);
    const strips = picturesIn(drawing);
    expect(strips.every(({ x }) => x % inches(20.5) === 0)).toBe(true);
    expect(strips.some(({ areas }) => areas.length === 2)).toBe(true);
  });

  test('as wide as two strips goes on from one to the next, but not where the drop makes the width', () => {
    // 40 in across: strips 0 and 1 show the picture from 0, strips 2 and 3 from 40; strip -1 of a line at 50 in from 10.
    expect(origins(hung({ horizontalRepeat: '40 in' })).map(([x]) => x)).toEqual([0, 0, 40, 40, 80]);
    expect(origins(hung({ horizontalRepeat: '40 in' }, { layout: { start: { wall: 'A', at: '50 in' } } })).map(([x]) => x)).toEqual([-30, 10, 10, 50, 50, 90]);
    const dropped = hung({ ...HALF_DROP, horizontalRepeat: '40 in' });
    expect(origins(dropped).map(([x]) => x)).toEqual([0, 20, 40, 60, 80]);
    expect(inInches(picturesIn(dropped)[0]!.width)).toBe(20);
  });

  test('on equal panels shows the middle of the roll: both edges are trimmed', () => {
    // 100 in from strips of 30 in are four panels of 25 in, each short of the roll by 2 1/2 in at both edges.
    expect(origins(hung({ width: '30 in', panels: 'equal' }, { layout: undefined })).map(([x]) => x)).toEqual([-2.5, 22.5, 47.5, 72.5]);
  });

  test('of a free match begins at the top of each strip, every other one upside down if they are hung so', () => {
    const drawing = hung({ match: 'free', reverseAlternate: true });
    expect(origins(drawing)[0]).toEqual([0, 98]);
    expect(picturesIn(drawing).map(({ isTurned }) => isTurned)).toEqual([false, true, false, true, false]);
  });

  test('takes the place of our motif; without a picture or a repeat there is none', () => {
    const facts = setOutRoom(WALL, {}, { width: '20 in' }).facts;
    const strokes = (drawing: Drawing) => drawing.shapes.filter(({ kind }) => kind === 'strokes').length;
    expect([strokes(drawElevation(facts, 'imperial', PICTURES)), strokes(drawElevation(facts, 'imperial'))]).toEqual([0, 1]);
    expect(picturesIn(drawElevation(facts, 'imperial'))).toEqual([]);
    expect(picturesIn(drawElevation(facts, 'imperial', { ...PICTURES, hasPattern: false }))).toEqual([]);
    expect(picturesIn(hung({ match: 'free', repeat: '0 in' }))).toEqual([]);
  });
});

describe('a border', () => {
  const drawn = (walls: readonly Loose[]) => {
    const covering = { id: 'fern', kind: 'border', width: '5 in', rollLength: '15 ft', repeat: '20.5 in' };
    const house = houseOf(documentOf({ coverings: [covering], rooms: [{ id: 'r', name: 'R', walls, bands: [{ id: 'top', covering: 'fern', walls: walls.map(({ id }) => id), from: '40 in' }] }] }));
    const [room, hungWith, plan] = [house.rooms[0]!, house.coverings[0]!, planHouse(house).rooms[0]!.bands[0]!];
    if (plan.kind !== 'lengths' || hungWith.kind !== 'border') throw new Error('the band is one of lengths');
    return drawBorder({ room, band: hungBand(room, room.bands[0]!), covering: hungWith, coveringName: 'B', stretch: plan.stretches[0]! }, 'imperial', PICTURES);
  };

  test('has its picture along the wall, from its upper edge', () => {
    // The second wall begins at 148 in, 148 - 7 · 20.5 = 4.5 in into the repeat: one begins at 143.5 in.
    const drawing = drawn([{ id: 'A', length: '148 in', height: '96 in' }, { id: 'B', length: '60 in', height: '96 in' }]);
    expect(origins(drawing)).toEqual([[0, 96], [143.5, 96]]);
    expect(picturesIn(drawing).map(({ width, height }) => [inInches(width), inInches(height)])).toEqual([[20.5, 5], [20.5, 5]]);
  });

  test('under a raked ceiling slopes with it', () => {
    // It rises 36 in over 100 in, so 7.38 in over each repeat of 20 1/2 in.
    const [shape] = picturesIn(drawn([{ id: 'A', length: '100 in', height: ['60 in', '96 in'] }]));
    expect(inInches(shape!.fall)).toBeCloseTo(-7.38, 9);
    expect([shape!.x, inInches(-shape!.y)]).toEqual([0, 60]);
  });
});

test('one repeat is as wide and high as it hangs', () => {
  const tile = (covering: Loose) => {
    const found = tileOf(setOutRoom(WALL, {}, covering).facts.covering);
    return found && [inInches(found.width), inInches(found.height)];
  };
  expect(tile({})).toEqual([20.5, 21]);
  expect(tile({ selvedge: '1/4 in' })).toEqual([20, 21]);
  expect(tile({ horizontalRepeat: '10.25 in' })).toEqual([10.25, 21]);
  expect(tile({ repeat: '0 in' })).toBeNull();
});

describe('laid out', () => {
  const tilesOf = (marks: readonly Mark[]) => marks.filter((mark) => mark.kind === 'picture');

  test.each([1, 4])('enlarged %i times its tiles are to the scale of the drawing and stand where its strips do', (zoom) => {
    const drawing = hung();
    const scale = fittingScale(drawing, view) * zoom;
    const marks = tilesOf(layOut(drawing, { ...view, zoom }));
    expect(marks).toHaveLength(5);
    for (const [index, mark] of marks.entries()) {
      expect([mark.width, mark.height]).toEqual([inches(20) * scale, inches(21) * scale]);
      const corner = /^M(-?[\d.]+) (-?[\d.]+)L/.exec(mark.d);
      expect(Number(corner?.[1])).toBeCloseTo(mark.x, 0);
      // The area begins at the ceiling, 21 in below the tile.
      expect(Number(corner?.[2])).toBeCloseTo(mark.y + inches(21) * scale, 0);
      expect(mark.x - marks[0]!.x).toBeCloseTo(index * mark.width, 6);
    }
  });

  test('strips that match share one tiling: one for a straight match, two for a half-drop', () => {
    expect(tilingsOf(layOut(hung(), view)).size).toBe(1);
    const [one, other] = [...tilingsOf(layOut(hung(HALF_DROP), view)).values()];
    expect(tilingsOf(layOut(hung(HALF_DROP), view)).size).toBe(2);
    expect(other!.y - one!.y).toBeCloseTo(one!.height / 2, 6);
    expect(tileTransform({ ...one!, x: 10, y: 4.5, width: 20, fall: 5 })).toBe('matrix(1 0.25 0 1 10 4.5)');
  });

  test('tiles too small to make anything out are left out', () => {
    const tiny = hung({ repeat: '5 mm' });
    expect(picturesIn(tiny)[0]!.height).toBe(5 * UNITS_PER_MILLIMETRE);
    expect(tilesOf(layOut(tiny, view))).toEqual([]);
  });
});

describe('our own motif', () => {
  test.each(['1/2', '1/3', '2/3', '1/4'])('of a drop match by %s goes on where the strip beside it left off', (dropBy) => {
    const { facts } = setOutRoom(WALL, {}, { width: '20 in', repeat: '24 in', match: 'drop', dropBy });
    const motif = motifOf(facts.covering)!;
    const [stem] = motif.strokes;
    const [start, end] = [stem![0]!, stem!.at(-1)!];
    // Where the stem begins on each strip and ends on it, in the repeat, measured down the wall.
    const heights = facts.stretch.strips.map(({ pieces: [piece] }) => [start, end].map(({ y }) => modulo(Math.round(-piece!.upperEdge - piece!.phase + y), motif.repeat)));
    for (const [index, [, left]] of heights.slice(0, -1).entries()) expect(heights[index + 1]![0]).toBe(left);
  });
});

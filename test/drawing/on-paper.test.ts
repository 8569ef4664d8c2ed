import { describe, expect, test } from 'vitest';
import { type Drawing, drawBorder, drawElevation, layOut, paperScales, partStretch, scaleOnPaper, stretchOnPaper, type StretchPart } from '../../shared-core/drawing/index.ts';
import { hungBand } from '../../shared-core/house/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { millimetres } from '../../shared-core/units/index.ts';
import { documentOf, houseOf } from '../builders.ts';
import { setOutRoom, WORKED } from './rooms.ts';

/** What of an A4 page its text may fill, in points. */
const AREA = { width: 505, height: 726 };
const PAGE = { box: AREA, most: AREA.height, textHeight: 9.5, over: 30 };

const bare = (width: number, height: number, margin = 0): Drawing => ({
  shapes: [],
  bounds: { left: 0, top: 0, right: millimetres(width), bottom: millimetres(height) },
  margin: { left: margin, top: margin, right: margin, bottom: margin },
  scaleBar: null,
  description: '',
});

const rings = (drawing: Drawing) => drawing.shapes.flatMap((shape) => (shape.kind === 'ring' ? [shape.number] : [])).sort((one, other) => one - other);

describe('the scale on paper', () => {
  test('is the largest standard one at which the drawing fits', () => {
    const box = { width: 505, height: 350 };
    expect(scaleOnPaper(bare(4000, 2500), 'metric', box, 9)).toMatchObject({ scale: '1 : 25', view: { width: expect.closeTo(160 / 25.4 * 72, 6) as number, height: expect.closeTo(100 / 25.4 * 72, 6) as number, zoom: 1 } });
    expect(scaleOnPaper(bare(4000, 2500), 'imperial', box, 9).scale).toBe('1/2 in = 1 ft (1 : 24)');
    expect(scaleOnPaper(bare(4000, 2500, 5), 'metric', box, 9).scale).toBe('1 : 50');
    expect(paperScales('metric')[0]!.said).toBe('1 : 5');
    expect(paperScales('imperial')[3]!.said).toBe('1/2 in = 1 ft (1 : 24)');
  });

  test('of what fits at none fills the box, and says so', () => {
    const { scale, view } = scaleOnPaper(bare(60_000, 2000), 'metric', { width: 505, height: 350 }, 9);
    expect(scale).toBe('to no standard scale');
    expect(view.width).toBeCloseTo(505, 6);
  });

  test('is that of every wall drawn: a wall of 12 ft 4 in is 78.3 mm at 1 : 48', () => {
    const { facts } = setOutRoom(WORKED);
    const [first] = stretchOnPaper((part) => drawElevation(facts, 'imperial', { part }), facts.stretch, 'imperial', PAGE);
    const [wall] = layOut(first!.drawing, first!.view).filter(({ subject }) => subject?.kind === 'wall');
    const xs = [...(wall?.kind === 'path' ? wall.d : '').matchAll(/[ML](-?[\d.]+) /g)].map(([, x]) => Number(x));
    expect(first!.scale).toContain('1 : 48');
    expect(((Math.max(...xs) - Math.min(...xs)) * 25.4) / 72).toBeCloseTo(3759.2 / 48, 1);
  });
});

describe('a stretch in parts', () => {
  const FOUR = ['4 m', '3 m', '4 m', '3 m'].map((length, index) => ({ id: 'ABCD'[index]!, length }));
  const metric = setOutRoom(FOUR, {}, { width: '53 cm', repeat: '64 cm' }).facts;

  test('begins a new one at a corner, all as wide as their corners let them, and cuts a wall that alone is too wide', () => {
    const widths = (most: number) => partStretch(metric.stretch, millimetres(most)).map(({ from, to }) => Math.round((to - from) / millimetres(1000)));
    expect(widths(8000)).toEqual([7, 7]);
    expect(widths(3000)).toEqual([2, 2, 3, 2, 2, 3]);
    const parts = partStretch(metric.stretch, millimetres(900));
    expect([parts[0]!.from, parts.at(-1)!.to]).toEqual([metric.stretch.grid.from, metric.stretch.grid.to]);
    for (const [index, part] of parts.slice(1).entries()) expect(part.from).toBe(parts[index]!.to);
  });

  test.each([
    ['right', { start: { wall: 'A', at: '0 in' } }],
    ['left', { start: { wall: 'B', at: '1 m' }, direction: 'left' }],
    ['both', { start: { wall: 'C', at: '1 m' }, direction: 'both', kill: { wall: 'A', at: '0 in' } }],
  ])('hung to the %s has every strip in exactly the parts that it lies in, one start line, one kill point', (_, layout) => {
    const { stretch, ...others } = setOutRoom(FOUR, { layout }, { width: '53 cm', repeat: '64 cm' }).facts;
    for (const most of [8000, 4500, 1100]) {
      const parts = partStretch(stretch, millimetres(most));
      const drawings = parts.map((part) => drawElevation({ ...others, stretch }, 'metric', { part }));
      for (const [index, { from, to }] of parts.entries()) {
        const inside = stretch.strips.filter((strip) => strip.from < to && strip.to > from).map(({ number }) => number);
        expect(rings(drawings[index]!)).toEqual(inside.sort((one, other) => one - other));
      }
      const count = (kind: string) => drawings.filter(({ shapes }) => shapes.some(({ subject }) => subject?.kind === kind)).length;
      expect([count('start'), count('kill')]).toEqual([1, 1]);
      expect(count('direction')).toBe(parts.length);
    }
  });

  test('draws nothing outside of what it is of', () => {
    const part: StretchPart = { from: millimetres(1000), to: millimetres(2600) };
    const { shapes, bounds } = drawElevation(metric, 'metric', { part });
    expect([bounds.left, bounds.right]).toEqual([part.from, part.to]);
    const xs = shapes.flatMap((shape) => ('points' in shape ? shape.points : shape.kind === 'line' || shape.kind === 'dimension' ? [shape.from, shape.to] : shape.kind === 'strokes' ? shape.lines.flat() : 'at' in shape ? [shape.at] : [])).map(({ x }) => x);
    expect(Math.min(...xs)).toBeGreaterThanOrEqual(part.from);
    expect(Math.max(...xs)).toBeLessThanOrEqual(part.to);
    expect(shapes.filter((shape) => shape.kind === 'line' && shape.pen === 'hidden')).toHaveLength(2);
  });

  test('stands on paper in rows to one scale, with a ring for each strip and the walls named', () => {
    const rows = stretchOnPaper((part) => drawElevation(metric, 'metric', { part }), metric.stretch, 'metric', PAGE);
    expect(rows.map(({ where, scale }) => [where, scale])).toEqual([
      ['walls A and B', '1 : 50'],
      ['walls C and D', '1 : 50'],
    ]);
    for (const { drawing, view } of rows) expect(layOut(drawing, view).filter(({ kind }) => kind === 'ring')).toHaveLength(rings(drawing).length);
  });

  test('lining hung across is drawn so large that every course has its number', () => {
    const lining = { id: 'line', kind: 'lining', patternNumber: 'L-1', direction: 'across', width: '56 cm', rollLength: '10 m' };
    const house = houseOf(documentOf({ coverings: [lining], rooms: [{ id: 'room', name: 'Room', walls: FOUR.map((wall) => ({ ...wall, height: '2.45 m' })), bands: [{ id: 'main', covering: 'line', walls: ['A', 'B', 'C', 'D'] }] }] }));
    const [room, [covering], [planned]] = [house.rooms[0]!, house.coverings, planHouse(house).rooms[0]!.bands];
    if (covering?.kind !== 'lining' || planned?.kind !== 'lengths') throw new Error('the lining hangs across');
    const [stretch] = planned.stretches;
    const band = hungBand(room, room.bands[0]!);
    const rows = stretchOnPaper((part) => drawBorder({ room, band, covering, coveringName: 'L-1', stretch: stretch! }, 'metric', { part }), stretch!, 'metric', { ...PAGE, most: 400 });
    expect(rows[0]!.scale).toBe('1 : 50');
    expect(rows.flatMap(({ drawing, view }) => layOut(drawing, view).filter(({ kind }) => kind === 'ring'))).toHaveLength(stretch!.lengths.length);
  });

  test('a wall longer than the page is cut, and what each row has of it said', () => {
    const { stretch, ...others } = setOutRoom(FOUR.map((wall) => ({ ...wall, length: '20 m' })), {}, { width: '53 cm', repeat: '64 cm' }).facts;
    const rows = stretchOnPaper((part) => drawElevation({ ...others, stretch }, 'metric', { part }), stretch, 'metric', PAGE);
    expect(rows[0]).toMatchObject({ where: 'wall A from 0 mm to 6.667 m', scale: '1 : 50' });
    expect(rows).toHaveLength(12);
    for (const { view } of rows) expect(view.width).toBeLessThanOrEqual(AREA.width);
  });

  test('a wall higher than its box at any scale fills it in one row', () => {
    const rows = stretchOnPaper((part) => drawElevation(metric, 'metric', { part }), metric.stretch, 'metric', { ...PAGE, box: { width: 505, height: 150 } });
    expect(rows.map(({ where, scale }) => [where, scale])).toEqual([['walls A, B, C and D', 'to no standard scale']]);
    expect(rows[0]!.view.height).toBeLessThanOrEqual(150 - PAGE.over + 1e-6);
  });
});

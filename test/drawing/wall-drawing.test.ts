import { expect, test } from 'vitest';
import { type Drawing, drawWall, layOut, placeUnder, type Shape } from '../../shared-core/drawing/index.ts';
import { readWall } from '../../shared-core/setting-out/index.ts';
import { inches } from '../../shared-core/units/index.ts';
import { nextSubject } from '../../src-renderer/drawing/next-subject.ts';
import { documentOf, houseOf, type Loose, room } from '../builders.ts';

const WINDOW = { id: 'window', kind: 'window', from: `3'`, width: `4'`, sill: '32 in', height: '50 in' };
const DOOR = { id: 'door', kind: 'door', from: '0 in', width: '30 in', height: '80 in' };
const view = { width: 600, height: 340, textHeight: 14, zoom: 1, panX: 0, panY: 0 };

function drawn(wallFacts: Loose, roomFacts: Loose = {}, options: Parameters<typeof drawWall>[3] = {}): Drawing {
  const [found] = houseOf(documentOf({ rooms: [room([`10' 2"`, `8'`], { bands: [], ...roomFacts }, [wallFacts])] })).rooms;
  return drawWall(found!, readWall(found!.walls[0]!), 'imperial', options);
}

const ofKind = <Kind extends Shape['kind']>(drawing: Drawing, kind: Kind) => drawing.shapes.filter((shape): shape is Extract<Shape, { kind: Kind }> => shape.kind === kind);
const figures = (drawing: Drawing) => ofKind(drawing, 'dimension').map(({ text }) => text);
const keysOf = (drawing: Drawing) => [...new Set(drawing.shapes.flatMap(({ subject }) => (subject ? [`${subject.kind} ${subject.id}`] : [])))];

test('a wall has its length, its height and a chain of its openings along its foot', () => {
  expect(figures(drawn({ openings: [WINDOW] }))).toEqual([`3'`, `4'`, `3' 2"`, `2' 8"`, `4' 2"`, `10' 2"`, `8'`]);
  expect(figures(drawn({}))).toEqual([`10' 2"`, `8'`]);
});

test('a raked wall has both its heights, and is drawn as it slopes from a sloping floor', () => {
  const drawing = drawn({ height: ['96 in', '80 in'], base: ['0 in', '4 in'] });
  expect(figures(drawing)).toEqual([`10' 2"`, `8'`, `6' 8"`]);
  expect(ofKind(drawing, 'polygon')[0]!.points.map(({ x, y }) => [x / inches(1), -y / inches(1)])).toEqual([[0, 96], [122, 84], [122, 4], [0, 0]]);
  expect(drawing.description).toBe(`Room, wall A from inside the room, 10' 2" long, 8' high at the left, 6' 8" at the right. It has no openings.`);
});

test('it is told in words, its openings from the left', () => {
  expect(drawn({ openings: [WINDOW, DOOR] }).description).toBe(
    `Room, wall A from inside the room, 10' 2" long, 8' high. Door on wall A, 0 in from its left end, 2' 6" wide, from the floor to 6' 8" high. Window on wall A, 3' from its left end, 4' wide, from 2' 8" to 6' 10" high.`,
  );
});

test('the keyboard comes to openings first, then to rails and furniture; an opening is called alike wherever it stands', () => {
  const more = { rails: [{ id: 'dado', at: '30 in', width: '3 in' }], furniture: [{ id: 'bed', wall: 'A', from: '60 in', width: '40 in', height: '30 in' }] };
  const drawing = drawn({ openings: [WINDOW] }, more);
  expect(keysOf(drawing)).toEqual(['opening A window', expect.stringMatching(/^rail dado/), expect.stringMatching(/^furniture bed/)]);
  expect(nextSubject(drawing.shapes.flatMap(({ subject }) => subject ?? []), null, 'right')).toMatchObject({ kind: 'opening' });
  expect(keysOf(drawn({ openings: [{ ...WINDOW, from: '40 in' }] }))).toEqual(['opening A window']);
});

test('handles, what was caught on, and what is refused are drawn over it', () => {
  const drawing = drawn({ openings: [WINDOW] }, {}, { handles: [{ along: inches(36), up: inches(82) }], guides: [{ kind: 'up', at: inches(82), of: '' }, { kind: 'along', at: inches(61), of: '' }], refused: 'window' });
  expect(ofKind(drawing, 'polygon').at(-1)!.points.map(({ x, y }) => [x, y])).toEqual(Array.from({ length: 4 }, () => [inches(36), -inches(82)]));
  expect(ofKind(drawing, 'line').filter(({ pen }) => pen === 'guide').map(({ from, to }) => [from.x, from.y, to.x, to.y])).toEqual([
    [0, -inches(82), inches(122), -inches(82)],
    [inches(61), -inches(96), inches(61), -0],
  ]);
  expect(ofKind(drawing, 'polygon').filter(({ pen }) => pen === 'stop')).toHaveLength(1);
});

test('a place under the pointer is the place that was drawn there, however large', () => {
  const drawing = drawn({ openings: [WINDOW] });
  for (const seen of [view, { ...view, zoom: 3, panX: 40, panY: -25 }]) {
    const [corner] = layOut(drawing, seen).filter((mark) => mark.kind === 'path');
    const [, x, y] = /^M([\d.-]+) ([\d.-]+)/.exec(corner!.kind === 'path' ? corner!.d : '')!;
    const { at, unitsPerPixel } = placeUnder(drawing, seen, { x: Number(x), y: Number(y) });
    // Marks are laid out to a tenth of a pixel.
    expect(Math.abs(at.x)).toBeLessThanOrEqual(unitsPerPixel / 10);
    expect(Math.abs(at.y + inches(96))).toBeLessThanOrEqual(unitsPerPixel / 10);
  }
});

test('the height of a narrow door is shown beside its word', () => {
  const texts = layOut(drawn({ openings: [DOOR] }), view).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
  expect(texts).toContain('door');
  expect(texts).toContain(`6' 8"`);
});

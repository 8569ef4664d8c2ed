import { expect, test } from 'vitest';
import { drawElevation, drawRoomPlan, fittingScale, layOut, type Mark } from '../../shared-core/drawing/index.ts';
import { setOutRoom, WORKED } from './rooms.ts';

const { facts, room, outline } = setOutRoom(WORKED);
const view = { width: 1100, height: 360, textHeight: 14, zoom: 1, panX: 0, panY: 0 };
const rings = (marks: readonly Mark[]) => marks.filter((mark) => mark.kind === 'ring');

test('a drawing fits its box with its margins, whatever the box', () => {
  const drawing = drawElevation(facts, 'imperial');
  for (const [width, height] of [[1100, 360], [400, 900], [3000, 300], [60, 40], [0, 0]] as const) {
    const scale = fittingScale(drawing, { width, height, textHeight: 14 });
    expect(scale).toBeGreaterThanOrEqual(0);
    expect((drawing.bounds.right - drawing.bounds.left) * scale).toBeLessThanOrEqual(Math.max(0, width - (drawing.margin.left + drawing.margin.right) * 14) + 1e-6);
    expect(JSON.stringify(layOut(drawing, { ...view, width, height }))).not.toMatch(/NaN|null|Infinity/);
  }
});

test.each([1100, 700, 420, 300])('in a box %i wide no ring touches another, and the first is there', (width) => {
  const shown = rings(layOut(drawElevation(facts, 'imperial'), { ...view, width }));
  expect(shown.length).toBeGreaterThan(1);
  expect(shown[0]!.text).toBe('0');
  for (const [index, one] of shown.entries()) {
    for (const other of shown.slice(index + 1)) {
      const isApart = Math.abs(one.x - other.x) >= one.radius + other.radius || Math.abs(one.y - other.y) >= one.radius + other.radius;
      expect(isApart, `${one.text} and ${other.text}`).toBe(true);
    }
  }
});

test('enlarged, every ring is shown and its text keeps the size of the screen', () => {
  const marks = layOut(drawElevation(facts, 'imperial'), { ...view, width: 420, zoom: 8 });
  expect(rings(marks)).toHaveLength(27);
  expect(rings(marks).every(({ size }) => size === 14)).toBe(true);
});

test('words never lie on words', () => {
  const texts = layOut(drawRoomPlan(room, outline, 'imperial'), { ...view, width: 500, height: 420 }).filter((mark) => mark.kind === 'text');
  expect(texts.length).toBeGreaterThan(7);
  const boxes = texts.map(({ x, y, text, turn, size }) => ({ text, x, y, across: (turn === 0 ? text.length * 0.5 : 0.9) * size, down: (turn === 0 ? 0.9 : text.length * 0.5) * size }));
  for (const [index, one] of boxes.entries()) {
    for (const other of boxes.slice(index + 1)) {
      const isApart = Math.abs(one.x - other.x) >= (one.across + other.across) / 2 || Math.abs(one.y - other.y) >= (one.down + other.down) / 2;
      expect(isApart, `${one.text} and ${other.text}`).toBe(true);
    }
  }
});

test('the scale bar is a whole measure of the house, drawn to the scale of the drawing', () => {
  const drawing = drawRoomPlan(room, outline, 'metric');
  const marks = layOut(drawing, { ...view, width: 500, height: 420 });
  const label = marks.find((mark) => mark.kind === 'text' && /^[\d.]+ m$/.test(mark.text) && mark.anchor === 'start');
  const bar = marks.find((mark) => mark.kind === 'path' && mark.pen === 'visible' && mark.subject === undefined);
  const xs = [...(bar?.kind === 'path' ? bar.d : '').matchAll(/[ML]([\d.]+) /g)].map(([, x]) => Number(x));
  const metres = label?.kind === 'text' ? Number(label.text.replace(' m', '')) : 0;
  const scale = fittingScale(drawing, { width: 500, height: 420, textHeight: 14 });
  expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(metres * 320_000 * scale, 0);
});

test('the first and the last ring are there however few are, and none lies on the sign of the kill point', () => {
  const door = { id: 'door', kind: 'door', from: "9' 4\"", width: "2' 8\"", height: "6' 8\"" };
  const { facts: killedByDoor } = setOutRoom([...WORKED.slice(0, 3), { id: 'D', length: `12' 4"`, openings: [door] }]);
  for (const drawn of [facts, killedByDoor]) {
    const last = String(drawn.stretch.strips.at(-1)!.number);
    for (const width of [1100, 700, 560]) {
      const marks = layOut(drawElevation(drawn, 'imperial'), { ...view, width });
      const shown = rings(marks);
      expect(shown.map(({ text }) => text)).toEqual(expect.arrayContaining(['0', last]));
      const sign = marks.filter((mark) => mark.kind === 'path' && mark.subject?.kind === 'kill').flatMap((mark) => (mark.kind === 'path' ? [...mark.d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) })) : []));
      expect(sign.length).toBeGreaterThan(0);
      for (const ring of shown) expect(sign.every(({ x, y }) => Math.hypot(x - ring.x, y - ring.y) >= ring.radius), `${ring.text} at ${width}`).toBe(true);
    }
  }
});

test('the length of a narrow wall is written under its line, where there is room', () => {
  const notched = setOutRoom([
    { id: 'A', length: '4 m' },
    { id: 'B', length: '2 m' },
    { id: 'C', length: '2 m', turn: 'outside' },
    { id: 'D', length: '40 cm' },
    { id: 'E', length: '2 m' },
    { id: 'F', length: '2.4 m' },
  ]);
  const texts = layOut(drawElevation(notched.facts, 'metric'), { ...view, width: 900 }).filter((mark) => mark.kind === 'text');
  const [narrow, wide] = [texts.find(({ text }) => text === '40 cm'), texts.find(({ text }) => text === '4 m')];
  expect(narrow!.y).toBeGreaterThan(wide!.y);
});

test('a dimension whose figure has no room is left out whole', () => {
  const shapes = [{ kind: 'dimension', from: { x: 0, y: 0 }, to: { x: 1, y: 0 }, offset: 1, text: '12 in' }] as const;
  const drawing = { shapes, bounds: { left: 0, right: 100, top: 0, bottom: 1 }, margin: { left: 0, right: 0, top: 0, bottom: 0 }, scaleBar: null, description: '' };
  expect(layOut(drawing, { ...view, width: 200 })).toEqual([]);
});

import { describe, expect, test } from 'vitest';
import { type Drawing, drawElevation, drawRoomPlan, type Shape } from '../../shared-core/drawing/index.ts';
import { inches } from '../../shared-core/units/index.ts';
import { setOutRoom, WORKED } from './rooms.ts';

const ofKind = <Kind extends Shape['kind']>(drawing: Drawing, kind: Kind) => drawing.shapes.filter((shape): shape is Extract<Shape, { kind: Kind }> => shape.kind === kind);
const subjectsOf = (drawing: Drawing, kind: string) => [...new Set(drawing.shapes.flatMap(({ subject }) => (subject?.kind === kind ? [subject.id] : [])))];

describe('the elevation of the worked example', () => {
  const { facts } = setOutRoom(WORKED);
  const drawing = drawElevation(facts, 'imperial');

  test('has a ring for each of the 27 strips, in order from the left', () => {
    const rings = ofKind(drawing, 'ring');
    expect(rings.map(({ number }) => number)).toEqual(Array.from({ length: 27 }, (_, index) => index));
    expect(rings.map(({ at }) => at.x)).toEqual(rings.map(({ at }) => at.x).toSorted((one, other) => one - other));
  });

  test('has its 26 seams at every whole strip from the start', () => {
    expect(subjectsOf(drawing, 'seam')).toHaveLength(26);
    const xs = ofKind(drawing, 'line').filter(({ subject }) => subject?.kind === 'seam').map(({ from }) => from.x);
    expect(new Set(xs)).toEqual(new Set(Array.from({ length: 26 }, (_, index) => inches(20.5) * (index + 1))));
  });

  test('is as wide as its walls and the three wraps between them, and as high as they are', () => {
    expect(drawing.bounds).toEqual({ left: 0, right: inches(540.375), top: -inches(96), bottom: -0 });
  });

  test('says the kill point with its mismatch, at the right end', () => {
    const [lozenge] = ofKind(drawing, 'sign').filter(({ sign }) => sign === 'lozenge');
    expect(lozenge?.at.x).toBe(inches(540.375));
    expect(lozenge?.subject?.says).toContain('7 3/8 in');
    const [bob] = ofKind(drawing, 'sign').filter(({ sign }) => sign === 'bob');
    expect(bob?.at.x).toBe(0);
  });

  test('is told in words', () => {
    expect(drawing.description).toMatch(/^Room, walls A, B, C and D unrolled: .*27 strips/);
    expect(drawing.description).toContain('7 3/8 in');
  });

  test('leaves no seam in the door, only over it', () => {
    const inDoor = ofKind(drawing, 'line').filter(({ subject, from }) => subject?.kind === 'seam' && from.x > inches(24) && from.x < inches(56));
    expect(inDoor.map(({ from, to }) => [from.x, from.y, to.y])).toEqual([[inches(41), -inches(96), -inches(80)]]);
  });
});

test('a strip between two openings one over the other is drawn between them', () => {
  const window = { id: 'window', kind: 'window', from: '10 in', width: '60 in', sill: '20 in', height: '40 in' };
  const light = { id: 'light', kind: 'window', from: '10 in', width: '60 in', sill: '70 in', height: '20 in' };
  const { facts } = setOutRoom([{ id: 'A', length: '100 in', height: '96 in', openings: [window, light] }], {}, { width: '20 in' });
  const areas = ofKind(drawElevation(facts, 'imperial'), 'polygon').filter(({ subject, fill }) => subject?.kind === 'strip' && subject.id === '1' && fill === 'pattern');
  expect(areas.map(({ points }) => [-points[0]!.y, -points[3]!.y])).toEqual([
    [inches(96), inches(90)],
    [inches(70), inches(60)],
    [inches(20), 0],
  ]);
});

test('a raked wall is drawn with its slope', () => {
  const { facts } = setOutRoom([{ id: 'A', length: '100 in', height: ['60 in', '96 in'] }]);
  const { bounds, shapes } = drawElevation(facts, 'imperial');
  expect(bounds.top).toBe(-inches(96));
  const first = shapes.find((shape) => shape.kind === 'polygon' && shape.subject?.kind === 'strip' && shape.subject.id === '0');
  expect(first?.kind === 'polygon' && first.points[0]!.y).toBe(-inches(60));
});

test('no figure of a drawing is other than a number', () => {
  const { facts, room, outline } = setOutRoom(WORKED, { layout: { start: { wall: 'C', at: '50 in', edge: 'centre' }, direction: 'both', kill: { wall: 'A', at: '0 in' } } });
  for (const drawing of [drawElevation(facts, 'metric'), drawRoomPlan(room, outline, 'metric')]) {
    expect(JSON.stringify(drawing)).not.toMatch(/null|NaN|Infinity/);
  }
});

describe('the plan of a room', () => {
  const { room, outline } = setOutRoom(WORKED);

  test('is to scale, its walls cut and its openings told', () => {
    const drawing = drawRoomPlan(room, outline, 'imperial');
    expect(drawing.bounds).toEqual({ left: 0, top: 0, right: inches(148), bottom: inches(122) });
    expect(subjectsOf(drawing, 'wall')).toEqual(['A', 'B', 'C', 'D']);
    expect(drawing.description).toBe(`Room from above, 4 walls: A 12' 4", B 10' 2", C 12' 4" and D 10' 2". There is the entrance on wall A. The walls meet.`);
    expect(ofKind(drawing, 'dimension')).toHaveLength(4);
  });

  test('as a thumb has neither dimensions nor words', () => {
    const drawing = drawRoomPlan(room, outline, 'imperial', { detail: 'thumb' });
    expect([...ofKind(drawing, 'dimension'), ...ofKind(drawing, 'text')]).toEqual([]);
    expect(drawing.scaleBar).toBeNull();
  });

  test('shows where the walls miss each other', () => {
    const gaping = setOutRoom([...WORKED.slice(0, 3), { id: 'D', length: "9' 9\"" }]);
    const drawing = drawRoomPlan(gaping.room, gaping.outline, 'imperial');
    const [gap] = ofKind(drawing, 'line').filter(({ subject }) => subject?.kind === 'gap');
    expect(gap?.pen).toBe('warn');
    expect(gap?.subject?.says).toContain('5 in');
    expect(drawing.description).toContain('The walls miss each other by 5 in.');
  });

  test('writes the shorter of two lengths at an outside corner in the room, so that they do not cross', () => {
    const notched = setOutRoom([{ id: 'A', length: '4 m' }, { id: 'B', length: '2 m' }, { id: 'C', length: '2.5 m', turn: 'outside' }, { id: 'D', length: '1 m' }, { id: 'E', length: '1.5 m' }, { id: 'F', length: '3 m' }]);
    const offsets = ofKind(drawRoomPlan(notched.room, notched.outline, 'metric'), 'dimension').map(({ text, offset }) => [text, Math.sign(offset)]);
    expect(offsets).toEqual([['4 m', -1], ['2 m', -1], ['2.5 m', -1], ['1 m', 1], ['1.5 m', -1], ['3 m', -1]]);
  });
});

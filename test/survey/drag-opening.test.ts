import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Opening, Wall } from '../../shared-core/house/index.ts';
import { dragEdges, drawEdges, edgesOf, factsOfEdges, GRAINS, grainAt, type Grip, gripUnder, type Hand, handlesOf, type OpeningEdge, type OpeningEdges, standsOnFloor, stepFrom, wholeGrip } from '../../shared-core/survey/index.ts';
import { inches, lengthOf, type LengthStyle, millimetres, parseLength } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room } from '../builders.ts';

function wallWith(length: string, openings: readonly Loose[], height: Loose = '8 ft'): Wall {
  return houseOf(documentOf({ rooms: [room([length], { bands: [] }, [{ height, openings }])] })).rooms[0]!.walls[0]!;
}

const window = { id: 'window', kind: 'window', from: '36 in', width: '48 in', sill: '32 in', height: '50 in' };
const hand = (reach: number, style: LengthStyle = 'imperial'): Hand => ({ grain: GRAINS[style].fine, reach, style });
const inInches = ({ left, right, sill, head }: OpeningEdges) => [left, right, sill, head].map((units) => units / inches(1));
const by = (along: number, up: number) => ({ along: inches(along), up: inches(up) });

describe('a dragged opening', () => {
  const wall = wallWith('120 in', [window]);
  const [opening] = wall.openings as [Opening];
  const drag = (grip: Grip, along: number, up: number, reach = 0) => dragEdges(edgesOf(opening), grip, by(along, up), wall, [], hand(inches(reach)));

  test('is rounded to the grain', () => {
    expect(inInches(drag(wholeGrip(opening), 5.333, 0).edges)).toEqual([41.25, 89.25, 32, 82]);
    expect(inInches(drag(['right'], -1.9, 0).edges)).toEqual([36, 82, 32, 82]);
    expect(inInches(drag(['left', 'head'], 1.1, 2.2).edges)).toEqual([37, 84, 32, 84.25]);
  });

  test('never leaves its wall, and no edge passes the one opposite', () => {
    expect(inInches(drag(wholeGrip(opening), -500, 500).edges)).toEqual([0, 48, 46, 96]);
    expect(inInches(drag(wholeGrip(opening), 500, -500).edges)).toEqual([72, 120, 0, 50]);
    expect(inInches(drag(['left'], 500, 0).edges)).toEqual([83.75, 84, 32, 82]);
    expect(inInches(drag(['sill'], 0, 500).edges)).toEqual([36, 84, 81.75, 82]);
    expect(inInches(drag(['right', 'head'], 500, 500).edges)).toEqual([36, 120, 32, 96]);
  });

  test("catches on the wall's ends and middle, and says on what", () => {
    const end = drag(wholeGrip(opening), 35, 0, 2);
    expect(inInches(end.edges)).toEqual([72, 120, 32, 82]);
    expect(end.guides).toEqual([{ kind: 'along', at: inches(120), of: "the wall's right end" }]);
    const middle = drag(wholeGrip(opening), 1.5, 0, 2);
    expect(inInches(middle.edges)).toEqual([36, 84, 32, 82]);
    expect(middle.guides).toEqual([{ kind: 'along', at: inches(60), of: 'the middle of the wall' }]);
    expect(drag(wholeGrip(opening), 4, 0, 2).guides).toEqual([]);
  });

  test('keeps the way that the hand does not go', () => {
    expect(inInches(drag(wholeGrip(opening), 5, 1.8, 2).edges)).toEqual([41, 89, 32, 82]);
    expect(inInches(drag(wholeGrip(opening), 5, 2.2, 2).edges)).toEqual([41, 89, 34.25, 84.25]);
    expect(inInches(drag(wholeGrip(opening), 5, 1.8, 0).edges)).toEqual([41, 89, 33.75, 83.75]);
  });

  test('goes back to where it was with the hand', () => {
    const odd = wallWith('120 in', [{ ...window, from: '36 1/16 in', sill: '31 7/8 in' }]);
    expect(dragEdges(edgesOf(odd.openings[0]!), wholeGrip(opening), { along: 0, up: 0 }, odd, [], hand(0)).edges).toEqual(edgesOf(odd.openings[0]!));
  });

  test("comes to the others' heads and sides", () => {
    const others = wallWith('200 in', [{ ...window, id: 'other', from: '120 in', sill: '33 3/8 in' }]);
    const head = dragEdges(edgesOf(opening), ['head'], by(0, 1), others, others.openings, hand(inches(1)));
    expect(inInches(head.edges)).toEqual([36, 84, 32, 83.375]);
    expect(head.guides).toEqual([{ kind: 'up', at: inches(83.375), of: 'the head of other' }]);
    const side = dragEdges(edgesOf(opening), wholeGrip(opening), by(35.5, 0), others, others.openings, hand(inches(1)));
    expect(inInches(side.edges)).toEqual([72, 120, 32, 82]);
    expect(side.guides).toEqual([{ kind: 'along', at: inches(120), of: 'the left side of other' }]);
  });
});

test('among lengths of the other style what touches stays clear, and what is written is whole in 1/64 in', () => {
  const metric = wallWith('5 m', [
    { ...window, id: 'other', from: '30 cm', width: '1 m' },
    { ...window, from: '2 m', width: '1.003 m' },
  ]);
  const [other, opening] = metric.openings as [Opening, Opening];
  const beside = dragEdges(edgesOf(opening), wholeGrip(opening), { along: -millimetres(705), up: 0 }, metric, [other], hand(inches(1))).edges;
  expect(beside.left - edgesOf(other).right).toBeGreaterThanOrEqual(0);
  expect(beside.left - edgesOf(other).right).toBeLessThan(inches(1 / 64));
  const { left, right } = dragEdges(edgesOf(opening), ['left'], { along: -millimetres(200), up: 0 }, metric, [other], hand(0)).edges;
  expect([left % inches(1 / 64), (right - left) % inches(1 / 64)]).toEqual([0, 0]);
  expect(edgesOf(opening).right - right).toBeGreaterThanOrEqual(0);
});

const edge = fc.constantFrom<OpeningEdge>('left', 'right', 'sill', 'head');
test.each(['imperial', 'metric'] as const)('wherever a hand goes, what it leaves stands on the wall, is written as it is and overlaps nothing it touches (%s)', (style) => {
  const millimetre = (from: number, to: number) => fc.integer({ min: from, max: to });
  fc.assert(
    fc.property(
      fc.record({ length: millimetre(2000, 9000), height: millimetre(2100, 3000), left: millimetre(0, 700), width: millimetre(100, 400), sill: millimetre(0, 900), head: millimetre(950, 2100) }),
      fc.uniqueArray(edge, { minLength: 1, maxLength: 4 }),
      fc.record({ along: fc.double({ min: -3e6, max: 3e6, noNaN: true }), up: fc.double({ min: -1e6, max: 1e6, noNaN: true }) }),
      fc.integer({ min: 0, max: 40_000 }),
      (size, grip, move, reach) => {
        // Lengths of either style on a wall of the other.
        const wall = wallWith(`${size.length} mm`, [
          { id: 'one', kind: 'window', from: `${size.left} mm`, width: `${size.width} mm`, sill: `${size.sill} mm`, height: `${size.head - size.sill} mm` },
          { id: 'other', kind: 'door', from: '1103.3 mm', width: '30 5/64 in', height: '1.9 m' },
        ], `${size.height} mm`);
        const [one, other] = wall.openings as [Opening, Opening];
        const before = edgesOf(one);
        const { edges, guides } = dragEdges(before, grip, move, wall, [other], hand(reach, style));
        expect(edges.left).toBeGreaterThanOrEqual(0);
        expect(edges.right).toBeLessThanOrEqual(wall.length.length);
        expect(edges.sill).toBeGreaterThanOrEqual(0);
        expect(edges.head).toBeLessThanOrEqual(millimetres(size.height));
        expect(edges.left).toBeLessThan(edges.right);
        expect(edges.sill).toBeLessThan(edges.head);
        const facts = factsOfEdges(before, edges, style);
        const read = (key: keyof typeof facts, otherwise: number) => {
          const parsed = facts[key] === undefined ? null : parseLength(facts[key], style);
          return parsed === null ? otherwise : parsed.ok ? parsed.value : Number.NaN;
        };
        const [from, sill] = [read('from', before.left), read('sill', before.sill)];
        expect({ left: from, right: from + read('width', before.right - before.left), sill, head: sill + read('height', before.head - before.sill) }).toEqual(edges);
        const touches = guides.some(({ of }) => of === 'the left side of other') && Math.abs(edges.right - other.from.length) < inches(1 / 64);
        if (touches) expect(edges.right).toBeLessThanOrEqual(other.from.length);
      },
    ),
    { numRuns: 400 },
  );
});

describe('a drawn opening', () => {
  const wall = wallWith('120 in', [window]);
  const draw = (from: readonly [number, number], to: readonly [number, number], reach = 0) => drawEdges(by(...from), by(...to), wall, hand(inches(reach)));

  test('reaches from corner to corner, whichever is first', () => {
    for (const [from, to] of [[[4, 10], [30, 60]], [[30, 60], [4, 10]], [[30, 10], [4, 60]]] as const) {
      expect(inInches(draw(from, to).edges)).toEqual([4, 30, 10, 60]);
    }
  });

  test('stands on the floor and comes to the head of what is there', () => {
    const drawn = draw([30.1, 1], [4.2, 81], 2);
    expect(inInches(drawn.edges)).toEqual([4.25, 30, 0, 82]);
    expect(drawn.guides).toEqual([{ kind: 'up', at: inches(82), of: 'the head of window' }]);
  });

  test('stays on the wall', () => {
    expect(inInches(draw([100, 90], [500, 500]).edges)).toEqual([100, 120, 90, 96]);
  });
});

describe('a hand on a wall', () => {
  const door = { id: 'door', kind: 'door', from: '0 in', width: '36 in', height: '80 in' };
  const wall = wallWith('120 in', [door, window]);
  const under = (along: number, up: number, reach = 3) => {
    const found = gripUnder(wall.openings, by(along, up), inches(reach));
    return found && [found.opening.id, ...found.grip];
  };

  test.each([
    [60, 57, ['window', 'left', 'right', 'sill', 'head']],
    [83, 57, ['window', 'right']],
    [86, 57, ['window', 'right']],
    [83, 84, ['window', 'right', 'head']],
    [60, 33, ['window', 'sill']],
    [38, 30, ['window', 'left', 'sill']],
    [18, 40, ['door', 'left', 'right']],
    [18, 1, ['door', 'left', 'right']],
    [1, 79, ['door', 'left', 'head']],
    [35.5, 57, ['door', 'right']],
    [36.5, 57, ['window', 'left']],
    [100, 57, null],
  ] as const)('at %d in along and %d in up has %j', (along, up, found) => {
    expect(under(along, up)).toEqual(found);
  });

  test('that reaches far still has the middle of what is small', () => {
    expect(under(60, 57, 40)).toEqual(['window', 'left', 'right', 'sill', 'head']);
  });

  test('sees handles where it can take hold', () => {
    for (const opening of wall.openings) {
      const handles = handlesOf(edgesOf(opening), standsOnFloor(opening));
      expect(handles).toHaveLength(opening.kind === 'door' ? 5 : 8);
      for (const spot of handles) expect(gripUnder([opening], spot, inches(1))?.grip).not.toEqual(wholeGrip(opening));
    }
  });
});

test('a grain is as fine as the hand can tell', () => {
  expect(grainAt('imperial', 1000, false)).toBe(inches(0.25));
  expect(grainAt('imperial', 4000, false)).toBe(inches(1));
  expect(grainAt('metric', 1000, false)).toBe(millimetres(5));
  expect(grainAt('metric', 1000, true)).toBe(millimetres(10));
});

test.each([
  [10.125, true, 0.125],
  [10.125, false, -0.125],
  [10, true, 0.25],
  [10, false, -0.25],
])('an arrow key moves what stands at %d in (to the right: %s) by %d in', (at, isForward, step) => {
  expect(stepFrom(inches(at), inches(0.25), isForward)).toBe(inches(step));
});

test('what was moved is written in the way of the house, and what was not is left as it was typed', () => {
  const before = edgesOf(wallWith('120 in', [window]).openings[0]!);
  expect(factsOfEdges(before, { ...before, left: inches(40.25), right: inches(88.25) }, 'imperial')).toEqual({ from: `3' 4 1/4"` });
  expect(factsOfEdges(before, { ...before, head: lengthOf(before.sill + millimetres(1025)) }, 'metric')).toEqual({ height: '1.025 m' });
  expect(factsOfEdges(null, { left: 0, right: millimetres(800), sill: 0, head: millimetres(2000) }, 'metric')).toEqual({ from: '0 mm', width: '80 cm', sill: '0 mm', height: '2 m' });
});

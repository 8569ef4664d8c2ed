import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BorderLayout, findStretches, setOutBorder } from '../../shared-core/setting-out/index.ts';
import { inches, type Length, modulo } from '../../shared-core/units/index.ts';
import { bandsOf, documentOf, houseOf, type Loose, room } from '../builders.ts';

const inInches = (length: Length | number) => length / inches(1);

function setOut(roomFacts: Loose, covering: Loose = {}, rules: Loose = {}) {
  const border = { id: 'paper', kind: 'border', width: '6 in', rollLength: '15 ft', repeat: '20 in', ...covering };
  const house = houseOf(documentOf({ coverings: [border], rooms: [roomFacts], rules }));
  const [found] = house.rooms;
  const [paper] = house.coverings;
  if (!found || paper?.kind !== 'border') throw new Error('a room with a border');
  return { house, paper, layouts: findStretches(found, bandsOf(found)[0]!).map((stretch) => setOutBorder(stretch, bandsOf(found)[0]!, paper, house.rules)) };
}

const one = (...parts: Parameters<typeof setOut>): BorderLayout => {
  const { layouts } = setOut(...parts);
  expect(layouts).toHaveLength(1);
  return layouts[0]!;
};
const pieces = ({ lengths }: BorderLayout) => lengths.flatMap((length) => length.pieces);
const cuts = (layout: BorderLayout) => pieces(layout).map(({ label, length, phase }) => [label, inInches(length), inInches(phase)]);
const runs = ({ lengths }: BorderLayout) => lengths.map(({ from, to }) => [inInches(from), inInches(to)]);

const DADO = { from: '30 in', to: '36 in' };
const square = (band: Loose = {}, wallFacts: readonly Loose[] = []) => room(['100 in', '100 in', '100 in', '100 in'], { bands: [{ id: 'dado', covering: 'paper', walls: ['A', 'B', 'C', 'D'], ...DADO, ...band }] }, wallFacts);
const door = (facts: Loose = {}) => ({ openings: [{ id: 'door', kind: 'door', from: '35 in', width: '30 in', height: '80 in', ...facts }] });

describe('a border at the height of a dado', () => {
  test('round a room with a door stops at its sides, the pattern counted on across it', () => {
    // Runs begin at 0, 65, 100, 200 and 300 in, each less an inch, in a repeat of 20 in.
    expect(cuts(one(square({ layout: { start: { wall: 'A', at: '0 in' } } }, [door()])))).toEqual([
      ['A1', 37, 19],
      ['A2', 37, 4],
      ['B1', 102, 19],
      ['C1', 102, 19],
      ['D1', 102, 19],
    ]);
  });

  test('stops at both sides of each of two doors, and a door in the corner leaves one length', () => {
    const two = { openings: [...door({ from: '20 in', width: '10 in' }).openings, ...door({ id: 'other', from: '60 in', width: '20 in' }).openings] };
    expect(cuts(one(square({ walls: ['A'] }, [two]))).map(([label, length]) => [label, length])).toEqual([['A1', 22], ['A2', 32], ['A3', 22]]);
    expect(cuts(one(square({ walls: ['A'] }, [door({ from: '70 in' })]))).map(([label, length]) => [label, length])).toEqual([['A1', 72]]);
    expect(runs(one(square({ walls: ['A'] }, [door({ from: '0 in' })])))).toEqual([[30, 100]]);
  });

  test('over the whole of a wall that is a door hangs nothing', () => {
    expect(runs(one(square({}, [door({ from: '0 in', width: '100 in' })])))).toEqual([[100, 200], [200, 300], [300, 400]]);
  });

  test('begins and ends at a side of the door where that is the start', () => {
    const layout = one(square({ layout: { start: { wall: 'A', at: '65 in' } } }, [door()]));
    expect(runs(layout)).toEqual([[65, 100], [100, 200], [200, 300], [300, 400], [400, 435]]);
    expect(cuts(layout)[0]).toEqual(['A1', 37, 19]);
    // The ends come to the sides of the door and never meet.
    expect([layout.kill, layout.mismatch]).toEqual([null, null]);
    expect(cuts(one(square({}, [door()])))).toEqual(cuts(layout));
  });

  test('that nobody began elsewhere begins at the entrance, not at another door', () => {
    const [first, second] = [door({ id: 'cupboard' }), door({ entrance: true, from: '10 in' })];
    expect(one(square({}, [first, {}, second])).start).toEqual({ wall: 'C', at: inches(40) });
    expect(one(square({}, [first, {}, door({ from: '10 in' })])).start).toEqual({ wall: 'A', at: inches(65) });
    // Over the door it meets itself, so it begins in the corner.
    expect(one(square({ from: '85 in', to: '91 in' }, [first]))).toMatchObject({ start: { wall: 'A', at: 0 }, kill: { wall: 'A', at: 0 } });
  });

  test('goes past an opening that leaves some of its height', () => {
    expect(cuts(one(square({ walls: ['A'] }, [door({ sill: '31 in', height: '40 in', kind: 'window' })]))).map(([, length]) => length)).toEqual([102]);
    expect(cuts(one(square({ walls: ['A'] }, [door({ sill: '0 in', height: '35 in', kind: 'furniture' })]))).map(([, length]) => length)).toEqual([102]);
    expect(cuts(one(square({ walls: ['A'] }, [door({ sill: '30 in', height: '6 in', kind: 'window' })]))).map(([, length]) => length)).toEqual([37, 37]);
  });
});

describe('a border begun in the middle of a wall', () => {
  test('is cut there too, its first length beginning in the pattern as chosen', () => {
    const layout = one(square({ position: '3 in', layout: { start: { wall: 'B', at: '40 in' } } }));
    // Lengths of 60, 100, 100, 100 and 40 in, their runs 0, 60, 160, 260 and 360 in.
    expect(cuts(layout)).toEqual([
      ['B1', 62, 2],
      ['C1', 102, 2],
      ['D1', 102, 2],
      ['A1', 102, 2],
      ['B2', 42, 2],
    ]);
    expect(layout.mismatch).toEqual({ amount: 0, side: 'none', vertical: 0 });
  });

  test('hung both ways counts its pattern from the line struck and ends at the kill point', () => {
    const layout = one(square({ layout: { start: { wall: 'A', at: '50 in' }, direction: 'both', kill: { wall: 'C', at: '0 in' } } }), { repeat: '30 in' });
    expect(runs(layout)).toEqual([[-200, -100], [-100, 0], [0, 100], [100, 200]]);
    expect(layout.kill).toEqual({ wall: 'C', at: 0 });
    // 251 in and 151 in before the line: eight and five repeats of 30 in, and 11 and 1 in.
    expect(cuts(layout).map(([label, , phase]) => [label, phase])).toEqual([['C1', 19], ['D1', 29], ['A1', 9], ['B1', 19]]);
  });
});

describe('the mismatch of a border', () => {
  const mismatch = (repeat: string, lengths: readonly string[], rules: Loose = {}) => one(room(lengths, { bands: [{ id: 'top', covering: 'paper', walls: ['A', 'B', 'C', 'D'], from: '90 in' }] }), { repeat }, rules).mismatch;

  test('counts neither wraps nor allowances, and says on which side it lies', () => {
    const lengths = ['148 in', '122 in', '148 in', '122 in'];
    // 540 in in repeats of 25 in: 21 and 15 in, 10 in short of 22.
    expect(mismatch('25 in', lengths)).toEqual({ amount: inches(10), side: 'short', vertical: 0 });
    expect(mismatch('25 in', lengths, { insideWrap: '1 in', borderAllowance: '3 in' })).toEqual({ amount: inches(10), side: 'short', vertical: 0 });
    expect(mismatch('24 in', lengths)).toEqual({ amount: inches(12), side: 'over', vertical: 0 });
  });

  test('is none in an open stretch', () => {
    const layout = one(square({ walls: ['A', 'B'] }));
    expect([layout.mismatch, layout.kill]).toEqual([null, null]);
  });
});

describe('the heights of a border', () => {
  const heights = (layout: BorderLayout) => pieces(layout).map(({ top, bottom }) => [inInches(top), inInches(bottom)]);

  test('are its band from the top down, as wide as it is', () => {
    expect(heights(one(square({ walls: ['A'], from: '88 in', to: 'ceiling' }), { width: '6.75 in' }))).toEqual([[96, 89.25]]);
    expect(heights(one(square({ walls: ['A'] })))).toEqual([[36, 30]]);
  });

  test('on a raked ceiling reach up to its highest', () => {
    expect(heights(one(square({ walls: ['A'], from: '90 in', to: 'ceiling' }, [{ height: ['96 in', '120 in'] }])))).toEqual([[120, 114]]);
  });
});

test('marks stand half the width below the top edge, one more than there are gaps of 2 ft at most', () => {
  const marks = (length: string, width = '6 in') => one(room([length], { bands: [{ id: 'dado', covering: 'paper', walls: ['A'], ...DADO }] }), { width }).marks.map(({ wall, from, distance, at }) => ({ wall, from, distance, count: at.length }));
  expect(marks('96 in')).toEqual([{ wall: 'A', from: 'floor', distance: inches(33), count: 5 }]);
  expect(marks('97 in')).toEqual([{ wall: 'A', from: 'floor', distance: inches(33), count: 6 }]);
  expect(marks('20 in', '5 in')).toEqual([{ wall: 'A', from: 'floor', distance: inches(33.5), count: 2 }]);
});

describe('whatever room a border goes round', () => {
  const hung = fc
    .record({
      sides: fc.tuple(fc.integer({ min: 30, max: 700 }), fc.integer({ min: 30, max: 700 })),
      holes: fc.array(fc.record({ from: fc.integer({ min: 0, max: 20 }), width: fc.integer({ min: 1, max: 30 }) }), { minLength: 4, maxLength: 4 }),
      kept: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
      walls: fc.constantFrom(['A', 'B', 'C', 'D'], ['A', 'B'], ['C', 'D', 'A'], ['A', 'C']),
      start: fc.record({ at: fc.integer({ min: 0, max: 30 }), direction: fc.constantFrom('left', 'right') }),
      repeat: fc.integer({ min: 0, max: 30 }),
      rollLength: fc.integer({ min: 60, max: 400 }),
      rollStart: fc.constantFrom('anywhere', 'at-repeat'),
      allowance: fc.integer({ min: 0, max: 3 }),
      position: fc.integer({ min: 0, max: 40 }),
    })
    .map(({ sides: [across, deep], holes, kept, walls, start, repeat, rollLength, rollStart, allowance, position }) => {
      const wallFacts = holes.map(({ from, width }, index) => (kept[index] ? door({ from: `${from} in`, width: `${Math.min(width, 30 - from)} in` }) : {}));
      const band = { id: 'dado', covering: 'paper', walls, ...DADO, position: `${position} in`, layout: { start: { wall: 'A', at: `${start.at} in` }, direction: start.direction } };
      const facts = room([across, deep, across, deep].map((length) => `${length} in`), { bands: [band] }, wallFacts);
      return { allowance: inches(allowance), position: inches(position), ...setOut(facts, { repeat: `${repeat} in`, rollLength: `${rollLength} in`, rollStart }, { borderAllowance: `${allowance} in` }) };
    });

  const check = (property: (layout: BorderLayout, facts: typeof hung extends fc.Arbitrary<infer Value> ? Value : never) => void) =>
    fc.assert(
      fc.property(hung, (facts) => facts.layouts.forEach((layout) => property(layout, facts))),
      { numRuns: 400 },
    );

  test('its lengths cover all of every wall but its doors, once', () => {
    check(({ lengths, axis, grid }) => {
      const covered = lengths.reduce((sum, { from, to }) => sum + to - from, 0);
      const doors = axis.walls.reduce((sum, { wall }) => sum + wall.openings.reduce((wide, { from, to }) => wide + to - from, 0), 0);
      expect(covered).toBe(grid.to - grid.from - doors);
      lengths.slice(1).forEach(({ from }, index) => expect(from).toBeGreaterThanOrEqual(lengths[index]!.to));
      expect(lengths.map(({ number }) => number)).toEqual(lengths.map((_, index) => index));
      // None goes through an inside corner.
      for (const { from, to } of lengths) {
        const turns = axis.isClosed ? [-axis.length, 0, axis.length] : [0];
        for (const { to: corner } of axis.walls) expect(turns.some((turn) => from < corner + turn && corner + turn < to)).toBe(false);
      }
    });
  });

  test('every piece surely comes from a spool, laps the one before it, and is no sliver', () => {
    check(({ lengths }, { paper, allowance, house }) => {
      const { length: spool } = paper.rollLength;
      const { length: repeat } = paper.repeat;
      const surely = ({ phase }: { readonly phase: number }) => spool - (paper.rollStart === 'anywhere' ? repeat : phase);
      const [lap, least] = [2 * allowance, 3 * allowance + house.rules.sliver.length];
      // A spool that gives hardly more than the laps is a fault of the facts; its pieces are named as impossible.
      if (spool - repeat < 2 * least + lap) return;
      for (const { from, to, pieces: joined, needsTwo } of lengths) {
        const whole = to - from + 2 * allowance;
        expect(joined.reduce((sum, { length }) => sum + length, 0)).toBe(whole + lap * (joined.length - 1));
        for (const piece of joined) expect(piece.length).toBeLessThanOrEqual(surely(piece));
        if (joined.length > 1) for (const { length } of joined) expect(length).toBeGreaterThanOrEqual(least);
        expect(joined.length === 1).toBe(whole <= surely(joined[0]!));
        expect(joined.length).toBeLessThanOrEqual(Math.ceil((whole - lap) / (spool - repeat - lap)) + 1);
        expect(needsTwo).toBe(to - from > inches(144));
        expect(new Set(joined.map(({ part }) => part))).toEqual(new Set([joined.length === 1 ? 'length' : 'joined']));
      }
    });
  });

  test('its pattern runs on from the line struck, through corners, doors and joints', () => {
    check(({ lengths, grid }, { paper, allowance, position }) => {
      const repeat = paper.repeat.length;
      for (const { from, pieces: joined } of lengths) {
        let at = from - allowance;
        for (const { phase, length } of joined) {
          expect(phase).toBe(repeat === 0 ? 0 : modulo(position + at - grid.origin, repeat));
          at += length - 2 * allowance;
        }
      }
    });
  });
});

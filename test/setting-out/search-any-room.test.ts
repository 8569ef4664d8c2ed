import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planCuts } from '../../shared-core/cutting/index.ts';
import { laidWidthOf } from '../../shared-core/house/index.ts';
import { isRollGoods, rollOf } from '../../shared-core/ordering/index.ts';
import { countSlivers, demandCounter, killPoints, layAxis, type PieceDemand, searchLayouts, setOutStrips, sightOf, type Stretch, wrapAfter } from '../../shared-core/setting-out/index.ts';
import { inches, lengthOf } from '../../shared-core/units/index.ts';
import { type Hung, hung, SEARCHED_ROOMS, setOut } from './random-rooms.ts';

const tries = fc.array(fc.record({ wall: fc.nat(5), share: fc.nat(1_000_000), kill: fc.nat(40), edge: fc.constantFrom('left' as const, 'centre' as const, 'right' as const), direction: fc.constantFrom('left' as const, 'right' as const, 'both' as const) }), { minLength: 4, maxLength: 4 });
type Tries = typeof tries extends fc.Arbitrary<infer Value> ? Value : never;

/** Heights are level, so that a layout changes only where a seam passes a corner, an edge or an end. */
function judge(facts: Hung, places: Tries, partOf: (stretch: Stretch) => Stretch): void {
  const { room, paper, band, stretch: whole, house } = setOut(facts);
  if (!isRollGoods(paper)) throw new Error('goods in rolls');
  const stretch = partOf(whole);
  const axis = layAxis(stretch, (wall) => wrapAfter(wall, house.rules));
  const countRolls = (pieces: readonly PieceDemand[]) => planCuts({ ...rollOf(paper), pieces }, 'instant').rollCount;
  const count = demandCounter(axis, band, paper, house.rules);
  const sight = sightOf(room);
  const kills = killPoints(axis, band, sight);
  const comesOf = (layout: Parameters<typeof setOutStrips>[4]) => {
    const set = setOutStrips(stretch, band, paper, house.rules, layout);
    return { rolls: countRolls(count(set.strips).pieces()), mismatch: set.mismatch, ...countSlivers(axis, set.grid, laidWidthOf(paper), band, house.rules), strips: set.strips.length };
  };

  const options = searchLayouts({ stretch, band, covering: paper, rules: house.rules, sight, grain: inches(1), countRolls });
  // What is said of a layout on offer is what comes of it.
  for (const { layout, startKind: _kind, killKind: _kill, visibleMismatch: _visible, ...said } of options) expect(comesOf(layout)).toEqual(said);

  const best = options[0]!;
  const found = [best.rolls, best.visibleMismatch, best.slivers, best.outsideSeams];
  for (const { wall: number, share, kill: which, edge, direction } of places) {
    const wall = stretch.walls[number % stretch.walls.length]!;
    const kill = kills[which % kills.length];
    const start = { wall: wall.id, at: lengthOf(Math.floor((wall.length * share) / 1_000_000)) };
    const { rolls, mismatch, slivers, outsideSeams } = comesOf({ start, edge, direction, kill: kill?.place ?? 'start' });
    const tried = [rolls, mismatch && kill ? Math.ceil((mismatch.amount * kill.exposure) / 100) : 0, slivers, outsideSeams];
    const order = found.reduce((decided, value, index) => decided || value - tried[index]!, 0);
    if (order > 0) expect(found, `${wall.id} ${start.at} ${edge} ${direction}, ends at ${kill?.place.wall} ${kill?.place.at}`).toEqual(tried);
  }
}

test("the search's best is never worse than any start that brute force tries", () => {
  fc.assert(
    fc.property(hung, tries, (facts, places) => judge(facts, places, (stretch) => stretch)),
    { numRuns: SEARCHED_ROOMS },
  );
});

const inside = (id: string, length: string) => ({ id, length, turn: 'inside', height: '96 in', openings: [] });
const HOLE = { id: 'hole', kind: 'window', from: '0 in', width: '5 in', sill: '11 in', height: '8 in', reveal: { depth: '3 in', sides: ['left', 'right', 'head', 'sill'] } };
/** Three strips of a drop of three: the one that begins the cycle has its only seam at its right. */
const FEW_STRIPS = {
  walls: [inside('A', '185 in'), inside('B', '48 in'), { ...inside('C', '20 in'), turn: 'outside' }, { ...inside('D', '58 in'), openings: [HOLE] }, inside('E', '165 in'), inside('F', '106 in')],
  layout: { start: { wall: 'A', at: '0 in', edge: 'left' }, direction: 'left', kill: { wall: 'A', at: '0 in' } },
  covering: { width: '28 in', repeat: '33.4 in', match: 'drop', rollStart: 'at-repeat' },
} as unknown as Hung;

test('nor in an open stretch', () => {
  fc.assert(
    fc.property(hung, tries, fc.nat(5), fc.integer({ min: 1, max: 3 }), (facts, places, first, walls) =>
      judge(facts, places, (stretch) => ({ walls: Array.from({ length: walls }, (_, index) => stretch.walls[(first + index) % stretch.walls.length]!), isClosed: false })),
    ),
    { numRuns: SEARCHED_ROOMS, examples: [[FEW_STRIPS, [{ wall: 0, share: 400_007, kill: 0, edge: 'centre', direction: 'left' }], 2, 2]] },
  );
});

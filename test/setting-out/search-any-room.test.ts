import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planCuts } from '../../shared-core/cutting/index.ts';
import { laidWidthOf } from '../../shared-core/house/index.ts';
import { isRollGoods, rollOf } from '../../shared-core/ordering/index.ts';
import { countSlivers, demandCounter, killPoints, type PieceDemand, searchLayouts, setOutStrips, sightOf } from '../../shared-core/setting-out/index.ts';
import { lengthOf } from '../../shared-core/units/index.ts';
import { hung, ROOMS, setOut } from './random-rooms.ts';

const TRIES = 4;

/**
 * Heights are level, so that a layout changes only where a seam passes a corner, an edge or an end; each room is begun at a
 * few places of any unit on any wall, hung either way, to any kill point.
 */
test("the search's best is never worse than any start that brute force tries", () => {
  const tries = fc.array(fc.record({ wall: fc.nat(5), share: fc.nat(1_000_000), kill: fc.nat(40), edge: fc.constantFrom('left' as const, 'centre' as const, 'right' as const), direction: fc.constantFrom('left' as const, 'right' as const, 'both' as const) }), { minLength: TRIES, maxLength: TRIES });
  fc.assert(
    fc.property(hung, tries, (facts, places) => {
      const { room, paper, band, stretch, house, layout } = setOut(facts);
      if (!isRollGoods(paper)) throw new Error('goods in rolls');
      const countRolls = (pieces: readonly PieceDemand[]) => planCuts({ ...rollOf(paper), pieces }, 'instant').rollCount;
      const sight = sightOf(room);
      const [best] = searchLayouts({ stretch, band, covering: paper, rules: house.rules, sight, countRolls });
      const found = [best!.rolls, best!.visibleMismatch, best!.slivers, best!.outsideSeams];
      const kills = killPoints(layout.axis, band, sight);
      const count = demandCounter(layout.axis, band, paper, house.rules);
      for (const { wall: number, share, kill: which, edge, direction } of places) {
        const wall = stretch.walls[number % stretch.walls.length]!;
        const kill = kills[which % kills.length]!;
        const set = setOutStrips(stretch, band, paper, house.rules, { start: { wall: wall.id, at: lengthOf(Math.floor((wall.length * share) / 1_000_000)) }, edge, direction, kill: kill.place });
        const { slivers, outsideSeams } = countSlivers(layout.axis, set.grid, laidWidthOf(paper), band, house.rules);
        const tried = [countRolls(count(set.strips).pieces()), Math.ceil((set.mismatch!.amount * kill.exposure) / 100), slivers, outsideSeams];
        const order = found.reduce((decided, value, index) => decided || value - tried[index]!, 0);
        if (order > 0) expect(found, `${wall.id} ${set.start.at} ${edge} ${direction}, ends at ${kill.place.wall} ${kill.place.at}`).toEqual(tried);
      }
    }),
    { numRuns: ROOMS },
  );
}, 300_000);

import type { House } from '../house/index.ts';
import type { OrderLine, RunStock, WayOut } from '../ordering/index.ts';
import type { WorkingLine } from './explain-order.ts';
import type { CoveringRuns } from './house-plan.ts';
import { nameRoom } from './name-room.ts';
import { sayUnits } from './say-units.ts';
import { say, sayList } from '../words/index.ts';

export function sayRun(run: string | null): string {
  return run === null ? say`the run on its way` : say`run ${run}`;
}

/**
 * Why rooms hang from the runs they hang from, a line for each run.
 *
 * Example: 'Run 2214 covers Front bedroom and Hall: 8 rolls of the 9 that there are, 1 over.' and 'Run 2215 is not needed.'
 */
export function explainRuns(house: House, { covering, runs, isBestAssignment }: Pick<CoveringRuns, 'covering' | 'runs' | 'isBestAssignment'>, order: readonly OrderLine[]): readonly WorkingLine[] {
  const lines = order.filter((line) => line.covering === covering);
  const used = runs.flatMap((stock): readonly WorkingLine[] => {
    const line = lines.find(({ run, shortfall }) => run === stock.run && shortfall === 0);
    return line ? [{ text: sayUse(house, stock, line) }] : stock.run === null ? [] : [{ text: say`Run ${stock.run} is not needed${sayThere(house, covering, stock)}.` }];
  });
  const tied = house.matching
    .map(({ covering: only, rooms }) => (only === undefined || only === covering ? rooms.filter((room) => lines.some((line) => line.rooms.includes(room))) : []))
    .filter((rooms) => rooms.length > 1 && lines.some((line) => rooms.every((room) => line.rooms.includes(room))))
    .map((rooms) => ({ text: say`${sayList(rooms.map((room) => nameRoom(house, room)))} must match, so they hang from one run.` }));
  const inParts = house.rooms.filter(({ id }) => lines.filter(({ rooms }) => rooms.includes(id)).length > 1).map(({ name }) => name);
  const mixed = inParts.length === 0 ? say`No room mixes runs.` : say`In ${sayList(inParts)} the run changes in a corner; no wall mixes runs.`;
  const judged = isBestAssignment ? say`no other way of sharing the runs out is better` : say`the best that was found; a better way is not ruled out`;
  return [...used, ...tied, { text: mixed, rule: say`most rooms first, then the fewest rolls bought, then the least left over: ${judged}` }];
}

function sayUse(house: House, stock: RunStock, line: OrderLine): string {
  const there = stock.inHand + stock.onOrder + stock.offered;
  const rooms = sayList(line.rooms.map((room) => nameRoom(house, room)));
  const over = there - line.rollsNeeded;
  const run = stock.run === null ? say`The run on its way` : say`Run ${stock.run}`;
  const taken = sayUnits(house, line.covering, line.rollsNeeded);
  return over > 0 ? say`${run} covers ${rooms}: ${taken} of ${there}, ${over} over.` : say`${run} covers ${rooms}: ${taken} of ${there}, none over.`;
}

function sayThere(house: House, covering: string, { inHand, onOrder, offered }: RunStock): string {
  const parts = [inHand > 0 && say`${inHand} in hand`, onOrder > 0 && say`${onOrder} on order`, offered > 0 && say`${sayUnits(house, covering, offered)} on offer`].filter(Boolean);
  return parts.length > 0 ? ` (${parts.join(', ')})` : '';
}

/**
 * A way out as somebody would say it.
 *
 * Example: 'Ask for 2 rolls more of run 2214: then every room hangs.'
 */
export function sayWayOut(house: House, covering: string, way: WayOut): string {
  const rooms = (ids: readonly string[]) => sayList(ids.map((room) => nameRoom(house, room)));
  switch (way.kind) {
    case 'untie':
      return say`Let ${rooms(way.rooms)} hang from different runs: then every room hangs.`;
    case 'choose-otherwise':
      return say`Let the run of ${rooms(way.rooms)} be chosen anew: then every room hangs.`;
    case 'change-at-corner':
      return say`Let the run change in ${rooms([way.room])} at the inside corner after wall ${sayList(way.walls)}: then every room hangs.`;
    case 'ask-for-more':
      return way.run === null ? say`Ask for ${sayUnits(house, covering, way.rolls)} more of the run on its way: then every room hangs.` : say`Ask for ${sayUnits(house, covering, way.rolls)} more of run ${way.run}: then every room hangs.`;
    case 'another-run':
      return say`Wait with ${rooms(way.rooms)} until another run has ${sayUnits(house, covering, way.rolls)}.`;
  }
}

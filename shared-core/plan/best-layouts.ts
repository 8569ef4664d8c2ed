import { memoryOf } from '../base/index.ts';
import { rollCounter } from '../cutting/index.ts';
import type { House, HungBand, Room, Wallcovering } from '../house/index.ts';
import { type RollGoods, rollOf, type Watch } from '../ordering/index.ts';
import { type LayoutOption, searchLayouts, sightOf, type Stretch } from '../setting-out/index.ts';
import { inches, millimetres } from '../units/index.ts';

/** Steps of counting rolls for one stretch, some fifty times what the hardest of an ordinary house's takes. */
const MOST_STEPS = 200_000_000;

const known = memoryOf<readonly LayoutOption[]>(400);

/**
 * The best few layouts of a stretch, searched once for the same facts.
 *
 * Judged by the rolls that the stretch takes alone, at the quick effort, so that the search keeps up with the typing.
 * What is remembered is the answer to a pure question, so a plan does not depend on it. Once a watch is stopped they are
 * the best found so far, which may be none, and are not remembered.
 */
export function bestLayouts(room: Room, band: HungBand, stretch: Stretch, covering: Wallcovering & RollGoods, house: House, watch?: Watch): readonly LayoutOption[] {
  const { layout: _own, ...hung } = band;
  const sight = sightOf(room);
  const key = JSON.stringify([stretch, hung, covering, house.rules, house.lengths, sight]);
  const before = known.recall(key);
  if (before) return before;
  if (watch?.isStopped()) return [];
  let isCutShort = false;
  const found = searchLayouts({
    stretch,
    band,
    covering,
    rules: house.rules,
    sight,
    grain: house.lengths === 'metric' ? millimetres(10) : inches(1),
    countRolls: rollCounter(rollOf(covering), MOST_STEPS),
    isEnough: watch && (() => (isCutShort ||= watch.isStopped())),
  });
  return isCutShort ? found : known.remember(key, found);
}

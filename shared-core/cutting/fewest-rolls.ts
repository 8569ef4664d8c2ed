import type { FindDearest } from './dearest.ts';
import { dive, type Draw } from './dive.ts';
import { fillDearest } from './fill-dearest.ts';
import { findDearest } from './find-dearest.ts';
import { fitFirst } from './first-fit.ts';
import { planInGroups } from './plan-in-groups.ts';
import { better, priceByCount, type Pricing } from './pricing.ts';
import { poolOf, relax } from './relax.ts';
import type { Packing, Tape } from './tape.ts';
import { tryAll } from './try-all.ts';
import { partOf, type Work } from './work.ts';

interface Stage {
  /** How many beginnings of rolls are kept in mind. */
  readonly patience: number;
  /** How often whole rolls are tried for. */
  readonly dives: number;
  /** Steps of trying every way there is. */
  readonly steps: number;
}

/** Ever more is done where less was not enough. */
const STAGES: readonly Stage[] = [
  { patience: 0, dives: 1, steps: 200_000 },
  { patience: 2_000, dives: 4, steps: 4_000_000 },
  { patience: 6_000, dives: 8, steps: 20_000_000 },
  { patience: 20_000, dives: 16, steps: 100_000_000 },
  { patience: 100_000, dives: 1_000, steps: 1_000_000_000 },
];

export interface Found {
  readonly packings: readonly Packing[];
  readonly pricing: Pricing;
  readonly ruledOut: number | null;
}

/** How much is to be done. */
export interface Extent {
  /** Of the stages the first so many. */
  readonly stages: number;
  /** Where rolls in parts take more steps than this, there are too many kinds to make whole rolls of them. */
  readonly stepsInParts: number;
}

export const ALL_STAGES = STAGES.length;

/** Whole rolls are hardly made of rolls in parts where there are more kinds than this. */
const MOST_KINDS_AT_ONCE = 200;
/** Then rolls are filled one after the other, with longer pieces favoured so much, and groups of them are cut anew to this extent. */
const FAVOUR = 0.03;
const GROUP_EXTENT: Extent = { stages: 2, stepsInParts: 200_000_000 };
const STEPS_OF_A_GROUP = 300_000_000;

/**
 * The fewest rolls that give the pieces of a tape, and what proves it.
 *
 * Rule: first-fit-decreasing gives a plan, rolls in parts a bound and prices. Stage by stage whole rolls are sought along
 * them, heeding the demand raises the bound, and every way is tried for a while, until plan and bound meet or the work is
 * over. Of very many kinds rolls are filled one after the other, and cut anew some at a time.
 *
 * Example: rolls of 10, free match, 2 pieces of 6 and 3 of 5: 4 rolls, and 3 are ruled out.
 */
export function fewestRolls(tape: Tape, work: Work, { stages, stepsInParts }: Extent): Found {
  const find = findDearest(tape, work);
  let packings = fitFirst(tape);
  let pricing = priceByCount(tape);
  let ruledOut: number | null = null;
  let isTooLarge = false;
  let isBoundSharp = false;
  const pool = poolOf(packings.map(({ roll }) => roll));
  const wanted = tape.kinds.map(({ count }) => count);
  const take = (found: readonly Packing[] | null): void => {
    if (found && rollsOf(found) < rollsOf(packings)) packings = found;
  };
  const least = (): number => leastOf({ pricing, ruledOut });
  const isDone = (): boolean => rollsOf(packings) === least() || work.isOver();
  const bound = (isWithinDemand: boolean, patience: number): void => {
    const part = partOf(work, stepsInParts);
    const relaxed = relax(tape, find, pool, part, { wanted, isWithinDemand, patience, bound: rollsOf(packings), rolls: 0 });
    pricing = better(pricing, relaxed.pricing)!;
    isTooLarge ||= part.isOver();
    isBoundSharp ||= isWithinDemand && relaxed.isOptimal;
  };

  if (!isDone()) bound(false, 0);
  const draw = drawing();
  if (isTooLarge || tape.kinds.length > MOST_KINDS_AT_ONCE) {
    take(fillDearest(tape, find, work, FAVOUR));
    if (!isDone()) take(planInGroups(tape, packings, work, draw, (group) => fewestRolls(group, partOf(work, STEPS_OF_A_GROUP), GROUP_EXTENT).packings));
  }
  for (const { patience, dives, steps } of isTooLarge ? [] : STAGES.slice(0, stages)) {
    if (patience > 0 && !isDone() && !isBoundSharp) bound(true, patience);
    for (let attempt = 0; attempt < dives && !isDone(); attempt += 1) {
      const isFirst = attempt === 0;
      const atMost = isFirst ? rollsOf(packings) - 1 : least();
      take(dive(tape, find, pool, work, { aim: least(), atMost, patience, draw: isFirst ? null : draw }));
    }
    while (!isDone()) {
      const tried = tryAll(tape, find, pricing, least(), partOf(work, steps));
      if (tried === null) break;
      if (tried === 'there is none') ruledOut = least();
      else take(tried);
    }
  }
  return { packings, pricing: withoutNeedlessClaim(find, pricing), ruledOut };
}

/** The demand is claimed to matter only where a roll heedless of it counts for more. */
function withoutNeedlessClaim(find: FindDearest, pricing: Pricing): Pricing {
  return pricing.isWithinDemand && find.mostOverAll(pricing.duals) === pricing.most ? { ...pricing, isWithinDemand: false } : pricing;
}

/** No plan takes fewer rolls than this. */
export function leastOf({ pricing, ruledOut }: Pick<Found, 'pricing' | 'ruledOut'>): number {
  return Math.max(pricing.bound, ruledOut === null ? 0 : ruledOut + 1);
}

export function rollsOf(packings: readonly Packing[]): number {
  return packings.reduce((sum, { times }) => sum + times, 0);
}

/** The same numbers each time a plan is made, by Lehmer's generator with the multiplier 48271 (Park and Miller). */
function drawing(): Draw {
  let state = 1;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}

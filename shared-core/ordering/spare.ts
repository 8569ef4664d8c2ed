import type { Covering, House, Spare } from '../house/index.ts';
import { ceilDivide } from '../units/index.ts';

/**
 * Spare rolls by their rule: so many, or a percentage of the rolls needed, rounded up to whole rolls.
 *
 * Example: 10 % of 23 rolls is 3; 0 rolls needed take no spare by percentage.
 */
export function spareRolls(rule: Spare, needed: number): number {
  if (typeof rule === 'number') return rule;
  const [whole = '0', tenths = '0'] = rule.replace('%', '').trim().split(/[.,]/);
  return ceilDivide(needed * (Number(whole) * 10 + Number(tenths)), 1000);
}

/** The rule for a covering: its own, else the house's; a mural has a spare only by its own, goods by the length have none. */
export function spareRule(house: Pick<House, 'rules'>, covering: Covering): Spare {
  if (covering.kind === 'paint' || ('soldBy' in covering && covering.soldBy)) return 0;
  return covering.spareRolls ?? (covering.kind === 'mural' ? 0 : house.rules.spareRolls);
}

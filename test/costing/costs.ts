import type { HouseJob } from '../../shared-core/calendar/house-job.ts';
import { type CostFacts, planCost } from '../../shared-core/costing/index.ts';
import type { House } from '../../shared-core/house/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import type { MaterialNeed } from '../../shared-core/prep/prep-plan.ts';
import { moneyOf } from '../../shared-core/units/index.ts';
import type { Loose } from '../builders.ts';
import { metricHouse, metricPaper } from '../calendar/house-to-work.ts';

/** A room of ten strips, which are four rolls at 15.00, without spare. */
export const STUBE: Loose = { id: 'room', name: 'Stube', walls: [{ id: 'A', length: '5 m', height: '2.5 m' }], bands: [{ id: 'main', covering: 'paper', walls: ['A'] }] };

export function pricedHouse(facts: Loose = {}, covering: Loose = {}): House {
  return metricHouse({ rules: { spareRolls: 0 }, coverings: [metricPaper({ supplier: 'north', soldIn: [{ rolls: 1, price: '15.00' }], ...covering })], rooms: [STUBE], ...facts });
}

export function job(id: string, minutes: number, facts: Partial<HouseJob> = {}): HouseJob {
  return { id, room: 'room', kind: 'preparation', words: `Do ${id}`, minutes, people: 1, waitMinutes: 0, after: [], earliest: null, chosen: null, isOthers: false, working: [{ text: `${minutes} min.` }], ...facts };
}

export function material(id: string, price: number | null, facts: Partial<MaterialNeed> = {}): MaterialNeed {
  return { material: id, words: id, unit: 'g', amount: 500, packs: [{ amount: 500, count: 1 }], price: price === null ? null : moneyOf(price), rooms: ['room'], ...facts };
}

export function factsOf(house: House, facts: Partial<CostFacts> = {}): CostFacts {
  return { house, order: planHouse(house, 'instant').order, materials: [], paints: [], jobs: [], ...facts };
}

export const costOf = (house: House, facts: Partial<CostFacts> = {}) => planCost(factsOf(house, facts));

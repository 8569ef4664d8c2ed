import type { House } from '../../shared-core/house/index.ts';
import type { HousePlan } from '../../shared-core/plan/index.ts';
import type { Stamp } from './pdf/sheet.ts';

/** What a paper is made from: a house as it was last saved, and its plan. */
export interface PaperFacts {
  readonly house: House;
  readonly plan: HousePlan;
  readonly stamp: Stamp;
}

import { documentSchema, type House, writeDocument } from '../../shared-core/house/index.ts';
import { type HousePlan, planDocument, planHouse } from '../../shared-core/plan/index.ts';
import { writeRoomTable } from '../../shared-core/survey/index.ts';
import { orderCsv, orderText, planText } from '../documents/index.ts';

/** A house's plan as text, for whoever asks without a window. */
export interface Desk {
  readonly plan: HousePlan;
  planJson(): string;
  planText(): string;
  orderText(): string;
  orderCsv(): string;
}

export function openDesk(house: House): Desk {
  const plan = planHouse(house);
  return {
    plan,
    planJson: () => `${JSON.stringify(planDocument(house, plan), null, 2)}\n`,
    planText: () => planText(house, plan),
    orderText: () => orderText(house, plan),
    orderCsv: () => orderCsv(house, plan),
  };
}

export function exportText(house: House): string {
  return writeDocument(house);
}

/** All the house's rooms as CSV; `addRooms` reads them again. */
export function roomsCsv(house: House): string {
  return writeRoomTable(house);
}

export function schemaText(): string {
  return `${JSON.stringify(documentSchema(), null, 2)}\n`;
}

import { documentSchema, type House, writeDocument } from '../../shared-core/house/index.ts';
import { type HousePlan, planDocument, planHouse } from '../../shared-core/plan/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { writeRoomTable } from '../../shared-core/survey/index.ts';
import { calendarFile, jobSheets, orderCsv, orderText, planText } from '../documents/index.ts';

/** A house's plan and the papers made of it, for whoever asks without a window. */
export interface Desk {
  readonly plan: HousePlan;
  planJson(): string;
  planText(): string;
  orderText(): string;
  orderCsv(): string;
  /** A sheet for each room in which something is done. */
  jobSheets(): string;
  /** The calendar for calendar programs, as it is written now; null where no day is known yet. */
  calendarFile(): string | null;
}

export const NO_DAYS = say`There is no day to write yet: say what is on the walls or hang something, and on which day the work begins.`;

export function openDesk(house: House): Desk {
  const plan = planHouse(house);
  return {
    plan,
    planJson: () => `${JSON.stringify(planDocument(house, plan), null, 2)}\n`,
    planText: () => planText(house, plan),
    orderText: () => orderText(house, plan),
    orderCsv: () => orderCsv(house, plan),
    jobSheets: () => jobSheets(house, plan),
    calendarFile: () => calendarFile(house, plan, new Date()),
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

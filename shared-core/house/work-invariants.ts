import { type Report, reportPrice } from './report.ts';
import type { House } from './types.ts';
import { say } from '../words/index.ts';

/** What the facts of the work must have in common with the rest of a house. */
export function findWorkFaults(house: House, report: Report): void {
  reportPrice(house.work?.rate, house, 'work.rate', report);
  reportPrice(house.work?.rounding, house, 'work.rounding', report);
  reportRepeated(house.tasks.map(({ task }) => task), (index) => `tasks[${index}].task`, report);
  reportRepeated(house.materials.map(({ material }) => material), (index) => `materials[${index}].material`, report);
  house.materials.forEach(({ packs }, index) => packs.forEach(({ price }, pack) => reportPrice(price, house, `materials[${index}].packs[${pack}].price`, report)));
  house.expenses.forEach(({ cost }, index) => reportPrice(cost, house, `expenses[${index}].cost`, report));
}

function reportRepeated(ids: readonly string[], pathOf: (index: number) => string, report: Report): void {
  const seen = new Set<string>();
  ids.forEach((id, index) => {
    if (seen.has(id)) report(pathOf(index), say`is "${id}" once more; each stands once`);
    seen.add(id);
  });
}

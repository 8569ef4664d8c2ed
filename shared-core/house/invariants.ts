import type { Fault } from '../base/index.ts';
import { millimetres, printLength } from '../units/index.ts';
import { findCoveringFaults } from './covering-invariants.ts';
import { findCovering, type Report, reportRepeatedIds } from './report.ts';
import { findRoomFaults } from './room-invariants.ts';
import type { House, RunQuantity } from './types.ts';

const SMALLEST_SPACING = millimetres(10);

/** Everything that the facts of a house must have in common and do not. */
export function findFaults(house: House): readonly Fault[] {
  const faults: Fault[] = [];
  const report: Report = (path, message) => faults.push({ path, message });
  reportRepeatedIds(house.coverings, 'coverings', report);
  reportRepeatedIds(house.rooms, 'rooms', report);
  for (const [name, rule] of Object.entries(house.rules)) {
    if (typeof rule === 'object' && rule.length < 0) report(`rules.${name}`, `is ${rule.typed}; it takes a length of 0 or more`);
  }
  if (house.rules.markSpacing.length < SMALLEST_SPACING) report('rules.markSpacing', `is ${house.rules.markSpacing.typed}; it takes ${printLength(SMALLEST_SPACING, 'metric')} and more`);
  house.coverings.forEach((covering, index) => findCoveringFaults(covering, house, `coverings[${index}]`, report));
  house.rooms.forEach((room, index) => findRoomFaults(room, house, `rooms[${index}]`, report));
  for (const list of ['stock', 'offers', 'deliveries'] as const) {
    house[list].forEach((entry, index) => findRunFaults(entry, house, `${list}[${index}]`, report));
  }
  house.deliveries.forEach((delivery, index) => {
    if (delivery.damaged > delivery.rolls) {
      report(`deliveries[${index}].damaged`, `is ${delivery.damaged}, more than the ${delivery.rolls} rolls delivered`);
    }
  });
  return faults;
}

function findRunFaults(entry: RunQuantity, house: House, path: string, report: Report): void {
  const covering = findCovering(entry.covering, house, `${path}.covering`, report);
  if (covering?.kind === 'paint') {
    report(`${path}.covering`, `is "${entry.covering}", a paint; rolls are counted for wallcoverings, borders, linings and murals`);
  }
}

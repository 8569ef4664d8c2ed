import { findCovering, type Report, reportPrice, reportRepeatedIds, sayKnown } from './report.ts';
import type { Delivery, House } from './types.ts';
import { say } from '../words/index.ts';

const LISTS_OF_ROLLS = ['stock', 'offers', 'deliveries', 'returns', 'leftovers', 'runChoices'] as const;

/** What orders, deliveries and runs must have in common with the rest of a house. */
export function findOrderFaults(house: House, report: Report): void {
  reportRepeatedIds(house.suppliers, 'suppliers', report);
  reportRepeatedIds(house.orders, 'orders', report);
  for (const list of LISTS_OF_ROLLS) house[list].forEach((entry, index) => findRollsFaults(entry, house, `${list}[${index}]`, report));
  house.orders.forEach(({ sharing }, order) => sharing.forEach((share, index) => findRollsFaults(share, house, `orders[${order}].sharing[${index}]`, report)));
  house.orders.forEach(({ lines }, order) =>
    lines.forEach((line, index) => {
      const path = `orders[${order}].lines[${index}]`;
      findRollsFaults(line, house, path, report);
      reportPrice(line.price, house, `${path}.price`, report);
      if (line.takenOff > line.rolls) report(`${path}.takenOff`, say`is ${line.takenOff}, more than the ${line.rolls} rolls ordered`);
    }),
  );
  house.deliveries.forEach((delivery, index) => findDeliveryFaults(delivery, house, `deliveries[${index}]`, report));
  house.leftovers.forEach(({ length }, index) => {
    if (length.length <= 0) report(`leftovers[${index}].length`, say`is ${length.typed}; it takes a length above 0`);
  });
  findMatchingFaults(house, report);
  findChoiceFaults(house, report);
}

function findRollsFaults(entry: { readonly covering: string }, house: House, path: string, report: Report): void {
  const covering = findCovering(entry.covering, house, `${path}.covering`, report);
  if (covering?.kind === 'paint') {
    report(`${path}.covering`, say`is "${entry.covering}", a paint; rolls are counted for wallcoverings, borders, linings and murals`);
  }
}

function findDeliveryFaults({ covering, patternNumber, rolls, damaged, short, decision }: Delivery, house: House, path: string, report: Report): void {
  if (damaged > rolls) report(`${path}.damaged`, say`is ${damaged}, more than the ${rolls} rolls delivered`);
  else if (damaged + short > rolls) report(`${path}.short`, say`is ${short}: with ${damaged} damaged that is more than the ${rolls} rolls on the label`);
  const ordered = house.coverings.find(({ id }) => id === covering)?.patternNumber;
  if (decision === 'keep' && ordered !== undefined && ordered !== patternNumber) {
    report(`${path}.decision`, say`is "keep", but the label says pattern ${patternNumber} and not ${ordered}; record it under a covering of that number, or send it back`);
  }
}

function findRoom(id: string, house: House, path: string, report: Report): void {
  if (house.rooms.some((room) => room.id === id)) return;
  report(path, say`is "${id}", which is not a room of this house; its rooms are ${sayKnown(house.rooms)}`);
}

function findMatchingFaults(house: House, report: Report): void {
  house.matching.forEach(({ covering, rooms }, index) => {
    const path = `matching[${index}]`;
    if (covering !== undefined) findCovering(covering, house, `${path}.covering`, report);
    rooms.forEach((room, place) => {
      findRoom(room, house, `${path}.rooms[${place}]`, report);
      if (rooms.indexOf(room) !== place) report(`${path}.rooms[${place}]`, say`is "${room}" once more; each room stands once`);
    });
  });
}

function findChoiceFaults(house: House, report: Report): void {
  const seen = new Set<string>();
  house.runChoices.forEach(({ covering, room, hung, day }, index) => {
    findRoom(room, house, `runChoices[${index}].room`, report);
    if (day !== undefined && !hung) report(`runChoices[${index}].day`, say`stands without hung; it is the day on which the room was hung`);
    const key = JSON.stringify([covering, room]);
    if (seen.has(key)) report(`runChoices[${index}]`, say`says the run of ${covering} in ${room} a second time; each room takes one`);
    seen.add(key);
  });
}

import type { Fault } from '../base/index.ts';
import { millimetres } from '../units/index.ts';
import { findCoveringFaults } from './covering-invariants.ts';
import { MOST_ROOMS } from './house.ts';
import { A_COVERING } from './kind-words.ts';
import { findOrderFaults } from './order-invariants.ts';
import { MOST_PHOTOS_OF_WALL } from './photo.ts';
import { findCovering, firstFaults, MOST_FAULTS, type Report, reportRepeatedIds, sayKnown, sayLength } from './report.ts';
import { findRoomFaults } from './room-invariants.ts';
import type { House } from './types.ts';
import { findWorkFaults } from './work-invariants.ts';
import { say } from '../words/index.ts';

const SMALLEST_SPACING = millimetres(10);
/** With so much of pictures a house's document is still one that can be read in again. */
const MOST_OF_PICTURES = 6_000_000;

/** What the facts of a house must have in common and do not; of very much the first of it, and that there is more. */
export function findFaults(house: House): readonly Fault[] {
  const faults: Fault[] = [];
  const report: Report = (path, message) => {
    if (faults.length <= MOST_FAULTS) faults.push({ path, message });
  };
  reportRepeatedIds(house.coverings, 'coverings', report);
  reportRepeatedIds(house.rooms, 'rooms', report);
  if (house.rooms.length > MOST_ROOMS) report('rooms', say`would be ${house.rooms.length}; a house takes ${MOST_ROOMS} rooms`);
  for (const [name, rule] of Object.entries(house.rules)) {
    if (typeof rule === 'object' && rule.length < 0) report(`rules.${name}`, say`is ${rule.typed}; it takes a length of 0 or more`);
  }
  if (house.rules.markSpacing.length < SMALLEST_SPACING) report('rules.markSpacing', say`is ${house.rules.markSpacing.typed}; it takes ${sayLength(SMALLEST_SPACING, 'metric')} and more`);
  house.coverings.forEach((covering, index) => findCoveringFaults(covering, house, `coverings[${index}]`, report));
  for (const [index, room] of house.rooms.entries()) {
    if (faults.length > MOST_FAULTS) break;
    findRoomFaults(room, house, `rooms[${index}]`, report);
  }
  findOrderFaults(house, report);
  findWorkFaults(house, report);
  findPictureFaults(house, report);
  findPhotoFaults(house, report);
  return firstFaults(faults);
}

function findPictureFaults(house: House, report: Report): void {
  const { pictures } = house;
  const seen = new Set<string>();
  pictures.forEach(({ covering: id }, index) => {
    const path = `pictures[${index}].covering`;
    const covering = findCovering(id, house, path, report);
    if (covering && covering.kind !== 'wallcovering' && covering.kind !== 'border') {
      report(path, say`is "${id}", ${A_COVERING[covering.kind]}; a picture of one repeat belongs to a wallcovering or a border`);
    }
    if (seen.has(id)) report(path, say`is "${id}", which has a picture already; each covering takes one`);
    seen.add(id);
  });
  const total = pictures.reduce((sum, { image }) => sum + image.length, 0);
  if (total > MOST_OF_PICTURES) report('pictures', say`hold ${total} characters together; a house takes ${MOST_OF_PICTURES}. Take one away, or load smaller ones`);
}

function findPhotoFaults(house: House, report: Report): void {
  reportRepeatedIds(house.photos, 'photos', report);
  const counts = new Map<string, number>();
  house.photos.forEach((photo, index) => {
    const room = house.rooms.find(({ id }) => id === photo.room);
    if (!room) return report(`photos[${index}].room`, say`is "${photo.room}", which is not a room of this house; its rooms are ${sayKnown(house.rooms)}`);
    if (!room.walls.some(({ id }) => id === photo.wall)) {
      return report(`photos[${index}].wall`, say`is "${photo.wall}", which is not a wall of ${room.name}; its walls are ${sayKnown(room.walls)}`);
    }
    const wall = JSON.stringify([photo.room, photo.wall]);
    const count = (counts.get(wall) ?? 0) + 1;
    counts.set(wall, count);
    if (count === MOST_PHOTOS_OF_WALL + 1) report(`photos[${index}].wall`, say`is "${photo.wall}" of ${room.name}, which has ${MOST_PHOTOS_OF_WALL} photos already; a wall takes no more. Take one away`);
  });
}

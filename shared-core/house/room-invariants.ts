import { lengthOf, type Measure, ZERO_LENGTH } from '../units/index.ts';
import { heightsOf, highestOf, hungBand, nameCovering } from './readings.ts';
import { A_COVERING, THE_OPENING } from './kind-words.ts';
import { findCovering, HIGHEST_WALL, LONGEST_OUTLINE, LONGEST_WALL, reportRange, reportRepeatedIds, type Report, sayKnown, sayLength } from './report.ts';
import { MOST_WALLS } from './room.ts';
import type { Band, Furniture, House, Opening, Rail, Room, Wall } from './types.ts';
import { say } from '../words/index.ts';

export function findRoomFaults(room: Room, house: House, path: string, report: Report): void {
  reportRepeatedIds(room.walls, `${path}.walls`, report);
  reportRepeatedIds(room.bands, `${path}.bands`, report);
  reportRepeatedIds(room.rails, `${path}.rails`, report);
  reportRepeatedIds(room.furniture, `${path}.furniture`, report);
  if (room.walls.length > MOST_WALLS) report(`${path}.walls`, say`would be ${room.walls.length}; a room takes ${MOST_WALLS} walls`);
  room.walls.forEach((wall, index) => findWallFaults(wall, house, `${path}.walls[${index}]`, report));
  if (room.walls.reduce((sum, wall) => sum + Math.abs(wall.length.length), 0) > LONGEST_OUTLINE) {
    report(`${path}.walls`, say`are longer than ${sayLength(LONGEST_OUTLINE, 'metric')} in all; check the units`);
  }
  if (room.focalWall !== undefined) findWall(room.focalWall, room, `${path}.focalWall`, report);
  if (room.ceiling) {
    const overhead = findCovering(room.ceiling.covering, house, `${path}.ceiling.covering`, report);
    if (overhead?.kind === 'border' || overhead?.kind === 'mural') report(`${path}.ceiling.covering`, say`is "${overhead.id}", ${A_COVERING[overhead.kind]}; a ceiling takes a wallcovering, a lining or a paint`);
    if (room.ceiling.along !== undefined) findWall(room.ceiling.along, room, `${path}.ceiling.along`, report);
    reportRange(`${path}.ceiling.position`, room.ceiling.position, { least: ZERO_LENGTH, most: LONGEST_WALL }, report);
  }
  if (room.woodwork) {
    const { covering, skirting } = room.woodwork;
    const painted = findCovering(covering, house, `${path}.woodwork.covering`, report);
    if (painted && painted.kind !== 'paint') report(`${path}.woodwork.covering`, say`is "${painted.id}", ${A_COVERING[painted.kind]}; woodwork takes a paint`);
    reportRange(`${path}.woodwork.skirting`, skirting, { least: ZERO_LENGTH, most: HIGHEST_WALL }, report);
  }
  room.rails.forEach((rail, index) => findRailFaults(rail, room, house, `${path}.rails[${index}]`, report));
  room.furniture.forEach((piece, index) => findFurnitureFaults(piece, room, house, `${path}.furniture[${index}]`, report));
  room.bands.forEach((band, index) => findBandFaults(band, room, house, `${path}.bands[${index}]`, report));
  reportOverlappingBands(room, house, path, report);
}

function findWallFaults(wall: Wall, house: House, path: string, report: Report): void {
  const isLengthGood = reportRange(`${path}.length`, wall.length, { above: ZERO_LENGTH, most: LONGEST_WALL }, report);
  for (const height of [wall.height].flat() as Measure[]) {
    reportRange(`${path}.height`, height, { above: ZERO_LENGTH, most: HIGHEST_WALL }, report);
  }
  for (const base of [wall.base].flat() as Measure[]) {
    reportRange(`${path}.base`, base, { least: lengthOf(-HIGHEST_WALL), most: HIGHEST_WALL }, report);
  }
  reportRepeatedIds(wall.openings, `${path}.openings`, report);
  wall.openings.forEach((opening, index) => {
    const at = `${path}.openings[${index}]`;
    if (isLengthGood) findOpeningFaults(opening, wall, house, at, report);
    findRevealFaults(opening, `${at}.reveal`, report);
    wall.openings.slice(0, index).forEach((earlier) => {
      if (meet(opening, earlier)) {
        report(`${at}.from`, say`is ${opening.from.typed}: ${THE_OPENING[opening.kind]} "${opening.id}" would lie over ${THE_OPENING[earlier.kind]} "${earlier.id}"; openings of a wall may touch, not overlap`);
      }
    });
  });
}

function findRailFaults(rail: Rail, room: Room, house: House, path: string, report: Report): void {
  const areRangesGood = [
    reportRange(`${path}.at`, rail.at, { least: ZERO_LENGTH, most: HIGHEST_WALL }, report),
    reportRange(`${path}.width`, rail.width, { above: ZERO_LENGTH, most: HIGHEST_WALL }, report),
  ].every(Boolean);
  const walls = rail.walls?.flatMap((id, index) => findWall(id, room, `${path}.walls[${index}]`, report) ?? []) ?? room.walls;
  const low = walls.find((wall) => rail.at.length + rail.width.length > highestOf(wall));
  if (areRangesGood && low) report(`${path}.at`, say`is ${rail.at.typed}: the rail "${rail.id}" would stand above wall ${low.id}, which is ${sayLength(highestOf(low), house.lengths)} high; leave that wall out of its walls, or set it lower`);
}

function findFurnitureFaults(piece: Furniture, room: Room, house: House, path: string, report: Report): void {
  const areRangesGood = [
    reportRange(`${path}.from`, piece.from, { least: ZERO_LENGTH, most: LONGEST_WALL }, report),
    reportRange(`${path}.width`, piece.width, { above: ZERO_LENGTH, most: LONGEST_WALL }, report),
    reportRange(`${path}.height`, piece.height, { above: ZERO_LENGTH, most: HIGHEST_WALL }, report),
  ].every(Boolean);
  const wall = findWall(piece.wall, room, `${path}.wall`, report);
  const end = lengthOf(piece.from.length + piece.width.length);
  if (areRangesGood && wall && end > wall.length.length) report(`${path}.width`, say`is ${piece.width.typed}: "${piece.id}" would end at ${sayLength(end, house.lengths)}, past the end of wall ${wall.id} at ${wall.length.typed}`);
}

function findOpeningFaults(opening: Opening, wall: Wall, house: House, path: string, report: Report): void {
  const areRangesGood = [
    reportRange(`${path}.from`, opening.from, { least: ZERO_LENGTH, most: LONGEST_WALL }, report),
    reportRange(`${path}.width`, opening.width, { above: ZERO_LENGTH, most: LONGEST_WALL }, report),
    reportRange(`${path}.sill`, opening.sill, { least: ZERO_LENGTH, most: HIGHEST_WALL }, report),
    reportRange(`${path}.height`, opening.height, { above: ZERO_LENGTH, most: HIGHEST_WALL }, report),
  ].every(Boolean);
  if (!areRangesGood) return;
  const end = lengthOf(opening.from.length + opening.width.length);
  if (end > wall.length.length) {
    const room = lengthOf(wall.length.length - opening.from.length);
    const remedy = room > 0 ? say`from ${opening.from.typed} it takes at most ${sayLength(room, house.lengths)}` : say`it has to start before the wall ends`;
    report(
      `${path}.width`,
      say`is ${opening.width.typed}: ${THE_OPENING[opening.kind]} "${opening.id}" would end at ${sayLength(end, house.lengths)}, past the end of wall ${wall.id} at ${wall.length.typed}; ${remedy}`,
    );
  }
  const head = lengthOf(opening.sill.length + opening.height.length);
  const highest = highestOf(wall);
  if (head > highest) {
    report(
      `${path}.height`,
      say`is ${opening.height.typed}: ${THE_OPENING[opening.kind]} "${opening.id}" would reach ${sayLength(head, house.lengths)}, above wall ${wall.id}, which is ${sayLength(highest, house.lengths)} high`,
    );
  }
}

function findRevealFaults(opening: Opening, path: string, report: Report): void {
  if (!opening.reveal) return;
  const { depth, sides } = opening.reveal;
  reportRange(`${path}.depth`, depth, { above: ZERO_LENGTH, most: LONGEST_WALL }, report);
  sides.forEach((side, index) => {
    if (sides.indexOf(side) !== index) report(`${path}.sides[${index}]`, say`is "${side}", which the reveal names already`);
    if (side === 'sill' && opening.sill.length === 0) report(`${path}.sides[${index}]`, say`is "sill", but ${THE_OPENING[opening.kind]} "${opening.id}" goes down to the floor`);
  });
  if (opening.kind === 'furniture') report(path, say`stands on "${opening.id}", fitted furniture, which has no reveal`);
}

function meet(one: Opening, other: Opening): boolean {
  const isBeside = one.from.length + one.width.length <= other.from.length || other.from.length + other.width.length <= one.from.length;
  const isAbove = one.sill.length + one.height.length <= other.sill.length || other.sill.length + other.height.length <= one.sill.length;
  return !isBeside && !isAbove;
}

function findWall(id: string, room: Room, path: string, report: Report): Wall | undefined {
  const wall = room.walls.find((candidate) => candidate.id === id);
  if (!wall) report(path, say`is "${id}", which is not a wall of ${room.name}; its walls are ${sayKnown(room.walls)}`);
  return wall;
}

function findBandFaults(band: Band, room: Room, house: House, path: string, report: Report): void {
  const covering = findCovering(band.covering, house, `${path}.covering`, report);
  const areRailsThere = (['from', 'to'] as const).every((edge) => isRailThere(band[edge], room, `${path}.${edge}`, report));
  if (band.datum) reportRange(`${path}.datum`, band.datum, { least: lengthOf(-HIGHEST_WALL), most: lengthOf(2 * HIGHEST_WALL) }, report);
  if (band.levelLine) {
    reportRange(`${path}.levelLine.below`, band.levelLine.below, { least: ZERO_LENGTH, most: LONGEST_WALL }, report);
    reportRange(`${path}.levelLine.at`, band.levelLine.at, { least: ZERO_LENGTH, most: HIGHEST_WALL }, report);
  }
  for (const key of ['firstPanel', 'levelLine'] as const) {
    if (band[key] !== undefined && covering && covering.kind !== 'mural') report(`${path}.${key}`, say`stands on a band of ${A_COVERING[covering.kind]}; only a mural is placed by it`);
  }
  if (covering?.kind === 'mural' && band.firstPanel !== undefined && band.firstPanel > covering.panels) report(`${path}.firstPanel`, say`is ${band.firstPanel}; the mural ${nameCovering(house, covering.id)} has ${covering.panels} panels`);
  if (band.level && covering && covering.kind !== 'border') report(`${path}.level`, say`is true on a band of ${A_COVERING[covering.kind]}; only a border is hung level or along the ceiling`);
  if (band.position.length < 0) report(`${path}.position`, say`is ${band.position.typed}; it takes a length of 0 or more`);
  band.walls.forEach((id, index) => {
    const wall = findWall(id, room, `${path}.walls[${index}]`, report);
    if (band.walls.indexOf(id) !== index) report(`${path}.walls[${index}]`, say`is "${id}", which the band names already`);
    if (wall && areRailsThere) reportBandOnWall(band, room, wall, house, path, report);
  });
  if (band.runMayChange && covering && covering.kind !== 'wallcovering') report(`${path}.runMayChange`, say`stands on a band of ${A_COVERING[covering.kind]}; only a wallcovering in strips can change its run at a corner`);
  band.runMayChange?.forEach((id, index) => findWall(id, room, `${path}.runMayChange[${index}]`, report));
  if (!band.layout) return;
  const { start, kill, direction } = band.layout;
  reportPlace(start, band, room, `${path}.layout.start`, report);
  if (kill !== 'start') reportPlace(kill, band, room, `${path}.layout.kill`, report);
  if (kill === 'start' && direction === 'both') {
    report(`${path}.layout.kill`, say`is "start"; when hanging goes both ways the ends meet elsewhere: it takes a wall and a place on it`);
  }
}

function reportPlace(place: { readonly wall: string; readonly at: Measure }, band: Band, room: Room, path: string, report: Report): void {
  const wall = findWall(place.wall, room, `${path}.wall`, report);
  if (!wall) return;
  if (!band.walls.includes(place.wall)) {
    report(`${path}.wall`, say`is "${place.wall}", a wall this band does not cover; it covers ${sayKnown(band.walls.map((id) => ({ id })))}`);
  }
  if (place.at.length < 0 || place.at.length > wall.length.length) {
    report(`${path}.at`, say`is ${place.at.typed}; wall ${wall.id} takes a place from 0 to ${wall.length.typed}`);
  }
}

function isRailThere(edge: Band['from' | 'to'], room: Room, path: string, report: Report): boolean {
  if (typeof edge === 'string' || !('rail' in edge) || room.rails.some(({ id }) => id === edge.rail)) return true;
  report(`${path}.rail`, say`is "${edge.rail}", which is not a rail of ${room.name}; its rails are ${sayKnown(room.rails)}`);
  return false;
}

function reportBandOnWall(given: Band, room: Room, wall: Wall, house: House, path: string, report: Report): void {
  const band = hungBand(room, given);
  const highest = highestOf(wall);
  const { bottom, top } = heightsOf(band, highest);
  if (band.from !== 'floor' && (bottom < ZERO_LENGTH || bottom >= highest)) {
    report(`${path}.from`, say`is ${band.from.typed}; on wall ${wall.id} a band starts between the floor and ${sayLength(highest, house.lengths)}`);
  } else if (band.to !== 'ceiling' && top > highest) {
    report(`${path}.to`, say`is ${band.to.typed}, above wall ${wall.id}, which is ${sayLength(highest, house.lengths)} high; "ceiling" goes up to it`);
  } else if (top <= bottom) {
    report(`${path}.to`, band.to === 'ceiling' ? say`is the ceiling, not above where the band starts` : say`is ${band.to.typed}, not above where the band starts`);
  }
}

/** Only a border may lie over another band. */
function reportOverlappingBands(room: Room, house: House, path: string, report: Report): void {
  const kindOf = new Map(house.coverings.map(({ id, kind }) => [id, kind]));
  const isRead = ({ from, to }: Band) => [from, to].every((edge) => isRailThere(edge, room, path, () => undefined));
  const heights = (band: Band) => heightsOf(hungBand(room, band), HIGHEST_WALL);
  room.bands.forEach((band, index) => {
    if (kindOf.get(band.covering) === 'border') return;
    for (const earlier of room.bands.slice(0, index)) {
      if (kindOf.get(earlier.covering) === 'border' || layersApart(kindOf.get(band.covering), kindOf.get(earlier.covering))) continue;
      const shared = band.walls.find((id) => earlier.walls.includes(id));
      if (shared === undefined || !isRead(band) || !isRead(earlier)) continue;
      const [one, other] = [heights(band), heights(earlier)];
      if (one.bottom < other.top && other.bottom < one.top) {
        report(`${path}.bands[${index}]`, say`overlaps the band "${earlier.id}" of ${nameCovering(house, earlier.covering)} on wall ${shared}; only a border may lie over another band. Take one of them off that wall`);
      }
    }
  });
}

/** Lining hangs under what is seen, so it shares its wall with that. */
function layersApart(one: string | undefined, other: string | undefined): boolean {
  return (one === 'lining') !== (other === 'lining');
}

import type { Effort } from '../cutting/index.ts';
import { type Covering, type House, hungBand, type HungBand, type Mural, nameCovering, type Room, type Wallcovering } from '../house/index.ts';
import { type CoveringOrder, cutPieces, findRuns, isRollGoods, longestPiece, orderCovering, type OrderLine, orderMural, type PlacedPiece, type RollGoods, type RunStock } from '../ordering/index.ts';
import { chosenLayout, findStretches, type Piece, setOutBorder, setOutLiningAcross, setOutLiningUp, setOutMural, setOutPanels, setOutStrips, type Stretch, type StretchLayout } from '../setting-out/index.ts';
import { CLOSING_ERROR_WORTH_A_LOOK, drawOutline } from '../survey/index.ts';
import { type Length, showLength } from '../units/index.ts';
import { bestLayouts } from './best-layouts.ts';
import type { BandPlan, HousePlan, PlannedStretch, Remark, RoomPlan } from './house-plan.ts';
import { sayUnits } from './say-units.ts';

/**
 * Plans a house: rooms set out, pieces pooled by covering, rolls cut, one order by pattern number and run number.
 *
 * Pure: the same facts give the same plan everywhere. Nothing is refused for being odd; what cannot be met stands in
 * `problems` and what is worth a look in `warnings`, each in words.
 */
export function planHouse(house: House, effort: Effort = 'usual'): HousePlan {
  const coverings = new Map(house.coverings.map((covering) => [covering.id, covering]));
  const rooms = house.rooms.map((room) => planRoom(room, coverings, house, effort));
  const orders = house.coverings.flatMap((covering) => {
    const order = orderOf(house, covering, rooms, effort);
    return order ? [{ covering, ...order }] : [];
  });
  const order = orders.flatMap(({ lines }) => lines);
  return {
    rooms,
    order,
    cuts: orders.flatMap(({ cutLists }) => cutLists),
    problems: [
      ...orders.flatMap(({ covering, impossible }) => (isRollGoods(covering) ? impossible.map((placed) => pieceTooLong(placed, covering, house)) : [])),
      ...rooms.flatMap((room) => muralsTooSmall(room, house)),
      ...orders.flatMap(({ lines, runs }) => lines.filter(({ shortfall }) => shortfall > 0).map((line) => noRunFor(line, runs, house))),
    ],
    warnings: [
      ...house.rooms.flatMap((room) => roomWarnings(room, coverings, house)),
      ...rooms.flatMap((room) => sliverWarnings(room)),
      ...order.filter(({ spareLacking }) => spareLacking > 0).map((line) => ({
        place: 'order' as const,
        room: null,
        message: `Run ${line.run} of ${nameCovering(house, line.covering)} has no rolls left for ${line.spareLacking} of the spare.`,
      })),
      ...deliveryWarnings(house),
    ],
  };
}

function orderOf(house: House, covering: Covering, rooms: readonly RoomPlan[], effort: Effort): CoveringOrder | null {
  if (isRollGoods(covering)) {
    const pieces = placedPieces(rooms, covering.id);
    return pieces.length > 0 ? orderCovering(house, covering, pieces, effort) : null;
  }
  if (covering.kind !== 'mural') return null;
  const places = rooms.map((room): [string, number] => [room.id, room.bands.filter((band) => band.covering === covering.id).reduce((sum, { stretches }) => sum + stretches.length, 0)]);
  const hung = places.filter(([, count]) => count > 0);
  return hung.length > 0 ? orderMural(house, covering, new Map(hung)) : null;
}

function muralsTooSmall(room: RoomPlan, house: House): readonly Remark[] {
  return room.bands.flatMap((band) =>
    band.stretches.flatMap((stretch) => {
      const shortage = 'shortage' in stretch ? stretch.shortage : null;
      if (!shortage || (shortage.width === 0 && shortage.height === 0)) return [];
      const by = [shortage.width > 0 && `${showLength(shortage.width, house.lengths)} too narrow`, shortage.height > 0 && `${showLength(shortage.height, house.lengths)} too low`].filter(Boolean).join(' and ');
      return [{ place: 'coverings' as const, room: room.id, message: `The mural ${nameCovering(house, band.covering)} is ${by} for wall ${stretch.axis.walls.map(({ wall }) => wall.id).join(', ')} of ${room.name}. Choose a larger one, or hang it on less.` }];
    }),
  );
}

function planRoom(room: Room, coverings: ReadonlyMap<string, Covering>, house: House, effort: Effort): RoomPlan {
  const goods = room.bands.flatMap((band) => {
    const covering = coverings.get(band.covering);
    return covering && (isRollGoods(covering) || covering.kind === 'mural') ? [{ band: hungBand(room, band), covering }] : [];
  });
  // Lining gives way to the seams of what hangs over it, so that is set out first.
  const above = goods.filter(({ covering }) => covering.kind !== 'lining').map(({ band, covering }) => planBand(room, band, covering, house, effort, []));
  const seen = above.flatMap((band) => (band.kind === 'strips' ? band.stretches : []));
  const bands = goods.map(({ band, covering }) => above.find(({ id }) => id === band.id) ?? planBand(room, band, covering, house, effort, seen));
  return { id: room.id, name: room.name, outline: drawOutline(room), bands };
}

function planBand(room: Room, band: HungBand, covering: RollGoods | Mural, house: House, effort: Effort, above: readonly StretchLayout[]): BandPlan {
  const stretches = findStretches(room, band);
  const { id } = band;
  const whole = setOutBand(room, band, stretches, covering, house, effort, above);
  if (covering.kind === 'mural') return { id, covering: covering.id, rollsAlone: stretches.length, ...whole };
  const pieces = piecesOf(whole).map((piece) => ({ room: room.id, band: id, piece }));
  return { id, covering: covering.id, rollsAlone: cutPieces(covering, pieces, effort).plan.rollCount, ...whole };
}

function setOutBand(room: Room, band: HungBand, stretches: readonly Stretch[], covering: RollGoods | Mural, house: House, effort: Effort, above: readonly StretchLayout[]) {
  if (covering.kind === 'mural') return { kind: 'strips' as const, stretches: stretches.map((stretch) => ({ ...setOutMural(stretch, band, covering, house.rules), options: [] })) };
  if (covering.kind === 'border') return { kind: 'lengths' as const, stretches: stretches.map((stretch) => setOutBorder(stretch, band, covering, house.rules)) };
  if (covering.kind === 'wallcovering') return { kind: 'strips' as const, stretches: stretches.map((stretch) => planStretch(room, band, stretch, covering, house, effort)) };
  return covering.direction === 'across'
    ? { kind: 'lengths' as const, stretches: stretches.map((stretch) => setOutLiningAcross(stretch, band, covering, house.rules)) }
    : { kind: 'strips' as const, stretches: stretches.map((stretch) => ({ ...setOutLiningUp(stretch, band, covering, house.rules, above), options: [] })) };
}

/** Set out as the user chose, or else as the search finds best; at the quick effort from the first inside corner. */
function planStretch(room: Room, band: HungBand, stretch: Stretch, covering: Wallcovering & RollGoods, house: House, effort: Effort): PlannedStretch {
  if (covering.panels === 'equal') return { ...setOutPanels(stretch, band, covering, house.rules), options: [] };
  const options = effort === 'instant' ? [] : bestLayouts(room, band, stretch, covering, house);
  const own = chosenLayout(band);
  const isOwn = own !== undefined && stretch.walls.some(({ id }) => id === own.start.wall);
  return { ...setOutStrips(stretch, band, covering, house.rules, isOwn ? own : options[0]?.layout), options };
}

/** All pieces of a band, in hanging order from left to right. */
export function piecesOf(band: Pick<BandPlan, 'kind' | 'stretches'>): readonly Piece[] {
  return band.stretches.flatMap((stretch) => ('strips' in stretch ? stretch.strips : stretch.lengths).flatMap(({ pieces }) => pieces));
}

function placedPieces(rooms: readonly RoomPlan[], covering: string): readonly PlacedPiece[] {
  return rooms.flatMap((room) =>
    room.bands
      .filter((band) => band.covering === covering)
      .flatMap((band) => piecesOf(band).map((piece) => ({ room: room.id, band: band.id, piece }))),
  );
}

function pieceTooLong({ room, piece }: PlacedPiece, covering: RollGoods, house: House): Remark {
  const show = (length: Length) => showLength(length, house.lengths);
  const given = longestPiece(covering, piece.phase);
  const where = given < longestPiece(covering) ? ' from where its pattern begins' : '';
  return {
    place: 'coverings',
    room,
    message: `Piece ${piece.label} in ${nameRoom(house, room)} is ${show(piece.length)} long; a roll of ${nameCovering(house, covering.id)} surely gives ${show(given)}${where}. It can't be cut in one piece.`,
  };
}

function noRunFor(line: OrderLine, sold: readonly RunStock[], house: House): Remark {
  const offers = new Map(findRuns(house, line.covering).map(({ run, offered }) => [run, offered]));
  const runs = sold.map(({ run, inHand, offered }) => `run ${run} has ${inHand + offered}${offered < offers.get(run)! ? ' as it is sold' : ''}`);
  const rooms = line.rooms.map((room) => nameRoom(house, room)).join(', ');
  return {
    place: 'order',
    room: line.rooms[0] ?? null,
    message: `No run of ${nameCovering(house, line.covering)} can hang ${rooms}: ${line.rollsNeeded} ${line.rollsNeeded === 1 ? 'roll' : 'rolls'} of one run wanted, ${runs.join(', ')} before the other rooms. Ask for ${line.rollsNeeded} of one run.`,
  };
}

function roomWarnings(room: Room, coverings: ReadonlyMap<string, Covering>, house: House): readonly Remark[] {
  const warnings: Remark[] = [];
  const outline = drawOutline(room);
  if (outline.isClosed && outline.closingError > CLOSING_ERROR_WORTH_A_LOOK) {
    warnings.push({ place: 'survey', room: room.id, message: `The walls of ${room.name} miss each other by ${showLength(outline.closingError, house.lengths)} where the last meets the first. Measure again, or leave it if the room is out of square.` });
  }
  for (const wall of room.walls) {
    if (wall.plumbRight && Math.abs(wall.plumbRight.length) > house.rules.insideWrap.length) {
      warnings.push({ place: 'survey', room: room.id, message: `The corner at the right of wall ${wall.id} in ${room.name} leans by ${wall.plumbRight.typed}, more than the wrap of ${house.rules.insideWrap.typed}: the plan wraps the strip by that much there. Widths beside it and the mismatch may come out smaller by as much; measure it at top, middle and bottom.` });
    }
  }
  const unplanned = (id: string, where: string, reason: string): Remark => ({ place: 'coverings', room: room.id, message: `${nameCovering(house, id)} ${where} ${room.name} is recorded but not in the plan: ${reason}.` });
  const overhead = room.ceiling?.covering;
  const hung = [...room.bands.map((band) => band.covering), ...(overhead === undefined ? [] : [overhead])];
  for (const id of new Set(hung)) {
    const covering = coverings.get(id);
    const reason = covering && notPlanned(covering);
    if (reason) warnings.push(unplanned(id, 'in', reason));
    else if (id === overhead) warnings.push(unplanned(id, 'on the ceiling of', 'ceilings are not set out by this version'));
  }
  return warnings;
}

/** Why a covering's rolls are not counted, or null where they are counted as its facts say. */
function notPlanned(covering: Covering): string | null {
  if (covering.kind === 'paint') return 'a paint is not set out by this version';
  if (covering.kind === 'mural') return null;
  if (!isRollGoods(covering)) return 'goods sold by the length are not ordered by this version';
  const isInSequence = covering.kind === 'wallcovering' && covering.sequence === 'required';
  return isInSequence ? 'its strips are not kept in sequence by this version, order more' : null;
}

function sliverWarnings(room: RoomPlan): readonly Remark[] {
  return room.bands.flatMap((band) => {
    const slivers = band.kind === 'strips' ? band.stretches.reduce((sum, { slivers: count }) => sum + count, 0) : 0;
    return slivers === 0 ? [] : [{ place: 'set-out', room: room.id, message: `${room.name} has ${slivers} ${slivers === 1 ? 'sliver' : 'slivers'}: a seam too near to a corner or an opening. Another start may avoid it.` }];
  });
}

function deliveryWarnings(house: House): readonly Remark[] {
  return house.deliveries.flatMap((delivery) => {
    const ordered = house.coverings.find(({ id }) => id === delivery.covering)?.patternNumber;
    return ordered === undefined || ordered === delivery.patternNumber
      ? []
      : [{ place: 'order', room: null, message: `${sayUnits(house, delivery.covering, delivery.rolls)} labelled ${delivery.patternNumber}, run ${delivery.run}, came for pattern ${ordered}; not counted as in hand.` }];
  });
}

export function nameRoom(house: House, id: string): string {
  return house.rooms.find((room) => room.id === id)?.name ?? id;
}

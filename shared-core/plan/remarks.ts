import { present } from '../base/index.ts';
import { type Band, type Covering, heightsOf, highestOf, type House, hungBand, matchOf, nameCovering, type Room } from '../house/index.ts';
import { type CoveringOrder, isInSequence, isRollGoods, longestPiece, type OrderLine, type PlacedPiece, type RollGoods } from '../ordering/index.ts';
import { CLOSING_ERROR_WORTH_A_LOOK, readTurn } from '../survey/index.ts';
import { type Length, showLength } from '../units/index.ts';
import type { BandPlan, Remark, RoomPlan } from './house-plan.ts';
import { nameRoom } from './name-room.ts';
import { sayRun, sayWayOut } from './say-runs.ts';
import { sayUnits } from './say-units.ts';
import { say } from '../words/index.ts';

type Order = CoveringOrder & { readonly covering: Covering };

/** What cannot be met, in words. */
export function findProblems(house: House, rooms: readonly RoomPlan[], orders: readonly Order[]): readonly Remark[] {
  return [
    ...orders.flatMap(({ covering, impossible }) => (isRollGoods(covering) ? impossible.map((placed) => pieceTooLong(placed, covering, house)) : [])),
    ...rooms.flatMap((room) => muralsTooSmall(room, house)),
    ...orders.flatMap((order) => order.lines.filter(({ shortfall }) => shortfall > 0).map((line) => noRunFor(line, order, house))),
  ];
}

/** What is worth a look, in words. */
export function findWarnings(house: House, coverings: ReadonlyMap<string, Covering>, rooms: readonly RoomPlan[], orders: readonly Order[]): readonly Remark[] {
  const order = orders.flatMap(({ lines }) => lines);
  return [
    ...house.rooms.flatMap((room, index) => roomWarnings(room, rooms[index]!, coverings, house)),
    ...rooms.flatMap((room) => [...sliverWarnings(room), ...borderWarnings(room, house)]),
    ...hangingNotes(house, coverings, rooms),
    ...order.filter(({ spareLacking }) => spareLacking > 0).map((line) => ({
      place: 'order' as const,
      room: null,
      message: say`Run ${present(line.run, 'the run whose offer ends')} of ${nameCovering(house, line.covering)} has no rolls left for ${line.spareLacking} of the spare.`,
    })),
    ...sharedNumbers(house),
    ...orders.flatMap((one) => [...deliveryWarnings(one, house), ...differenceWarnings(one, house), ...choiceWarnings(one, house)]),
  ];
}

function muralsTooSmall(room: RoomPlan, house: House): readonly Remark[] {
  return room.bands.flatMap((band) =>
    band.stretches.flatMap((stretch) => {
      const shortage = 'shortage' in stretch ? stretch.shortage : null;
      if (!shortage || (shortage.width === 0 && shortage.height === 0)) return [];
      const by = [shortage.width > 0 && say`${showLength(shortage.width, house.lengths)} too narrow`, shortage.height > 0 && say`${showLength(shortage.height, house.lengths)} too low`].filter(Boolean).join(say` and `);
      return [{ place: 'coverings' as const, room: room.id, message: say`The mural ${nameCovering(house, band.covering)} is ${by} for wall ${stretch.axis.walls.map(({ wall }) => wall.id).join(', ')} of ${room.name}. Choose a larger one, or hang it on less.` }];
    }),
  );
}

function pieceTooLong({ room, piece }: PlacedPiece, covering: RollGoods, house: House): Remark {
  const show = (length: Length) => showLength(length, house.lengths);
  const given = longestPiece(covering, piece.phase);
  const where = given < longestPiece(covering) ? say` from where its pattern begins` : '';
  return {
    place: 'coverings',
    room,
    message: say`Piece ${piece.label} in ${nameRoom(house, room)} is ${show(piece.length)} long; a roll of ${nameCovering(house, covering.id)} surely gives ${show(given)}${where}. It can't be cut in one piece.`,
  };
}

function noRunFor(line: OrderLine, { runs, waysOut }: Order, house: House): Remark {
  const known = runs.map((run) => say`${sayRun(run.run)} has ${run.inHand + run.onOrder + run.offered}`);
  const rooms = line.rooms.map((room) => nameRoom(house, room)).join(', ');
  const [first] = waysOut;
  return {
    place: 'order',
    room: line.rooms[0] ?? null,
    message: say`No run of ${nameCovering(house, line.covering)} can hang ${rooms}: ${sayUnits(house, line.covering, line.shortfall)} of one run wanted; as it is sold, ${known.join(', ')}.${first ? ` ${sayWayOut(house, line.covering, first)}` : ''}`,
  };
}

function roomWarnings(room: Room, plan: RoomPlan, coverings: ReadonlyMap<string, Covering>, house: House): readonly Remark[] {
  const warnings: Remark[] = [];
  const { outline } = plan;
  if (outline.isClosed && outline.closingError > CLOSING_ERROR_WORTH_A_LOOK) {
    warnings.push({ place: 'survey', room: room.id, message: say`The walls of ${room.name} miss each other by ${showLength(outline.closingError, house.lengths)} where the last meets the first. Measure again, or leave it if the room is out of square.` });
  }
  for (const wall of room.walls) {
    if (wall.plumbRight && Math.abs(wall.plumbRight.length) > house.rules.insideWrap.length) {
      const kind = readTurn(wall.turn).kind;
      if (kind === 'straight') continue;
      const how = kind === 'inside' ? say`the plan wraps the strip by that much there` : say`the strip is cut after it has gone round, and the rest hung plumb over it, lapped by that much`;
      warnings.push({ place: 'survey', room: room.id, message: say`The corner at the right of wall ${wall.id} in ${room.name} leans by ${wall.plumbRight.typed}, more than the wrap of ${house.rules.insideWrap.typed}: ${how}. Widths beside it and the mismatch may come out smaller by as much; measure it at top, middle and bottom.` });
    }
  }
  const notInPlan = (message: string): Remark => ({ place: 'coverings', room: room.id, message });
  if (room.ceiling && coverings.get(room.ceiling.covering)?.kind !== 'paint' && plan.ceiling === null) {
    warnings.push(notInPlan(say`${nameCovering(house, room.ceiling.covering)} on the ceiling of ${room.name} is recorded but not in the plan: its walls do not go all the way round, so nothing is known of its outline.`));
  }
  return warnings;
}

function sliverWarnings(room: RoomPlan): readonly Remark[] {
  const onWalls = room.bands.map((band) => (band.kind === 'strips' ? band.stretches.reduce((sum, { slivers }) => sum + slivers.length, 0) : 0));
  return [
    ...onWalls.filter((slivers) => slivers > 0).map((slivers) => ({ place: 'set-out' as const, room: room.id, message: slivers === 1 ? say`${room.name} has ${slivers} sliver: a seam too near to a corner or an opening. Another start may avoid it.` : say`${room.name} has ${slivers} slivers: a seam too near to a corner or an opening. Another start may avoid it.` })),
    ...(room.ceiling && room.ceiling.slivers > 0 ? [{ place: 'set-out' as const, room: room.id, message: say`The last strip of the ceiling of ${room.name} is a sliver. Running the strips along another wall may avoid it.` }] : []),
  ];
}

function borderWarnings(room: RoomPlan, house: House): readonly Remark[] {
  const show = (length: Length) => showLength(length, house.lengths);
  return room.bands.flatMap((band) => {
    if (band.kind !== 'lengths') return [];
    const name = nameCovering(house, band.covering);
    const tapers = band.stretches.flatMap((stretch) => stretch.tapers.map(({ wall, most }) => say`${show(most)} on wall ${wall}`));
    return [
      ...band.clashes.map(({ wall, name: thing, by }): Remark => ({ place: 'set-out', room: room.id, message: say`The border ${name} in ${room.name} does not clear the ${thing} on wall ${wall}: ${show(by)} of it would be hidden. Hang it higher or lower.` })),
      ...(tapers.length > 0 ? [{ place: 'set-out' as const, room: room.id, message: say`The border ${name} in ${room.name} is level and the ceiling is not: up to ${tapers.join(', ')} shows over it. Along the ceiling it would show nothing.` }] : []),
    ];
  });
}

/** What the goods themselves ask for when they are hung. */
function hangingNotes(house: House, coverings: ReadonlyMap<string, Covering>, rooms: readonly RoomPlan[]): readonly Remark[] {
  const isVinyl = (id: string) => coverings.get(id)?.material?.toLowerCase().includes('vinyl') ?? false;
  const hung = new Set(rooms.flatMap((room) => [...room.bands.map(({ covering }) => covering), ...(room.ceiling ? [room.ceiling.covering] : [])]));
  const of = (ids: Iterable<string>, says: (name: string, covering: Covering) => string | null): readonly Remark[] =>
    [...ids].flatMap((id) => {
      const covering = coverings.get(id);
      const message = covering && says(nameCovering(house, id), covering);
      return message ? [{ place: 'coverings' as const, room: null, message, isAdvice: true as const, covering: id }] : [];
    });
  return [
    ...of(hung, (name, covering) => (isInSequence(covering) ? say`${name} is cut in the sequence of its rolls: hang the strips as they are numbered, the rolls in their order. Seams and steps of shade will show.` : null)),
    ...of(hung, (name, covering) => (covering.kind === 'wallcovering' && covering.reverseAlternate && matchOf(covering) === 'free' ? say`${name} is hung with every other strip upside down; the cut list marks them.` : null)),
    ...of(hung, (name, covering) => {
      if (covering.kind !== 'wallcovering' || covering.seam !== 'double-cut') return null;
      return covering.seamOverlap ? say`${name} is double-cut: lap the seams by ${covering.seamOverlap.typed}, in corners too, cut through both layers and take the strips away.` : say`${name} is double-cut, in corners too, cut through both layers and take the strips away.`;
    }),
    ...of(hung, (name, covering) => (covering.kind === 'wallcovering' && covering.seam === 'butt' && isVinyl(covering.id) && laps(rooms, covering.id) ? say`${name} is vinyl and laps on itself in corners: have vinyl-to-vinyl adhesive for the laps.` : null)),
    ...borderNotes(rooms, house, isVinyl),
  ];
}

/** Whether strips of a covering are lapped in a corner somewhere. */
function laps(rooms: readonly RoomPlan[], covering: string): boolean {
  const isLapped = (band: BandPlan) => band.kind === 'strips' && band.stretches.some(({ strips, grid }) => grid.lap > 0 || strips.some(({ parts }) => parts.some(({ wrap }) => wrap > 0)));
  return rooms.some(({ bands }) => bands.some((band) => band.covering === covering && isLapped(band)));
}

/** Whether two bands cover a part of a wall both. */
function lieOverOneAnother(room: Room, one: Band, other: Band): boolean {
  return room.walls.some((wall) => {
    if (!one.walls.includes(wall.id) || !other.walls.includes(wall.id)) return false;
    const [first, second] = [one, other].map((band) => heightsOf(hungBand(room, band), highestOf(wall))) as [ReturnType<typeof heightsOf>, ReturnType<typeof heightsOf>];
    return first.bottom < second.top && second.bottom < first.top;
  });
}

/** A border over paper waits until that is dry; over vinyl it wants its own adhesive. One note for all rooms alike. */
function borderNotes(rooms: readonly RoomPlan[], house: House, isVinyl: (covering: string) => boolean): readonly Remark[] {
  const places = rooms.flatMap((room) => {
    const facts = house.rooms.find(({ id }) => id === room.id);
    if (!facts) return [];
    const { bands } = facts;
    const planned = (id: string, kind: BandPlan['kind']) => room.bands.some((band) => band.id === id && band.kind === kind);
    return bands
      .filter(({ id, covering }) => planned(id, 'lengths') && house.coverings.find((one) => one.id === covering)?.kind === 'border')
      .flatMap((border) => {
        const { covering } = border;
        const beneath = bands.filter((under) => planned(under.id, 'strips') && lieOverOneAnother(facts, border, under));
        return beneath.length === 0 ? [] : [{ covering, room: room.name, isOverVinyl: beneath.some((under) => isVinyl(under.covering)) }];
      });
  });
  return house.coverings.flatMap(({ id }) =>
    [true, false].flatMap((isOverVinyl) => {
      const where = [...new Set(places.filter((place) => place.covering === id && place.isOverVinyl === isOverVinyl).map(({ room }) => room))].join(', ');
      if (where === '') return [];
      const message = isOverVinyl
        ? say`The border ${nameCovering(house, id)} goes over vinyl in ${where}: it wants vinyl-to-vinyl adhesive, and the vinyl hung before it, dry.`
        : say`The border ${nameCovering(house, id)} goes over new paper in ${where}: hang it only once that is dry.`;
      return [{ place: 'coverings' as const, room: null, message, isAdvice: true as const, covering: id }];
    }),
  );
}

/** Coverings that the same supplier would know by the same number: each is ordered by itself, and no label tells them apart. */
function sharedNumbers({ coverings }: House): readonly Remark[] {
  const numbered = coverings.flatMap(({ patternNumber, supplier }, index) => (patternNumber === undefined ? [] : [{ patternNumber, supplier, index }]));
  return numbered.flatMap((one) => {
    const first = numbered.find(({ patternNumber, supplier }) => patternNumber.toLowerCase() === one.patternNumber.toLowerCase() && (supplier === one.supplier || supplier === undefined || one.supplier === undefined))!;
    if (first === one) return [];
    const names = [first, one].map(({ index }) => coverings[index]!.name ?? say`number ${index + 1} of the list`);
    return [{ place: 'coverings' as const, room: null, message: say`Pattern number ${one.patternNumber} stands for two coverings, ${names[0]!} and ${names[1]!}. Each is ordered by itself: keep one of them, or give them the numbers on their labels.` }];
  });
}

function deliveryWarnings({ covering, ledger }: Order, house: House): readonly Remark[] {
  return ledger.deliveries.flatMap(({ delivery, verdict }): readonly Remark[] => {
    const rolls = sayUnits(house, covering.id, delivery.rolls);
    if (verdict === 'wrong-pattern') return [{ place: 'deliveries', room: null, message: say`${rolls} labelled ${delivery.patternNumber}, run ${delivery.run}, came for pattern ${present(covering.patternNumber, 'the pattern that was wanted')}; not counted as in hand.` }];
    if (verdict === 'run-not-ordered') return [{ place: 'deliveries', room: null, message: say`${rolls} labelled ${delivery.patternNumber}, run ${delivery.run}, came, and that run was not ordered; not counted as in hand until you keep it.` }];
    return [];
  });
}

function differenceWarnings({ covering, difference }: Order, house: House): readonly Remark[] {
  return difference.map(({ run, rolls, rooms, isOffered }) => {
    const [wanted, name] = [sayUnits(house, covering.id, rolls), nameCovering(house, covering.id)];
    const more = run === null ? say`${wanted} of ${name} more than were ordered are wanted, to match the run that comes.` : say`${wanted} of ${name} more than were ordered are wanted, to match run ${run}.`;
    return { place: 'order', room: rooms[0] ?? null, message: isOffered ? more : `${more} ${say`That run may be gone: ask before another room is cut from it.`}` };
  });
}

/** Rooms that must match and were set to different runs. */
function choiceWarnings({ covering }: Order, house: House): readonly Remark[] {
  return house.matching.flatMap(({ covering: only, rooms }): readonly Remark[] => {
    if (only !== undefined && only !== covering.id) return [];
    const runs = new Set(house.runChoices.flatMap((choice) => (choice.covering === covering.id && rooms.includes(choice.room) ? [choice.run] : [])));
    if (runs.size < 2) return [];
    return [{ place: 'order', room: rooms[0] ?? null, message: say`${rooms.map((room) => nameRoom(house, room)).join(', ')} must match but are set to runs ${[...runs].join(say` and `)} of ${nameCovering(house, covering.id)}: their shades may differ.` }];
  });
}

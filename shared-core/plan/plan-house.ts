import { memoryOf } from '../base/index.ts';
import { type CalendarPlan, type HouseJob, jobsOf, planCalendar } from '../calendar/index.ts';
import { planCost } from '../costing/index.ts';
import type { Effort } from '../cutting/index.ts';
import { type Covering, type House, hungBand, type HungBand, type Mural, type Room, type Wallcovering } from '../house/index.ts';
import { asCut, atLeast, type CoveringOrder, cutPieces, findLeft, findReadiness, isRollGoods, orderCovering, orderMural, orderOfNone, type RollGoods, type Watch } from '../ordering/index.ts';
import { planPaint, planPrep } from '../prep/index.ts';
import { chosenLayout, findClashes, findStretches, setOutBorder, setOutCeiling, setOutLiningAcross, setOutLiningUp, setOutMural, setOutPanels, setOutStrips, type Stretch, type StretchLayout } from '../setting-out/index.ts';
import { drawOutline, type Outline } from '../survey/index.ts';
import { bestLayouts } from './best-layouts.ts';
import { hangingOf, piecesOf, placedOverhead } from './hangings.ts';
import type { BandPlan, CeilingPlan, HousePlan, PlannedStretch, RoomPlan } from './house-plan.ts';
import { nameRoom } from './name-room.ts';
import { findProblems, findWarnings } from './remarks.ts';

/**
 * Plans a house: rooms set out, pieces pooled by covering, rolls cut, one order by pattern number and run number.
 *
 * Pure: the same facts give the same plan everywhere. Nothing is refused for being odd; what cannot be met stands in
 * `problems` and what is worth a look in `warnings`, each in words.
 *
 * With a watch it says how many patterns it has cut, and may be stopped: what is then not yet known of a room is set
 * out, and of a pattern cut, at the quick effort. What is known already is used however little effort is asked for, so
 * that a plan watched by somebody who has stopped it is the quickest there is after an edit.
 */
export function planHouse(facts: House, effort: Effort = 'usual', watch?: Watch): HousePlan {
  const house = { ...facts, coverings: facts.coverings.map(asCut) };
  const asked = { house, effort, watch };
  const coverings = new Map(house.coverings.map((covering) => [covering.id, covering]));
  const rooms = house.rooms.map((room) => knownRoom(room, coverings, asked));
  const orders = house.coverings.flatMap((covering, index) => {
    const order = orderOf(covering, rooms, asked);
    watch?.progress?.(index + 1, house.coverings.length);
    return order ? [{ covering, ...order }] : [];
  });
  const order = orders.flatMap(({ lines }) => lines);
  const cuts = orders.flatMap(({ cutLists }) => cutLists);
  const readiness = findReadiness(house, orders);
  const prep = { ...planPrep(house, rooms), paints: planPaint(house) };
  const jobs = jobsOf({ house, tasks: prep.tasks, rooms, paints: prep.paints, readiness });
  return {
    rooms,
    prep,
    jobs,
    calendar: calendarOf(house, jobs, effort === 'instant' || watch?.isStopped?.() ? 'instant' : 'usual'),
    cost: planCost({ house, order, materials: prep.materials, paints: prep.paints, jobs }),
    order,
    cuts,
    runs: orders.filter(({ lines, ledger }) => lines.length + ledger.lines.length + ledger.deliveries.length > 0).map(({ covering, ledger, runs, isBestAssignment, waysOut, difference, returns }) => ({ covering: covering.id, ledger, runs, isBestAssignment, waysOut, difference, returns })),
    readiness,
    left: findLeft(house, order, cuts, orders.map(({ ledger }) => ledger)),
    problems: findProblems(house, rooms, orders),
    warnings: findWarnings(house, coverings, rooms, orders),
  };
}

function calendarOf(house: House, jobs: readonly HouseJob[], effort: 'instant' | 'usual'): CalendarPlan | null {
  const { work } = house;
  if (work?.starts === undefined) return null;
  return planCalendar({ jobs, work, starts: work.starts, keptUsable: house.rooms.flatMap(({ id, keptUsable }) => (keptUsable ? [id] : [])), nameRoom: (room) => nameRoom(house, room), effort });
}

/** A house to be planned, with how much effort, and who watches. */
interface Asked {
  readonly house: House;
  readonly effort: Effort;
  readonly watch: Watch | undefined;
}

/** Of a covering that hangs nowhere what was ordered and has come; null of paint. */
function orderOf(covering: Covering, rooms: readonly RoomPlan[], { house, effort, watch }: Asked): CoveringOrder | null {
  if (isRollGoods(covering)) {
    const hangings = rooms.flatMap((room) => hangingOf(house, room, covering.id));
    return hangings.length > 0 ? orderCovering(house, covering, hangings, effort, watch) : orderOfNone(house, covering);
  }
  if (covering.kind !== 'mural') return null;
  const hangings = rooms.flatMap((room) => {
    const murals = room.bands.filter((band) => band.covering === covering.id).reduce((sum, { stretches }) => sum + stretches.length, 0);
    return murals > 0 ? [{ room: room.id, parts: [[]], murals }] : [];
  });
  return hangings.length > 0 ? orderMural(house, covering, hangings) : orderOfNone(house, covering);
}

const known = memoryOf<RoomPlan>(400);

/** A room planned once for the same facts, so that an edit plans only the rooms that it touches; remembered where the watch let it come to its end. */
function knownRoom(room: Room, coverings: ReadonlyMap<string, Covering>, asked: Asked): RoomPlan {
  const { house, effort, watch } = asked;
  const used = [...room.bands, ...(room.ceiling ? [room.ceiling] : [])].map(({ covering }) => coverings.get(covering));
  const facts = JSON.stringify([room, used, house.rules, house.lengths]);
  const before = (watch ? atLeast(effort) : [effort]).flatMap((tried) => known.recall(`${tried} ${facts}`) ?? [])[0];
  if (before) return before;
  const plan = planRoom(room, coverings, asked);
  return watch?.isStopped() ? plan : known.remember(`${effort} ${facts}`, plan);
}

function planRoom(room: Room, coverings: ReadonlyMap<string, Covering>, asked: Asked): RoomPlan {
  const goods = room.bands.flatMap((band) => {
    const covering = coverings.get(band.covering);
    return covering && (isRollGoods(covering) || covering.kind === 'mural') ? [{ band: hungBand(room, band), covering }] : [];
  });
  // Lining gives way to the seams of what hangs over it, so that is set out first.
  const above = goods.filter(({ covering }) => covering.kind !== 'lining').map(({ band, covering }) => planBand(room, band, covering, asked, []));
  const seen = above.flatMap((band) => (band.kind === 'strips' ? band.stretches : []));
  const bands = goods.map(({ band, covering }) => above.find(({ id }) => id === band.id) ?? planBand(room, band, covering, asked, seen));
  const outline = drawOutline(room);
  return { id: room.id, name: room.name, outline, bands, ceiling: planCeiling(room, outline, coverings, asked) };
}

function planCeiling(room: Room, outline: Outline, coverings: ReadonlyMap<string, Covering>, { house, effort, watch }: Asked): CeilingPlan | null {
  const { ceiling } = room;
  const covering = ceiling && coverings.get(ceiling.covering);
  if (!ceiling || !covering || !isRollGoods(covering) || covering.kind === 'border') return null;
  const layout = setOutCeiling(room, outline, ceiling, covering, house.rules);
  if (!layout) return null;
  const pieces = placedOverhead(room.id, layout.strips);
  return { ...layout, covering: covering.id, rollsAlone: cutPieces(covering, pieces, effort, watch).plan.rollCount };
}

function planBand(room: Room, band: HungBand, covering: RollGoods | Mural, asked: Asked, above: readonly StretchLayout[]): BandPlan {
  const stretches = findStretches(room, band);
  const { id } = band;
  const whole = setOutBand(room, band, stretches, covering, asked, above);
  if (covering.kind === 'mural') return { id, covering: covering.id, rollsAlone: stretches.length, ...whole };
  const pieces = piecesOf(whole).map((piece) => ({ room: room.id, band: id, piece }));
  return { id, covering: covering.id, rollsAlone: cutPieces(covering, pieces, asked.effort, asked.watch).plan.rollCount, ...whole };
}

function setOutBand(room: Room, band: HungBand, stretches: readonly Stretch[], covering: RollGoods | Mural, asked: Asked, above: readonly StretchLayout[]) {
  const { house } = asked;
  if (covering.kind === 'mural') return { kind: 'strips' as const, stretches: stretches.map((stretch) => ({ ...setOutMural(stretch, band, covering, house.rules), options: [] })) };
  if (covering.kind === 'border') {
    const borders = stretches.map((stretch) => setOutBorder(stretch, band, covering, house.rules));
    return { kind: 'lengths' as const, stretches: borders, clashes: borders.flatMap((border) => findClashes(border, band, covering, room)) };
  }
  if (covering.kind === 'wallcovering') return { kind: 'strips' as const, stretches: stretches.map((stretch) => planStretch(room, band, stretch, covering, asked)) };
  return covering.direction === 'across'
    ? { kind: 'lengths' as const, stretches: stretches.map((stretch) => setOutLiningAcross(stretch, band, covering, house.rules)), clashes: [] }
    : { kind: 'strips' as const, stretches: stretches.map((stretch) => ({ ...setOutLiningUp(stretch, band, covering, house.rules, above), options: [] })) };
}

/** Set out as the user chose, or else as the search finds best; at the quick effort from the first inside corner. */
function planStretch(room: Room, band: HungBand, stretch: Stretch, covering: Wallcovering & RollGoods, { house, effort, watch }: Asked): PlannedStretch {
  if (covering.panels === 'equal') return { ...setOutPanels(stretch, band, covering, house.rules), options: [] };
  const options = effort === 'instant' ? [] : bestLayouts(room, band, stretch, covering, house, watch);
  const own = chosenLayout(band);
  const isOwn = own !== undefined && stretch.walls.some(({ id }) => id === own.start.wall);
  return { ...setOutStrips(stretch, band, covering, house.rules, isOwn ? own : options[0]?.layout), options };
}

import { say } from '../../shared-core/words/index.ts';
import { type House, nameCovering } from '../../shared-core/house/index.ts';
import type { CheckedDelivery } from '../../shared-core/ordering/index.ts';
import { type HousePlan, sayUnits, toBePlaced } from '../../shared-core/plan/index.ts';
import { CLOSING_ERROR_WORTH_A_LOOK } from '../../shared-core/survey/index.ts';
import { type Place, PLACES } from './places.ts';

export interface OpenPoint {
  readonly words: string;
  readonly stops: boolean;
}

/** Something that somebody has to answer or to mend, and where that is done. */
export interface OpenQuestion extends OpenPoint {
  readonly place: Place;
  readonly room: string | null;
}

/** What is still open at each place, in a few words; null where nothing is. */
export function openPoints(house: House, plan: HousePlan | null): Readonly<Record<Place, OpenPoint | null>> {
  return {
    house: null,
    survey: surveyPoint(house, plan),
    prep: prepPoint(house),
    coverings: coveringsPoint(house),
    'set-out': setOutPoint(plan),
    order: orderPoint(plan),
    deliveries: deliveriesPoint(house, plan),
    calendar: calendarPoint(plan),
    paperwork: paperworkPoint(house, plan),
  };
}

/** Every question of the house that is still open: what stops the work first, then in the order of the work. */
export function openQuestions(house: House, plan: HousePlan): readonly OpenQuestion[] {
  const ask = (place: Place, room: string | null, words: string): OpenQuestion => ({ place, room, words, stops: false });
  const questions = [
    ...plan.problems.map(({ place, room, message }): OpenQuestion => ({ place, room, words: message, stops: true })),
    ...withoutWalls(house).map(({ id, name }) => ask('survey', id, say`${name} has no walls yet.`)),
    ...(house.rooms.length > 0 && house.coverings.length === 0 ? [ask('coverings', null, say`No covering is chosen yet.`)] : []),
    ...(house.coverings.length > 0 ? bareRooms(house).map(({ id, name }) => ask('coverings', id, say`Nothing hangs in ${name} yet.`)) : []),
    ...[...new Set(unpriced(plan).map(({ covering }) => covering))].map((covering) => ask('coverings', null, say`${nameCovering(house, covering)} has no price.`)),
    ...unknownRuns(plan).map(({ covering }) => ask('order', null, say`The run of ${nameCovering(house, covering)} is not known. Ask the supplier which runs there are.`)),
    ...plan.warnings.filter(({ isAdvice }) => !isAdvice).map(({ place, room, message }) => ask(place, room, message)),
  ];
  return questions.toSorted((one, other) => Number(other.stops) - Number(one.stops) || PLACES.indexOf(one.place) - PLACES.indexOf(other.place));
}

const withoutWalls = (house: House) => house.rooms.filter(({ walls }) => walls.length === 0);
const bareRooms = (house: House) => house.rooms.filter((room) => room.walls.length > 0 && room.bands.length === 0 && !room.ceiling);
const unpriced = (plan: HousePlan) => plan.order.filter(({ price }) => price === null);
/** Whose rolls are on their way, any one run, is answered when they come. */
const unknownRuns = (plan: HousePlan) => plan.order.filter(({ run, shortfall, onOrder, toBuy }) => run === null && shortfall === 0 && (onOrder === 0 || toBuy > 0));

function surveyPoint(house: House, plan: HousePlan | null): OpenPoint | null {
  if (house.rooms.length === 0) return look(say`no room yet`);
  const bare = withoutWalls(house).length;
  if (bare > 0) return look(bare === 1 ? say`${bare} room without walls` : say`${bare} rooms without walls`);
  const gaping = plan?.rooms.filter(({ outline }) => outline.isClosed && outline.closingError > CLOSING_ERROR_WORTH_A_LOOK).length ?? 0;
  return gaping > 0 ? look(gaping === 1 ? say`${gaping} room does not close` : say`${gaping} rooms do not close`) : null;
}

/** Rooms of which nobody has said what is on their walls. */
function prepPoint(house: House): OpenPoint | null {
  const unseen = house.rooms.filter(({ walls }) => walls.length > 0 && walls.every(({ surface }) => surface === undefined)).length;
  return unseen > 0 ? look(unseen === 1 ? say`${unseen} room not looked at` : say`${unseen} rooms not looked at`) : null;
}

function coveringsPoint(house: House): OpenPoint | null {
  if (house.coverings.length === 0) return look(say`none yet`);
  const bare = bareRooms(house).length;
  return bare > 0 ? look(bare === 1 ? say`${bare} room bare` : say`${bare} rooms bare`) : null;
}

function setOutPoint(plan: HousePlan | null): OpenPoint | null {
  const bands = plan?.rooms.flatMap((room) => room.bands) ?? [];
  const slivers = bands.flatMap((band) => (band.kind === 'strips' ? band.stretches : [])).reduce((sum, stretch) => sum + stretch.slivers.length, 0);
  return slivers > 0 ? look(slivers === 1 ? say`${slivers} sliver` : say`${slivers} slivers`) : null;
}

function orderPoint(plan: HousePlan | null): OpenPoint | null {
  if (!plan) return null;
  const unmet = plan.problems.length;
  if (unmet > 0) return { words: unmet === 1 ? say`${unmet} thing can't be met` : say`${unmet} things can't be met`, stops: true };
  const withoutPrice = unpriced(plan).length;
  if (withoutPrice > 0) return look(withoutPrice === 1 ? say`${withoutPrice} line without price` : say`${withoutPrice} lines without price`);
  const unknown = unknownRuns(plan).length;
  return unknown > 0 ? look(unknown === 1 ? say`${unknown} run not known` : say`${unknown} runs not known`) : null;
}

function deliveriesPoint(house: House, plan: HousePlan | null): OpenPoint | null {
  const ledgers = plan?.runs.map(({ ledger }) => ledger) ?? [];
  const undecided = ledgers.flatMap(({ deliveries }) => deliveries).filter(isUndecided).length;
  if (undecided > 0) return { words: undecided === 1 ? say`${undecided} package to decide` : say`${undecided} packages to decide`, stops: true };
  const toCome = ledgers.map(({ covering, lines }) => ({ covering, rolls: lines.reduce((sum, { outstanding }) => sum + outstanding, 0) })).filter(({ rolls }) => rolls > 0);
  const [first] = toCome;
  if (!first) return null;
  const all = toCome.reduce((sum, { rolls }) => sum + rolls, 0);
  const isOneKind = new Set(toCome.map(({ covering }) => sayUnits(house, covering, all))).size === 1;
  return look(isOneKind ? say`${sayUnits(house, first.covering, all)} to come` : say`${all} rolls and spools to come`);
}

/** Jobs that do not stand on the day that was chosen for them; before anybody says when the work starts there are no days. */
function calendarPoint(plan: HousePlan | null): OpenPoint | null {
  if (!plan || plan.jobs.length === 0) return null;
  if (plan.calendar === null) return look(say`no first day`);
  const moved = plan.calendar.bookings.filter((booking) => booking.moved !== null).length;
  return moved > 0 ? look(moved === 1 ? say`${moved} job not on its day` : say`${moved} jobs not on their days`) : null;
}

/** Orders that nobody has placed yet; then what the quote lacks. */
function paperworkPoint(house: House, plan: HousePlan | null): OpenPoint | null {
  if (!plan) return null;
  const drafts = toBePlaced(house, plan.order).length;
  if (drafts > 0) return look(drafts === 1 ? say`${drafts} order to send` : say`${drafts} orders to send`);
  const lacking = plan.cost.lines.length > 0 ? plan.cost.missing.length : 0;
  return lacking > 0 ? look(lacking === 1 ? say`quote lacks ${lacking} price` : say`quote lacks ${lacking} prices`) : null;
}

/** Whether a package waits for a word on what becomes of it: not as ordered, nothing decided, and not gone back. */
export function isUndecided({ verdict, sound, gone }: CheckedDelivery): boolean {
  return (verdict === 'wrong-pattern' || verdict === 'run-not-ordered') && sound > gone;
}

function look(words: string): OpenPoint {
  return { words, stops: false };
}

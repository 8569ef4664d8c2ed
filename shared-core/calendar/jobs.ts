import { type Covering, type House, nameCovering, ownRateOf, type Room } from '../house/index.ts';
import type { RoomReadiness } from '../ordering/index.ts';
import type { PaintNeed, Task } from '../prep/prep-plan.ts';
import type { BorderLayout, CeilingLayout, StretchLayout } from '../setting-out/index.ts';
import { findArrivals } from './arrivals.ts';
import { type JobTime, timeOfCoat, timeOfLengths, timeOfStrips, timeOverhead } from './hanging-time.ts';
import type { HouseJob, JobKind } from './house-job.ts';
import { DRYING_MINUTES, ratesOf, type WorkRates } from './work-rates.ts';
import { say, sayList } from '../words/index.ts';

/** A band set out: of it the work takes its pieces alone. */
export type BandToHang = { readonly id: string; readonly covering: string } & (
  | { readonly kind: 'strips'; readonly stretches: readonly Pick<StretchLayout, 'strips'>[] }
  | { readonly kind: 'lengths'; readonly stretches: readonly Pick<BorderLayout, 'lengths'>[] }
);

/** What hangs in a room, as it is set out. */
export interface RoomToHang {
  readonly id: string;
  readonly bands: readonly BandToHang[];
  readonly ceiling: (Pick<CeilingLayout, 'strips'> & { readonly covering: string }) | null;
}

export interface WorkOfHouse {
  readonly house: House;
  readonly tasks: readonly Task[];
  readonly rooms: readonly RoomToHang[];
  readonly paints: readonly PaintNeed[];
  readonly readiness: readonly RoomReadiness[];
}

/** A job before it is known what it comes after. */
type Draft = Omit<HouseJob, 'after' | 'chosen' | 'isOthers' | 'room'>;

/** What is done at one time of a room's work: rows of jobs, each row one after the other. */
type Stage = readonly (readonly Draft[])[];

/**
 * Everything that is to be done in a house: its preparation, painting, lining, hanging and clearing up, room by room.
 *
 * Shapes: minutes of each person, whole. In a room follow one another: preparation, lining, paint overhead, on walls and
 * on woodwork coat by coat, paper overhead, paper and murals, borders, clearing up. Lining dries before what comes next,
 * each coat does, and paper does under a border. What the user said of a job stands in place of our figures; what
 * somebody else does takes no minutes of the crew. What hangs is not hung before its order comes. An id is its room's and
 * its own with colons between them, which no id of a house has in it.
 * Source of order, minutes and drying: common practice, no source; of preparation, its tasks' own.
 * Example: a ceiling of 12 m² painted twice is two jobs of 60 min, each with 240 min in which it dries.
 */
export function jobsOf({ house, tasks, rooms, paints, readiness }: WorkOfHouse): readonly HouseJob[] {
  const arrivals = findArrivals(house, readiness);
  const choices = new Map(house.tasks.map((choice) => [choice.task, choice]));
  const rates = ratesOf(house);
  const preparing = Map.groupBy(tasks, ({ room }) => room);
  const jobs = house.rooms.flatMap((room) => {
    const own = preparing.get(room.id) ?? [];
    const hung = rooms.find(({ id }) => id === room.id);
    const followed = new Set(own.flatMap(({ after }) => after));
    const last = own.filter(({ id }) => !followed.has(id)).map(({ id }) => id);
    return [...own.map((task) => jobOfTask(house, task)), ...inOrder(room.id, last, stagesOf({ house, rates, room, arrival: (covering) => arrivals(room.id, covering) }, hung, paints), rates)];
  });
  const isThere = new Set(house.rooms.map(({ id }) => id));
  return [...tasks.filter(({ room }) => !isThere.has(room)).map((task) => jobOfTask(house, task)), ...jobs].map((job) => asChosen(job, choices.get(job.id)));
}

function jobOfTask(house: House, { id, room, rule, words, minutes, people, waitMinutes, after, source }: Task): HouseJob {
  const working = ownRateOf(house, rule) === undefined ? { text: say`By the rule of the task: ${minutes} min.`, rule: source } : { text: say`By the house’s own figure for it: ${minutes} min.` };
  return { id, room, kind: 'preparation', words, minutes, people, waitMinutes, after, earliest: null, chosen: null, isOthers: false, working: [working] };
}

function asChosen(job: HouseJob, choice: House['tasks'][number] | undefined): HouseJob {
  if (choice === undefined) return job;
  const chosen = choice.day ?? null;
  if (choice.isOthers) return { ...job, chosen, isOthers: true, minutes: 0, people: 1, working: [{ text: say`Somebody else does it: it takes no time of the crew.` }] };
  if (choice.minutes === undefined) return { ...job, chosen };
  return { ...job, chosen, minutes: choice.minutes, working: [...job.working, { text: say`Reckoned with ${choice.minutes} min instead.`, rule: say`as typed` }] };
}

/** Each row begins after all rows of the stage before it, the first after the room's preparation. */
function inOrder(room: string, prepared: readonly string[], stages: readonly Stage[], rates: WorkRates): readonly HouseJob[] {
  const jobs: HouseJob[] = [];
  let before = prepared;
  for (const stage of stages.filter((rows) => rows.some((row) => row.length > 0))) {
    for (const row of stage) row.forEach((draft, index) => jobs.push({ ...draft, room, after: index === 0 ? before : [row[index - 1]!.id], chosen: null, isOthers: false }));
    before = stage.flatMap((row) => row.slice(-1).map(({ id }) => id));
  }
  if (jobs.length === 0 && prepared.length === 0) return [];
  const { minutes, source } = rates.clearingUp;
  const clearing: Draft = { id: `${room}:clear-up`, kind: 'clearing-up', words: say`Clear up`, minutes, people: 1, waitMinutes: 0, earliest: null, working: [{ text: say`Once for each room: ${minutes} min.`, rule: source }] };
  return [...jobs, { ...clearing, room, after: before, chosen: null, isOthers: false }];
}

/** A room that is worked in: how long things take in its house, and from which day on a covering is there. */
interface Worked {
  readonly house: House;
  readonly rates: WorkRates;
  readonly room: Room;
  readonly arrival: (covering: string) => string | null;
}

function stagesOf(worked: Worked, hung: RoomToHang | undefined, paints: readonly PaintNeed[]): readonly Stage[] {
  const { house } = worked;
  const kindOf = new Map(house.coverings.map(({ id, kind }) => [id, kind]));
  const bandsOf = (...kinds: readonly Covering['kind'][]): Stage => (hung?.bands ?? []).filter(({ covering }) => kinds.some((kind) => kind === kindOf.get(covering))).map((band) => [jobOfBand(worked, band)]);
  const overhead = (isLining: boolean): Stage => (hung?.ceiling && (kindOf.get(hung.ceiling.covering) === 'lining') === isLining ? [[jobOfCeiling(worked, hung.ceiling)]] : []);
  const painted = (surface: PaintedSurface): Stage => paints.map((paint) => coatsOf(worked, paint, surface));
  return [
    [...overhead(true), ...bandsOf('lining')],
    painted('ceiling'),
    painted('wall'),
    painted('woodwork'),
    overhead(false),
    bandsOf('wallcovering', 'mural'),
    bandsOf('border'),
  ];
}

type PaintedSurface = PaintNeed['surfaces'][number]['surface']['kind'];

const COATS = {
  ceiling: { rate: 'ceilingPerSquareMetre', waitMinutes: DRYING_MINUTES.ceiling },
  wall: { rate: 'wallsPerSquareMetre', waitMinutes: DRYING_MINUTES.walls },
  woodwork: { rate: 'woodworkPerSquareMetre', waitMinutes: DRYING_MINUTES.woodwork },
} as const;

/** One job for each coat of one paint on one kind of surface. */
function coatsOf({ house, rates, room }: Worked, { covering, surfaces }: PaintNeed, kind: PaintedSurface): readonly Draft[] {
  const own = surfaces.filter((one) => one.room === room.id && one.surface.kind === kind && one.area > 0);
  const coats = Math.max(0, ...own.map((one) => one.coats));
  const name = nameCovering(house, covering);
  const { rate, waitMinutes } = COATS[kind];
  return Array.from({ length: coats }, (_, index): Draft => {
    const painted = own.filter((one) => one.coats > index);
    const walls = painted.flatMap(({ surface }) => (surface.kind === 'wall' ? [surface.wall] : []));
    const words = kind === 'ceiling' ? say`Paint the ceiling with ${name}` : kind === 'woodwork' ? say`Paint the woodwork with ${name}` : say`Paint ${sayWalls(room, walls)} with ${name}`;
    return {
      id: `${room.id}:paint:${kind}:${covering}:${index + 1}`,
      kind: 'painting',
      words: coats === 1 ? words : say`${words}, coat ${index + 1} of ${coats}`,
      ...timeOfCoat(painted.map(({ area }) => area), rates[rate]),
      waitMinutes,
      earliest: null,
    };
  });
}

function jobOfCeiling({ house, rates, room, arrival }: Worked, ceiling: NonNullable<RoomToHang['ceiling']>): Draft {
  const covering = house.coverings.find(({ id }) => id === ceiling.covering);
  const name = nameCovering(house, ceiling.covering);
  const isLining = covering?.kind === 'lining';
  return {
    id: `${room.id}:${isLining ? 'line' : 'hang'}-ceiling`,
    kind: isLining ? 'lining' : 'hanging',
    words: isLining ? say`Line the ceiling with ${name}` : say`Hang ${name} on the ceiling`,
    ...timeOverhead(ceiling, { strip: rates.ceilingStrip, lines: rates.strikingLines }, bookingOf(covering)),
    waitMinutes: isLining ? DRYING_MINUTES.lining : 0,
    earliest: arrival(ceiling.covering),
  };
}

function jobOfBand({ house, rates, room, arrival }: Worked, band: BandToHang): Draft {
  const covering = house.coverings.find(({ id }) => id === band.covering);
  const kind: JobKind = covering?.kind === 'lining' ? 'lining' : 'hanging';
  const name = nameCovering(house, band.covering);
  const walls = room.bands.find(({ id }) => id === band.id)?.walls ?? [];
  const isUnderBorder = room.bands.some((over) => house.coverings.some(({ id, kind: ofOver }) => id === over.covering && ofOver === 'border') && over.walls.some((wall) => walls.includes(wall)));
  return {
    id: `${room.id}:${kind === 'lining' ? 'line' : 'hang'}:${band.id}`,
    kind,
    words: kind === 'lining' ? say`Line ${sayWalls(room, walls)} with ${name}` : covering?.kind === 'border' ? say`Hang the border ${name} on ${sayWalls(room, walls)}` : say`Hang ${name} on ${sayWalls(room, walls)}`,
    ...timeOfBand(house, rates, band, covering),
    waitMinutes: kind === 'lining' ? DRYING_MINUTES.lining : covering?.kind !== 'border' && isUnderBorder ? DRYING_MINUTES.paperUnderBorder : 0,
    earliest: arrival(band.covering),
  };
}

function timeOfBand({ rules }: House, rates: WorkRates, band: BandToHang, covering: Covering | undefined): JobTime {
  const isLining = covering?.kind === 'lining';
  const lines = rates.strikingLines;
  if (band.kind === 'lengths') return timeOfLengths(band.stretches, { metre: isLining ? rates.liningPerMetre : rates.borderPerMetre, lines }, bookingOf(covering));
  const [whole, short] = isLining ? [rates.liningStrip, rates.shortLining] : [covering?.kind === 'mural' ? rates.panel : rates.strip, rates.shortPiece];
  return timeOfStrips(band.stretches, rules, { whole, short, lines }, bookingOf(covering));
}

function bookingOf(covering: Covering | undefined): number {
  return covering && 'bookingMinutes' in covering ? (covering.bookingMinutes ?? 0) : 0;
}

function sayWalls(room: Room, walls: readonly string[]): string {
  if (walls.length > 1 && room.walls.every(({ id }) => walls.includes(id))) return say`all walls`;
  return walls.length === 1 ? say`wall ${walls[0]!}` : say`walls ${sayList(walls)}`;
}

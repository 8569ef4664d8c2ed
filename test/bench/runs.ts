import { planCuts, type PieceType } from '../../shared-core/cutting/index.ts';
import { type AssignmentProblem, assignUnits } from '../../shared-core/ordering/assign-units.ts';
import { type Draw, dwelling, hotel } from './cutting/houses.ts';
import { type Hanging, piecesOf } from './cutting/rooms.ts';
import { seededNumbers } from './houses.ts';

/*
 * Measures how rooms are assigned to runs: houses of 40 rooms on 6 runs and hotels of 1,000 on 10, offers by how much they
 * lie above or below what all rooms take, some of it in hand. First where each room is cut on its own, then where all of
 * a run are cut together; there with and without the time of the cuttings, and how many are asked for.
 *
 *   npm run bench:runs -- [additive|pooled]
 *
 * 'hung' and 'beyond' are the means of rooms hung, of all, and of rolls bought beyond what the whole would take.
 */
const SEEDS = 10;
const OFFERS = [-20, -10, -5, 0, 2, 5, 10];

type Between = (least: number, most: number) => number;

const between = (seed: number): Between => {
  const next = seededNumbers(seed);
  return (least, most) => least + Math.floor(next() * (most - least + 1));
};

/** So many rolls over the runs, none under a third of an even share, a part in hand of some. */
function stockOf(rolls: number, runs: number, pack: number, draw: Between): AssignmentProblem['runs'] {
  const weights = Array.from({ length: runs }, () => draw(10, 30));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  let left = rolls;
  return weights.map((weight, run) => {
    const all = run === runs - 1 ? left : Math.floor((rolls * weight) / whole);
    left -= all;
    const inHand = draw(0, 2) === 0 ? 0 : Math.floor((all * draw(5, 60)) / 100);
    return { inHand, offered: (all - inHand) - ((all - inHand) % pack) };
  });
}

interface Case {
  readonly problem: AssignmentProblem;
  readonly need: number;
}

/** Rooms that are each cut on their own take 2 to 14 rolls: in a house any, in a hotel one of a dozen sorts. */
function additiveCase(rooms: number, runs: number, pack: number, percent: number, seed: number): Case {
  const draw = between(seed * 7_919 + rooms + percent);
  const sorts = Array.from({ length: draw(12, 15) }, () => draw(2, 14));
  const needs = Array.from({ length: rooms }, () => (rooms > 100 ? sorts[draw(0, sorts.length - 1)]! : draw(2, 14)));
  const need = needs.reduce((sum, rolls) => sum + rolls, 0);
  return {
    need,
    problem: {
      units: needs.map((_, room) => ({ rooms: [room] })),
      runs: stockOf(Math.floor((need * (100 + percent)) / 100), runs, pack, draw),
      count: (units) => units.reduce((sum, unit) => sum + needs[unit]!, 0),
      bounds: [{ values: needs, worth: 1 }],
      isAdditive: true,
      bought: (rolls) => rolls + ((pack - (rolls % pack)) % pack),
    },
  };
}

const ROLL_LENGTH = 10_050;
const HANGINGS: readonly Hanging[] = [
  { repeat: 0, isHalfDrop: false, position: 0, trim: 50 },
  { repeat: 640, isHalfDrop: false, position: 0, trim: 50 },
  { repeat: 530, isHalfDrop: true, position: 100, trim: 50 },
];

/** Rooms that are cut together from rolls of 10.05 m, their heights perhaps as a tape showed; the bound is that of the whole's cutting. */
function pooledHouse(rooms: number, isMeasured: boolean, seed: number): { readonly need: number; readonly units: AssignmentProblem['units']; readonly bounds: AssignmentProblem['bounds']; readonly count: AssignmentProblem['count'] } {
  const draw = between(seed * 104_729 + rooms);
  const inSteps: Draw = (least, most, step) => least + step * draw(0, Math.floor((most - least) / step));
  const drawn = rooms > 100 ? hotel(rooms, inSteps) : dwelling(rooms, isMeasured, inSteps);
  const hanging = HANGINGS[seed % HANGINGS.length]!;
  const pieces = drawn.flatMap((room) => Array.from({ length: room.times }, () => piecesOf([{ ...room, times: 1 }], hanging)));
  const problemOf = (types: readonly PieceType[]) => ({ rollLength: ROLL_LENGTH, repeat: hanging.repeat, rollStart: 'anywhere' as const, pieces: types });
  const nameOf = ({ length, phase }: PieceType) => `${length} ${phase}`;
  const together = (units: readonly number[]) => {
    const types = new Map<string, PieceType>();
    for (const unit of units) for (const piece of pieces[unit]!) types.set(nameOf(piece), { ...piece, count: (types.get(nameOf(piece))?.count ?? 0) + piece.count });
    return [...types.values()];
  };
  const all = together(pieces.map((_, unit) => unit));
  const whole = planCuts(problemOf(all));
  const dual = new Map(all.map((piece, type) => [nameOf(piece), whole.certificate.duals[type]!]));
  return {
    need: whole.rollCount,
    units: pieces.map((_, room) => ({ rooms: [room] })),
    bounds: [{ values: pieces.map((list) => list.reduce((sum, piece) => sum + dual.get(nameOf(piece))! * piece.count, 0)), worth: whole.certificate.mostPerRoll }],
    count: (units) => planCuts(problemOf(together(units))).rollCount,
  };
}

interface Measured {
  readonly milliseconds: number;
  readonly cutting: number;
  readonly cuttings: number;
  readonly isProven: boolean;
  readonly hung: number;
  readonly beyond: number;
}

function measure({ problem, need }: Case): Measured {
  let [cutting, cuttings] = [0, 0];
  const count = (units: readonly number[]) => {
    const began = performance.now();
    const rolls = problem.count(units);
    cutting += performance.now() - began;
    cuttings += 1;
    return rolls;
  };
  const began = performance.now();
  const { score, isProven } = assignUnits({ ...problem, count });
  const milliseconds = performance.now() - began;
  const inHand = problem.runs.reduce((sum, run) => sum + run.inHand, 0);
  return { milliseconds, cutting, cuttings, isProven, hung: score.hung / problem.units.length, beyond: score.bought - Math.max(0, need - inHand) };
}

const COLUMNS = ['proved', 'median ms', 'worst ms', 'ratio', 'uncut ms', 'cuttings', 'most', 'hung', 'beyond'];
let unit = 0;

function report(what: string, measured: readonly Measured[]): void {
  const mean = (of: (one: Measured) => number) => measured.reduce((sum, one) => sum + of(one), 0) / measured.length;
  const took = measured.map(({ milliseconds }) => milliseconds).toSorted((one, other) => one - other);
  const median = took[Math.floor(took.length / 2)]!;
  unit ||= median;
  const cells = [
    `${measured.filter(({ isProven }) => isProven).length} of ${measured.length}`,
    median.toFixed(1),
    took.at(-1)!.toFixed(1),
    (median / unit).toFixed(1),
    mean(({ milliseconds, cutting }) => milliseconds - cutting).toFixed(1),
    mean(({ cuttings }) => cuttings).toFixed(1),
    String(Math.max(...measured.map(({ cuttings }) => cuttings))),
    `${(100 * mean(({ hung }) => hung)).toFixed(1)} %`,
    mean(({ beyond }) => beyond).toFixed(1),
  ];
  console.log(`${what.padEnd(46)} ${cells.map((cell) => cell.padStart(9)).join(' ')}`);
}

const only = process.argv[2];
console.log(`${''.padEnd(46)} ${COLUMNS.map((column) => column.padStart(9)).join(' ')}`);
const seeds = Array.from({ length: SEEDS }, (_, index) => index + 1);
if (only !== 'pooled') {
  for (const seed of seeds) measure(additiveCase(40, 6, 1, 5, 1_000 + seed));
  for (const [rooms, runs] of [[40, 6], [1_000, 10]] as const) {
    for (const pack of [1, 2, 6]) {
      for (const percent of OFFERS) report(`apart, ${rooms} rooms, ${runs} runs, packs of ${pack}, ${percent} %`, seeds.map((seed) => measure(additiveCase(rooms, runs, pack, percent, seed))));
    }
  }
}
if (only !== 'additive') {
  for (const [what, rooms, runs, isMeasured, houses] of [['40 rooms', 40, 6, false, 6], ['40 measured', 40, 6, true, 3], ['1,000 rooms', 1_000, 10, false, 3]] as const) {
    const some = seeds.slice(0, houses).map((seed) => ({ seed, ...pooledHouse(rooms, isMeasured, seed) }));
    for (const percent of OFFERS) {
      const cases = some.map(({ seed, need, ...house }) => {
        const stock = stockOf(Math.floor((need * (100 + percent)) / 100), runs, 1, between(seed * 31 + percent));
        return { need, problem: { ...house, runs: stock, isAdditive: false, bought: (rolls: number) => rolls } };
      });
      report(`together, ${what}, ${runs} runs, ${percent} %`, cases.map(measure));
    }
  }
}

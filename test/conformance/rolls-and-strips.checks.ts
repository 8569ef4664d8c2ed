import { floorDivide, millimetres, parseLength, rectangleArea, UNITS_PER_FOOT, UNITS_PER_MILLIMETRE } from '../../shared-core/units/index.ts';
import type { Check } from './figure.ts';
import { NO_ALLOWANCES, planExample } from './plan-example.ts';
import * as figures from './rolls-and-strips.ts';

const UNITS_PER_TENTH = UNITS_PER_MILLIMETRE / 10;

function lengthIn(unit: number, typed: string): number {
  const read = parseLength(typed);
  return read.ok ? read.value / unit : Number.NaN;
}

function thousandthsOfSquareMetre(roll: { readonly width: string; readonly rollLength: string }): number {
  const area = rectangleArea(millimetres(lengthIn(UNITS_PER_MILLIMETRE, roll.width)), millimetres(lengthIn(UNITS_PER_MILLIMETRE, roll.rollLength)));
  return floorDivide(area, rectangleArea(millimetres(1000), millimetres(1)));
}

const round = (perimeter: number, unit: string) => Array<string>(4).fill(`${perimeter / 4} ${unit}`);

const en233: readonly Check[] = [
  { id: 'EN 233 / area of a marked roll, thousandths of a square metre', source: figures.EN_233, expected: figures.EN_233_AREA.marked, ours: () => thousandthsOfSquareMetre(figures.MARKED_ROLL) },
  {
    id: 'EN 233 / the shortest roll is within the tolerance of the area',
    source: figures.EN_233,
    expected: true,
    ours: () => thousandthsOfSquareMetre(figures.SHORTEST_ROLL) * 100 >= figures.EN_233_AREA.marked * (100 - figures.EN_233_AREA.tolerancePercent),
  },
  ...figures.TOLERANCE_COUNTS.map(
    ([id, roll, strips, rolls]): Check => ({
      id: `EN 233 / room of 12 × 2.50 m, ${id} roll`,
      source: figures.EN_233,
      expected: { strips, rolls },
      ours: () => {
        const counted = planExample({ ...figures.TOLERANCE_ROOM, covering: roll });
        return { strips: counted.strips, rolls: counted.rolls };
      },
    }),
  ),
];

const decoratorsChart = figures.DECORATORS_CHART.rows.flatMap(({ height, rolls }) =>
  figures.DECORATORS_CHART.perimeters.map(
    (perimeter, column): Check => ({
      id: `German chart / ${height} m high, ${perimeter} m round`,
      source: figures.DECORATORS_CHART.source,
      expected: rolls[column],
      ours: () => planExample({ walls: round(perimeter, 'm'), height: `${height} m`, covering: figures.MARKED_ROLL, rules: NO_ALLOWANCES }).rolls,
    }),
  ),
);

const armstrong = figures.ARMSTRONG_CHART.perimeters.flatMap((perimeter, column): readonly Check[] => {
  const { source, rolls, heightInches, squareFeetByPiece } = figures.ARMSTRONG_CHART;
  return [
    {
      id: `Armstrong / by area, ${perimeter} in round`,
      source,
      expected: rolls[column],
      ours: () => Math.ceil((perimeter * heightInches) / 144 / squareFeetByPiece),
    },
    {
      id: `Armstrong / plan, ${perimeter} in round`,
      source,
      expected: rolls[column],
      ours: () => planExample({ walls: round(perimeter, 'in'), height: `${heightInches} in`, covering: { width: '21 in', rollLength: '8 yd' }, rules: NO_ALLOWANCES }).rolls,
    },
  ];
});

const { STUDENTS_ROOM } = figures;
const studentsRoom: readonly Check[] = [
  {
    id: "Student's Reference Work / feet of wall",
    source: STUDENTS_ROOM.source,
    expected: STUDENTS_ROOM.feetOfWall,
    ours: () => STUDENTS_ROOM.example.walls.reduce((sum, wall) => sum + lengthIn(UNITS_PER_FOOT, wall), 0),
  },
  { id: "Student's Reference Work / strips", source: STUDENTS_ROOM.source, expected: STUDENTS_ROOM.strips, ours: () => planExample(STUDENTS_ROOM.example).strips },
  { id: "Student's Reference Work / strips from a double roll", source: STUDENTS_ROOM.source, expected: STUDENTS_ROOM.stripsByDoubleRoll, ours: () => planExample(STUDENTS_ROOM.example).mostFromARoll },
  { id: "Student's Reference Work / single rolls", source: STUDENTS_ROOM.source, expected: STUDENTS_ROOM.singleRolls, ours: () => planExample(STUDENTS_ROOM.example).rolls * STUDENTS_ROOM.example.covering.singlesPerRoll },
  { id: "Student's Reference Work / price in cents", source: STUDENTS_ROOM.source, expected: STUDENTS_ROOM.cents, ours: () => planExample(STUDENTS_ROOM.example).price },
];

/** 120 strips round, so that the last roll's rest does not count. */
const MANY_STRIPS_INCHES = 30 * 20.5;
const usableYield = figures.USABLE_YIELD.rows.map(
  ({ repeat, squareFeet }): Check => ({
    id: `usable yield / repeat ${repeat} in, walls of 8 ft`,
    source: figures.USABLE_YIELD.source,
    expected: squareFeet,
    ours: () => {
      const { rolls } = planExample({
        walls: Array<string>(4).fill(`${MANY_STRIPS_INCHES} in`),
        height: '8 ft',
        covering: { width: '20.5 in', rollLength: '33 ft', repeat: `${repeat} in` },
        rules: { insideWrap: '0 in' },
      });
      const squareInches = 4 * MANY_STRIPS_INCHES * 96;
      return floorDivide(squareInches, 144 * 2 * rolls);
    },
  }),
);

const workedRooms = figures.WORKED_ROOMS.map(
  ({ id, source, example, expected }): Check => ({
    id: `worked by hand / ${id}`,
    source,
    expected,
    ours: () => {
      const counted = planExample(example);
      return Object.fromEntries(Object.keys(expected).map((key) => [key, counted[key as keyof typeof counted]]));
    },
  }),
);

const gost: readonly Check[] = [
  ...figures.GOST_SIZES.map(([typed, tenths]): Check => ({ id: `GOST 6810 / ${typed} is exact`, source: figures.GOST, expected: tenths, ours: () => lengthIn(UNITS_PER_TENTH, typed) })),
  {
    id: 'GOST 6810 / four walls of 4.90 m take a border each',
    source: figures.GOST,
    // 4.90 m and 2 in make 4.9508 m, within 5.00 m; twice that is not.
    expected: { strips: 4, rolls: 4 },
    ours: () => {
      const { strips, rolls } = planExample({ walls: round(19.6, 'm'), height: '2.5 m', covering: { kind: 'border', width: '10 cm', rollLength: '5.00 m' }, band: { from: '2.4 m' } });
      return { strips, rolls };
    },
  },
];

const borderBySpool: readonly Check[] = [
  { id: 'border by the spool / 54 ft at 15 ft', source: figures.BORDER_BY_THE_SPOOL.source, expected: figures.BORDER_BY_THE_SPOOL.spools, ours: () => planExample(figures.BORDER_BY_THE_SPOOL.example).rolls },
  {
    id: 'border by the spool / 54 ft at 15 ft, the usual allowances',
    source: figures.BORDER_BY_THE_SPOOL.source,
    expected: figures.BORDER_BY_THE_SPOOL.spools,
    ours: () => planExample({ ...figures.BORDER_BY_THE_SPOOL.example, rules: {} }).rolls,
  },
];

export const ROLLS_AND_STRIPS: readonly Check[] = [...en233, ...decoratorsChart, ...armstrong, ...studentsRoom, ...usableYield, ...workedRooms, ...gost, ...borderBySpool];

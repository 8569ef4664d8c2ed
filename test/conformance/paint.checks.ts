import { planPaint, type PaintNeed } from '../../shared-core/prep/index.ts';
import { NANOLITRES_PER_IMPERIAL_GALLON, NANOLITRES_PER_US_GALLON, showSpreadingRate, spreadingOfSolids } from '../../shared-core/units/index.ts';
import { paint, paintedHouse, paintedOf } from '../prep/paint-houses.ts';
import type { Check, Source } from './figure.ts';

const SPREADING_TABLE: Source = { name: 'A table of theoretical spreading rates; ISO 23811 for the quantity', how: 'read' };
const SPREADING_RULE: Source = { name: 'ft² to a US gallon = 1604 × solids ÷ mils, beside that table', how: 'read' };
const GALLONS: Source = { name: 'US gallon 3.785411784 L = 231 in³, imperial gallon 4.54609 L', how: 'read' };
const ALMANAC: Source = { name: 'Painting guide of almanac.com, worked room', how: 'read' };

const FILMS = [25, 50, 75, 100, 125];
/** In tenths of a square metre a litre, at each film in micrometres. */
const TABLE: readonly (readonly [solids: string, rates: readonly number[]])[] = [
  ['100', [400, 200, 133, 100, 80]],
  ['65', [260, 130, 87, 65, 52]],
  ['50', [200, 100, 67, 50, 40]],
];

function rateOf(solids: string, film: number) {
  const rate = spreadingOfSolids(solids, film);
  if (!rate.ok) throw new Error(rate.faults[0]?.message);
  return rate.value;
}

/** As a table prints it: to a tenth, half up. */
const tenths = (solids: string, film: number) => {
  const { squareMillimetres, millilitres } = rateOf(solids, film);
  return Math.round(squareMillimetres / (millilitres * 100));
};

const spreadingTable = TABLE.flatMap(([solids, rates]) =>
  rates.map((expected, column): Check => ({ id: `spreading rate / ${solids} % solids at ${FILMS[column]} µm, tenths of m²/L`, source: SPREADING_TABLE, expected, ours: () => tenths(solids, FILMS[column]!) })),
);

// Five mils are 127 µm, a whole number; 1604 is itself rounded from 1604.17.
const byMils = [100, 65, 50].map(
  (solids): Check => ({
    id: `spreading rate / ${solids} % solids at 5 mils, ft² to a US gallon`,
    source: SPREADING_RULE,
    expected: `${Math.round((1604 * solids) / 100 / 5)} sq ft/US gal`,
    ours: () => showSpreadingRate(rateOf(String(solids), 127), 'imperial'),
  }),
);

/** 25.4³ mm³, in nanolitres. */
const NANOLITRES_PER_CUBIC_INCH = 16_387_064n;

const gallons: readonly Check[] = [
  { id: 'gallons / US, nanolitres', source: GALLONS, expected: 3_785_411_784n, ours: () => NANOLITRES_PER_US_GALLON },
  { id: 'gallons / US, cubic inches', source: GALLONS, expected: 231n * NANOLITRES_PER_CUBIC_INCH, ours: () => NANOLITRES_PER_US_GALLON },
  { id: 'gallons / imperial, nanolitres', source: GALLONS, expected: 4_546_090_000n, ours: () => NANOLITRES_PER_IMPERIAL_GALLON },
];

/** 10 by 15 ft, 8 ft high; two doors of 3 by 7 ft and two windows of 3 by 5 ft. NRM2 takes all of them off. */
const almanacHouse = () => {
  const door = { id: 'door', kind: 'door', from: '1 ft', width: '3 ft', height: '7 ft' };
  const window = { id: 'window', kind: 'window', from: '1 ft', width: '3 ft', sill: '2 ft', height: '5 ft' };
  const walls = ['10 ft', '15 ft', '10 ft', '15 ft'].map((length, index) => ({ id: 'ABCD'[index], length, height: '8 ft', openings: [index % 2 === 0 ? door : window] }));
  return paintedHouse([{ walls }], { rules: { openings: 'nrm2' } }, [paint({ spreadingRate: '400 sq ft/US gal', soldIn: [{ litres: 3.785, price: '40.00' }] })]);
};
const almanacNeed = (): PaintNeed | undefined => planPaint(almanacHouse())[0];
const SQUARE_METRES_PER_SQUARE_FOOT = 0.09290304;

const almanac: readonly Check[] = [
  { id: 'almanac room / sq ft painted', source: ALMANAC, expected: 328, ours: () => Math.round(paintedOf(almanacHouse()) / SQUARE_METRES_PER_SQUARE_FOOT) },
  { id: 'almanac room / its exact square units', source: ALMANAC, expected: 328 * 144 * (8128 * 8128), ours: () => almanacNeed()?.surfaces.reduce((sum, { area }) => sum + area, 0) },
  { id: 'almanac room / US gallons at 400', source: ALMANAC, expected: [{ litres: 3.785, count: 1 }], ours: () => almanacNeed()?.tins },
];

export const PAINT: readonly Check[] = [...spreadingTable, ...byMils, ...gallons, ...almanac];

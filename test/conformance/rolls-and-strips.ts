import type { Source } from './figure.ts';
import { type Counted, type Example, NO_ALLOWANCES } from './plan-example.ts';

/** Figures and facts alone, as they stand in the sources; nothing here is computed by the program. */

export const EN_233: Source = { name: 'EN 233, finished wallpapers, in an extract', how: 'read' };
export const MARKED_ROLL = { width: '530 mm', rollLength: '10.05 m' };
/** 1.5 % less in width and in length. */
export const SHORTEST_ROLL = { width: '522.05 mm', rollLength: '9899.25 mm' };
/** In thousandths of a square metre. */
export const EN_233_AREA = { marked: 5326, tolerancePercent: 3 };
/** A room of 12 m round and 2.50 m high, by hand: 23 strips of either width; four to a marked roll (10.00 m), three to the shortest. */
export const TOLERANCE_ROOM = { walls: Array<string>(4).fill('3 m'), height: '2.5 m', rules: NO_ALLOWANCES };
export const TOLERANCE_COUNTS: readonly (readonly [id: string, roll: typeof MARKED_ROLL, strips: number, rolls: number])[] = [
  ['marked', MARKED_ROLL, 23, 6],
  ['shortest', SHORTEST_ROLL, 23, 8],
];

export const DECORATORS_CHART = {
  source: { name: "a German decorator's printed chart for 0.53 × 10.05 m, openings counted as wall, franz-woll.de", how: 'read' } satisfies Source,
  perimeters: [6, 10, 12, 15, 18, 20, 24],
  /** The height at the upper end of the band, in metres, and the rolls for each perimeter. */
  rows: [
    { height: 2.35, rolls: [3, 5, 6, 8, 9, 10, 12] },
    { height: 3.05, rolls: [4, 7, 8, 10, 12, 14, 16] },
    { height: 4, rolls: [5, 9, 11, 14, 17, 19, 23] },
  ],
} as const;

export const ARMSTRONG_CHART = {
  source: { name: 'G. D. Armstrong, Cyclopedia of Painting, 1908, p. 290: pieces of 21 in × 8 yd, height over 8 to 8½ ft', how: 'read' } satisfies Source,
  /** In inches: 24 ft to 50 ft 8 in, in steps of 2 ft 8 in. */
  perimeters: [288, 320, 352, 384, 416, 448, 480, 512, 544, 576, 608],
  heightInches: 102,
  rolls: [5, 6, 6, 7, 7, 8, 8, 9, 9, 10, 10],
  /** The area of wall that one piece is reckoned to cover: fits 92 of the chart's 99 cells. */
  squareFeetByPiece: 43.1,
} as const;

export const STUDENTS_ROOM = {
  source: { name: "The New Student's Reference Work, vol. 5, p. 2186, 1914: a room of 16 × 15 × 9 ft less two doors of 3½ ft and three windows of 3 ft", how: 'read' } satisfies Source,
  /** The wall that is left when doors and windows are taken off over their whole height, in feet. */
  feetOfWall: 46,
  strips: 31,
  stripsByDoubleRoll: 5,
  singleRolls: 13,
  cents: 585,
  example: {
    walls: Array<string>(4).fill(`11' 6"`),
    height: '9 ft',
    covering: { width: '1.5 ft', rollLength: '48 ft', singlesPerRoll: 2, soldIn: [{ rolls: 1, price: '0.90' }] },
    rules: NO_ALLOWANCES,
  } satisfies Example,
} as const;

export const USABLE_YIELD = {
  source: { name: "Wallcoverings Association, measuring text: usable square feet of a European single roll by the repeat's height", how: 'read' } satisfies Source,
  /** The repeat at the upper end of the band, in inches. */
  rows: [
    { repeat: 6, squareFeet: 25 },
    { repeat: 12, squareFeet: 22 },
    { repeat: 18, squareFeet: 20 },
    { repeat: 23, squareFeet: 18 },
  ],
} as const;

interface WorkedRoom {
  readonly id: string;
  readonly source: Source;
  readonly example: Example;
  readonly expected: Partial<Counted>;
}

const BY_HAND: Source = { name: 'worked by hand in a handbook or magazine', how: 'read' };
const MILLIMETRE = 320;
const INCH = 8128;

export const WORKED_ROOMS: readonly WorkedRoom[] = [
  {
    id: 'room 4 × 5 × 2.90 m, 0.10 m for trim',
    source: BY_HAND,
    example: { walls: ['4 m', '5 m', '4 m', '5 m'], height: '2.9 m', covering: MARKED_ROLL, rules: { ...NO_ALLOWANCES, trim: '5 cm' } },
    expected: { strips: 34, longest: 3000 * MILLIMETRE, mostFromARoll: 3, rolls: 12 },
  },
  {
    id: 'room 5 × 3 m, strips of 2.95 m',
    source: BY_HAND,
    example: { walls: ['5 m', '3 m', '5 m', '3 m'], height: '2.95 m', covering: MARKED_ROLL, rules: NO_ALLOWANCES },
    expected: { strips: 31, longest: 2950 * MILLIMETRE, mostFromARoll: 3, rolls: 11 },
  },
  {
    id: 'room 4 × 5 × 2.7 m, repeat 0.64 m',
    source: BY_HAND,
    example: { walls: ['4 m', '5 m', '4 m', '5 m'], height: '2.7 m', covering: { width: '1.06 m', rollLength: '10.05 m', repeat: '0.64 m' }, rules: NO_ALLOWANCES },
    // Five repeats of 0.64 m.
    expected: { strips: 17, spacing: 3200 * MILLIMETRE, mostFromARoll: 3, rolls: 6 },
  },
  {
    id: 'wall 178 × 104 in, plain',
    source: BY_HAND,
    example: { walls: ['178 in'], height: '104 in', covering: { width: '20.5 in', rollLength: '33 ft' } },
    expected: { strips: 9, mostFromARoll: 3, rolls: 3 },
  },
  {
    id: 'wall 155 × 102 in, repeat 19 in',
    source: BY_HAND,
    example: { walls: ['155 in'], height: '102 in', covering: { width: '20.5 in', rollLength: '396 in', repeat: '19 in' } },
    // Six repeats of 19 in.
    expected: { strips: 8, spacing: 114 * INCH, mostFromARoll: 3, rolls: 3 },
  },
];

export const GOST: Source = { name: 'GOST 6810-2002: border at least 5.00 m, wallpaper at least 10.05 m, width 530 mm preferred', how: 'read' };
/** In tenths of a millimetre. */
export const GOST_SIZES: readonly (readonly [typed: string, tenths: number])[] = [
  ['5.00 m', 50_000],
  ['10.05 m', 100_500],
  ['530 mm', 5_300],
];

export const BORDER_BY_THE_SPOOL = {
  source: { name: 'a border of 54 ft at 15 ft a spool', how: 'read' } satisfies Source,
  spools: 4,
  /** 54 ft round, no wall longer than a spool, no allowance at the ends. */
  example: {
    walls: ['15 ft', '12 ft', '15 ft', '12 ft'],
    height: '8 ft',
    covering: { kind: 'border', width: '6 in', rollLength: '15 ft' },
    band: { from: `7' 6"` },
    rules: NO_ALLOWANCES,
  } satisfies Example,
} as const;

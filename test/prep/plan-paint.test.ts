import { describe, expect, it } from 'vitest';
import { SURFACE_KINDS } from '../../shared-core/house/index.ts';
import { COAT_FACTORS, coatFactors, explainPaintedSurface, explainPaintNeed, explainSpreading, explainTins, planPaint, spreadingOf } from '../../shared-core/prep/index.ts';
import { coatedArea, millilitresFor } from '../../shared-core/prep/plan-paint.ts';
import { areaOf } from '../../shared-core/units/index.ts';
import { documentOf, faultsOf, type Loose } from '../builders.ts';
import { HALL, paint, paintedHouse, SLATE, STAIR, STUDY } from './paint-houses.ts';

/** A wall of so many square metres, one metre high. */
const wallOf = (metres: string, facts: Loose = {}) => ({ walls: [{ id: 'A', length: `${metres} m`, height: '1 m', ...facts }] });
const SOLD = [{ litres: 2.5, price: '31.00' }, { litres: 5, price: '54.00' }];

describe('the paint of a house', () => {
  it('is area times coats by the spreading rate, in tins', () => {
    const [need] = planPaint(paintedHouse([wallOf('50')], {}, [paint({ spreadingRate: '12 m2/L', coats: 2, soldIn: SOLD })]));
    // 100 m² at 12 m²/L are 8333 1/3 mL.
    expect(need).toMatchObject({ millilitres: 8334, spreading: { squareMillimetres: 12_000, millilitres: 1 }, tins: [{ litres: 5, count: 2 }], price: 10_800, rule: 'none' });
  });

  it('is rounded up once, after all rooms are pooled, and its shares are the whole', () => {
    // A third of a millilitre in each of seven rooms: 2 1/3 mL.
    const rooms = Array.from({ length: 7 }, () => wallOf('0.004'));
    const [need] = planPaint(paintedHouse(rooms, {}, [paint({ spreadingRate: '12 m2/L' })]));
    expect(need?.millilitres).toBe(3);
    expect(need?.surfaces.map(({ millilitres }) => millilitres)).toEqual([1, 1, 1, 0, 0, 0, 0]);
    const [exact] = planPaint(paintedHouse([wallOf('0.012'), wallOf('0.024')], {}, [paint({ spreadingRate: '12 m2/L' })]));
    expect([exact?.millilitres, exact?.surfaces.map(({ millilitres }) => millilitres)]).toEqual([3, [1, 2]]);
    expect(millilitresFor(120_001n * 100n * 102_400n, { squareMillimetres: 12_000, millilitres: 1 })).toBe(11);
    expect(millilitresFor(120_000n * 100n * 102_400n, { squareMillimetres: 12_000, millilitres: 1 })).toBe(10);
  });

  it('takes more where the surface does', () => {
    const needOf = (kind: string | null, coats: number) => planPaint(paintedHouse([wallOf('10', kind ? { surface: { kind } } : {})], {}, [paint({ coats })]))[0]?.millilitres;
    expect([needOf(null, 1), needOf(null, 2), needOf('painted-gloss', 2)]).toEqual([1000, 2000, 2000]);
    expect([needOf('textured', 1), needOf('textured', 2), needOf('new-plaster', 1), needOf('new-plaster', 2), needOf('gypsum-board', 3)]).toEqual([1300, 2600, 1250, 2250, 3100]);
    expect(Object.keys(COAT_FACTORS).sort()).toEqual([...SURFACE_KINDS].sort());
    expect(coatFactors(undefined)).toMatchObject({ first: 100, later: 100 });
    expect(coatedArea({ area: areaOf(10), coats: 2, firstFactor: 125, factor: 100 })).toBe(2250n);
  });

  it('is by the tin before it is by solids and film, and unknown without either', () => {
    expect(spreadingOf({ spreadingRate: '12 m2/L', solids: '65', film: 50 })).toEqual({ squareMillimetres: 12_000, millilitres: 1 });
    expect(spreadingOf({ solids: '65', film: 50 })).toEqual({ squareMillimetres: 13_000, millilitres: 1 });
    expect(spreadingOf({ film: 50 })).toBeNull();
    const [need] = planPaint(paintedHouse([wallOf('50')], {}, [paint({ spreadingRate: undefined, soldIn: SOLD })]));
    expect(need).toMatchObject({ spreading: null, millilitres: null, tins: null, price: null, surfaces: [{ millilitres: null }] });
  });

  it('has no tins where nothing is said of them, and no price where one has none', () => {
    expect(planPaint(paintedHouse([wallOf('50')]))[0]).toMatchObject({ millilitres: 5000, tins: null, price: null });
    expect(planPaint(paintedHouse([wallOf('51')], {}, [paint({ soldIn: [{ litres: 0.75 }, ...SOLD] })]))[0]).toMatchObject({ tins: [{ litres: 0.75, count: 7 }], price: null });
  });

  it('is nothing of a house without any', () => {
    expect(planPaint(paintedHouse([], {}, [paint()]))).toEqual([]);
  });
});

describe('the working', () => {
  const words = (lines: readonly { readonly words: string }[]) => lines.map((line) => line.words);

  it('of a wall says its openings and its coats', () => {
    const house = paintedHouse([STUDY], { rules: { openings: 'nrm2' } }, [paint({ coats: 2 })]);
    const [need] = planPaint(house);
    expect(explainPaintedSurface(house, need!, need!.surfaces[0]!)).toEqual([
      { words: 'Wall A, 4 m long and 2.5 m high: 10.00 m².', rule: null, source: null },
      {
        words: 'Wall A, door door, 1.60 m²: 1.60 m² taken off.',
        rule: 'openings up to 0.5 m² are not taken off, larger ones are, and their covered reveals added',
        source: 'NRM2 (as SMM7): voids up to 0.5 m²; its clause for decoration was not read, the reveals are our reading',
      },
      { words: '10.00 m² - 1.60 m² = 8.40 m².', rule: null, source: null },
      { words: '8.40 m² × 2 coats = 16.80 m².', rule: 'what is on it is not recorded; taken as smooth', source: 'common practice, no source; what the tin says comes first' },
    ]);
    expect(words(explainPaintedSurface(house, need!, need!.surfaces[1]!))[1]).toBe('Wall B, window small, 0.49 m²: nothing taken off.');
  });

  it('of reveals, of rakes and of bands', () => {
    const hall = paintedHouse([HALL], { rules: { openings: 'din-18363' } });
    const [need] = planPaint(hall);
    expect(words(explainPaintedSurface(hall, need!, need!.surfaces[0]!)).slice(1)).toEqual(['Wall A, archway arch, 3.20 m²: 3.20 m² taken off, 1.68 m² of covered reveals added.', '12.00 m² - 3.20 m² + 1.68 m² = 10.48 m².', '10.48 m² × 1 coat = 10.48 m².']);
    const stair = paintedHouse([STAIR], {}, [paint(), SLATE]);
    const [filling] = planPaint(stair);
    expect(words(explainPaintedSurface(stair, filling!, filling!.surfaces[0]!))[0]).toBe('Wall A, 4 m long and 2.4 m high at the left and 4.4 m at the right, from 90 cm to the ceiling: 10.00 m².');
  });

  it('of a thirsty wall, a ceiling and woodwork', () => {
    const woodwork = { covering: 'chalk', skirting: '10 cm', surface: { kind: 'textured' } };
    const house = paintedHouse([{ ...STUDY, woodwork, ceiling: { covering: 'chalk' }, ceilingSurface: { kind: 'new-plaster' } }], {}, [paint({ coats: 3 })]);
    const [need] = planPaint(house);
    const explained = (kind: string) => words(explainPaintedSurface(house, need!, need!.surfaces.find(({ surface }) => surface.kind === kind)!));
    expect(explained('ceiling')).toEqual(['The ceiling, as large as the floor: 12.00 m².', '12.00 m² × (125 % for the first coat + 200 % for the 2 others) = 39.00 m².']);
    expect(explained('woodwork')).toEqual([
      'The skirting, 14 m long and 10 cm high: 1.40 m².',
      'The face of the door: 1.60 m².',
      'Wall A, door door, 0.08 m² of it where the skirting would be: taken off.',
      '3.00 m² - 0.08 m² = 2.92 m².',
      '2.92 m² × 3 coats × 130 % = 11.39 m².',
    ]);
    const [once] = planPaint(paintedHouse([wallOf('10', { surface: { kind: 'new-plaster' } })]));
    expect(words(explainPaintedSurface(paintedHouse([wallOf('10', { surface: { kind: 'new-plaster' } })]), once!, once!.surfaces[0]!)).at(-1)).toBe('10.00 m² × 1 coat × 125 % = 12.50 m².');
  });

  it('of the whole, the spreading rate and the tins', () => {
    const house = paintedHouse([wallOf('20'), wallOf('30')], {}, [paint({ spreadingRate: '12 m2/L', coats: 2, soldIn: SOLD })]);
    const [need] = planPaint(house);
    expect(words(explainPaintNeed(house, need!))).toEqual(['Painted: 50.00 m².', 'All coats of 2 surfaces: 100.00 m².', 'By the tin: 12 m2/L.', '100.00 m² ÷ 12 m²/L = 8.33 L.']);
    expect(words(explainTins(house, need!))).toEqual(['2 × 5 L = 10 L, 1.67 L over.', '2 × 54.00 USD = 108.00 USD.']);

    const bySolids = paintedHouse([wallOf('50')], {}, [paint({ spreadingRate: undefined, solids: '65', film: 50 })]);
    expect(explainSpreading(bySolids, 'chalk').words).toBe('Of 65 % solids a film of 50 µm stays: 65 × 10 ÷ 50 = 13 m²/L.');
    expect(words(explainTins(bySolids, planPaint(bySolids)[0]!))).toEqual(['What it is sold in is not recorded.']);
    const unknown = paintedHouse([wallOf('50')], {}, [paint({ spreadingRate: undefined })]);
    expect(words(explainPaintNeed(unknown, planPaint(unknown)[0]!)).at(-1)).toBe('Neither a spreading rate nor solids and film are recorded: how much it takes is not known.');
    expect(words(explainTins(unknown, planPaint(unknown)[0]!))).toEqual(['How much it takes is not known, so no tins are chosen.']);
  });

  it('of more than one area holds', () => {
    const rooms = Array.from({ length: 40 }, () => ({ walls: [{ id: 'A', length: '100 m', height: '30 m' }] }));
    const house = paintedHouse(rooms, {}, [paint({ coats: 20 })]);
    expect(words(explainPaintNeed(house, planPaint(house)[0]!))[1]).toBe('All coats of 40 surfaces: 2400000.00 m².');
  });
});

describe('a paint', () => {
  const faults = (facts: Loose) => faultsOf(documentOf({ coverings: [paint(facts)] })).map(({ path, message }) => `${path} ${message}`);

  it('is refused where its spreading rate can’t be read', () => {
    expect(faults({})).toEqual([]);
    expect(faults({ spreadingRate: '12 kg/L' })).toEqual([
      'coverings[0].spreadingRate is "12 kg/L": In ‘12 kg/L’, ‘kg’ is not an area; write square metres a litre or square feet a gallon, for example 12 m2/L, 400 sq ft/US gal or 480 sq ft/imp gal',
    ]);
  });

  it('is refused where solids stand without a film, or they can’t be', () => {
    expect(faults({ solids: '65' })).toEqual(['coverings[0].solids stands without a dry film; say first how thick one coat dries, in micrometres']);
    expect([faults({ solids: '65', film: 50 }), faults({ film: 50 })]).toEqual([[], []]);
    expect(faults({ solids: '0', film: 50 })).toEqual(['coverings[0].solids is "0": 0 % of solids at a dry film of 50 µm are out of reach; a paint covers from 0.1 to 1000 m²/L. Check the figures']);
  });

  it('is refused in tins that are none', () => {
    expect(faults({ soldIn: [{ litres: 0.001 }, { litres: 0.01 }, { litres: 1000 }, { litres: 2500 }] })).toEqual([
      'coverings[0].soldIn[0].litres is 0.001; a tin holds from 0.01 to 1000 litres. Check the unit',
      'coverings[0].soldIn[3].litres is 2500; a tin holds from 0.01 to 1000 litres. Check the unit',
    ]);
  });
});

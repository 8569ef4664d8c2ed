import { describe, expect, it } from 'vitest';
import { millilitresOf, NANOLITRES_PER_IMPERIAL_GALLON, NANOLITRES_PER_US_GALLON, readSpreadingRate, showSpreadingRate, showSquareUnits, ratio, showVolume, spreadingOfSolids, wholeMillilitres } from '../../shared-core/units/index.ts';

const ACCEPTED = 'write square metres a litre or square feet a gallon, for example 12 m2/L, 400 sq ft/US gal or 480 sq ft/imp gal';

const rateOf = (text: string) => {
  const read = readSpreadingRate(text);
  return read.ok ? read.value : read.faults[0]?.message;
};

/** 400 sq ft are 37,161,216 mm², and a US gallon is 3785.411784 mL. */
const FOUR_HUNDRED = { squareMillimetres: 37_161_216_000_000 / 24, millilitres: 3_785_411_784 / 24 };

describe('a spreading rate', () => {
  it.each(['12 m2/L', '12 m²/l', '12m2/l', '12,0 m² / ltr', '12 sq m per litre', '12 qm/l', '12 square metres / liter', '12 sq. m/L'])('%s is 12000 mm² a millilitre', (text) => {
    expect(rateOf(text)).toEqual({ squareMillimetres: 12_000, millilitres: 1 });
  });

  it.each(['400 sq ft/gal', '400 ft2/US gal', '400 ft²/gallon', '400 square feet per US gallon', '400 sq. ft. / gal.', '400 sqft/u.s. gallons', '400 SQ FT / GAL'])('%s is by the US gallon', (text) => {
    const rate = rateOf(text);
    if (typeof rate !== 'object') throw new Error(String(rate));
    // The same fraction, whatever it was reduced by.
    expect(BigInt(rate.squareMillimetres) * BigInt(FOUR_HUNDRED.millilitres)).toBe(BigInt(rate.millilitres) * BigInt(FOUR_HUNDRED.squareMillimetres));
  });

  it('is by the imperial gallon where that is said', () => {
    const rates = ['350 sq ft / imp gal', '350 sq ft/imperial gallon', '350 ft2/UK gal', '350 ft2 per imp. gal'].map(rateOf);
    expect(new Set(rates.map((rate) => JSON.stringify(rate))).size).toBe(1);
    const [rate] = rates;
    if (typeof rate !== 'object') throw new Error(String(rate));
    // 350 sq ft are 32,516,064 mm²; an imperial gallon is 4546.09 mL.
    expect(BigInt(rate.squareMillimetres) * 454_609n).toBe(BigInt(rate.millilitres) * 3_251_606_400n);
  });

  it('is exact in three decimals, with either mark', () => {
    expect(rateOf('12.345 m2/L')).toEqual({ squareMillimetres: 12_345, millilitres: 1 });
    expect(rateOf('0,5 m2/L')).toEqual({ squareMillimetres: 500, millilitres: 1 });
    expect([rateOf('0.1 m2/L'), rateOf('1000 m2/L')]).toEqual([{ squareMillimetres: 100, millilitres: 1 }, { squareMillimetres: 1_000_000, millilitres: 1 }]);
  });

  it.each([
    ['', `There is no spreading rate here; ${ACCEPTED}`],
    ['12', `‘12’ is not a spreading rate; ${ACCEPTED}`],
    ['plenty', `‘plenty’ is not a spreading rate; ${ACCEPTED}`],
    ['-12 m2/L', `‘-12 m2/L’ is not a spreading rate; ${ACCEPTED}`],
    ['12.3456 m2/L', `‘12.3456 m2/L’ is not a spreading rate; ${ACCEPTED}`],
    ['10-12 m2/L', `‘10-12 m2/L’ is a range; write one figure, the lower one to be safe: ${ACCEPTED}`],
    ['10 to 12 m2/L', `‘10 to 12 m2/L’ is a range; write one figure, the lower one to be safe: ${ACCEPTED}`],
    ['12 kg/L', `In ‘12 kg/L’, ‘kg’ is not an area; ${ACCEPTED}`],
    ['12 m2/kg', `In ‘12 m2/kg’, ‘kg’ is not a volume; ${ACCEPTED}`],
    ['0.099 m2/L', '‘0.099 m2/L’ is out of reach; a paint covers from 0.1 to 1000 m²/L. Check the unit'],
    ['0 m2/L', '‘0 m2/L’ is out of reach; a paint covers from 0.1 to 1000 m²/L. Check the unit'],
    ['1000.001 m2/L', '‘1000.001 m2/L’ is out of reach; a paint covers from 0.1 to 1000 m²/L. Check the unit'],
  ])('‘%s’ is refused in words', (text, message) => {
    expect(rateOf(text)).toBe(message);
  });

  it('stays a fraction of safe integers at its largest', () => {
    for (const text of ['40745.799 sq ft/gal', '48900.999 sq ft/imp gal']) {
      const rate = rateOf(text);
      if (typeof rate !== 'object') throw new Error(String(rate));
      expect([rate.squareMillimetres, rate.millilitres].every(Number.isSafeInteger)).toBe(true);
    }
  });

  it('follows from solids and film', () => {
    expect(spreadingOfSolids('65', 50)).toEqual({ ok: true, value: { squareMillimetres: 13_000, millilitres: 1 } });
    expect(spreadingOfSolids('42,5', 30)).toEqual({ ok: true, value: { squareMillimetres: 42_500, millilitres: 3 } });
    expect(spreadingOfSolids('0', 30)).toEqual({ ok: false, faults: [{ path: '', message: '0 % of solids at a dry film of 30 µm are out of reach; a paint covers from 0.1 to 1000 m²/L. Check the figures' }] });
  });

  it('is shown rounded', () => {
    const twelve = { squareMillimetres: 12_000, millilitres: 1 };
    expect([showSpreadingRate(twelve, 'metric'), showSpreadingRate(twelve, 'imperial')]).toEqual(['12 m²/L', '489 sq ft/US gal']);
    expect(showSpreadingRate(FOUR_HUNDRED, 'metric')).toBe('9.82 m²/L');
    expect(showSpreadingRate(FOUR_HUNDRED, 'imperial')).toBe('400 sq ft/US gal');
  });
});

describe('volumes', () => {
  it('are exact', () => {
    expect([millilitresOf(NANOLITRES_PER_US_GALLON), millilitresOf(NANOLITRES_PER_IMPERIAL_GALLON)]).toEqual([ratio(3_785_411_784n, 1_000_000n), ratio(4_546_090_000n, 1_000_000n)]);
    expect([0.75, 2.5, 5, 3.7854, 0.01].map(wholeMillilitres)).toEqual([750, 2500, 5000, 3785, 10]);
    expect([1.001, 4.35, 8.2, 16.1].map(wholeMillilitres)).toEqual([1001, 4350, 8200, 16_100]);
  });

  it('are shown rounded', () => {
    expect([showVolume(3104, 'metric'), showVolume(3104, 'imperial'), showVolume(0, 'metric'), showVolume(5, 'metric')]).toEqual(['3.1 L', '0.82 US gal', '0 L', '0.01 L']);
  });

  it('and areas beyond what one area holds are shown', () => {
    expect(showSquareUnits(ratio(1n, 2n), 'metric')).toBe('0.00 m²');
    expect(showSquareUnits(ratio(10n ** 20n), 'metric')).toBe('976562500.00 m²');
  });
});

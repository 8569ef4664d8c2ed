import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEDUCTION_RULES, planPaint, stepFor } from '../../shared-core/prep/index.ts';
import { bandRegion, common, heightAt, lengthOnWall, regionArea } from '../../shared-core/prep/paint-regions.ts';
import { lengthOf, ratio } from '../../shared-core/units/index.ts';
import { HALL, paint, paintedHouse, paintedOf, RULES, SLATE, squareMetres, STAIR, STUDY } from './paint-houses.ts';

const number = ({ numerator, denominator }: { readonly numerator: bigint; readonly denominator: bigint }) => Number(numerator) / Number(denominator);
const measure = (length: number) => ({ length: lengthOf(length), typed: '' });
const wallOf = (length: number, left: number, right: number) => ({ length: measure(length), height: [measure(left), measure(right)] as const });

describe('openings are taken off by', () => {
  const study = { none: 35, nrm2: 35 - 1.6 - 2.5, 'din-18363': 35, 'is-1200-13': 35 - 0.8 - 1.25 };
  // The covered side of an opening counts where the opening is taken off as a whole: 1.68 m² of the archway, 0.2 m² of the glass.
  const hall = { none: 33.6, nrm2: 33.6 - 3 - 3.2 + 0.2 + 1.68, 'din-18363': 33.6 - 3 - 3.2 + 0.2 + 1.68, 'is-1200-13': 33.6 - 1.5 - 3.2 + 1.68 };
  // Of the window's sides 1.5 m each and its head of 1 m lie in the filling: 0.8 m².
  const stair = { none: [10, 3.6], nrm2: [10 - 1.5 + 0.8, 3.6], 'din-18363': [10, 3.6], 'is-1200-13': [10 - 0.75, 3.6] };

  it.each(RULES)('%s in three rooms', (rule) => {
    const rules = { rules: { openings: rule } };
    expect(paintedOf(paintedHouse([STUDY], rules))).toBeCloseTo(study[rule], 4);
    expect(paintedOf(paintedHouse([HALL], rules))).toBeCloseTo(hall[rule], 4);
    const house = paintedHouse([STAIR], rules, [paint(), SLATE]);
    expect([paintedOf(house), paintedOf(house, 'slate')]).toEqual(stair[rule]);
    expect(paintedOf(paintedHouse([STUDY, HALL], rules))).toBeCloseTo(study[rule] + hall[rule], 4);
  });

  it('a rule exactly at its bounds', () => {
    const squareMetre = 320_000n ** 2n;
    const deducted = (rule: (typeof RULES)[number], hundredths: bigint, more: bigint) => stepFor(rule, ratio((squareMetre * hundredths) * 7n + more, 700n)).deducted;
    expect([deducted('nrm2', 50n, 0n), deducted('nrm2', 50n, 1n)]).toEqual([0, 100]);
    expect([deducted('din-18363', 250n, 0n), deducted('din-18363', 250n, 1n)]).toEqual([0, 100]);
    expect([deducted('is-1200-13', 50n, 0n), deducted('is-1200-13', 50n, 1n), deducted('is-1200-13', 300n, 0n), deducted('is-1200-13', 300n, 1n)]).toEqual([0, 50, 50, 100]);
    expect(deducted('none', 9000n, 0n)).toBe(0);
    expect(Object.keys(DEDUCTION_RULES).sort()).toEqual([...RULES].sort());
  });

  it('what is gross, deducted and added apart', () => {
    const [need] = planPaint(paintedHouse([HALL], { rules: { openings: 'is-1200-13' } }));
    expect(need?.surfaces.map(({ surface, gross, deducted, reveals, area }) => [surface, ...[gross, deducted, reveals, area].map(squareMetres)])).toEqual([
      [{ kind: 'wall', wall: 'A' }, 12, 3.2, 1.68, 10.48],
      [{ kind: 'wall', wall: 'B' }, 4.8, 0, 0, 4.8],
      [{ kind: 'wall', wall: 'C' }, 12, 1.5, 0, 10.5],
      [{ kind: 'wall', wall: 'D' }, 4.8, 0, 0, 4.8],
    ]);
  });
});

describe('a region of a wall', () => {
  it('is cut off by a raked top', () => {
    const wall = wallOf(4, 1, 3);
    const region = { left: 0, right: 4, from: 2, to: null };
    expect(number(regionArea(region, wall))).toBe(1);
    expect(number(lengthOnWall(region, 2, wall))).toBe(2);
    expect([heightAt({ ...region, from: 0 }, 4, wall), heightAt({ ...region, from: 0, to: 2 }, 4, wall), heightAt(region, 0, wall)].map(number)).toEqual([3, 2, 0]);
    // From 0 to 2 along it the wall rises from 1 to 2: half of a hole from 1 to 2 lies on it.
    expect(number(regionArea({ left: 0, right: 2, from: 1, to: 2 }, wall))).toBe(1);
    expect(bandRegion({ from: 'floor', to: 'ceiling' }, wall)).toEqual({ left: 0, right: 4, from: 0, to: null });
  });

  it('has in common with another what lies in both', () => {
    const region = { left: 0, right: 10, from: 3, to: null };
    expect(common(region, { left: 5, right: 20, from: 0, to: 8 })).toEqual({ left: 5, right: 10, from: 3, to: 8 });
    expect(common(region, { left: 10, right: 20, from: 0, to: 8 })).toBeNull();
    expect(common(region, { left: 0, right: 20, from: 0, to: 3 })).toBeNull();
  });

  it('is as large as the sum of many narrow strips of it', () => {
    const strips = 4000;
    const anyRegion = fc.record({ length: fc.integer({ min: 10, max: 500 }), tops: fc.tuple(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 })), sides: fc.tuple(fc.nat(500), fc.nat(500)), heights: fc.tuple(fc.nat(300), fc.option(fc.nat(300))) });
    fc.assert(
      fc.property(anyRegion, ({ length, tops: [leftTop, rightTop], sides, heights: [low, high] }) => {
        const [left, right] = sides.map((side) => side % (length + 1)).sort((one, other) => one - other) as [number, number];
        fc.pre(left < right && (high === null || high > low));
        const wall = wallOf(length, leftTop, rightTop);
        let area = 0;
        let under = 0;
        for (let strip = 0; strip < strips; strip += 1) {
          const at = left + ((right - left) * (strip + 0.5)) / strips;
          const wallTop = leftTop + ((rightTop - leftTop) * at) / length;
          area += Math.max(0, Math.min(high ?? wallTop, wallTop) - low) / strips;
          under += (wallTop > low ? 1 : 0) / strips;
        }
        const width = right - left;
        expect(Math.abs(number(regionArea({ left, right, from: low, to: high }, wall)) - area * width)).toBeLessThan(0.001 * width * 300);
        expect(Math.abs(number(lengthOnWall({ left, right, from: low, to: high }, low, wall)) - under * width)).toBeLessThanOrEqual(width / strips + 1e-6);
      }),
      { numRuns: 300 },
    );
  });
});

describe('a painted room', () => {
  it('has bands up to rails, and none of what another covering takes', () => {
    const walls = [{ id: 'A', length: '4 m', height: '2.5 m' }];
    const rails = [{ id: 'dado', at: '0.9 m', width: '0.1 m' }];
    const bands = [
      { id: 'low', covering: 'slate', walls: ['A'], to: { rail: 'dado' } },
      { id: 'high', covering: 'chalk', walls: ['A'], from: { rail: 'dado' }, to: '2 m' },
    ];
    const house = paintedHouse([{ walls, rails, bands }], {}, [paint(), SLATE, paint({ id: 'unused' })]);
    expect([paintedOf(house), paintedOf(house, 'slate')]).toEqual([4, 3.6]);
    expect(planPaint(house).map(({ covering }) => covering)).toEqual(['chalk', 'slate']);
  });

  it('has a ceiling as large as its floor', () => {
    const walls = STUDY.walls;
    const house = paintedHouse([{ walls, bands: [], ceiling: { covering: 'chalk' }, ceilingSurface: { kind: 'textured' } }]);
    expect(paintedOf(house)).toBe(12);
    expect(planPaint(house)[0]?.surfaces).toMatchObject([{ surface: { kind: 'ceiling' }, band: null, factor: 130 }]);
  });

  it('has skirtings but where something goes down to the floor, and the faces of its doors', () => {
    const woodwork = { covering: 'chalk', skirting: '10 cm' };
    const bare = { bands: [], woodwork };
    // 14 m less the door of 0.8 m; the windows stand above it. No rule has a say in it.
    for (const openings of RULES) {
      expect(paintedOf(paintedHouse([{ ...STUDY, ...bare }], { rules: { openings } }))).toBeCloseTo(1.32 + 1.6, 4);
      expect(paintedOf(paintedHouse([{ ...STUDY, ...bare, woodwork: { ...woodwork, doors: false } }], { rules: { openings } }))).toBeCloseTo(1.32, 4);
    }
    // 14 m less the archway of 1.6 m, which has no face.
    expect(paintedOf(paintedHouse([{ ...HALL, ...bare }]))).toBeCloseTo(1.24, 4);
    expect(paintedOf(paintedHouse([{ ...STUDY, ...bare, woodwork: { ...woodwork, skirting: '0 cm' } }]))).toBeCloseTo(1.6, 4);
  });

  it('gives a head to the band that has the top of its opening and a sill to the one that has its foot', () => {
    const reveal = { depth: '0.5 m', sides: ['head', 'sill'] };
    const walls = [{ id: 'A', length: '4 m', height: '3 m', openings: [{ id: 'w', kind: 'window', from: '1 m', width: '2 m', sill: '1 m', height: '1 m', reveal }] }];
    const bands = [
      { id: 'high', covering: 'chalk', walls: ['A'], from: '1.5 m' },
      { id: 'low', covering: 'slate', walls: ['A'], to: '1.5 m' },
    ];
    const house = paintedHouse([{ walls, bands }], { rules: { openings: 'nrm2' } }, [paint(), SLATE]);
    expect([paintedOf(house), paintedOf(house, 'slate')]).toEqual([6 - 1 + 1, 6 - 1 + 1]);
    const only = paintedHouse([{ walls, bands: [{ id: 'between', covering: 'chalk', walls: ['A'], from: '1 m', to: '2 m' }] }], { rules: { openings: 'nrm2' } });
    expect(paintedOf(only)).toBe(4 - 2 + 2);
  });
});

import { describe, expect, test } from 'vitest';
import { planHouse } from '../../shared-core/plan/index.ts';
import { inches } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

function bandOf(roomFacts: Loose, covering: Loose = {}) {
  const plan = planHouse(houseOf(documentOf({ coverings: [wallcovering(covering)], rooms: [roomFacts] })));
  const [band] = plan.rooms[0]!.bands;
  if (band?.kind !== 'strips') throw new Error('a band of strips');
  return { plan, band, stretch: band.stretches[0]! };
}

describe('equal panels', () => {
  test('divide each wall evenly, none wider than the roll, none round a corner', () => {
    const { stretch } = bandOf(room(['100 in', '72 in', '100 in', '72.5 in']), { width: '36 in', repeat: '0 in', panels: 'equal' });
    // 100 in takes 3 of 33 1/3 in, 72 in takes 2 of 36 in, 72 1/2 in takes 3 of 24 1/6 in.
    const widths = stretch.strips.map(({ cutWidth, parts }) => [parts.map(({ wall }) => wall).join(''), Math.round((100 * cutWidth) / inches(1)) / 100]);
    expect(widths).toEqual([
      ['A', 33.33], ['A', 33.33], ['A', 33.33],
      ['B', 36], ['B', 36],
      ['C', 33.33], ['C', 33.33], ['C', 33.33],
      ['D', 24.17], ['D', 24.17], ['D', 24.17],
    ]);
    expect(stretch.strips.reduce((sum, { cutWidth }) => sum + cutWidth, 0)).toBe(inches(344.5));
    expect([stretch.mismatch, stretch.slivers, stretch.options]).toEqual([null, [], []]);
  });

  test('are cut above an opening that holds one whole', () => {
    const { stretch } = bandOf(room(['108 in'], {}, [{ openings: [{ id: 'door', kind: 'door', from: '36 in', width: '36 in', height: '80 in' }] }]), { width: '36 in', repeat: '0 in', panels: 'equal' });
    expect(stretch.strips.map(({ pieces }) => pieces.map(({ label, length }) => [label, length / inches(1)]))).toEqual([[['A1', 100]], [['A2 above', 20]], [['A3', 100]]]);
  });
});

describe('a corner that leans', () => {
  const walls = (plumbRight: string) => room(['100 in', '100 in', '100 in', '100 in'], { bands: [{ id: 'main', covering: 'paper', walls: ['A', 'B', 'C', 'D'], layout: { start: { wall: 'A', at: '0 in' } } }] }, [{ plumbRight }]);

  test('by more than the wrap is wrapped by what it leans, either way', () => {
    for (const lean of ['1/2 in', '-1/2 in']) {
      const { stretch, plan } = bandOf(walls(lean));
      expect(stretch.grid.to / inches(1)).toBe(400.75);
      expect(stretch.mismatch!.amount).toBe(inches(0.75));
      expect(plan.warnings.map(({ message }) => message).join(' ')).toMatch(/leans by -?1\/2 in, more than the wrap of 1\/8 in: the plan wraps the strip by that much there/);
    }
  });

  test('by no more than the wrap changes nothing', () => {
    const { stretch, plan } = bandOf(walls('1/8 in'));
    expect(stretch.grid.to / inches(1)).toBe(400.375);
    expect(plan.warnings.filter(({ place }) => place === 'survey')).toEqual([]);
  });

  test('at the kill point makes the last strip wider by as much', () => {
    const { stretch } = bandOf(room(['100 in', '100 in', '100 in', '95 in'], { bands: [{ id: 'main', covering: 'paper', walls: ['A', 'B', 'C', 'D'], layout: { start: { wall: 'A', at: '0 in' } } }] }, [{}, {}, {}, { plumbRight: '3/4 in' }]));
    const last = stretch.strips.at(-1)!;
    expect((last.to - last.from) / inches(1)).toBe(15.375);
    expect(last.cutWidth / inches(1)).toBe(16.125);
  });

  test('by more than a strip is wide is planned all the same', () => {
    const { stretch } = bandOf(walls('30 in'));
    expect(stretch.strips.every(({ parts, pieces }) => parts.length > 0 && pieces.length > 0)).toBe(true);
  });
});

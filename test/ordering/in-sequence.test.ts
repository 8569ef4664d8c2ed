import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutInSequence, type PlacedPiece } from '../../shared-core/ordering/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { inches, lengthOf, modulo } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const placed = (length: number, phase = 0, strip = 0): PlacedPiece => ({
  room: 'room',
  band: 'main',
  piece: { label: `A${strip}`, strip, part: 'full', length: lengthOf(length), phase: lengthOf(phase), top: lengthOf(length), bottom: lengthOf(0), upperEdge: lengthOf(length) },
});

describe('rolls cut in sequence', () => {
  test('give ten strips of 2.60 m without a pattern from four rolls of 10 m, in order', () => {
    const { rolls } = cutInSequence({ rollLength: 1000, repeat: 0, rollStart: 'at-repeat' }, Array.from({ length: 10 }, (_, strip) => placed(260, 0, strip)));
    expect(rolls.map(({ number, cuts }) => [number, cuts.map(({ from, placed: { piece } }) => [piece.label, from])])).toEqual([
      [1, [['A0', 0], ['A1', 260], ['A2', 520]]],
      [2, [['A3', 0], ['A4', 260], ['A5', 520]]],
      [3, [['A6', 0], ['A7', 260], ['A8', 520]]],
      [4, [['A9', 0]]],
    ]);
  });

  test('keep the pattern: a piece waits for its phase, a roll at its repeat for the first one', () => {
    const pieces = [placed(250, 30), placed(250, 30), placed(250, 80)];
    // At the repeat: 30 to 280, then 330 (300 + 30) to 580, then 580 is phase 80: 580 to 830.
    expect(cutInSequence({ rollLength: 1000, repeat: 100, rollStart: 'at-repeat' }, pieces).rolls[0]!.cuts.map(({ from }) => from)).toEqual([30, 330, 580]);
    // Anywhere: the same from the first cut's top, and a repeat kept back.
    expect(cutInSequence({ rollLength: 899, repeat: 100, rollStart: 'anywhere' }, pieces).rolls.map(({ cuts }) => cuts.map(({ from }) => from))).toEqual([[0, 300], [0]]);
  });

  test('name what no roll gives', () => {
    const { rolls, impossible } = cutInSequence({ rollLength: 300, repeat: 0, rollStart: 'at-repeat' }, [placed(200, 0, 1), placed(301, 0, 2), placed(100, 0, 3)]);
    expect([rolls.length, rolls[0]!.cuts.length, impossible.map(({ piece }) => piece.label)]).toEqual([1, 2, ['A2']]);
  });

  test('hold whatever pieces come: in phase, in order, within what the roll surely gives', () => {
    const pieces = fc.array(fc.record({ length: fc.integer({ min: 1, max: 300 }), phase: fc.integer({ min: 0, max: 99 }) }), { maxLength: 30 });
    fc.assert(
      fc.property(pieces, fc.constantFrom('anywhere' as const, 'at-repeat' as const), (list, rollStart) => {
        const { rolls, impossible } = cutInSequence({ rollLength: 600, repeat: 100, rollStart }, list.map(({ length, phase }, strip) => placed(length, phase, strip)));
        expect(impossible).toEqual([]);
        expect(rolls.flatMap(({ cuts }) => cuts.map((one) => one.placed.piece.strip))).toEqual(list.map((_, strip) => strip));
        for (const { cuts } of rolls) {
          const base = rollStart === 'anywhere' ? cuts[0]!.placed.piece.phase : 0;
          cuts.forEach(({ from, placed: { piece } }, index) => {
            expect(modulo(base + from - piece.phase, 100)).toBe(0);
            if (index > 0) expect(from).toBeGreaterThanOrEqual(cuts[index - 1]!.from + cuts[index - 1]!.placed.piece.length);
            expect(from + piece.length).toBeLessThanOrEqual(rollStart === 'anywhere' ? 500 : 600);
          });
        }
      }),
      { numRuns: 500 },
    );
  });

  test('are those of the plan where the covering asks for it, and proved', () => {
    const facts = (sequence: string) => documentOf({ coverings: [wallcovering({ sequence, rollLength: '20 ft', match: 'free' })], rooms: [room(['60 in', '60 in'], { bands: [{ id: 'low', covering: 'paper', walls: ['A'], to: '40 in' }, { id: 'high', covering: 'paper', walls: ['B'] }] })] });
    // 240 in: five strips of 44 in would go with one of 100 in; in sequence 3 × 44 and 100, then 2 × 100.
    const planned = planHouse(houseOf(facts('required')));
    expect(planned.cuts[0]!.rolls.map(({ cuts }) => cuts.map(({ placed: { piece } }) => `${piece.label} ${piece.length / inches(1)}`))).toEqual([['A1 44', 'A2 44', 'A3 44', 'B1 100'], ['B2 100', 'B3 100']]);
    expect(planned.order[0]).toMatchObject({ rollsNeeded: 2, isProvenMinimum: true });
  });
});

describe('goods by the length', () => {
  const planOf = (soldBy: Loose, facts: Loose = {}, more: Loose = {}) =>
    planHouse(houseOf(documentOf({ coverings: [wallcovering({ rollLength: undefined, match: 'free', soldBy, ...facts })], rooms: [room(['100 in'])], ...more }))).order[0]!;

  test('are one running length, rounded up to the sale unit, with no spare', () => {
    // Five strips of 100 in: 500 in are 13.9 yd.
    expect(planOf({ length: '1 yd', pieceLength: '30 yd', price: '20.00' })).toMatchObject({ spare: 0, packs: [], price: 28_000, running: { needed: inches(500), toBuy: inches(504), units: 14 } });
    expect(planOf({ length: '1 yd', pieceLength: '30 yd' })).toMatchObject({ price: null });
  });

  test('are at least what the supplier sells', () => {
    expect(planOf({ length: '1 yd', pieceLength: '30 yd', minimum: '20 yd' }).running).toMatchObject({ units: 20 });
  });

  test('are cut from pieces no longer than the supplier cuts them, each losing a repeat where it may begin anywhere', () => {
    // Pieces of 240 in that surely give 220: two strips each at 100 in: 200 + 20; three of them, the last with one strip.
    expect(planOf({ length: '1 in', pieceLength: '240 in' }, { match: 'straight' }).running).toMatchObject({ needed: inches(2 * 220 + 120) });
  });

  test('that are in hand already need not be bought', () => {
    const of = (rolls: number) => ({ stock: [{ covering: 'paper', run: '7', rolls }], offers: [{ covering: 'paper', run: '7', rolls: 9 }] });
    expect(planOf({ length: '1 in', pieceLength: '240 in' }, {}, of(2)).running).toMatchObject({ needed: inches(500), wanted: inches(100) });
    expect(planOf({ length: '1 in', pieceLength: '240 in' }, {}, of(3))).toMatchObject({ toBuy: 0, running: { units: 0, wanted: 0 } });
  });
});

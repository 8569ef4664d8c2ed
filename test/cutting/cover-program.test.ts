import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Column, coverProgram } from '../../shared-core/cutting/cover-program.ts';
import { budgetOf } from '../../shared-core/cutting/work.ts';
import { invert } from '../../shared-core/cutting/invert.ts';

const columnOf = (pieces: readonly number[]): Column => {
  const rows = pieces.flatMap((times, row) => (times > 0 ? [row] : []));
  return { rows, times: rows.map((row) => pieces[row]!) };
};

describe('the linear program of cutting', () => {
  it('two kinds, ten wanted of each, (2, 0), (0, 2) and (1, 1): 10 rolls, half a roll for a piece', () => {
    const work = budgetOf(1e9);
    const program = coverProgram([10, 10], [2, 2], work);
    program.add(columnOf([1, 1]));
    expect(program.minimise()).toBe(true);
    expect(program.rolls()).toBeCloseTo(10, 9);
    expect([...program.prices].map((price) => price.toFixed(9))).toEqual(['0.500000000', '0.500000000']);
  });

  it('stops when the work is over, and covers all the same', () => {
    const work = budgetOf(5);
    const program = coverProgram([6, 6], [2, 1], work);
    program.add(columnOf([1, 2]));
    work.spend(5);
    expect(program.minimise()).toBe(false);
    expect(program.rolls()).toBeCloseTo(9, 9);
  });

  it('goes on from where it stands when a better roll is added', () => {
    const program = coverProgram([6, 6], [2, 1], budgetOf(Infinity));
    program.minimise();
    expect(program.rolls()).toBeCloseTo(9, 9);
    program.add(columnOf([1, 2]));
    program.minimise();
    expect(program.rolls()).toBeCloseTo(4.5, 9);
    expect(program.used().map(({ column, times }) => [column, times.toFixed(6)])).toEqual([
      [0, '1.500000'],
      [2, '3.000000'],
    ]);
  });

  it('covers what is wanted at prices at which no roll is worth more than one: the two sides meet', () => {
    const programs = fc.integer({ min: 1, max: 8 }).chain((kinds) =>
      fc.record({
        wanted: fc.array(fc.integer({ min: 1, max: 40 }), { minLength: kinds, maxLength: kinds }),
        singles: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: kinds, maxLength: kinds }),
        columns: fc.array(fc.array(fc.integer({ min: 0, max: 4 }), { minLength: kinds, maxLength: kinds }), { maxLength: 40 }),
      }),
    );
    fc.assert(
      fc.property(programs, ({ wanted, singles, columns }) => {
        const program = coverProgram(wanted, singles, budgetOf(Infinity));
        columns.forEach((pieces) => program.add(columnOf(pieces)));
        expect(program.minimise()).toBe(true);
        const all = [...singles.map((times, row) => wanted.map((_, kind) => (kind === row ? times : 0))), ...columns];
        const used = program.used();
        wanted.forEach((count, kind) => expect(used.reduce((sum, { column, times }) => sum + times * all[column]![kind]!, 0)).toBeGreaterThan(count - 1e-6));
        const worth = (pieces: readonly number[]): number => pieces.reduce((sum, times, kind) => sum + times * program.prices[kind]!, 0);
        for (const pieces of all) expect(worth(pieces)).toBeLessThan(1 + 1e-6);
        for (const price of program.prices) expect(price).toBeGreaterThan(-1e-6);
        expect(worth(wanted)).toBeCloseTo(program.rolls(), 5);
        expect(used.reduce((sum, { times }) => sum + times, 0)).toBeCloseTo(program.rolls(), 5);
      }),
      { numRuns: 500 },
    );
  });

  it('stays true over several hundred pivots', () => {
    const kinds = 60;
    const wanted = Array.from({ length: kinds }, (_, kind) => 5 + ((kind * 7) % 11));
    const program = coverProgram(wanted, wanted.map(() => 1), budgetOf(Infinity));
    for (let first = 0; first < kinds; first += 1) {
      for (let other = first + 1; other < kinds; other += 1) program.add(columnOf(wanted.map((_, kind) => Number(kind === first) + Number(kind === other || kind === (first * other) % kinds))));
    }
    expect(program.minimise()).toBe(true);
    expect(wanted.reduce((sum, count, kind) => sum + count * program.prices[kind]!, 0)).toBeCloseTo(program.rolls(), 6);
  });
});

describe('the inverse of a matrix', () => {
  it('of (2 1; 0 4) is (0.5 -0.125; 0 0.25), column after column', () => {
    expect([...invert(Float64Array.of(2, 1, 0, 4), 2)]).toEqual([0.5, 0, -0.125, 0.25]);
  });

  it('swaps rows where a pivot is nothing', () => {
    expect([...invert(Float64Array.of(0, 1, 1, 0), 2)]).toEqual([0, 1, 1, 0]);
  });
});

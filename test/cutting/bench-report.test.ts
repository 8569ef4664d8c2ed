import { describe, expect, it } from 'vitest';
import type { Measured } from '../bench/cutting/measure.ts';
import { measure } from '../bench/cutting/measure.ts';
import { reportHighs, reportPlans } from '../bench/cutting/report.ts';
import { freeMatch } from './problems.ts';

const problem = freeMatch(100, [[60, 2], [40, 1_000]]);

function measured(some: Partial<Measured> = {}): Measured {
  return { instance: { name: 'a house', family: '3 rooms', problem }, plan: { rollCount: 3, lowerBound: 3, isProven: true }, milliseconds: 2, faults: [], ...some };
}

describe('the table of the families', () => {
  it('has the middle, the 95 % and the worst time, and the ranges of pieces and types', () => {
    const results = Array.from({ length: 20 }, (_, index) => measured({ milliseconds: 20 - index }));
    expect(reportPlans(results).text).toContain('| 3 rooms | 20 | 1,002 | 2 | all | 10 | 19 | 20 |');
  });

  it('takes the 95 % time of 10 cases to be the worst', () => {
    const results = Array.from({ length: 10 }, (_, index) => measured({ milliseconds: 11 + index }));
    expect(reportPlans(results).text).toContain('| 15 | 20 | 20 |');
  });

  it('is followed by the cases that are open, with their gap', () => {
    const { text, isSound } = reportPlans([measured(), measured({ plan: { rollCount: 5, lowerBound: 3, isProven: false } })]);
    expect(text).toContain('| 1 (50.0 %) |');
    expect(text).toContain('Open: 1 of 2.\n- a house: 5 rolls, at least 3 (gap 2), 2.0 ms');
    expect(isSound).toBe(true);
  });

  it('says each fault aloud', () => {
    const { text, isSound } = reportPlans([measured({ faults: ['rolls[0]: past the end'] })]);
    expect(text).toContain('FAULT in a house: rolls[0]: past the end');
    expect(isSound).toBe(false);
  });
});

describe('the comparison with HiGHS', () => {
  const highs = (milliseconds: number, rolls = 3) => ({ kind: 'finished', rolls, milliseconds }) as const;

  it('is the geometric mean over what both proved; what HiGHS proves alone, or faster, it is ahead in', () => {
    const { text, isSound } = reportHighs(
      [measured({ highs: highs(50) }), measured({ highs: highs(1) }), measured({ highs: highs(9), plan: { rollCount: 4, lowerBound: 3, isProven: false } }), measured({ highs: { kind: 'time up' } }), measured({ highs: { kind: 'killed' } }), measured()],
      60,
    );
    expect(text).toContain('on 5 of 6 cases: 3 finished, 1 out of time, 1 killed, 0 aborted.');
    expect(text).toContain('On the 2 that both proved HiGHS takes 3.5 times as long');
    expect(text).toContain('HiGHS is ahead in 2.\n- a house: HiGHS 3 rolls in 1.0 ms, planCuts 3 proved in 2.0 ms\n- a house: HiGHS 3 rolls in 9.0 ms, planCuts 4 unproved in 2.0 ms');
    expect(isSound).toBe(true);
  });

  it.each([
    ['more rolls than a plan takes', 4, 2],
    ['fewer than its lower bound', 1, 2],
  ])('calls it a contradiction where HiGHS says %s', (_, rolls, lowerBound) => {
    const { text, isSound } = reportHighs([measured({ highs: highs(50, rolls), plan: { rollCount: 3, lowerBound, isProven: false } })], 60);
    expect(text).toContain(`CONTRADICTION in a house: HiGHS says ${rolls} rolls, planCuts 3 and at least 2`);
    expect(isSound).toBe(false);
  });
});

describe('what one problem comes to', () => {
  const instance = { name: 'two and two', family: 'triplets', problem: freeMatch(100, [[60, 2], [40, 2]]) } as const;

  it('is its plan, without a fault where that is as good as is known', () => {
    expect(measure({ ...instance, fewest: 2 }, true)).toMatchObject({ plan: { rollCount: 2, lowerBound: 2, isProven: true }, faults: [] });
  });

  it('has a fault where fewer rolls are known to be enough', () => {
    expect(measure({ ...instance, fewest: 1 }, false).faults).toEqual(['2 rolls, proved; 1 are enough']);
  });

  it('has a fault where a piece is called impossible', () => {
    expect(measure({ ...instance, problem: freeMatch(100, [[101, 1]]) }, true).faults).toEqual(['1 piece types are called impossible, and none is']);
  });
});

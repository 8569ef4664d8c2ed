import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BrokenAssumption } from '../../shared-core/base/index.ts';
import { explainCount, type LikeStrips, planCuts } from '../../shared-core/cutting/index.ts';
import { cutRoll } from './simulate.ts';

const strips: fc.Arbitrary<LikeStrips> = fc.record({
  rollLength: fc.integer({ min: 1, max: 150 }),
  repeat: fc.integer({ min: 0, max: 30 }),
  length: fc.integer({ min: 1, max: 60 }),
  count: fc.integer({ min: 1, max: 40 }),
});

function mostFrom({ rollLength, repeat, length }: LikeStrips, startPhase: number): number {
  const strip = { length, phase: 0, count: 1 };
  const roll = [strip];
  while (cutRoll(roll, startPhase, repeat).end <= rollLength) roll.push(strip);
  return roll.length - 1;
}

describe('explainCount', () => {
  it('16 strips of 2.40 m, repeat 0.625 m: textbook 4 rolls, safe 6', () => {
    expect(explainCount({ rollLength: 10_050, repeat: 625, length: 2_400, count: 16 })).toEqual({
      spacing: 2_500,
      textbook: { perRoll: 4, rolls: 4 },
      safe: { perRoll: 3, rolls: 6 },
      best: { perRoll: 4, rolls: 4 },
      chanceOfOneLess: { numerator: 475, denominator: 625 },
    });
  });

  // A room worked by hand in a magazine (read): roll 1.06 × 10.05 m, repeat 0.64 m, strip of 2.7 m.
  it('17 strips of 2.70 m, repeat 0.64 m: 5 repeats a strip, 3 a roll, 6 rolls', () => {
    expect(explainCount({ rollLength: 10_050, repeat: 640, length: 2_700, count: 17 })).toMatchObject({ spacing: 3_200, textbook: { perRoll: 3, rolls: 6 } });
  });

  it('a free match: all three counts are one, and nothing is left to chance', () => {
    const same = { perRoll: 3, rolls: 12 };
    expect(explainCount({ rollLength: 10_050, repeat: 0, length: 3_000, count: 34 })).toEqual({ spacing: 3_000, textbook: same, safe: same, best: same, chanceOfOneLess: { numerator: 0, denominator: 1 } });
  });

  it('a strip that only some rolls give', () => {
    expect(explainCount({ rollLength: 1_000, repeat: 300, length: 800, count: 5 })).toMatchObject({
      textbook: { perRoll: 1, rolls: 5 },
      safe: { perRoll: 0, rolls: null },
      best: { perRoll: 1, rolls: 5 },
      chanceOfOneLess: { numerator: 100, denominator: 300 },
    });
  });

  it('is at odds with the textbook exactly where the rule says', () => {
    fc.assert(
      fc.property(strips, (each) => {
        const { spacing, textbook, safe, best } = explainCount(each);
        expect(textbook.perRoll).toBeLessThanOrEqual(best.perRoll);
        fc.pre(each.length <= each.rollLength - each.repeat);
        expect(safe.perRoll < textbook.perRoll).toBe((each.rollLength % spacing) + spacing - each.length < each.repeat);
      }),
    );
  });

  it('agrees with the planner on the safe count', () => {
    fc.assert(
      fc.property(strips, (each) => {
        const { safe } = explainCount(each);
        const plan = planCuts({ ...each, rollStart: 'anywhere', pieces: [{ length: each.length, phase: 0, count: each.count }] });
        expect(safe.rolls).toBe(plan.impossible.length > 0 ? null : plan.rollCount);
        expect(plan.isProven).toBe(true);
      }),
    );
  });

  it('agrees with rolls cut from every start on best, worst and chance', () => {
    fc.assert(
      fc.property(strips, (each) => {
        const { textbook, safe, best, chanceOfOneLess } = explainCount(each);
        const yields = Array.from({ length: Math.max(each.repeat, 1) }, (_, startPhase) => mostFrom(each, startPhase));
        expect(Math.max(...yields)).toBe(best.perRoll);
        expect(Math.min(...yields)).toBeGreaterThanOrEqual(safe.perRoll);
        // A start above the first strip by a whole w stands for all of (w - 1, w], so the whole starts that lose
        // a strip are one fewer than the share of a repeat that does, w = repeat being the same start as w = 0.
        const losing = yields.filter((perRoll) => perRoll < textbook.perRoll).length;
        expect(losing).toBe(Math.max(0, chanceOfOneLess.numerator - 1));
        expect(chanceOfOneLess.denominator).toBe(Math.max(each.repeat, 1));
      }),
    );
  });

  it.each([{ length: 0 }, { rollLength: 0 }, { repeat: -1 }, { count: 1.5 }, { count: -1 }])('holds the caller to the rules: %o', (change) => {
    expect(() => explainCount({ rollLength: 10_050, repeat: 625, length: 2_400, count: 16, ...change })).toThrow(BrokenAssumption);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCuts, type CuttingPlan, type CuttingProblem, planCuts, type RollCuts } from '../../shared-core/cutting/index.ts';
import { HALF_DROP, smallProblems } from './problems.ts';

function kindsOf(problem: CuttingProblem, plan: CuttingPlan): readonly string[] {
  return checkCuts(problem, plan).map((fault) => fault.kind);
}

const GOOD = planCuts(HALF_DROP);
const ROLL = GOOD.rolls[0] as RollCuts;

function withCut(index: number, change: { piece?: number; from?: number }): CuttingPlan {
  return { ...GOOD, rolls: [{ ...ROLL, cuts: ROLL.cuts.map((cut, at) => (at === index ? { ...cut, ...change } : cut)) }] };
}

describe('worked example', () => {
  const cuts = [
    { piece: 0, from: 0 },
    { piece: 0, from: 500 },
  ];
  const plan: CuttingPlan = {
    rolls: [{ times: 1, cuts }],
    rollCount: 1,
    lowerBound: 1,
    isProven: true,
    certificate: { rule: 'length', shortest: 450, bound: 1 },
    impossible: [],
  };
  const problem: CuttingProblem = { rollLength: 1_000, repeat: 100, rollStart: 'anywhere', pieces: [{ length: 450, phase: 0, count: 2 }] };

  it('ends past what a roll of unknown start is sure to give, not past one of known start', () => {
    expect(checkCuts(problem, plan)).toEqual([{ kind: 'past-the-end', path: 'rolls[0].cuts[1]', message: 'ends at 950; the roll can be relied on up to 900' }]);
    expect(checkCuts({ ...problem, rollStart: 'at-repeat' }, plan)).toEqual([]);
  });

  it('accepts cuts further apart than they need be, and more pieces than wanted', () => {
    const spread = { ...plan, rolls: [{ times: 1, cuts: [{ piece: 0, from: 0 }, { piece: 0, from: 600 }] }] };
    const roomy: CuttingProblem = { ...problem, rollLength: 1_200 };
    expect(checkCuts(roomy, spread)).toEqual([]);
    expect(checkCuts({ ...roomy, pieces: [{ length: 450, phase: 0, count: 1 }] }, spread)).toEqual([]);
  });
});

describe('a planted fault is found', () => {
  it('nothing planted', () => expect(kindsOf(HALF_DROP, GOOD)).toEqual([]));
  it('a cut shifted off the pattern', () => expect(kindsOf(HALF_DROP, withCut(3, { from: 6_721 }))).toEqual(['off-pattern']));
  it('a cut shifted by a repeat into the one before', () => expect(kindsOf(HALF_DROP, withCut(2, { from: 3_840 }))).toEqual(['overlap']));
  it('a cut shifted past the end', () => expect(kindsOf(HALF_DROP, withCut(3, { from: 7_360 }))).toEqual(['past-the-end']));
  it('a first cut that does not measure from itself', () => expect(kindsOf(HALF_DROP, withCut(0, { from: -640 }))).toContain('malformed'));
  it('a cut between whole units', () => expect(kindsOf(HALF_DROP, withCut(3, { from: 6_720.5 }))).toEqual(['malformed']));
  it('a piece type that is not in the problem', () => expect(kindsOf(HALF_DROP, withCut(3, { piece: 2 }))).toEqual(['malformed', 'short-of-demand']));
  it('a piece of the other phase', () => expect(kindsOf(HALF_DROP, withCut(3, { piece: 0 }))).toEqual(['off-pattern', 'short-of-demand']));
  it('cuts out of order', () => expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [{ ...ROLL, cuts: [0, 2, 1, 3].flatMap((at) => ROLL.cuts[at] ?? []) }] })).toEqual(['overlap']));
  it('a cut left out', () => expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [{ ...ROLL, cuts: ROLL.cuts.slice(0, 3) }] })).toEqual(['short-of-demand']));
  it('a roll dropped, count kept', () => expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [{ ...ROLL, times: 4 }] })).toEqual(['short-of-demand', 'short-of-demand', 'roll-count']));
  it('a roll dropped, count lowered', () => {
    expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [{ ...ROLL, times: 4 }], rollCount: 4 })).toEqual(['short-of-demand', 'short-of-demand', 'bound', 'proof']);
  });
  it('a roll cut no times', () => expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [ROLL, { ...ROLL, times: 0 }] })).toEqual(['malformed']));
  it('an empty roll', () => {
    const plan = { ...GOOD, rolls: [ROLL, { times: 1, cuts: [] }], rollCount: 6, isProven: false };
    expect(kindsOf(HALF_DROP, plan)).toEqual(['malformed']);
  });
  it('a roll count that is one too many', () => expect(kindsOf(HALF_DROP, { ...GOOD, rollCount: 6, isProven: false })).toEqual(['roll-count']));
  it('a bound that its rule does not bear out', () => {
    const rolls = [{ ...ROLL, times: 6 }];
    const plan: CuttingPlan = { ...GOOD, rolls, rollCount: 6, lowerBound: 6, certificate: { ...GOOD.certificate, bound: 6 } };
    expect(kindsOf(HALF_DROP, plan)).toEqual(['bound']);
  });
  it('a bound by count passed off as one by no rule', () => {
    expect(kindsOf(HALF_DROP, { ...GOOD, certificate: { ...GOOD.certificate, rule: 'none' } })).toEqual(['bound']);
  });
  it('a bound over pieces that there are none of', () => {
    expect(kindsOf(HALF_DROP, { ...GOOD, certificate: { ...GOOD.certificate, shortest: 2_231 } })).toEqual(['bound']);
  });
  it('a lower bound other than the certificate says', () => expect(kindsOf(HALF_DROP, { ...GOOD, lowerBound: 4, isProven: false })).toEqual(['bound']));
  it('a proof claimed wrongly', () => {
    expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [{ ...ROLL, times: 6 }], rollCount: 6 })).toEqual(['proof']);
  });
  it('a proof not claimed', () => expect(kindsOf(HALF_DROP, { ...GOOD, isProven: false })).toEqual(['proof']));
  it('a possible piece called impossible', () => expect(kindsOf(HALF_DROP, { ...GOOD, impossible: [1] })).toEqual(['impossible']));
  it('an impossible piece not named', () => {
    const problem = { ...HALF_DROP, pieces: [...HALF_DROP.pieces, { length: 9_411, phase: 0, count: 1 }] };
    const plan = planCuts(problem);
    expect(plan.impossible).toEqual([2]);
    expect(kindsOf(problem, { ...plan, impossible: [] })).toEqual(['impossible']);
  });
  it('a roll of known start cut as if it could start at the first cut', () => {
    const problem: CuttingProblem = { ...HALF_DROP, rollStart: 'at-repeat', pieces: [{ length: 2_230, phase: 320, count: 1 }] };
    const plan = planCuts(problem);
    expect(plan.rolls).toEqual([{ times: 1, cuts: [{ piece: 0, from: 320 }] }]);
    expect(kindsOf(problem, { ...plan, rolls: [{ times: 1, cuts: [{ piece: 0, from: 0 }] }] })).toEqual(['off-pattern']);
  });
});

describe('in any plan', () => {
  const planned = smallProblems({ rollLength: 120, repeat: 25, types: 6, count: 10 })
    .map((problem) => ({ problem, plan: planCuts(problem) }))
    .filter(({ plan }) => plan.rollCount > 0);

  it('a roll dropped is missed, as the plan gives no piece too many', () => {
    fc.assert(
      fc.property(planned, fc.nat(), ({ problem, plan }, pick) => {
        const rolls = plan.rolls.filter((_, index) => index !== pick % plan.rolls.length);
        expect(kindsOf(problem, { ...plan, rolls })).toContain('short-of-demand');
      }),
    );
  });

  it('a bound raised by one is not borne out', () => {
    fc.assert(
      fc.property(planned, ({ problem, plan }) => {
        const bound = plan.lowerBound + 1;
        expect(kindsOf(problem, { ...plan, lowerBound: bound, isProven: bound === plan.rollCount, certificate: { ...plan.certificate, bound } })).toContain('bound');
      }),
    );
  });

  it('a cut moved by less than a repeat is off the pattern', () => {
    fc.assert(
      fc.property(planned, fc.nat(), fc.nat(), ({ problem, plan }, pick, shift) => {
        fc.pre(problem.repeat > 1);
        const roll = plan.rolls[pick % plan.rolls.length] as RollCuts;
        const moved = { ...roll, cuts: roll.cuts.map((cut, index) => (index === roll.cuts.length - 1 ? { ...cut, from: cut.from + 1 + (shift % (problem.repeat - 1)) } : cut)) };
        expect(kindsOf(problem, { ...plan, rolls: plan.rolls.map((other) => (other === roll ? moved : other)) })).toContain('off-pattern');
      }),
    );
  });
});

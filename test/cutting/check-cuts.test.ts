import { describe, expect, it } from 'vitest';
import { BrokenAssumption } from '../../shared-core/base/index.ts';
import { checkCuts } from '../../shared-core/cutting/check-cuts.ts';
import type { Certificate, CuttingPlan, CuttingProblem, RollCuts } from '../../shared-core/cutting/problem.ts';
import { freeMatch, HALF_DROP, manyTypes } from './problems.ts';
import { certificateOf, certify, planFirstFit } from './simple-plans.ts';

function kindsOf(problem: CuttingProblem, plan: CuttingPlan): readonly string[] {
  return checkCuts(problem, plan).map((fault) => fault.kind);
}

const ROLL: RollCuts = {
  times: 5,
  cuts: [
    { piece: 0, from: 0 },
    { piece: 1, from: 2_240 },
    { piece: 0, from: 4_480 },
    { piece: 1, from: 6_720 },
  ],
};

/** By count: 20 pieces, 4 on a roll. */
const GOOD: CuttingPlan = {
  rolls: [ROLL],
  rollCount: 5,
  lowerBound: 5,
  isProven: true,
  certificate: { duals: [1, 1], total: 20, mostPerRoll: 4, isWithinDemand: false, ruledOut: null },
  impossible: [],
};

function withCut(index: number, change: { piece?: number; from?: number }): CuttingPlan {
  return { ...GOOD, rolls: [{ ...ROLL, cuts: ROLL.cuts.map((cut, at) => (at === index ? { ...cut, ...change } : cut)) }] };
}

function withCertificate(change: Partial<Certificate>): CuttingPlan {
  return { ...GOOD, certificate: { ...GOOD.certificate, ...change } };
}

describe('worked example', () => {
  const cuts = [
    { piece: 0, from: 0 },
    { piece: 0, from: 500 },
  ];
  const certificate: Certificate = { duals: [1], total: 2, mostPerRoll: 2, isWithinDemand: false, ruledOut: null };
  const plan: CuttingPlan = { rolls: [{ times: 1, cuts }], rollCount: 1, lowerBound: 1, isProven: true, certificate, impossible: [] };
  const problem: CuttingProblem = { rollLength: 1_000, repeat: 100, rollStart: 'anywhere', pieces: [{ length: 450, phase: 0, count: 2 }] };

  it('ends past what a roll of unknown start is sure to give, not past one of known start', () => {
    const [fault, ...others] = checkCuts(problem, plan);
    expect(fault).toEqual({ kind: 'past-the-end', path: 'rolls[0].cuts[1]', message: 'ends at 950; the roll can be relied on up to 900' });
    // Nor could a roll count for two of them.
    expect(others.map(({ kind, path }) => [kind, path])).toEqual([['bound', 'certificate.mostPerRoll']]);
    expect(checkCuts({ ...problem, rollStart: 'at-repeat' }, plan)).toEqual([]);
  });

  it('takes the whole length that is sure and not one unit more', () => {
    expect(checkCuts({ ...problem, rollLength: 1_050 }, plan)).toEqual([]);
    expect(kindsOf({ ...problem, rollLength: 1_049 }, plan)).toContain('past-the-end');
  });

  it('accepts cuts further apart than they need be', () => {
    expect(checkCuts({ ...problem, rollLength: 1_200 }, { ...plan, rolls: [{ times: 1, cuts: [{ piece: 0, from: 0 }, { piece: 0, from: 600 }] }] })).toEqual([]);
  });

  it('throws for a problem that is out of range', () => {
    expect(() => checkCuts({ ...problem, repeat: 0.5 }, plan)).toThrow(BrokenAssumption);
  });
});

describe('a planted fault in the cuts is found', () => {
  it('nothing planted', () => expect(kindsOf(HALF_DROP, GOOD)).toEqual([]));
  it('a cut shifted off the pattern', () => expect(kindsOf(HALF_DROP, withCut(3, { from: 6_721 }))).toEqual(['off-pattern']));
  it('a cut shifted by a repeat into the one before', () => expect(kindsOf(HALF_DROP, withCut(2, { from: 3_840 }))).toEqual(['overlap']));
  it('a cut shifted past the end', () => expect(kindsOf(HALF_DROP, withCut(3, { from: 7_360 }))).toEqual(['past-the-end']));
  it('a first cut that does not measure from itself', () => expect(kindsOf(HALF_DROP, withCut(0, { from: -640 }))).toEqual(['malformed', 'overlap']));
  it('a cut between whole units', () => expect(kindsOf(HALF_DROP, withCut(3, { from: 6_720.5 }))).toEqual(['malformed']));
  it('a cut nowhere', () => expect(kindsOf(HALF_DROP, withCut(3, { from: NaN }))).toEqual(['malformed']));
  it('a piece type that is not in the problem', () => expect(kindsOf(HALF_DROP, withCut(3, { piece: 2 }))).toEqual(['malformed', 'short-of-demand']));
  it('a piece of the other phase', () => expect(kindsOf(HALF_DROP, withCut(3, { piece: 0 }))).toEqual(['off-pattern', 'over-supply', 'short-of-demand']));
  it('cuts out of order', () => expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [{ ...ROLL, cuts: [0, 2, 1, 3].flatMap((at) => ROLL.cuts[at] ?? []) }] })).toEqual(['overlap']));
  it('a cut left out', () => expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [{ ...ROLL, cuts: ROLL.cuts.slice(0, 3) }] })).toEqual(['short-of-demand']));
  it('a piece too many', () => {
    const rolls = [ROLL, { times: 1, cuts: [{ piece: 1, from: 0 }] }];
    expect(checkCuts(HALF_DROP, { ...GOOD, rolls, rollCount: 6, isProven: false })).toEqual([{ kind: 'over-supply', path: 'rolls', message: 'give 11 pieces of type 1; only 10 are wanted' }]);
  });
  it('a roll dropped, count kept', () => expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [{ ...ROLL, times: 4 }] })).toEqual(['short-of-demand', 'short-of-demand', 'roll-count']));
  it('a roll dropped, count lowered', () => {
    expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [{ ...ROLL, times: 4 }], rollCount: 4 })).toEqual(['short-of-demand', 'short-of-demand', 'bound', 'proof']);
  });
  it('a roll cut no times', () => expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [ROLL, { ...ROLL, times: 0 }] })).toEqual(['malformed']));
  it('half a roll', () => expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [{ ...ROLL, times: 4.5 }, { ...ROLL, times: 0.5 }] })).toEqual(['malformed', 'malformed']));
  it('an empty roll', () => expect(kindsOf(HALF_DROP, { ...GOOD, rolls: [ROLL, { times: 1, cuts: [] }], rollCount: 6, isProven: false })).toEqual(['malformed']));
  it('a roll count that is one too many', () => expect(kindsOf(HALF_DROP, { ...GOOD, rollCount: 6, isProven: false })).toEqual(['roll-count']));
  it('a roll of known start cut as if it could start at the first cut', () => {
    const problem: CuttingProblem = { ...HALF_DROP, rollStart: 'at-repeat', pieces: [{ length: 2_230, phase: 320, count: 1 }] };
    const plan = certify(planFirstFit(problem), certificateOf(problem, [1], false));
    expect(plan.rolls).toEqual([{ times: 1, cuts: [{ piece: 0, from: 320 }] }]);
    expect(kindsOf(problem, plan)).toEqual([]);
    expect(kindsOf(problem, { ...plan, rolls: [{ times: 1, cuts: [{ piece: 0, from: 0 }] }] })).toEqual(['off-pattern']);
  });
});

describe('pieces that no roll can give', () => {
  const problem = { ...HALF_DROP, pieces: [...HALF_DROP.pieces, { length: 9_411, phase: 0, count: 1 }, { length: 9_411, phase: 0, count: 0 }, { length: 9_410, phase: 0, count: 0 }] };
  const plan = { ...GOOD, impossible: [2, 3], certificate: { ...GOOD.certificate, duals: [1, 1, 0, 0, 0] } };

  it('are named, wanted or not, and no others', () => {
    expect(kindsOf(problem, plan)).toEqual([]);
    for (const impossible of [[], [2], [3], [3, 2], [2, 3, 4], [2, 2, 3], [1, 2, 3]]) expect(kindsOf(problem, { ...plan, impossible })).toEqual(['impossible']);
  });

  it('are not cut', () => {
    const rolls = [ROLL, { times: 1, cuts: [{ piece: 2, from: 0 }] }];
    expect(kindsOf(problem, { ...plan, rolls, rollCount: 6, isProven: false })).toEqual(['past-the-end', 'over-supply']);
  });

  it('count for nothing', () => {
    expect(kindsOf(problem, { ...plan, certificate: { ...plan.certificate, duals: [1, 1, 1, 0, 0], total: 21 } })).toEqual(['malformed']);
    expect(kindsOf(problem, { ...plan, certificate: { ...plan.certificate, duals: [1, 1, 0, 0, 1] } })).toEqual(['malformed']);
  });

  it('leave the rest of a plan at nothing where there are no others', () => {
    const nothing: CuttingPlan = { rolls: [], rollCount: 0, lowerBound: 0, isProven: true, certificate: { duals: [0], total: 0, mostPerRoll: 0, isWithinDemand: false, ruledOut: null }, impossible: [0] };
    const tooLong = { ...HALF_DROP, pieces: [{ length: 9_411, phase: 0, count: 1 }] };
    expect(kindsOf(tooLong, nothing)).toEqual([]);
    for (const change of [{ mostPerRoll: 1 }, { isWithinDemand: true }, { ruledOut: 0 }, { total: 1 }] satisfies Partial<Certificate>[]) {
      expect(kindsOf(tooLong, { ...nothing, certificate: { ...nothing.certificate, ...change } })).toEqual(['bound']);
    }
  });
});

describe('a planted fault in the proof is found', () => {
  it('a proof claimed wrongly', () => {
    const spare = { times: 1, cuts: ROLL.cuts.slice(0, 2) };
    const plan = { ...GOOD, rolls: [{ ...ROLL, times: 4 }, spare, spare], rollCount: 6 };
    expect(kindsOf(HALF_DROP, plan)).toEqual(['proof']);
    expect(kindsOf(HALF_DROP, { ...plan, isProven: false })).toEqual([]);
    expect(kindsOf(HALF_DROP, { ...plan, lowerBound: 6 })).toEqual(['bound']);
    expect(kindsOf(HALF_DROP, { ...plan, lowerBound: 6, certificate: { ...GOOD.certificate, ruledOut: 5 } })).toEqual(['bound']);
  });
  it('a proof not claimed', () => expect(kindsOf(HALF_DROP, { ...GOOD, isProven: false })).toEqual(['proof']));
  it('a bound other than the certificate bears out', () => expect(kindsOf(HALF_DROP, { ...GOOD, lowerBound: 4, isProven: false })).toEqual(['bound']));
  it('duals of other types', () => expect(kindsOf(HALF_DROP, withCertificate({ duals: [1] }))).toEqual(['malformed']));
  it('a dual below 0', () => expect(kindsOf(HALF_DROP, withCertificate({ duals: [3, -1] }))).toEqual(['malformed']));
  it('a dual between whole numbers', () => expect(kindsOf(HALF_DROP, withCertificate({ duals: [1.5, 0.5] }))).toEqual(['malformed', 'malformed']));
  it('duals that are all 0', () => expect(kindsOf(HALF_DROP, withCertificate({ duals: [0, 0], total: 0, mostPerRoll: 0 }))).toEqual(['bound']));
  it('a total other than the pieces count for', () => expect(kindsOf(HALF_DROP, withCertificate({ total: 19 }))).toEqual(['bound']));
  it('sums that are too large to be exact', () => {
    expect(kindsOf(HALF_DROP, withCertificate({ duals: [2 ** 50, 2 ** 50], total: 20 * 2 ** 50, mostPerRoll: 4 * 2 ** 50 }))).toEqual(['malformed']);
    expect(kindsOf(HALF_DROP, withCertificate({ ruledOut: 2 ** 52 }))).toEqual(['malformed']);
  });
  it.each([
    [3, "a roll's pieces count for up to 4"],
    [5, "no roll's pieces count for so much"],
  ])('%i as the most on a roll', (mostPerRoll, why) => {
    expect(checkCuts(HALF_DROP, withCertificate({ mostPerRoll }))).toEqual([{ kind: 'bound', path: 'certificate.mostPerRoll', message: `is ${mostPerRoll}; ${why}` }]);
  });
  it('a most that is no whole number of at least 1', () => {
    expect(kindsOf(HALF_DROP, withCertificate({ mostPerRoll: 0 }))).toEqual(['malformed']);
    expect(kindsOf(HALF_DROP, withCertificate({ mostPerRoll: 4.5 }))).toEqual(['malformed']);
    expect(kindsOf(HALF_DROP, withCertificate({ mostPerRoll: NaN }))).toEqual(['malformed']);
  });
  it('demand made use of where it makes no difference', () => {
    expect(checkCuts(HALF_DROP, withCertificate({ isWithinDemand: true }))).toEqual([
      { kind: 'bound', path: 'certificate.isWithinDemand', message: 'is true; 4 is the most of all rolls' },
    ]);
  });
});

describe('a bound over rolls within demand', () => {
  // Of 510 one goes on a roll of 1000, with 490; three of 330 could, but one is wanted.
  const problem = freeMatch(1_000, [[510, 2], [330, 1]]);
  const duals = [1, 1];
  const plan: CuttingPlan = {
    rolls: [{ times: 1, cuts: [{ piece: 0, from: 0 }, { piece: 1, from: 510 }] }, { times: 1, cuts: [{ piece: 0, from: 0 }] }],
    rollCount: 2,
    lowerBound: 2,
    isProven: true,
    certificate: { duals, total: 3, mostPerRoll: 2, isWithinDemand: true, ruledOut: null },
    impossible: [],
  };

  it('holds', () => expect(kindsOf(problem, plan)).toEqual([]));
  it('needs to say so', () => expect(kindsOf(problem, { ...plan, certificate: { ...plan.certificate, isWithinDemand: false } })).toEqual(['bound']));
  it('counts two types that are alike as what they are together', () => {
    const apart = freeMatch(1_000, [[510, 2], [330, 1], [330, 1]]);
    const rolls = [{ times: 1, cuts: [{ piece: 0, from: 0 }, { piece: 1, from: 510 }] }, { times: 1, cuts: [{ piece: 0, from: 0 }, { piece: 2, from: 510 }] }];
    expect(kindsOf(apart, { ...plan, rolls, certificate: { ...plan.certificate, duals: [1, 1, 1], total: 4 } })).toEqual([]);
    // Apart in what they count for, one of each goes on a roll: 3 and 1 make no more than 2 and 3.
    expect(kindsOf(apart, { ...plan, rolls, certificate: { ...plan.certificate, duals: [2, 3, 1], total: 8, mostPerRoll: 5 } })).toEqual([]);
  });
});

describe('a bound by search', () => {
  // Two of 500 would make 1000, so the total of 1750 does not show that two rolls will not do.
  const problem = freeMatch(1_000, [[700, 1], [550, 1], [500, 1]]);
  const plan: CuttingPlan = {
    rolls: [0, 1, 2].map((piece) => ({ times: 1, cuts: [{ piece, from: 0 }] })),
    rollCount: 3,
    lowerBound: 3,
    isProven: true,
    certificate: { duals: [700, 550, 500], total: 1_750, mostPerRoll: 1_000, isWithinDemand: false, ruledOut: 2 },
    impossible: [],
  };
  const claiming = (ruledOut: number | null, lowerBound: number): CuttingPlan => ({ ...plan, lowerBound, isProven: lowerBound === 3, certificate: { ...plan.certificate, ruledOut } });

  it('holds', () => expect(kindsOf(problem, plan)).toEqual([]));
  it('is lower without it', () => expect(kindsOf(problem, claiming(null, 2))).toEqual([]));
  it('says one more than was ruled out', () => expect(kindsOf(problem, claiming(2, 2))).toEqual(['bound']));
  it('is not less than the total shows', () => expect(kindsOf(problem, claiming(1, 2))).toEqual(['bound']));
  it('is not in pieces of a roll', () => expect(kindsOf(problem, claiming(2.5, 3.5))).toContain('bound'));
  it('cannot rule out what the plan takes', () => {
    expect(checkCuts(problem, claiming(3, 4)).map(({ message }) => message)).toEqual(['is 4, more than the 3 rolls that do', 'is 3; the plan takes 3']);
  });
  it('is refuted where so few rolls will do', () => {
    const easier = freeMatch(1_000, [[700, 1], [450, 1], [500, 1]]);
    const easierPlan = { ...plan, certificate: { ...plan.certificate, duals: [700, 450, 500], total: 1_650 } };
    expect(checkCuts(easier, easierPlan)).toEqual([{ kind: 'bound', path: 'certificate.ruledOut', message: 'is 2; so many rolls can hold all pieces' }]);
  });
});

describe('a proof that takes too many steps to check is not taken on trust', () => {
  // Every whole unit of a tape of 10^12 is a place where a top can lie, or an end.
  const rollLength = 1_000_000_000_000;
  const problem: CuttingProblem = { rollLength, repeat: 1, rollStart: 'at-repeat', pieces: [{ length: 300_000_000_001, phase: 0, count: 4 }, { length: 200_000_000_000, phase: 0, count: 1 }] };
  const cuts = [0, 1, 2].map((index) => ({ piece: 0, from: index * 300_000_000_001 }));
  const rolls = [{ times: 1, cuts }, { times: 1, cuts: [{ piece: 0, from: 0 }, { piece: 1, from: 400_000_000_000 }] }];
  const certificate: Certificate = { duals: [3, 2], total: 14, mostPerRoll: 10, isWithinDemand: false, ruledOut: null };
  const plan: CuttingPlan = { rolls, rollCount: 2, lowerBound: 2, isProven: true, certificate, impossible: [] };

  it('of the most on a roll', () => {
    expect(checkCuts(problem, plan)).toEqual([{ kind: 'proof', path: 'certificate.mostPerRoll', message: 'is 10; to make sure takes more steps than the check is allowed' }]);
  });

  it('of the most on a roll within demand', () => {
    expect(checkCuts(problem, { ...plan, certificate: { ...certificate, mostPerRoll: 9, isWithinDemand: true } }).map(({ kind, path }) => [kind, path])).toEqual([['proof', 'certificate.mostPerRoll']]);
  });

  it('of rolls ruled out', () => {
    const apart = [...rolls.slice(0, 1), { times: 1, cuts: [{ piece: 0, from: 0 }] }, { times: 1, cuts: [{ piece: 1, from: 0 }] }];
    const claiming = { ...plan, rolls: apart, rollCount: 3, lowerBound: 3, certificate: { ...certificate, ruledOut: 2 } };
    expect(checkCuts({ ...problem, repeat: 0 }, { ...plan, certificate })).toEqual([]);
    expect(checkCuts({ ...problem, repeat: 0 }, claiming)).toEqual([{ kind: 'proof', path: 'certificate.ruledOut', message: 'is 2; to make sure takes more steps than the check is allowed' }]);
  });
});

describe('a house of 1,200 pieces of 100 types', () => {
  it.each([
    ['of a free match', 0, 'anywhere'],
    ['of a half drop', 640, 'anywhere'],
    ['on rolls that start at a repeat', 530, 'at-repeat'],
  ] as const)('%s is checked exactly', (_, repeat, rollStart) => {
    const problem = manyTypes(repeat, rollStart);
    const duals = problem.pieces.map(({ length }) => length);
    const total = duals.reduce((sum, dual) => sum + 12 * dual, 0);
    const cut = planFirstFit(problem);
    const capacity = rollStart === 'anywhere' ? 10_050 - repeat : 10_050;
    const right = Array.from({ length: 60 }, (_, less) => capacity - less).filter((mostPerRoll) => {
      const faults = checkCuts(problem, certify(cut, { duals, total, mostPerRoll, isWithinDemand: false, ruledOut: null }));
      expect(faults.every(({ path }) => path === 'certificate.mostPerRoll')).toBe(true);
      return faults.length === 0;
    });
    expect(right).toHaveLength(1);
  });
});

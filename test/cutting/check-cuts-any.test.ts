import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCuts } from '../../shared-core/cutting/check-cuts.ts';
import type { Certificate, CuttingPlan, CuttingProblem, RollCuts } from '../../shared-core/cutting/problem.ts';
import { fewestRolls } from './fewest-rolls.ts';
import { smallProblems } from './problems.ts';
import { certificateOf, certify, mostOnARoll, planFirstFit } from './simple-plans.ts';

interface Case {
  readonly problem: CuttingProblem;
  readonly plan: CuttingPlan;
}

/** The certificate by demand where that lowers the most on a roll, by search where the total shows too little. */
function certified(problem: CuttingProblem, worths: readonly number[], isDemandTried: boolean, isSearchTried: boolean): CuttingPlan {
  const cut = planFirstFit(problem);
  const ofAny = certificateOf(problem, worths, false);
  const within = certificateOf(problem, worths, true);
  const certificate: Certificate = isDemandTried && within.mostPerRoll < ofAny.mostPerRoll ? within : ofAny;
  const byTotal = certify(cut, certificate);
  const fewest = fewestRolls(problem);
  return isSearchTried && fewest > byTotal.lowerBound && certificate.total > 0 ? certify(cut, { ...certificate, ruledOut: fewest - 1 }) : byTotal;
}

const cases: fc.Arbitrary<Case> = fc
  .tuple(smallProblems({ rollLength: 60, repeat: 14, types: 5, count: 3 }), fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 5, maxLength: 5 }), fc.boolean(), fc.boolean(), fc.boolean())
  .map(([problem, some, isByLength, isDemandTried, isSearchTried]) => {
    const worths = problem.pieces.map(({ length }, piece) => (isByLength ? length : (some[piece] ?? 1)));
    return { problem, plan: certified(problem, worths, isDemandTried, isSearchTried) };
  });

/** A change of one number or claim of a plan, and where it was made. */
interface Change {
  readonly where: string;
  readonly plan: CuttingPlan;
}

/** Every number that can stand in place of another: it moved by one, by a few, to 0, halved and out of range. */
function others(value: number, by: number): readonly number[] {
  return [...new Set([value + 1, value - 1, value + by, value - by, 0, value + 0.5, -value - 1, NaN, Infinity])].filter((other) => !Object.is(other, value) && other !== value);
}

function changeRolls({ rolls }: CuttingPlan, at: number, change: (roll: RollCuts) => RollCuts): readonly RollCuts[] {
  return rolls.map((roll, index) => (index === at ? change(roll) : roll));
}

/** Every plan that differs from a plan in one number or one claim, but for where a cut lies. */
function changesOf({ problem, plan }: Case, by: number): readonly Change[] {
  const { certificate } = plan;
  const withCertificate = (where: string, change: Partial<Certificate>): Change => ({ where, plan: { ...plan, certificate: { ...certificate, ...change } } });
  const cuts = plan.rolls.flatMap((roll, at) => roll.cuts.map((cut, index) => ({ at, index, cut })));
  return [
    ...others(plan.rollCount, by).map((rollCount) => ({ where: 'rollCount', plan: { ...plan, rollCount } })),
    ...others(plan.lowerBound, by).map((lowerBound) => ({ where: 'lowerBound', plan: { ...plan, lowerBound } })),
    // A bound that is lowered along with the claim of proof is no less wrong.
    ...others(plan.lowerBound, by).map((lowerBound) => ({ where: 'lowerBound and isProven', plan: { ...plan, lowerBound, isProven: lowerBound === plan.rollCount } })),
    { where: 'isProven', plan: { ...plan, isProven: !plan.isProven } },
    ...plan.rolls.flatMap(({ times }, at) => others(times, by).map((other) => ({ where: 'times', plan: { ...plan, rolls: changeRolls(plan, at, (roll) => ({ ...roll, times: other })) } }))),
    ...cuts.flatMap(({ at, index, cut }) =>
      others(cut.piece, by).map((piece) => ({
        where: 'piece',
        plan: { ...plan, rolls: changeRolls(plan, at, (roll) => ({ ...roll, cuts: roll.cuts.map((other, where) => (where === index ? { ...other, piece } : other)) })) },
      })),
    ),
    ...cuts.map(({ at, index }) => ({ where: 'a cut left out', plan: { ...plan, rolls: changeRolls(plan, at, (roll) => ({ ...roll, cuts: roll.cuts.filter((_, where) => where !== index) })) } })),
    ...cuts.map(({ at, cut }) => ({ where: 'a cut added', plan: { ...plan, rolls: changeRolls(plan, at, (roll) => ({ ...roll, cuts: [...roll.cuts, { ...cut, from: (roll.cuts.at(-1)?.from ?? 0) + 14 * by }] })) } })),
    ...plan.rolls.map((_, at) => ({ where: 'a roll left out', plan: { ...plan, rolls: plan.rolls.filter((_, other) => other !== at), rollCount: plan.rollCount - (plan.rolls[at]?.times ?? 0) } })),
    ...plan.impossible.flatMap((piece, at) => [
      ...others(piece, by).map((other) => ({ where: 'impossible', plan: { ...plan, impossible: plan.impossible.with(at, other) } })),
      { where: 'impossible left out', plan: { ...plan, impossible: plan.impossible.toSpliced(at, 1) } },
    ]),
    ...[...problem.pieces.keys(), problem.pieces.length].map((piece) => ({ where: 'impossible added', plan: { ...plan, impossible: [...plan.impossible, piece] } })),
    ...certificate.duals.flatMap((dual, piece) => others(dual, by).map((other) => withCertificate('duals', { duals: certificate.duals.with(piece, other) }))),
    withCertificate('duals added', { duals: [...certificate.duals, 0] }),
    ...(certificate.duals.length > 0 ? [withCertificate('duals left out', { duals: certificate.duals.slice(1) })] : []),
    ...others(certificate.total, by).map((total) => withCertificate('total', { total })),
    ...others(certificate.mostPerRoll, by).map((mostPerRoll) => withCertificate('mostPerRoll', { mostPerRoll })),
    withCertificate('isWithinDemand', { isWithinDemand: !certificate.isWithinDemand }),
    ...(certificate.ruledOut === null
      ? [0, plan.lowerBound - 1, plan.lowerBound, plan.rollCount, NaN].map((ruledOut) => withCertificate('ruledOut', { ruledOut }))
      : [...others(certificate.ruledOut, by), null].map((ruledOut) => withCertificate('ruledOut', { ruledOut }))),
  ];
}

/** Whether a roll's cuts can be made from every start phase, half a unit apart, without touching a place of the tape twice. */
function canBeCut({ rollLength, repeat, rollStart, pieces }: CuttingProblem, { cuts }: RollCuts): boolean {
  const firstPhase = pieces[cuts[0]?.piece ?? -1]?.phase ?? 0;
  const startPhases = rollStart === 'anywhere' && repeat > 0 ? Array.from({ length: 2 * repeat }, (_, half) => half / 2) : [0];
  return startPhases.every((startPhase) => {
    let first = 0;
    while (rollStart === 'anywhere' && repeat > 0 && (startPhase + first) % repeat !== firstPhase) first += 0.5;
    const taken = new Set<number>();
    let before = -1;
    return cuts.every(({ piece, from }) => {
      const { length, phase } = pieces[piece] ?? { length: 1, phase: 0 };
      if (from <= before || (repeat > 0 && (startPhase + first + from) % repeat !== phase)) return false;
      before = from;
      for (let place = 0; place < length; place += 1) {
        if (first + from + place + 1 > rollLength || taken.has(from + place)) return false;
        taken.add(from + place);
      }
      return true;
    });
  });
}

describe('in any plan with a certificate', () => {
  it('there is no fault', () => {
    fc.assert(
      fc.property(cases, ({ problem, plan }) => {
        expect(checkCuts(problem, plan)).toEqual([]);
      }),
      { seed: 1, numRuns: 1_500 },
    );
  });

  it('every single number and claim that is changed is found', () => {
    const found = new Map<string, number>();
    fc.assert(
      fc.property(cases, fc.integer({ min: 2, max: 30 }), (one, by) => {
        for (const { where, plan } of changesOf(one, by)) {
          if (checkCuts(one.problem, plan).length === 0) expect.unreachable(`${where}: ${JSON.stringify({ ...one, changed: plan })}`);
          found.set(where, (found.get(where) ?? 0) + 1);
        }
      }),
      { seed: 2, numRuns: 400 },
    );
    expect(found.size).toBe(19);
    expect(Math.min(...found.values())).toBeGreaterThan(50);
  });

  it('a cut that is moved is found wherever it cannot be made', () => {
    const moved = { possible: 0, impossible: 0 };
    fc.assert(
      fc.property(cases, fc.integer({ min: -30, max: 30 }), ({ problem, plan }, by) => {
        plan.rolls.forEach((roll, at) =>
          roll.cuts.forEach((_, index) => {
            const changed: RollCuts = { ...roll, cuts: roll.cuts.map((cut, other) => (other === index ? { ...cut, from: cut.from + by } : cut)) };
            // From its own top a first cut can't be moved: the others are told from there.
            const isPossible = canBeCut(problem, changed) && (changed.cuts[0]?.from ?? 0) >= 0 && !(problem.rollStart === 'anywhere' && index === 0 && by !== 0);
            expect(checkCuts(problem, { ...plan, rolls: plan.rolls.with(at, changed) }).length === 0).toBe(isPossible);
            moved[isPossible ? 'possible' : 'impossible'] += 1;
          }),
        );
      }),
      { seed: 3, numRuns: 1_500 },
    );
    expect(moved.possible).toBeGreaterThan(100);
    expect(moved.impossible).toBeGreaterThan(100);
  });

  it('rolls that the certificate wrongly rules out are found', () => {
    let claims = 0;
    fc.assert(
      fc.property(cases, ({ problem, plan }) => {
        const fewest = fewestRolls(problem);
        if (fewest < plan.lowerBound || plan.rollCount === fewest || plan.certificate.total === 0) return;
        claims += 1;
        const lowerBound = fewest + 1;
        const claiming = { ...plan, lowerBound, isProven: lowerBound === plan.rollCount, certificate: { ...plan.certificate, ruledOut: fewest } };
        expect(checkCuts(problem, claiming)).toEqual([{ kind: 'bound', path: 'certificate.ruledOut', message: `is ${fewest}; so many rolls can hold all pieces` }]);
      }),
      { seed: 4, numRuns: 4_000 },
    );
    expect(claims).toBeGreaterThan(50);
  });

  it('certificates of all kinds come up', () => {
    const seen = fc.sample(cases, { seed: 5, numRuns: 1_000 }).map(({ problem, plan: { certificate } }) => {
      expect(certificate.mostPerRoll).toBe(mostOnARoll(problem, certificate.duals, certificate.isWithinDemand));
      return `${certificate.isWithinDemand ? 'within demand' : 'any'}, ${certificate.ruledOut === null ? 'by total' : 'by search'}`;
    });
    expect([...new Set(seen)].sort()).toEqual(['any, by search', 'any, by total', 'within demand, by search', 'within demand, by total']);
  });
});

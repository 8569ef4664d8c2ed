import type { HighsOutcome } from './ask-highs.ts';
import type { Measured } from './measure.ts';

type Finished = Measured & { readonly highs: Extract<HighsOutcome, { readonly kind: 'finished' }> };

export interface Report {
  readonly text: string;
  /** False where a plan has faults, or HiGHS contradicts one. */
  readonly isSound: boolean;
}

/**
 * A table of the families, then the cases without a proof and the faults. Times are in ms.
 *
 * Rule: the 95 % time is the shortest that at least 95 % of the cases keep to.
 *
 * Example: of 20 cases of 1, 2, ... 20 ms the median is 10, the 95 % time 19 and the worst 20.
 */
export function reportPlans(results: readonly Measured[]): Report {
  const families = [...new Set(results.map(({ instance }) => instance.family))];
  const faults = results.flatMap(({ instance, faults: some }) => some.map((fault) => `FAULT in ${instance.name}: ${fault}`));
  const table = ['| family | cases | pieces | types | proved | median ms | 95 % ms | worst ms |', '|---|---|---|---|---|---|---|---|'];
  return { text: [...table, ...families.map((family) => rowOf(family, results)), '', ...openCases(results), ...faults].join('\n'), isSound: faults.length === 0 };
}

function rowOf(family: string, results: readonly Measured[]): string {
  const cases = results.filter(({ instance }) => instance.family === family);
  const times = cases.map(({ milliseconds }) => milliseconds).sort((one, other) => one - other);
  const proved = cases.filter(({ plan }) => plan.isProven).length;
  const cells = [
    family,
    cases.length,
    rangeOf(cases.map(({ instance }) => instance.problem.pieces.reduce((sum, { count }) => sum + count, 0))),
    rangeOf(cases.map(({ instance }) => instance.problem.pieces.length)),
    proved === cases.length ? 'all' : `${proved} (${((100 * proved) / cases.length).toFixed(1)} %)`,
    ...[50, 95, 100].map((percent) => round(times[placeOf(percent, times.length)]!)),
  ];
  return `| ${cells.join(' | ')} |`;
}

/** The place, from 0, of the least that so many percent of `count` sorted values keep to. */
function placeOf(percent: number, count: number): number {
  const wanted = percent * count;
  return (wanted - (wanted % 100)) / 100 - (wanted % 100 === 0 ? 1 : 0);
}

function openCases(results: readonly Measured[]): readonly string[] {
  const open = results.filter(({ plan }) => !plan.isProven);
  return [
    `Open: ${open.length} of ${results.length}.`,
    ...open.map(({ instance, plan, milliseconds }) => `- ${instance.name}: ${plan.rollCount} rolls, at least ${plan.lowerBound} (gap ${plan.rollCount - plan.lowerBound}), ${round(milliseconds)} ms`),
  ];
}

/**
 * How HiGHS did on the cases it was asked, in so many seconds each.
 *
 * Rule: compared where both have proved their answer, by the geometric mean of HiGHS's time over planCuts's. HiGHS is
 * ahead where it was faster, or where it alone has proved its answer. Where it finished, its rolls lie from the plan's
 * lower bound to the plan's rolls, or one of the two is wrong.
 *
 * Example: 3 rolls proved in 2 ms where HiGHS takes 50 ms for the same 3: 25 times as long. 4 rolls contradict the plan.
 */
export function reportHighs(results: readonly Measured[], seconds: number): Report {
  const asked = results.filter(({ highs }) => highs !== undefined);
  const finished = results.filter(isFinished);
  const both = finished.filter(({ plan }) => plan.isProven);
  const count = (kind: HighsOutcome['kind']) => asked.filter(({ highs }) => highs?.kind === kind).length;
  const mean = Math.exp(both.reduce((sum, { highs, milliseconds }) => sum + Math.log(highs.milliseconds / milliseconds), 0) / both.length);
  const ahead = finished.filter(({ plan, highs, milliseconds }) => !plan.isProven || highs.milliseconds < milliseconds);
  const contradicted = finished.filter(({ plan, highs }) => highs.rolls > plan.rollCount || highs.rolls < plan.lowerBound);
  const lines = [
    `HiGHS, arc flow, ${seconds} s each, on ${asked.length} of ${results.length} cases: ${count('finished')} finished, ${count('time up')} out of time, ${count('killed')} killed, ${count('aborted')} aborted.`,
    'Solving alone, both warm and on one thread; neither the loading of HiGHS nor the making of its model is counted.',
    both.length === 0 ? 'None was proved by both.' : `On the ${both.length} that both proved HiGHS takes ${round(mean)} times as long, in the geometric mean.`,
    `HiGHS is ahead in ${ahead.length}.`,
    ...ahead.map(({ instance, plan, highs, milliseconds }) => `- ${instance.name}: HiGHS ${highs.rolls} rolls in ${round(highs.milliseconds)} ms, planCuts ${plan.rollCount} ${plan.isProven ? 'proved' : 'unproved'} in ${round(milliseconds)} ms`),
    ...contradicted.map(({ instance, plan, highs }) => `CONTRADICTION in ${instance.name}: HiGHS says ${highs.rolls} rolls, planCuts ${plan.rollCount} and at least ${plan.lowerBound}`),
  ];
  return { text: lines.join('\n'), isSound: contradicted.length === 0 };
}

function isFinished(result: Measured): result is Finished {
  return result.highs?.kind === 'finished';
}

function rangeOf(values: readonly number[]): string {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return least === most ? least.toLocaleString('en') : `${least.toLocaleString('en')}–${most.toLocaleString('en')}`;
}

/** Two digits that count; from 10 on a whole number. */
function round(value: number): string {
  return value >= 10 ? Math.round(value).toLocaleString('en') : value.toPrecision(2);
}

import { parseArgs } from 'node:util';
import { planCuts } from '../../../shared-core/cutting/index.ts';
import { askHighs } from './ask-highs.ts';
import { FAMILIES, type Family, type Instance, instances } from './instances.ts';
import { measure, type Measured } from './measure.ts';
import { reportHighs, reportPlans } from './report.ts';

/*
 * Measures planCuts, at the usual effort, on houses, hotels and triplets, and HiGHS on some of the same problems.
 *
 *   npm run bench:cutting -- [--quick] [--only <family>]... [--highs all|none|sample] [--seconds <60>] [--unchecked]
 *
 * --quick       seeds 1 and 2 only, and no HiGHS unless --highs is given
 * --only        a family: '3 rooms', '10 rooms', '40 rooms', 'hotel 300', 'hotel 1000', '40 rooms measured', 'triplets';
 *               may be given more than once
 * --highs       'sample' (the default) takes some of every family, 'all' every problem; one at a time, each in a process
 *               of its own
 * --seconds     how long HiGHS may take for a problem
 * --unchecked   leaves out the checker's look at every plan, which is never part of the measured time
 *
 * The table goes to standard output, what is going on to standard error. The exit code is 1 where the checker finds fault
 * with a plan, triplets are not cut and proved at a third of their pieces, or HiGHS contradicts a plan.
 */
const { values } = parseArgs({
  options: {
    quick: { type: 'boolean', default: false },
    only: { type: 'string', multiple: true, default: [] },
    highs: { type: 'string' },
    seconds: { type: 'string', default: '60' },
    unchecked: { type: 'boolean', default: false },
  },
});
const families = values.only.length === 0 ? FAMILIES : values.only.map(familyOf);
const extent = values.highs ?? (values.quick ? 'none' : 'sample');
if (!['all', 'none', 'sample'].includes(extent)) throw new Error(`--highs is ${extent}; all, none and sample are accepted.`);
const seconds = Number(values.seconds);
if (!(seconds > 0)) throw new Error(`--seconds is ${values.seconds}; a number above 0 is accepted.`);

const SAMPLES: Readonly<Record<Family, number>> = { '3 rooms': 6, '10 rooms': 6, '40 rooms': 6, 'hotel 300': 6, 'hotel 1000': 6, '40 rooms measured': 4, triplets: 2 };

const measured = families.flatMap((family) => measureFamily(family));
const plans = reportPlans(measured);
console.log(plans.text);
process.exitCode = plans.isSound ? 0 : 1;
if (extent !== 'none') {
  const compared = reportHighs(measured.map(withHighs), seconds);
  console.log(`\n${compared.text}`);
  if (!compared.isSound) process.exitCode = 1;
}

function familyOf(name: string): Family {
  const family = FAMILIES.find((each) => each === name);
  if (family === undefined) throw new Error(`--only is ${name}; the families are ${FAMILIES.join(', ')}.`);
  return family;
}

function measureFamily(family: Family): readonly Measured[] {
  const some = instances(family).filter(({ name }) => !values.quick || /seed [12]$/.test(name));
  for (const { problem } of some.slice(0, 2)) planCuts(problem);
  return some.map((instance, index) => {
    console.error(`${index + 1} of ${some.length}: ${instance.name}`);
    return measure(instance, !values.unchecked);
  });
}

function withHighs(result: Measured): Measured {
  const { instance } = result;
  if (extent === 'sample' && !isSampled(instance)) return result;
  console.error(`HiGHS: ${instance.name}`);
  return { ...result, highs: askHighs(instance.problem, seconds) };
}

/** Evenly spread over a family's problems, so that repeats, matches, roll starts and seeds take turns. */
function isSampled({ name, family }: Instance): boolean {
  const all = measured.filter(({ instance }) => instance.family === family);
  const samples = Math.min(SAMPLES[family], all.length);
  return Array.from({ length: samples }, (_, sample) => {
    const middle = (2 * sample + 1) * all.length;
    return all[(middle - (middle % (2 * samples))) / (2 * samples)]!.instance.name;
  }).includes(name);
}

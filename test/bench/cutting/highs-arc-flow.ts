import type { Highs, ModelData } from 'highs';
import type { CuttingProblem } from '../../../shared-core/cutting/index.ts';
import { type ArcFlow, arcFlow } from './arc-flow.ts';

export interface HighsAnswer {
  /** The fewest rolls, or null where the time was up before they were known. */
  readonly rolls: number | null;
  /** Of the solving alone: not the loading of HiGHS, nor the making of the model. */
  readonly milliseconds: number;
  readonly columns: number;
  readonly rows: number;
}

/**
 * The fewest rolls by HiGHS, as a mixed integer program of flows along the tape (`arcFlow`), within so many seconds.
 *
 * Rule: the objective is whole, so HiGHS may stop as soon as less than one roll is open.
 *
 * Example: ten pieces of 2230 at phase 0 and ten at 320, repeat 640, from rolls of 10050 that start anywhere: 5 rolls.
 */
export function solveWithHighs(highs: Highs, problem: CuttingProblem, seconds: number): HighsAnswer {
  const flow = arcFlow(problem);
  const model = highs.createModel(modelOf(highs, flow));
  try {
    model.options.set({ output_flag: false, time_limit: seconds, mip_rel_gap: 0, mip_abs_gap: 0.99 });
    const began = performance.now();
    model.run();
    const milliseconds = performance.now() - began;
    const isOptimal = model.getModelStatus() === highs.constants.modelStatus.optimal;
    const isTimeUp = model.getModelStatus() === highs.constants.modelStatus.timeLimit;
    if (!isOptimal && !isTimeUp) throw new Error(`HiGHS ends with the model's status ${model.getModelStatus()}`);
    return { rolls: isOptimal ? wholeRolls(model.getObjectiveValue()) : null, milliseconds, columns: flow.columns.length, rows: flow.needs.length };
  } finally {
    model.dispose();
  }
}

function wholeRolls(objective: number): number {
  const rolls = Math.round(objective);
  if (Math.abs(objective - rolls) > 1e-3) throw new Error(`HiGHS says ${objective} rolls`);
  return rolls;
}

function modelOf(highs: Highs, { columns, needs }: ArcFlow): ModelData {
  const { integer, continuous } = highs.constants.variableType;
  const starts = [0];
  for (const { entries } of columns) starts.push(starts.at(-1)! + entries.length);
  return {
    numCols: columns.length,
    numRows: needs.length,
    colCost: columns.map(({ cost }) => cost),
    colLower: columns.map(() => 0),
    colUpper: columns.map(({ upper }) => (upper === Infinity ? highs.infinity : upper)),
    rowLower: needs,
    rowUpper: needs.map(() => highs.infinity),
    integrality: columns.map(({ isWhole }) => (isWhole ? integer : continuous)),
    matrix: {
      format: 'csc',
      numRows: needs.length,
      numCols: columns.length,
      starts,
      indices: columns.flatMap(({ entries }) => entries.map(([row]) => row)),
      values: columns.flatMap(({ entries }) => entries.map(([, value]) => value)),
    },
  };
}

import loadHighs from 'highs';
import { text } from 'node:stream/consumers';
import type { CuttingProblem } from '../../../shared-core/cutting/index.ts';
import { solveWithHighs } from './highs-arc-flow.ts';
import { instances } from './instances.ts';

/** A process of its own for one problem on its input, as JSON with the seconds it may take; the answer goes to its output. */
const { problem, seconds } = JSON.parse(await text(process.stdin)) as { readonly problem: CuttingProblem; readonly seconds: number };
const highs = await loadHighs();
// Warm, as the solver it is measured against.
solveWithHighs(highs, instances('3 rooms').find(({ name }) => name === '3 rooms, 640, half-drop, anywhere, seed 2')!.problem, seconds);
console.log(JSON.stringify(solveWithHighs(highs, problem, seconds)));

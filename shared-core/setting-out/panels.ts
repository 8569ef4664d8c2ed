import type { HungBand, Rules, Wallcovering } from '../house/index.ts';
import { laidWidthOf } from '../house/index.ts';
import { ceilDivide, floorDivide } from '../units/index.ts';
import { type Axis, layAxis, onWall } from './axis.ts';
import { cutStrips, type StripSpan } from './cut-strips.ts';
import type { Grid } from './grid.ts';
import type { Stretch } from './stretch.ts';
import type { StretchLayout } from './strips.ts';

/**
 * Sets out equal panels: every wall divided in equal strips, each no wider than the roll lays, both edges trimmed.
 *
 * Shapes: positions and lengths in units; what does not divide evenly goes to the panels on the right, a unit each. No
 * strip goes round a corner, so there are no wraps, no slivers and no mismatch.
 * Source: common practice of the trade for naturals. Example: a wall of 100 in from rolls of 36 in takes three panels of
 * 33 1/3 in.
 */
export function setOutPanels(stretch: Stretch, band: HungBand, covering: Wallcovering, rules: Rules): StretchLayout {
  const axis = layAxis(stretch, () => 0);
  const grid: Grid = { origin: 0, struck: 0, from: 0, to: axis.length, lappedEnd: null, lap: 0, direction: 'right' };
  const start = onWall(axis, 0);
  return { axis, grid, start, kill: null, mismatch: null, mismatchUpright: null, slivers: [], ...cutStrips(axis, panelSpans(axis, laidWidthOf(covering)), band, covering, rules) };
}

function panelSpans(axis: Axis, laidWidth: number): readonly StripSpan[] {
  const spans: StripSpan[] = [];
  for (const { wall, from } of axis.walls) {
    const count = ceilDivide(wall.length, laidWidth);
    for (let panel = 0; panel < count; panel += 1) {
      const [left, right] = [from + floorDivide(wall.length * panel, count), from + floorDivide(wall.length * (panel + 1), count)];
      spans.push({ number: spans.length, from: left, to: right, cutWidth: right - left });
    }
  }
  return spans;
}

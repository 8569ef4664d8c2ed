import type { HungBand, Mural, Rules } from '../house/index.ts';
import { floorDivide, type Length, lengthOf } from '../units/index.ts';
import { layAxis, onAxis, onWall, unroll } from './axis.ts';
import { chosenLayout } from './chosen-layout.ts';
import { aboveFloor, bottomOf, edgeOver, topOf } from './heights.ts';
import { type Stretch, wrapAfter } from './stretch.ts';
import type { Strip } from './cut-strips.ts';
import type { StretchLayout } from './strips.ts';
import { say } from '../words/index.ts';

/** By how much a mural is narrower or lower than what it should cover; 0 where it is enough. */
export interface MuralShortage {
  readonly width: Length;
  readonly height: Length;
}

export interface MuralLayout extends StretchLayout {
  readonly shortage: MuralShortage;
  /** Panels that have no place on the stretch, by number. */
  readonly leftOut: readonly number[];
  /** What is cut off its upper and its lower edge. */
  readonly offTop: Length;
  readonly offFoot: Length;
}

/**
 * Sets out a mural on one stretch: which of its numbered panels hang where, and what is trimmed of them.
 *
 * Shapes: positions on the axis and lengths in units; strips are panels, numbered from 1. Centred unless the band has a
 * layout, whose start is where the left edge of the first panel stands; the first panel is 1 unless the band says so.
 * What is wider than the stretch is cut off, so outer panels may be trimmed or left out. Its upper edge hangs at the
 * highest place, or where its level line asks; what is higher falls away. One that is too small is set out as far as it
 * goes, with by how much it falls short.
 * Source: common practice, no source. Example: four panels of 1 m on a wall of 3.40 m lose 30 cm at both sides.
 */
export function setOutMural(stretch: Stretch, band: HungBand, mural: Mural, rules: Rules): MuralLayout {
  const axis = layAxis(stretch, (wall) => wrapAfter(wall, rules));
  const end = axis.isClosed ? axis.length - axis.walls.at(-1)!.wrap : axis.length;
  const first = band.firstPanel ?? 1;
  const width = mural.panelWidth.length;
  const hung = (mural.panels - first + 1) * width;
  const layout = chosenLayout(band);
  const isPlaced = layout !== undefined && stretch.walls.some(({ id }) => id === layout.start.wall);
  const origin = isPlaced ? onAxis(axis, layout.start) : floorDivide(end - hung, 2);
  const parts = unroll(axis, 0, end).map(({ wall }) => wall);
  const highest = Math.max(...parts.map((wall) => edgeOver(topOf(band, wall), wall.length, 0, wall.length).highest));
  const lowest = Math.min(...parts.map((wall) => edgeOver(bottomOf(band, wall), wall.length, 0, wall.length).lowest));
  const top = band.levelLine ? aboveFloor(stretch.walls[0]!, band.levelLine.at.length).left + band.levelLine.below.length : highest;
  const foot = top - mural.panelHeight.length;
  const strips = Array.from({ length: mural.panels - first + 1 }, (_, index): Strip => {
    const number = first + index;
    const [from, to] = [Math.max(0, origin + index * width), Math.min(end, origin + (index + 1) * width)];
    return {
      number,
      from,
      to,
      cutWidth: lengthOf(Math.max(0, to - from)),
      parts: (from < to ? unroll(axis, from, to) : []).map((part) => ({ wall: part.wall.id, from: lengthOf(part.from - part.shift), to: lengthOf(part.to - part.shift), wrap: lengthOf(0), lean: lengthOf(0) })),
      pieces: [{ label: say`panel ${number}`, strip: number, part: 'full', length: mural.panelHeight.length, phase: lengthOf(0), top: lengthOf(highest), bottom: lengthOf(lowest), upperEdge: lengthOf(top) }],
    };
  }).filter(({ from, to }) => from < to);
  const struck = Math.max(0, origin);
  const numbers = new Set(strips.map(({ number }) => number));
  const more = (units: number) => lengthOf(Math.max(0, units));
  return {
    axis,
    grid: { origin, struck, from: 0, to: end, lappedEnd: null, lap: 0, direction: 'right' },
    start: onWall(axis, struck),
    kill: null,
    mismatch: null,
    mismatchUpright: null,
    slivers: [],
    datum: lengthOf(highest),
    strips,
    shortage: { width: lengthOf(more(origin) + more(end - (origin + hung))), height: lengthOf(more(highest - top) + more(foot - lowest)) },
    leftOut: Array.from({ length: mural.panels }, (_, index) => index + 1).filter((number) => !numbers.has(number)),
    offTop: more(top - highest),
    offFoot: more(lowest - foot),
  };
}

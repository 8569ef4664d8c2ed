import type { HungBand, Mural, Rules } from '../house/index.ts';
import { floorDivide, type Length, lengthOf } from '../units/index.ts';
import { layAxis, onWall, unroll } from './axis.ts';
import { bottomOf, edgeOver, topOf } from './heights.ts';
import { type Stretch, wrapAfter } from './stretch.ts';
import type { Strip } from './cut-strips.ts';
import type { StretchLayout } from './strips.ts';

/** By how much a mural is narrower or lower than what it should cover; 0 where it is enough. */
export interface MuralShortage {
  readonly width: Length;
  readonly height: Length;
}

export interface MuralLayout extends StretchLayout {
  readonly shortage: MuralShortage;
}

/**
 * Sets out a mural centred on one stretch: which of its numbered panels hang where, and what is trimmed of the outer ones.
 *
 * Shapes: positions on the axis and lengths in units; strips are panels, numbered from 1. What a mural is wider than the
 * stretch is cut off in halves at both sides, so outer panels may be trimmed or left out; what it is higher falls away at
 * the bottom with the trims. One that is too small is set out as far as it goes, with by how much it falls short.
 * Source: common practice, no source. Example: four panels of 1 m on a wall of 3.40 m lose 30 cm at both sides.
 */
export function setOutMural(stretch: Stretch, band: HungBand, mural: Mural, rules: Rules): MuralLayout {
  const axis = layAxis(stretch, (wall) => wrapAfter(wall, rules));
  const end = axis.isClosed ? axis.length - axis.walls.at(-1)!.wrap : axis.length;
  const origin = floorDivide(end - mural.panels * mural.panelWidth.length, 2);
  const edges = unroll(axis, 0, end).map(({ wall }) => ({ top: edgeOver(topOf(band, wall), wall.length, 0, wall.length), bottom: edgeOver(bottomOf(band, wall), wall.length, 0, wall.length) }));
  const [highest, lowest] = [Math.max(...edges.map(({ top }) => top.highest)), Math.min(...edges.map(({ bottom }) => bottom.lowest))];
  const strips = Array.from({ length: mural.panels }, (_, panel): Strip => {
    const from = Math.max(0, origin + panel * mural.panelWidth.length);
    const to = Math.min(end, origin + (panel + 1) * mural.panelWidth.length);
    const parts = from < to ? unroll(axis, from, to) : [];
    return {
      number: panel + 1,
      from,
      to,
      cutWidth: lengthOf(to - from),
      parts: parts.map((part) => ({ wall: part.wall.id, from: lengthOf(part.from - part.shift), to: lengthOf(part.to - part.shift) })),
      pieces: [{ label: `panel ${panel + 1}`, strip: panel + 1, part: 'full', length: mural.panelHeight.length, phase: lengthOf(0), top: lengthOf(highest), bottom: lengthOf(lowest) }],
    };
  }).filter(({ from, to }) => from < to);
  const start = onWall(axis, Math.max(0, origin));
  return {
    axis,
    grid: { origin, struck: Math.max(0, origin), from: 0, to: end, lappedEnd: null, lap: 0, direction: 'right' },
    start,
    kill: null,
    mismatch: null,
    slivers: 0,
    datum: lengthOf(highest),
    strips,
    shortage: {
      width: lengthOf(Math.max(0, end - mural.panels * mural.panelWidth.length)),
      height: lengthOf(Math.max(0, highest - lowest - mural.panelHeight.length)),
    },
  };
}

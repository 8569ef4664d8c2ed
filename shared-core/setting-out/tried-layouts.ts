import { floorDivide, type Length, modulo } from '../units/index.ts';
import { type Axis, onAxis, onWall } from './axis.ts';
import type { ChosenLayout } from './chosen-layout.ts';
import { edgeShift, type Grid, hungBeside, placeGrid } from './grid.ts';
import type { KillPoint } from './kill-points.ts';
import type { StartCandidate, StartKind } from './start-candidates.ts';

/** A layout to be judged: how its seams stand, and the line that is struck for it. */
export interface TriedLayout {
  readonly layout: ChosenLayout;
  readonly startKind: StartKind;
  readonly grid: Grid;
}

/** What ends at one kill point, or an open stretch between its own ends. */
export interface TriedEnds {
  readonly kill: KillPoint | null;
  readonly grid: Grid;
}

/** The ends that layouts may have: one pair for each kill point, the best hidden first; an open stretch has its own. */
export function endsOfLayouts(axis: Axis, laidWidth: Length, kills: readonly KillPoint[]): readonly TriedEnds[] {
  if (!axis.isClosed) return [{ kill: null, grid: placeGrid(axis, laidWidth, undefined) }];
  return kills
    .toSorted((one, other) => one.exposure - other.exposure)
    .map((kill) => ({ kill, grid: placeGrid(axis, laidWidth, { start: kill.place, edge: 'left', direction: 'right', kill: 'start' }) }));
}

export interface TriedBy {
  readonly axis: Axis;
  readonly laidWidth: Length;
  readonly starts: readonly StartCandidate[];
  /** How many strips a drop match takes to come round; 1 without one. */
  readonly cycle: number;
  readonly sliver: number;
  /** What a place nobody gave is rounded to, where that changes nothing: an inch, a centimetre. */
  readonly grain: number;
  /** Which of two starts that put the same seams in the same places is the better reasoned: below 0 the first. */
  readonly compare: (one: TriedStart, other: TriedStart) => number;
}

export interface TriedStart {
  readonly kind: StartKind;
  readonly struck: number;
}

/**
 * The layouts between two ends that can differ in anything they are judged by, each with its best reasoned start.
 *
 * The seams of all layouts between the same ends are one grid moved by less than a strip's width. What a layout is judged
 * by changes only where a seam passes one of the candidate places, so one move at each of them and one between each two
 * stand for all; of a drop match each once for every strip of its cycle that may stand first. Heights that change along
 * a wall change the pieces between these places too: there the search is exact at the places it tries.
 */
export function layoutsBetween(ends: TriedEnds, tried: TriedBy): readonly TriedLayout[] {
  const { axis, laidWidth, starts, cycle, sliver, grain, compare } = tried;
  const { kill, grid } = ends;
  interface Start extends TriedStart {
    readonly origin: number;
    readonly candidate: StartCandidate | null;
  }
  const best = new Map<number, Start>();
  const slotOf = (origin: number) => modulo(origin - grid.from, laidWidth) * cycle + modulo(floorDivide(grid.from - origin, laidWidth), cycle);
  const moves = new Set(movesOfEnds(grid, laidWidth, sliver));
  for (const candidate of starts) {
    const struck = onAxis(axis, candidate.place);
    const beside = hungBeside(axis, struck, candidate.edge);
    const turn = axis.isClosed ? floorDivide(beside - grid.from, axis.length) * axis.length : 0;
    const start: Start = { candidate, kind: candidate.kind, struck, origin: struck - turn - edgeShift(candidate.edge, laidWidth) };
    moves.add(modulo(start.origin - grid.from, laidWidth));
    const slot = slotOf(start.origin);
    const before = best.get(slot);
    if (!before || compare(start, before) < 0) best.set(slot, start);
  }
  for (const { move, room } of withMiddles(moves, laidWidth)) {
    for (let turn = 0; turn < cycle; turn += 1) {
      const first = grid.from + move + turn * laidWidth;
      if (best.has(slotOf(first))) continue;
      const seam = seamOnAWall(axis, first, grid.to, cycle * laidWidth);
      if (seam !== null) {
        const origin = seam + toGrain(axis, seam, grain, room);
        best.set(slotOf(first), { candidate: null, kind: 'clear', struck: origin, origin });
        continue;
      }
      // In a stretch of few strips the one that comes first in the cycle may have no seam but at its right.
      const before = first - (cycle - 1) * laidWidth;
      const right = seamOnAWall(axis, before < grid.from ? before + cycle * laidWidth : before, grid.to, cycle * laidWidth);
      if (right === null) continue;
      const struck = right + toGrain(axis, right, grain, room);
      best.set(slotOf(first), { candidate: { place: onWall(axis, struck), edge: 'right', kind: 'clear' }, kind: 'clear', struck, origin: struck - laidWidth });
    }
  }
  const placed = [...best.values()].map(({ candidate, kind, origin }): TriedLayout => {
    const { place, edge } = candidate ?? { place: onWall(axis, origin), edge: 'left' as const };
    return { layout: { start: place, edge, direction: kill ? 'both' : 'right', kill: kill ? kill.place : 'start' }, startKind: kind, grid: { ...grid, origin, struck: origin + edgeShift(edge, laidWidth), direction: 'both' } };
  });
  if (!kill) return placed;
  // Where the end that laps takes a strip of its own, lapping the other end may take none.
  const lappedLeft = placed.filter((one) => takesExtra(one.grid, laidWidth)).map(({ layout, startKind }) => placedAs({ ...layout, direction: 'left' }, startKind, tried));
  const struckThere = (['right', 'left'] as const).map((direction) => placedAs({ start: kill.place, edge: direction === 'right' ? 'left' : 'right', direction, kill: 'start' }, 'kill', tried));
  return [...struckThere, ...placed, ...lappedLeft];
}

/** The first seam of a row that stands on a wall, and not in the wrap of a corner, where no line can be struck. */
function seamOnAWall(axis: Axis, first: number, end: number, step: number): number | null {
  for (let seam = first; seam < end; seam += step) {
    const isOnWall = modulo(onAxis(axis, onWall(axis, seam)) - seam, axis.length) === 0;
    if (isOnWall) return seam;
  }
  return null;
}

function placedAs(layout: ChosenLayout, startKind: StartKind, { axis, laidWidth }: TriedBy): TriedLayout {
  return { layout, startKind, grid: placeGrid(axis, laidWidth, layout) };
}

/** Where a seam on an end, a sliver from it, or as far from it as leaves room for the lap comes or goes. */
function movesOfEnds({ from, to, lap }: Grid, laidWidth: Length, sliver: number): readonly number[] {
  return [0, sliver, -sliver, lap, -lap].flatMap((step) => [modulo(step, laidWidth), modulo(to - from + step, laidWidth)]);
}

interface Move {
  readonly move: number;
  /** How far it may be moved on to either side without passing another. */
  readonly room: number;
}

function withMiddles(moves: ReadonlySet<number>, laidWidth: Length): readonly Move[] {
  const sorted = [...moves].sort((one, other) => one - other);
  return sorted.flatMap((move, index): readonly Move[] => {
    const next = sorted[index + 1] ?? sorted[0]! + laidWidth;
    const given = { move, room: 0 };
    return next - move > 1 ? [given, { move: modulo(floorDivide(move + next, 2), laidWidth), room: floorDivide(next - move - 1, 2) }] : [given];
  });
}

/** How far to a place on the wall that is easy to measure, where there is one near enough. */
function toGrain(axis: Axis, seam: number, grain: number, room: number): number {
  const { wall, at } = onWall(axis, seam);
  const shift = floorDivide(2 * at + grain, 2 * grain) * grain - at;
  const isOnWall = at + shift > 0 && at + shift < axis.walls.find((one) => one.wall.id === wall)!.wall.length;
  return Math.abs(shift) < room && isOnWall ? shift : 0;
}

function takesExtra({ origin, to, lap }: Grid, laidWidth: Length): boolean {
  const last = modulo(to - origin, laidWidth) || laidWidth;
  return last + lap > laidWidth;
}

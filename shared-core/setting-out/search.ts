import type { HungBand, Rules, Wallcovering } from '../house/index.ts';
import { laidWidthOf } from '../house/index.ts';
import { ceilDivide, floorDivide, modulo } from '../units/index.ts';
import { type Axis, layAxis, onAxis } from './axis.ts';
import type { ChosenLayout } from './chosen-layout.ts';
import type { Cover } from './covers.ts';
import { demandOf, type PieceDemand } from './cut-strips.ts';
import { placeGrid } from './grid.ts';
import { type KillKind, type KillPoint, killPoints, type Sight } from './kill-points.ts';
import type { Mismatch } from './mismatch.ts';
import { countOutsideSeams, countSlivers } from './slivers.ts';
import { type StartCandidate, startCandidates, type StartKind } from './start-candidates.ts';
import { type Stretch, wrapAfter } from './stretch.ts';
import { mismatchOf, stripSpans } from './strips.ts';

/** A layout on offer, with what it was judged by. */
export interface LayoutOption {
  readonly layout: ChosenLayout;
  readonly rolls: number;
  /** Null in an open stretch. */
  readonly mismatch: Mismatch | null;
  /** The mismatch, less where it is hidden better: in units of a mismatch on a bare wall. */
  readonly visibleMismatch: number;
  readonly slivers: number;
  readonly outsideSeams: number;
  readonly strips: number;
  readonly killKind: KillKind | null;
  readonly startKind: StartKind;
}

export interface LayoutSearch {
  readonly stretch: Stretch;
  readonly band: HungBand;
  readonly covering: Wallcovering;
  readonly rules: Rules;
  readonly sight: Sight;
  /** Rolls that pieces take, asked once for each different demand. */
  readonly countRolls: (demand: readonly PieceDemand[]) => number;
}

const MOST_OPTIONS = 5;
/** Strips that a search cuts at most, some fifty times what a large room takes; beyond it the best hidden kill points are tried first. */
const MOST_STRIPS = 400_000;

/**
 * The best layouts of a stretch that differ in kind, the best of all first.
 *
 * Every kill point is tried with every candidate start and both directions; they are judged by rolls, then visible
 * mismatch, then slivers, then seams at outside corners, then strips. Ties go by geometry (the better hidden kill point,
 * the entrance's corner, the longer wall, the way round from there), never by the order in which walls were typed.
 * Example: in the worked room of 12' 4" by 10' 2" with its door on A, the ends meet at the door's side, 7 1/2 in over.
 */
export function searchLayouts(search: LayoutSearch): readonly LayoutOption[] {
  const ranked = judgeAll(search).toSorted((one, other) => compareOptions(one, other));
  const [best] = ranked;
  if (!best) return [];
  const chosen: JudgedOption[] = [];
  const kinds = new Set<string>();
  for (const option of ranked) {
    const kind = `${option.killKind} ${option.startKind}`;
    if (kinds.has(kind) || option.rolls > best.rolls + 1) continue;
    kinds.add(kind);
    chosen.push(option);
    if (chosen.length === MOST_OPTIONS) break;
  }
  return chosen.map(({ tie: _tie, ...option }) => option);
}

interface JudgedOption extends LayoutOption {
  /** By geometry alone, the lesser the better. */
  readonly tie: readonly number[];
}

function judgeAll(search: LayoutSearch): readonly JudgedOption[] {
  const { stretch, band, covering, rules, sight } = search;
  const axis = layAxis(stretch, (wall) => wrapAfter(wall, rules));
  const laidWidth = laidWidthOf(covering);
  const kills = killPoints(axis, band, sight);
  const rolls = rememberRolls(search.countRolls);
  const anchor = kills.find(({ kind }) => kind === 'entrance-corner');
  const origin = anchor ? onAxis(axis, anchor.place) : 0;
  const cycle = covering.dropBy?.denominator ?? 1;
  const judged = new Map<string, JudgedOption>();
  const known = new Map<string, readonly Cover[]>();

  for (const { layout, kill, startKind } of allLayouts(axis, kills, startCandidates(axis, band, rules, sight), floorDivide(MOST_STRIPS * laidWidth, axis.length))) {
    const grid = placeGrid(axis, laidWidth, layout);
    // Starts that put the same seams in the same places differ only in where the hanging begins.
    const first = floorDivide(grid.from - grid.origin, laidWidth);
    const key = `${grid.from} ${grid.lappedEnd} ${modulo(grid.origin - grid.from, laidWidth)} ${modulo(first, cycle)}`;
    const wall = axis.walls.find((one) => one.wall.id === (kill?.place ?? layout.start).wall)!.wall;
    const around = (position: number) => (axis.isClosed ? modulo(position - origin, axis.length) : position);
    const tie = [kill?.exposure ?? 0, START_ORDER.indexOf(startKind), layout.direction === 'left' ? 1 : 0, -wall.length, around(grid.from), around(grid.struck)];
    const before = judged.get(key);
    if (before) {
      if (compareInTurn(tie, before.tie) < 0) judged.set(key, { ...before, layout, startKind, tie });
      continue;
    }
    const spans = stripSpans(grid, laidWidth);
    const mismatch = axis.isClosed ? mismatchOf(grid, covering) : null;
    judged.set(key, {
      layout,
      rolls: rolls(demandOf(axis, spans, band, covering, rules, known)),
      mismatch,
      visibleMismatch: mismatch && kill ? ceilDivide(mismatch.amount * kill.exposure, 100) : 0,
      slivers: countSlivers(axis, grid, laidWidth, band, rules),
      outsideSeams: countOutsideSeams(axis, grid, laidWidth, rules),
      strips: spans.length,
      killKind: kill?.kind ?? null,
      startKind,
      tie,
    });
  }
  return [...judged.values()];
}

interface TriedLayout {
  readonly layout: ChosenLayout;
  readonly kill: KillPoint | null;
  readonly startKind: StartKind;
}

function allLayouts(axis: Axis, kills: readonly KillPoint[], starts: readonly StartCandidate[], most: number): readonly TriedLayout[] {
  if (!axis.isClosed) {
    return starts.slice(0, Math.max(1, most)).map(({ place, edge, kind }) => ({ layout: { start: place, edge, direction: 'right', kill: 'start' }, kill: null, startKind: kind }));
  }
  const layouts = kills.toSorted((one, other) => one.exposure - other.exposure).flatMap((kill): readonly TriedLayout[] => [
    { layout: { start: kill.place, edge: 'left', direction: 'right', kill: 'start' }, kill, startKind: 'kill' },
    { layout: { start: kill.place, edge: 'right', direction: 'left', kill: 'start' }, kill, startKind: 'kill' },
    ...starts.map(({ place, edge, kind }): TriedLayout => ({ layout: { start: place, edge, direction: 'both', kill: kill.place }, kill, startKind: kind })),
  ]);
  return layouts.slice(0, Math.max(2, most));
}

const START_ORDER: readonly StartKind[] = ['kill', 'strip-centred', 'seam-centred', 'corner', 'opening'];

function compareOptions(one: JudgedOption, other: JudgedOption): number {
  const inTurn = ({ rolls, visibleMismatch, slivers, outsideSeams, strips, tie }: JudgedOption) => [rolls, visibleMismatch, slivers, outsideSeams, strips, ...tie];
  return compareInTurn(inTurn(one), inTurn(other));
}

function compareInTurn(one: readonly number[], other: readonly number[]): number {
  return one.reduce((found, value, index) => found || value - other[index]!, 0);
}

/** A room has few different demands over all its starts; each is cut once. */
function rememberRolls(countRolls: LayoutSearch['countRolls']): LayoutSearch['countRolls'] {
  const remembered = new Map<string, number>();
  return (demand) => {
    const sorted = demand.toSorted((one, other) => one.length - other.length || one.phase - other.phase);
    const key = sorted.map(({ length, phase, count }) => `${length} ${phase} ${count}`).join(',');
    const before = remembered.get(key);
    if (before !== undefined) return before;
    const rolls = countRolls(sorted);
    remembered.set(key, rolls);
    return rolls;
  };
}

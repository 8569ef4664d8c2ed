import type { HungBand, Rules, Wallcovering } from '../house/index.ts';
import { laidWidthOf, matchOf } from '../house/index.ts';
import { ceilDivide, type Length, modulo } from '../units/index.ts';
import { layAxis, onAxis } from './axis.ts';
import type { ChosenLayout } from './chosen-layout.ts';
import { type Demand, demandCounter, type PieceDemand } from './demand.ts';
import { type KillKind, killPoints, type Sight } from './kill-points.ts';
import type { Mismatch } from './mismatch.ts';
import { type SliverCount, sliverCounter } from './slivers.ts';
import { startCandidates, type StartKind } from './start-candidates.ts';
import { type Stretch, wrapAfter } from './stretch.ts';
import { mismatchOf, stripSpans } from './strips.ts';
import { endsOfLayouts, layoutsBetween, type TriedStart } from './tried-layouts.ts';

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
  /** What a place that nothing else decides is rounded to, where that changes nothing: an inch, a centimetre. */
  readonly grain: Length;
  /** Rolls that pieces take, asked once for each different demand; null where that is too much work, and the search ends. */
  readonly countRolls: (demand: readonly PieceDemand[]) => number | null;
  /** Asked now and then: once it says yes, the search ends with the best so far. */
  readonly isEnough?: (() => boolean) | undefined;
}

const MOST_OPTIONS = 5;
/** Strips that a search cuts at most, some fifty times what a large room takes; beyond it the best hidden kill points are tried first. */
const MOST_STRIPS = 400_000;

/**
 * The best layouts of a stretch that differ in kind, the best of all first.
 *
 * Every kill point is tried with every start that can differ from another; they are judged by rolls, then visible
 * mismatch, then slivers, then seams at outside corners, then strips. Ties go by geometry (the better hidden kill point,
 * the entrance's corner, the longer wall, the way round from there), never by the order in which walls were typed. Where
 * that is too much work the best hidden kill points have been tried.
 * Example: in the worked room of 12' 4" by 10' 2" with its door on A, the ends meet at the door's side, 7 1/2 in over.
 */
export function searchLayouts(search: LayoutSearch): readonly LayoutOption[] {
  const kinds = [...bestOfKinds(search).values()].sort(compareJudged);
  const best = kinds[0];
  return best ? kinds.filter(({ rolls }) => rolls <= best.rolls + 1).slice(0, MOST_OPTIONS).map(optionOf) : [];
}

/** What a layout is judged by; what only decides between equals is counted when it is asked for. */
interface Judged extends Omit<LayoutOption, keyof SliverCount> {
  readonly seams: () => SliverCount;
  /** By geometry alone, the lesser the better. */
  readonly tie: () => readonly number[];
}

function optionOf({ seams, tie: _tie, ...option }: Judged): LayoutOption {
  return { ...option, ...seams() };
}

/** The best layout of each kind: what hides its ends, and why its line is struck there. */
function bestOfKinds(search: LayoutSearch): ReadonlyMap<string, Judged> {
  const { stretch, band, covering, rules, sight } = search;
  const axis = layAxis(stretch, (wall) => wrapAfter(wall, rules));
  const laidWidth = laidWidthOf(covering);
  const kills = killPoints(axis, band, sight);
  const demandOf = demandCounter(axis, band, covering, rules);
  const rollsFor = rememberRolls(search.countRolls);
  const anchor = kills.find(({ kind }) => kind === 'entrance-corner');
  const around = (position: number) => (axis.isClosed ? modulo(position - (anchor ? onAxis(axis, anchor.place) : 0), axis.length) : position);
  const compare = (one: TriedStart, other: TriedStart) => START_ORDER.indexOf(one.kind) - START_ORDER.indexOf(other.kind) || around(one.struck) - around(other.struck);
  const cycle = matchOf(covering) === 'drop' ? (covering.dropBy?.denominator ?? 1) : 1;
  const tried = { axis, laidWidth, starts: startCandidates(axis, band, rules, sight), cycle, sliver: rules.sliver.length, grain: search.grain, compare };
  const best = new Map<string, Judged>();
  let cut = 0;

  for (const ends of endsOfLayouts(axis, laidWidth, kills)) {
    const { kill } = ends;
    const countSeams = sliverCounter(axis, ends.grid, laidWidth, band, rules);
    const mismatch = axis.isClosed ? mismatchOf(ends.grid, covering) : null;
    const visibleMismatch = mismatch && kill ? ceilDivide(mismatch.amount * kill.exposure, 100) : 0;
    for (const { layout, startKind, grid } of layoutsBetween(ends, tried)) {
      const spans = stripSpans(grid, laidWidth);
      cut += spans.length;
      const rolls = cut > MOST_STRIPS || search.isEnough?.() ? null : rollsFor(demandOf(spans));
      if (rolls === null) return best;
      const judged: Judged = {
        layout,
        rolls,
        mismatch: mismatch && mismatchOf(grid, covering),
        visibleMismatch,
        seams: once(() => countSeams(grid.origin - grid.from + ends.grid.from)),
        strips: spans.length,
        killKind: kill?.kind ?? null,
        startKind,
        tie: once(() => {
          const wall = axis.walls.find((one) => one.wall.id === (kill?.place ?? layout.start).wall)!.wall;
          return [kill?.exposure ?? 0, START_ORDER.indexOf(startKind), layout.direction === 'left' ? 1 : 0, -wall.length, around(grid.from), around(grid.struck)];
        }),
      };
      const kind = `${judged.killKind} ${startKind}`;
      const before = best.get(kind);
      if (!before || compareJudged(judged, before) < 0) best.set(kind, judged);
    }
  }
  return best;
}

const START_ORDER: readonly StartKind[] = ['kill', 'strip-centred', 'seam-centred', 'corner', 'opening', 'clear'];

function compareJudged(one: Judged, other: Judged): number {
  return (
    one.rolls - other.rolls ||
    one.visibleMismatch - other.visibleMismatch ||
    one.seams().slivers - other.seams().slivers ||
    one.seams().outsideSeams - other.seams().outsideSeams ||
    one.strips - other.strips ||
    one.tie().reduce((found, value, index) => found || value - other.tie()[index]!, 0)
  );
}

function once<Value>(find: () => Value): () => Value {
  let found: { readonly value: Value } | null = null;
  return () => (found ??= { value: find() }).value;
}

/** A room has few different demands over all its starts; each is cut once. */
function rememberRolls(countRolls: LayoutSearch['countRolls']): (demand: Demand) => number | null {
  const remembered = new Map<string, number | null>();
  return ({ key, pieces }) => {
    const before = remembered.get(key);
    if (before !== undefined) return before;
    const rolls = countRolls(pieces());
    remembered.set(key, rolls);
    return rolls;
  };
}

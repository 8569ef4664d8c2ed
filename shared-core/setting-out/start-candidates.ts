import type { HungBand, Rules } from '../house/index.ts';
import { floorDivide, lengthOf } from '../units/index.ts';
import type { Axis } from './axis.ts';
import type { WallPlace } from './chosen-layout.ts';
import { interrupts } from './heights.ts';
import type { Sight } from './kill-points.ts';

/** Why a first line may be struck at a place; `clear` is none but to keep seams off what is there. */
export type StartKind = 'kill' | 'strip-centred' | 'seam-centred' | 'corner' | 'opening' | 'clear';

export interface StartCandidate {
  readonly place: WallPlace;
  readonly edge: 'left' | 'centre' | 'right';
  readonly kind: StartKind;
}

/**
 * The places at which a line is worth striking: exact ones, not a grid.
 *
 * A seam on every corner and every opening's edge, and a sliver's and a wrap's width to either side of each; a strip or
 * a seam centred on the wall that is looked at most, on chimney breasts and between neighbouring openings; a covered reveal's depth inside its opening. Between two
 * of these places nothing changes: no strip falls into an opening or out of it, no sliver comes or goes.
 * Shapes: places on walls. Example: a wall of 100 in with a sliver of 2 in and a wrap of 1/8 in has candidates at 0,
 * 1/8, 2, 98, 99 7/8 and 100 in, and its middle where it is looked at most.
 */
export function startCandidates(axis: Axis, band: HungBand, rules: Rules, sight: Sight): readonly StartCandidate[] {
  const steps = [0, rules.sliver.length, rules.insideWrap.length, rules.minOutsideWrap.length];
  return axis.walls.flatMap(({ wall }, index) => {
    const openings = wall.openings.filter((opening) => interrupts(opening, band, wall)).toSorted((one, other) => one.from - other.from);
    const at = (place: number): readonly StartCandidate[] => (place >= 0 && place <= wall.length ? [{ place: { wall: wall.id, at: lengthOf(place) }, edge: 'left', kind: 'opening' }] : []);
    const near = (edge: number, kind: StartKind): readonly StartCandidate[] =>
      [...new Set(steps.flatMap((step) => [edge - step, edge + step]))]
        .filter((place) => place >= 0 && place <= wall.length)
        .map((place) => ({ place: { wall: wall.id, at: lengthOf(place) }, edge: 'left', kind }));
    const centred = (at: number): readonly StartCandidate[] => [
      { place: { wall: wall.id, at: lengthOf(at) }, edge: 'centre', kind: 'strip-centred' },
      { place: { wall: wall.id, at: lengthOf(at) }, edge: 'left', kind: 'seam-centred' },
    ];
    const before = axis.walls[index - 1] ?? (axis.isClosed ? axis.walls.at(-1) : undefined);
    const isBreast = before?.wall.cornerRight === 'outside' && wall.cornerRight === 'outside';
    return [
      ...near(0, 'corner'),
      ...near(wall.length, 'corner'),
      ...openings.flatMap(({ from, to, reveal }) => [...near(from, 'opening'), ...near(to, 'opening'), ...(reveal ? [...at(from + reveal.depth), ...at(to - reveal.depth)] : [])]),
      ...(wall.id === sight.focalWall || isBreast ? centred(floorDivide(wall.length, 2)) : []),
      ...openings.slice(1).flatMap(({ from }, gap) => centred(floorDivide(openings[gap]!.to + from, 2))),
    ];
  });
}

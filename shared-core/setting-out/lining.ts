import { type HungBand, type Lining, measureOf, type Rules, type Wallcovering } from '../house/index.ts';
import { ceilDivide, type Length, lengthOf } from '../units/index.ts';
import { layAxis, onAxis } from './axis.ts';
import { type BorderLayout, setOutBorder } from './borders.ts';
import { topOf } from './heights.ts';
import { startCandidates } from './start-candidates.ts';
import { type Stretch, wrapAfter } from './stretch.ts';
import { setOutStrips, type StretchLayout } from './strips.ts';
import { say } from '../words/index.ts';

/**
 * Sets out lining paper up and down, its seams kept off the seams of what hangs over it.
 *
 * Shapes: as strips without a pattern. Of the exact candidate starts the one is taken that leaves the fewest of its seams
 * within a sliver of a seam above (nothing above: the first inside corner). The user's own layout comes first.
 * Source: common practice, no source. Example: over strips of 20 in, lining of 20 in is begun 2 in beside them or further.
 */
export function setOutLiningUp(stretch: Stretch, band: HungBand, lining: Lining, rules: Rules, above: readonly StretchLayout[]): StretchLayout {
  const plain = asPlain(lining);
  const first = setOutStrips(stretch, band, plain, rules);
  const seams = above.flatMap(seamsOf);
  if (band.layout || seams.length === 0) return first;
  const axis = layAxis(stretch, (wall) => wrapAfter(wall, rules));
  const isOn = (wall: string) => stretch.walls.some(({ id }) => id === wall);
  const beside = seams.filter(({ wall }) => isOn(wall)).flatMap(({ wall, at }) => [{ wall, at: lengthOf(at + rules.sliver.length) }, { wall, at: lengthOf(Math.max(0, at - rules.sliver.length)) }]);
  const places = [...beside, ...startCandidates(axis, band, rules, { focalWall: null, entrance: null }).map(({ place }) => place)]
    .filter(({ wall, at }) => at <= stretch.walls.find(({ id }) => id === wall)!.length)
    .toSorted((one, other) => onAxis(axis, one) - onAxis(axis, other));
  const tried = places.map((start) => setOutStrips(stretch, band, plain, rules, { start, edge: 'left', direction: 'right', kill: 'start' }));
  return tried.reduce((best, layout) => (countClashes(layout, seams, rules) < countClashes(best, seams, rules) ? layout : best), first);
}

/** How many seams stand within a sliver of a seam above them. */
export function countClashes(layout: StretchLayout, above: readonly SeamPlace[], rules: Rules): number {
  return seamsOf(layout).filter((seam) => above.some(({ wall, at }) => wall === seam.wall && Math.abs(at - seam.at) < rules.sliver.length)).length;
}

export interface SeamPlace {
  readonly wall: string;
  readonly at: Length;
}

/** The seams of a layout by wall; a strip's edge in a corner is none. */
export function seamsOf({ strips, axis }: StretchLayout): readonly SeamPlace[] {
  const lengths = new Map(axis.walls.map(({ wall }) => [wall.id, wall.length]));
  return strips.flatMap(({ parts }) => parts.filter(({ from, wall }) => from > 0 && from < lengths.get(wall)!).map(({ wall, from }) => ({ wall, at: from })));
}

/**
 * Sets out lining paper across: courses from the top down, each a length from inside corner to inside corner.
 *
 * Shapes: as a border's lengths, the courses one after another. A course that an opening takes whole stops at its sides;
 * a length that no roll gives is joined. The last course is as high as what is left.
 * Source: common practice, no source. Example: a wall of 12 ft 4 in, 8 ft high, from lining 22 in wide takes five courses
 * of 12' 6".
 */
export function setOutLiningAcross(stretch: Stretch, band: HungBand, lining: Lining, rules: Rules): BorderLayout {
  const highest = Math.max(...stretch.walls.map((wall) => Math.max(topOf(band, wall).left - wall.base.left, topOf(band, wall).right - wall.base.right)));
  const lowest = band.from === 'floor' ? 0 : band.from.length;
  const count = ceilDivide(Math.max(1, highest - lowest), lining.width.length);
  const { layout: _own, ...hung } = band;
  const courses = Array.from({ length: count }, (_, course) => {
    const top = highest - course * lining.width.length;
    const bottom = Math.max(lowest, top - lining.width.length);
    const width = measureOf(top - bottom);
    return setOutBorder(stretch, { ...hung, from: measureOf(bottom), to: measureOf(top) }, { id: lining.id, kind: 'border', width, rollLength: lining.rollLength, repeat: measureOf(0), rollStart: 'at-repeat' }, rules);
  });
  const lengths = courses.flatMap((course, row) =>
    course.lengths.map((length) => ({ ...length, pieces: length.pieces.map((piece) => ({ ...piece, label: count === 1 ? piece.label : say`${piece.label} course ${row + 1}` })) })),
  );
  return { ...courses[0]!, marks: [], mismatch: null, lengths: lengths.map((length, number) => ({ ...length, number, pieces: length.pieces.map((piece) => ({ ...piece, strip: number })) })) };
}

/** Lining hangs as a wallcovering does that matches everywhere. */
function asPlain({ id, width, rollLength }: Lining): Wallcovering {
  const none = measureOf(0);
  return { id, kind: 'wallcovering', width, rollLength, match: 'free', repeat: none, selvedge: none, seam: 'butt', panels: 'roll-width', rollStart: 'at-repeat', sequence: 'preferred', reverseAlternate: false, singlesPerRoll: 1 };
}

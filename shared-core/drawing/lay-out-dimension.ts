import { pathOf } from './mark-paths.ts';
import type { Mark } from './marks.ts';
import type { DimensionShape } from './shapes.ts';
import { type Box, overlap, type Sheet } from './sheet.ts';
import { textWidth } from './text-size.ts';

/** A figure so many times as wide as what it measures would be read as its neighbour's. */
const MOST_OVERHANG = 3;

/** Extension lines, a dimension line with oblique strokes, and the figure along it. */
export function layOutDimension(shape: DimensionShape, { place, h, taken }: Sheet): readonly Mark[] {
  const [from, to] = [place(shape.from), place(shape.to)];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 1) return [];
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const right = { x: -along.y, y: along.x };
  const out = (point: typeof from, distance: number) => ({ x: point.x + right.x * distance, y: point.y + right.y * distance });
  const far = shape.offset * h;
  const beyond = far + Math.sign(far) * h * 0.35;
  const [start, end] = [out(from, far), out(to, far)];
  const tick = (point: typeof from) => {
    const [dx, dy] = [(along.x + right.x) * h * 0.28, (along.y + right.y) * h * 0.28];
    return pathOf([{ x: point.x - dx, y: point.y - dy }, { x: point.x + dx, y: point.y + dy }]);
  };
  const gap = Math.sign(far) * h * 0.4;
  const lines: Mark = {
    kind: 'path',
    d: `${pathOf([out(from, gap), out(from, beyond)])}${pathOf([out(to, gap), out(to, beyond)])}${pathOf([start, end])}${tick(start)}${tick(end)}`,
    pen: 'thin',
    fill: 'none',
    subject: shape.subject,
  };
  const width = textWidth(shape.text) * h;
  const isUpright = Math.abs(along.y) < 0.5;
  const turn = isUpright ? (Math.atan2(along.y, along.x) * 180) / Math.PI : -90;
  const level = isUpright && Math.abs(turn) > 90 ? turn + 180 : turn;
  const [across, down] = isUpright ? [width / 2, h * 0.6] : [h * 0.6, width / 2];
  // The figure stands above a level line and to the left of an upright one, read from below or from the right; where it
  // is wider than the line, or something is in its way, on the line's other side, or off its middle.
  const sides = width <= length ? [-0.7, 0.75] : [0.75, -0.7];
  const places = (2 * width <= length ? [0.5, 0.25, 0.75] : [0.5]).flatMap((part) => sides.map((side) => ({ part, side })));
  for (const { part, side } of width > length * (shape.isTight ? 1 : MOST_OVERHANG) ? [] : places) {
    const middle = { x: start.x + (end.x - start.x) * part + (isUpright ? 0 : side * h), y: start.y + (end.y - start.y) * part + (isUpright ? side * h : 0) };
    const box: Box = { left: middle.x - across, top: middle.y - down, right: middle.x + across, bottom: middle.y + down };
    if (taken.some((other) => overlap(box, other))) continue;
    taken.push(box);
    return [lines, { kind: 'text', x: middle.x, y: middle.y, anchor: 'middle', size: h, text: shape.text, turn: level, pen: 'thin', subject: shape.subject }];
  }
  // A dimension line without its figure says nothing.
  return [];
}

import { frameOf } from './fit.ts';
import { layOutDimension } from './lay-out-dimension.ts';
import { arrowHead, fixed, pathOf, signOf } from './mark-paths.ts';
import type { Mark, View } from './marks.ts';
import { scaleBar } from './scale-bar.ts';
import type { Drawing, Shape, Spot } from './shapes.ts';
import { type Box, overlap, type Sheet } from './sheet.ts';
import { textWidth } from './text-size.ts';

const RING_RADIUS = 0.95;
/** Around three signs. */
const LONG_RING_RADIUS = 1.15;
const RING_STEPS = [1, 2, 5, 10, 20, 50, 100];
const LEAST_STROKE_SPACING = 5;
/** In smaller tiles nobody could make out a picture. */
const LEAST_TILE = 3;
/** Smaller words are left out: nobody could read them. */
const LEAST_TEXT_HEIGHT = 8;

/**
 * Lays a drawing out in its box: everything to scale but texts, rings and signs, which keep the screen's size.
 *
 * Texts that would lie on others move where they may, and are left out where they may not. Rings that would touch step
 * aside, and where all of them would they are thinned out to every second, fifth, tenth.
 */
export function layOut(drawing: Drawing, view: View): readonly Mark[] {
  const { bounds } = drawing;
  const h = view.textHeight;
  const { scale, left, top } = frameOf(drawing, view);
  const place = ({ x, y, right = 0, down = 0 }: Spot) => ({
    x: left + (x - bounds.left) * scale + right * h,
    y: top + (y - bounds.top) * scale + down * h,
  });
  const taken = reservedBoxes(drawing.shapes, place, h);
  const ringStep = stepOfRings(drawing.shapes, scale, h);
  const isReadable = h >= LEAST_TEXT_HEIGHT;
  const shapes = isReadable ? drawing.shapes : drawing.shapes.filter(({ kind }) => kind !== 'text' && kind !== 'ring' && kind !== 'tab' && kind !== 'dimension');
  const sheet: Sheet = { place, scale, h, taken, ringStep };
  const ends = new Map(shapes.filter((shape) => isEndRing(shape, ringStep)).map((shape) => [shape, layOutShape(shape, sheet)]));
  const marks = shapes.flatMap((shape) => ends.get(shape) ?? layOutShape(shape, sheet));
  return drawing.scaleBar && isReadable ? [...marks, ...scaleBar(drawing.scaleBar, scale, view)] : marks;
}

/** What no number may stand on, whichever is painted first. */
function reservedBoxes(shapes: readonly Shape[], place: Sheet['place'], h: number): Box[] {
  return shapes.flatMap((shape) => {
    if (shape.kind !== 'sign' || shape.sign === 'bob') return [];
    const { x, y } = place(shape.at);
    return [{ left: x - h * 0.75, top: y - h * 0.9, right: x + h * 0.75, bottom: y + h * 0.9 }];
  });
}

/** The first and the last number have their places before the others. */
function isEndRing(shape: Shape, { first, last }: Sheet['ringStep']): boolean {
  return shape.kind === 'ring' && (shape.number === first || shape.number === last);
}

function layOutShape(shape: Shape, sheet: Sheet): readonly Mark[] {
  const { place, scale, h } = sheet;
  const { subject } = shape;
  switch (shape.kind) {
    case 'line': {
      const [from, to] = [place(shape.from), place(shape.to)];
      return [{ kind: 'path', d: `${pathOf([from, to])}${shape.hasArrow ? arrowHead(from, to, h * 0.55) : ''}`, pen: shape.pen, fill: 'none', subject }];
    }
    case 'polyline':
      return [{ kind: 'path', d: pathOf(shape.points.map(place)), pen: shape.pen, fill: 'none', subject }];
    case 'polygon':
      return [{ kind: 'path', d: `${pathOf(shape.points.map(place))}Z`, pen: shape.pen, fill: shape.fill, subject }];
    case 'circle': {
      const { x, y } = place(shape.centre);
      const radius = shape.radius * scale;
      return [{ kind: 'path', d: `M${fixed(x - radius)} ${fixed(y)}a${fixed(radius)} ${fixed(radius)} 0 1 0 ${fixed(2 * radius)} 0a${fixed(radius)} ${fixed(radius)} 0 1 0 ${fixed(-2 * radius)} 0Z`, pen: shape.pen, fill: shape.fill, subject }];
    }
    case 'strokes':
      return shape.spacing * scale < LEAST_STROKE_SPACING ? [] : [{ kind: 'path', d: shape.lines.map((line) => pathOf(line.map(place))).join(''), pen: shape.pen, fill: 'none', subject }];
    case 'picture': {
      const [width, height] = [shape.width * scale, shape.height * scale];
      if (Math.min(width, height) < LEAST_TILE) return [];
      const { picture, fall, isTurned } = shape;
      const d = shape.areas.map((points) => `${pathOf(points.map(place))}Z`).join('');
      return [{ kind: 'picture', d, picture, ...place(shape), width, height, fall: fall * scale, isTurned, pen: 'none', subject }];
    }
    case 'text':
      return layOutText(shape, sheet);
    case 'ring': {
      const { every, first, last } = sheet.ringStep;
      if (every > 1 && shape.number % every !== 0 && shape.number !== first && shape.number !== last) return [];
      const { x, y: eye } = place(shape.at);
      const text = String(shape.number).replace('-', '−');
      const radius = (text.length > 2 ? LONG_RING_RADIUS : RING_RADIUS) * h;
      const boxAt = (y: number) => ({ left: x - radius, top: y - radius, right: x + radius, bottom: y + radius });
      const free = (shape.isFixed ? [0] : [0, 2.2, -2.2]).map((steps) => eye + steps * radius).find((y) => !sheet.taken.some((other) => overlap(boxAt(y), other)));
      if (free === undefined || (every > 1 && free !== eye && shape.number !== first && shape.number !== last)) return [];
      const y = free;
      sheet.taken.push(boxAt(y));
      return [{ kind: 'ring', x, y, radius, text, size: h, pen: 'thin', subject }];
    }
    case 'dimension':
      return layOutDimension(shape, sheet);
    case 'tab':
      return layOutTab(shape, sheet);
    case 'sign':
      return signOf(shape.sign, place(shape.at), h, shape.turn).map((part) => ({ kind: 'path', d: part.d, pen: shape.pen, fill: part.isSolid ? 'solid' : 'paper', subject }));
  }
}

/** A tab is left out where its strip's ring is, and where it would touch another thing. */
function layOutTab(shape: Extract<Shape, { kind: 'tab' }>, { place, h, taken, ringStep: { every, first, last } }: Sheet): readonly Mark[] {
  if (every > 1 && shape.strip % every !== 0 && shape.strip !== first && shape.strip !== last) return [];
  const text = String(shape.roll);
  const { x, y } = place(shape.at);
  const [across, high] = [(textWidth(text) / 2 + 0.3) * h, 1.2 * h];
  const box: Box = { left: x - across, top: y - high, right: x + across, bottom: y };
  if (taken.some((other) => overlap(box, other))) return [];
  taken.push(box);
  const corners = [{ x: box.left, y }, { x: box.left, y: box.top + h * 0.3 }, { x: box.left + h * 0.3, y: box.top }, { x: box.right - h * 0.3, y: box.top }, { x: box.right, y: box.top + h * 0.3 }, { x: box.right, y }];
  return [
    { kind: 'path', d: `${pathOf(corners)}Z`, pen: 'thin', fill: 'paper', subject: shape.subject },
    { kind: 'text', x, y: y - high / 2, anchor: 'middle', size: h, text, turn: 0, pen: 'thin', subject: shape.subject },
  ];
}

function layOutText(shape: Extract<Shape, { kind: 'text' }>, { place, scale, h, taken }: Sheet): readonly Mark[] {
  const size = shape.height === 'label' ? h * 1.15 : h;
  const width = textWidth(shape.text) * size;
  if (shape.within !== undefined && width > shape.within * scale && !shape.isNeeded) return [];
  const boxAt = ({ x, y }: { readonly x: number; readonly y: number }): Box => {
    const left = x - (shape.anchor === 'start' ? 0 : shape.anchor === 'end' ? width : width / 2);
    return { left, top: y - size * 0.6, right: left + width, bottom: y + size * 0.6 };
  };
  const own = place(shape.at);
  const most = shape.mayMove ?? 0;
  const moved = Array.from({ length: Math.abs(most) + 1 }, (_, count) => ({ ...own, y: own.y + count * Math.sign(most) * size * 1.25 }));
  const free = [...moved, ...(shape.otherwise ?? []).map(place)].find((spot) => !taken.some((other) => overlap(boxAt(spot), other)));
  if (!free && !shape.isNeeded) return [];
  const { x, y } = free ?? own;
  taken.push(boxAt({ x, y }));
  return [{ kind: 'text', x, y, anchor: shape.anchor, size, text: shape.text, turn: 0, pen: shape.pen, subject: shape.subject }];
}

/** Every how many rings are shown so that none touch; the first and the last always. */
function stepOfRings(shapes: readonly Shape[], scale: number, h: number): Sheet['ringStep'] {
  const rings = shapes.filter((shape) => shape.kind === 'ring').toSorted((one, other) => one.number - other.number);
  const apart = rings.slice(1).map(({ at }, index) => Math.hypot(at.x - rings[index]!.at.x, at.y - rings[index]!.at.y) * scale).sort((one, other) => one - other);
  const usual = apart[Math.floor(apart.length / 2)] ?? Infinity;
  const wanted = (2 * RING_RADIUS + 0.15) * h;
  const every = RING_STEPS.find((step) => usual * step >= wanted) ?? 200;
  return { every, first: rings[0]?.number ?? 0, last: rings.at(-1)?.number ?? 0 };
}


import { type Drawing, type DrawnPoint, type Fill, type Pen, type Shape, type Spot, type Subject, textWidth } from '../../shared-core/drawing/index.ts';
import { inches, millimetres } from '../../shared-core/units/index.ts';
import { say, sayDecimal } from '../../shared-core/words/index.ts';

/** How a drawing is looked at: the box it fills, the height of its text, and how far it is enlarged and moved. */
export interface View {
  readonly width: number;
  readonly height: number;
  readonly textHeight: number;
  readonly zoom: number;
  readonly panX: number;
  readonly panY: number;
}

/** One tile of a picture in pixels of the box; the others stand beside, above and below it. */
export interface PictureTile {
  readonly picture: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** By how much it falls from its left edge to its right one. */
  readonly fall: number;
  readonly isTurned: boolean;
}

/** What the painter paints, in pixels of the box. */
export type Mark = { readonly pen: Pen; readonly subject: Subject | undefined } & (
  | { readonly kind: 'path'; readonly d: string; readonly fill: Fill | 'sheet' }
  | { readonly kind: 'text'; readonly x: number; readonly y: number; readonly anchor: 'start' | 'middle' | 'end'; readonly size: number; readonly text: string; readonly turn: number }
  | ({ readonly kind: 'picture'; readonly d: string } & PictureTile)
  | { readonly kind: 'ring'; readonly x: number; readonly y: number; readonly radius: number; readonly text: string; readonly size: number }
);

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const RING_RADIUS = 0.95;
/** Around three signs. */
const LONG_RING_RADIUS = 1.15;
/** A figure so many times as wide as what it measures would be read as its neighbour's. */
const MOST_OVERHANG = 3;
const RING_STEPS = [1, 2, 5, 10, 20, 50, 100];
const LEAST_STROKE_SPACING = 5;
/** In smaller tiles nobody could make out a picture. */
const LEAST_TILE = 3;
/** Smaller words are left out: nobody could read them. */
const LEAST_TEXT_HEIGHT = 8;
/** Pixels of a landscape page within its margins, less what a figure keeps around it, on the smaller of the usual papers. */
const PAPER = { width: 960, height: 600 };
const SCALE_BARS = {
  metric: [0.5, 1, 2, 5, 10, 20].map((metres) => ({ length: millimetres(metres * 1000), text: sayDecimal(`${metres} m`) })),
  imperial: [1, 3, 6, 10, 20, 50].map((feet) => ({ length: inches(feet * 12), text: say`${feet} ft` })),
} as const;

/** Pixels in one unit at which a drawing and what stands beside it just fill the box. */
export function fittingScale(drawing: Drawing, { width, height, textHeight }: Pick<View, 'width' | 'height' | 'textHeight'>): number {
  const { bounds, margin } = drawing;
  const across = (width - (margin.left + margin.right) * textHeight) / Math.max(1, bounds.right - bounds.left);
  const down = (height - (margin.top + margin.bottom) * textHeight) / Math.max(1, bounds.bottom - bounds.top);
  return Math.max(0, Math.min(across, down));
}

/** The box of a drawing on paper: as large as the page lets it be, and no higher than it needs. */
export function boxOnPaper(drawing: Drawing, textHeight: number): Pick<View, 'width' | 'height'> {
  const { bounds, margin } = drawing;
  const scale = fittingScale(drawing, { ...PAPER, textHeight });
  return { width: PAPER.width, height: (bounds.bottom - bounds.top) * scale + (margin.top + margin.bottom) * textHeight };
}

/** Pixels in one unit, and where the drawing's own upper left corner stands in its box. */
function frameOf(drawing: Drawing, view: View) {
  const { bounds, margin } = drawing;
  const h = view.textHeight;
  const scale = fittingScale(drawing, view) * view.zoom;
  return {
    scale,
    left: margin.left * h + (view.width - (margin.left + margin.right) * h - (bounds.right - bounds.left) * scale) / 2 + view.panX,
    top: margin.top * h + (view.height - (margin.top + margin.bottom) * h - (bounds.bottom - bounds.top) * scale) / 2 + view.panY,
  };
}

/** The place in a drawing's own units at which a pixel of its box stands, and how many of them one pixel is. */
export function placeUnder(drawing: Drawing, view: View, pixel: DrawnPoint): { readonly at: DrawnPoint; readonly unitsPerPixel: number } {
  const { scale, left, top } = frameOf(drawing, view);
  return { at: { x: drawing.bounds.left + (pixel.x - left) / scale, y: drawing.bounds.top + (pixel.y - top) / scale }, unitsPerPixel: 1 / scale };
}

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
    if (shape.kind !== 'sign' || (shape.sign !== 'lozenge' && shape.sign !== 'sight')) return [];
    const { x, y } = place(shape.at);
    return [{ left: x - h * 0.75, top: y - h * 0.9, right: x + h * 0.75, bottom: y + h * 0.9 }];
  });
}

/** The first and the last number have their places before the others. */
function isEndRing(shape: Shape, { first, last }: Sheet['ringStep']): boolean {
  return shape.kind === 'ring' && (shape.number === first || shape.number === last);
}

interface Sheet {
  readonly place: (spot: Spot) => { readonly x: number; readonly y: number };
  readonly scale: number;
  readonly h: number;
  /** Where texts stand already. */
  readonly taken: Box[];
  readonly ringStep: { readonly every: number; readonly first: number; readonly last: number };
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
    case 'sign': {
      const { x, y } = place(shape.at);
      return signOf(shape.sign, x, y, h, shape.turn).map((part) => ({ kind: 'path', d: part.d, pen: shape.pen, fill: part.isSolid ? 'solid' : 'paper', subject }));
    }
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

/** Extension lines, a dimension line with oblique strokes, and the figure along it. */
function layOutDimension(shape: Extract<Shape, { kind: 'dimension' }>, { place, h, taken }: Sheet): readonly Mark[] {
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

/** Every how many rings are shown so that none touch; the first and the last always. */
function stepOfRings(shapes: readonly Shape[], scale: number, h: number): Sheet['ringStep'] {
  const rings = shapes.filter((shape) => shape.kind === 'ring').toSorted((one, other) => one.number - other.number);
  const apart = rings.slice(1).map(({ at }, index) => Math.hypot(at.x - rings[index]!.at.x, at.y - rings[index]!.at.y) * scale).sort((one, other) => one - other);
  const usual = apart[Math.floor(apart.length / 2)] ?? Infinity;
  const wanted = (2 * RING_RADIUS + 0.15) * h;
  const every = RING_STEPS.find((step) => usual * step >= wanted) ?? 200;
  return { every, first: rings[0]?.number ?? 0, last: rings.at(-1)?.number ?? 0 };
}

function scaleBar(style: 'metric' | 'imperial', scale: number, { width, height, textHeight: h }: View): readonly Mark[] {
  const bars = SCALE_BARS[style];
  const bar = bars.find(({ length }) => length * scale >= 48) ?? bars.at(-1)!;
  const [x, y, long] = [h * 0.6, height - h * 0.7, Math.min(bar.length * scale, width - 2 * h)];
  const d = `${pathOf([{ x, y: y - h * 0.3 }, { x, y: y + h * 0.3 }])}${pathOf([{ x, y }, { x: x + long, y }])}${pathOf([{ x: x + long, y: y - h * 0.3 }, { x: x + long, y: y + h * 0.3 }])}`;
  const ground = `${pathOf([{ x: x - h * 0.4, y: y - h * 0.7 }, { x: x + long + h * (1 + textWidth(bar.text)), y: y - h * 0.7 }, { x: x + long + h * (1 + textWidth(bar.text)), y: height }, { x: x - h * 0.4, y: height }])}Z`;
  return [
    { kind: 'path', d: ground, pen: 'none', fill: 'sheet', subject: undefined },
    { kind: 'path', d, pen: 'visible', fill: 'none', subject: undefined },
    { kind: 'text', x: x + long + h * 0.5, y, anchor: 'start', size: h, text: bar.text, turn: 0, pen: 'visible', subject: undefined },
  ];
}

function signOf(sign: 'bob' | 'lozenge' | 'entrance' | 'sight', x: number, y: number, h: number, turn: number): readonly { readonly d: string; readonly isSolid: boolean }[] {
  const radians = (turn * Math.PI) / 180;
  const at = (right: number, down: number) => ({ x: x + (right * Math.cos(radians) - down * Math.sin(radians)) * h, y: y + (right * Math.sin(radians) + down * Math.cos(radians)) * h });
  const closed = (...points: (readonly [number, number])[]) => `${pathOf(points.map(([right, down]) => at(right, down)))}Z`;
  switch (sign) {
    case 'bob':
      // A collar, a round shoulder, a point: unlike an arrow's head.
      return [{ d: closed([-0.13, -0.1], [0.13, -0.1], [0.13, 0.12], [0.34, 0.27], [0.36, 0.42], [0.2, 0.7], [0, 1.1], [-0.2, 0.7], [-0.36, 0.42], [-0.34, 0.27], [-0.13, 0.12]), isSolid: true }];
    case 'lozenge':
      // Broken where the joint runs through it.
      return [
        { d: closed([-0.12, -0.85], [-0.7, 0], [-0.12, 0.85]), isSolid: false },
        { d: closed([0.12, -0.85], [0.7, 0], [0.12, 0.85]), isSolid: false },
      ];
    case 'entrance':
      return [{ d: closed([-0.45, -0.8], [0.45, -0.8], [0, 0]), isSolid: true }];
    case 'sight':
      return [{ d: `${pathOf([at(-0.6, -0.5), at(0, 0), at(0.6, -0.5)])}`, isSolid: false }];
  }
}

function arrowHead(from: { readonly x: number; readonly y: number }, to: { readonly x: number; readonly y: number }, size: number): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [ax, ay] = [((to.x - from.x) / length) * size, ((to.y - from.y) / length) * size];
  return pathOf([{ x: to.x - ax * 1.6 - ay * 0.7, y: to.y - ay * 1.6 + ax * 0.7 }, to, { x: to.x - ax * 1.6 + ay * 0.7, y: to.y - ay * 1.6 - ax * 0.7 }]);
}

function overlap(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}

function pathOf(points: readonly { readonly x: number; readonly y: number }[]): string {
  return points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${fixed(x)} ${fixed(y)}`).join('');
}

function fixed(value: number): string {
  return String(Math.round(value * 10) / 10);
}

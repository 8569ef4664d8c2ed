import type { LengthStyle } from '../units/index.ts';

/** A point of a drawing in units of 1/320 mm, x to the right and y down; heights are negative y. */
export interface DrawnPoint {
  readonly x: number;
  readonly y: number;
}

/**
 * A point of a drawing, moved on the sheet by heights of the drawing's own text.
 *
 * What must keep its size at any zoom stands beside what it belongs to by such a move: `{x, y, down: 1}` is one
 * height of text below the point.
 */
export interface Spot extends DrawnPoint {
  readonly right?: number;
  readonly down?: number;
}

/**
 * How a line is drawn, by ISO 128's conventions: cut edges thick, visible edges medium, marks and dimensions thin,
 * what is hidden or cut away dashed, centre lines chain-dotted. `struck` is what the user strikes, `guide` what that is
 * in line with, `warn` is worth a look, `stop` stops the work; `motif` is the pale drawing of a pattern.
 */
export type Pen = 'cut' | 'visible' | 'thin' | 'hidden' | 'centre' | 'struck' | 'guide' | 'warn' | 'stop' | 'motif' | 'none';

/** `wall` is bare wall, `pattern` covered wall, `opening` a hole or what stands before the wall; `solid` is the pen's own colour. */
export type Fill = 'none' | 'paper' | 'wall' | 'opening' | 'pattern' | 'selected' | 'solid';

export type SubjectKind =
  | 'wall'
  | 'opening'
  | 'rail'
  | 'furniture'
  | 'mark'
  | 'band'
  | 'corner'
  | 'strip'
  | 'seam'
  | 'border-length'
  | 'joint'
  | 'start'
  | 'direction'
  | 'kill'
  | 'gap';

/** What a shape stands for, so that pointing at it can tell. */
export interface Subject {
  readonly kind: SubjectKind;
  /** Unlike any other of its kind in the drawing. */
  readonly id: string;
  /** What it is and why, as a sentence or two. */
  readonly says: string;
}

interface Belonging {
  readonly subject?: Subject | undefined;
}

export interface LineShape extends Belonging {
  readonly kind: 'line';
  readonly from: Spot;
  readonly to: Spot;
  readonly pen: Pen;
  readonly hasArrow?: boolean;
}

/** A row of lines; `polygon` is closed and may be filled. */
export interface PolylineShape extends Belonging {
  readonly kind: 'polyline';
  readonly points: readonly Spot[];
  readonly pen: Pen;
}

export interface PolygonShape extends Belonging {
  readonly kind: 'polygon';
  readonly points: readonly Spot[];
  readonly pen: Pen;
  readonly fill: Fill;
}

export interface CircleShape extends Belonging {
  readonly kind: 'circle';
  readonly centre: DrawnPoint;
  /** In units. */
  readonly radius: number;
  readonly pen: Pen;
  readonly fill: Fill;
}

/** Many strokes of one pen, left out where they would stand too close to be told apart. */
export interface StrokesShape extends Belonging {
  readonly kind: 'strokes';
  readonly lines: readonly (readonly DrawnPoint[])[];
  readonly pen: Pen;
  /** The distance in units from one figure to the next. */
  readonly spacing: number;
}

/** The user's own picture of one repeat, laid in tiles over areas; what it stands for is what lies under it. */
export interface PictureShape extends Belonging {
  readonly kind: 'picture';
  /** The covering whose picture it is. */
  readonly picture: string;
  /** Polygons that the tiles fill. */
  readonly areas: readonly (readonly DrawnPoint[])[];
  /** The upper left corner of one tile; the others stand beside, above and below it. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** How much lower a tile's right edge stands than its left one: what follows a slope is sheared, not turned. */
  readonly fall: number;
  /** Upside down. */
  readonly isTurned: boolean;
}

/** Words at the screen's own size, at any zoom. */
export interface TextShape extends Belonging {
  readonly kind: 'text';
  /** The middle of the text's height; its left, middle or right by `anchor`. */
  readonly at: Spot;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly height: 'label' | 'dimension' | 'mark';
  readonly text: string;
  readonly pen: Pen;
  /** Width in units that the text has to fit in; it is left out where it does not. */
  readonly within?: number;
  /** Where other text is in the way: how often it may move one line, up (-) or down (+), before it is left out. */
  readonly mayMove?: number;
  /** Other places for it, tried in turn where something stands in its own. */
  readonly otherwise?: readonly Spot[];
  /** Never left out. */
  readonly isNeeded?: boolean;
}

/** A number in a ring, always of the same size; where rings would touch, only every second, fifth, tenth ... is shown. */
export interface RingShape extends Belonging {
  readonly kind: 'ring';
  readonly at: Spot;
  readonly number: number;
  /** Left out rather than moved where it would touch another. */
  readonly isFixed?: boolean;
}

/** The number of a roll on the foot of a strip, always of the same size; thinned out as the rings are. */
export interface TabShape extends Belonging {
  readonly kind: 'tab';
  /** The middle of its lower edge. */
  readonly at: Spot;
  /** The strip whose foot it stands on. */
  readonly strip: number;
  readonly roll: number;
}

/** A dimension as ISO 129 sets it: extension lines, a dimension line with oblique strokes, the figure along it. */
export interface DimensionShape extends Belonging {
  readonly kind: 'dimension';
  readonly from: DrawnPoint;
  readonly to: DrawnPoint;
  /** How far from the points, in heights of text, to the right hand of somebody who walks from one to the other. */
  readonly offset: number;
  readonly text: string;
  /** Left out where its figure is longer than what it measures. */
  readonly isTight?: boolean;
}

/** Our own signs, always of the same size. */
export interface SignShape extends Belonging {
  readonly kind: 'sign';
  /** `bob` hangs from its point, `lozenge` straddles it, `entrance` points to it, `sight` is the wall looked at most. */
  readonly sign: 'bob' | 'lozenge' | 'entrance' | 'sight';
  readonly at: Spot;
  /** Degrees clockwise. */
  readonly turn: number;
  readonly pen: Pen;
}

export type Shape =
  | LineShape
  | PolylineShape
  | PolygonShape
  | CircleShape
  | StrokesShape
  | PictureShape
  | TextShape
  | RingShape
  | TabShape
  | DimensionShape
  | SignShape;

export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A drawing as plain shapes in the order in which they are painted. */
export interface Drawing {
  readonly shapes: readonly Shape[];
  /** What is drawn to scale, in units. */
  readonly bounds: Bounds;
  /** Room for what is not to scale beside it, in heights of text. */
  readonly margin: Bounds;
  /** Whose scale bar it carries; null for a picture too small for one. */
  readonly scaleBar: LengthStyle | null;
  /** The drawing in words, for those who do not see it. */
  readonly description: string;
}

/** A subject's name, unlike any other of the drawing: `strip 3`. */
export function subjectKey({ kind, id }: Pick<Subject, 'kind' | 'id'>): string {
  return `${kind} ${id}`;
}

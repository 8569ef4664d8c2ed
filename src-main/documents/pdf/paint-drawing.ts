import { type Drawing, layOut, type Mark, textWidth, type View } from '../../../shared-core/drawing/index.ts';
import type { Run } from './fonts.ts';
import { INK } from './set-text.ts';
import { type Paint, svgCircle, svgGround, svgOf, svgPath, svgText, svgTurned } from './svg.ts';

type Stroke = Omit<Paint, 'fill'>;
type PenName = Mark['pen'];

const WHITE = '#ffffff';
const PALE = '#cccccc';

/** Told apart by width and dashes alone, in points; what the screen shows in colour is black. */
const PENS: Readonly<Record<PenName, Stroke>> = {
  cut: { stroke: INK, width: 1.44 },
  visible: { stroke: INK, width: 0.78 },
  thin: { stroke: INK, width: 0.45 },
  hidden: { stroke: INK, width: 0.6, dash: '4 2.4' },
  centre: { stroke: INK, width: 0.6, dash: '8 2 1.4 2' },
  struck: { stroke: INK, width: 1.9 },
  guide: { stroke: INK, width: 0.6, dash: '8 2 1.4 2' },
  warn: { stroke: INK, width: 1, dash: '2.4 1.6' },
  stop: { stroke: INK, width: 1.5, dash: '2.4 1.6' },
  motif: { stroke: PALE, width: 0.35 },
  none: {},
};

const RING: Stroke = { stroke: INK, width: 0.6 };

const FILLS: Readonly<Record<Extract<Mark, { kind: 'path' }>['fill'], string>> = { none: 'none', sheet: WHITE, paper: WHITE, wall: WHITE, opening: '#eeeeee', pattern: WHITE, selected: WHITE, solid: INK };

/** From the middle of letters down to the line that they stand on, in heights of text. */
const TO_BASELINE = 0.35;
/** Half the height of what is cleared under words, in heights of text: not as far as a dimension's own line. */
const CLEARED = 0.42;
/** What words take of the width that drawings keep free for them. */
const WRITTEN = 0.88;

export interface PaintedDrawing {
  readonly svg: string;
  /** In points. */
  readonly width: number;
  readonly height: number;
}

/**
 * A drawing as a picture for paper, in black on white: its view's pixels are points.
 *
 * Words stand on white ground, each part of them in the font by which it is spelt. A picture of the user's is not shown.
 */
export function paintDrawing(drawing: Drawing, view: View, spell: (text: string) => readonly Run[]): PaintedDrawing {
  const { width, height } = view;
  return { svg: svgOf(width, height, layOut(drawing, view).flatMap((mark) => painted(mark, spell))), width, height };
}

function painted(mark: Mark, spell: (text: string) => readonly Run[]): readonly string[] {
  switch (mark.kind) {
    case 'path':
      return [svgPath(mark.d, { ...PENS[mark.pen], fill: FILLS[mark.fill] })];
    case 'picture':
      return [];
    case 'ring':
      return [svgCircle(mark, { ...RING, fill: WHITE }), svgText(spell(mark.text), { x: mark.x, y: mark.y + mark.size * TO_BASELINE, size: mark.size, anchor: 'middle' })];
    case 'text': {
      const { x, y, size, anchor, text, turn } = mark;
      const whole = [groundOf(mark), svgText(spell(text), { x, y: y + size * TO_BASELINE, size, anchor })];
      return turn === 0 ? whole : [svgTurned(whole, turn, mark)];
    }
  }
}

function groundOf({ x, y, size, anchor, text }: Extract<Mark, { kind: 'text' }>): string {
  const width = textWidth(text) * size * WRITTEN;
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return svgGround({ x: left, y: y - size * CLEARED, width, height: 2 * size * CLEARED }, WHITE);
}

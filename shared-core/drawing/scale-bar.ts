import { inches, type LengthStyle, millimetres } from '../units/index.ts';
import { say, sayDecimal } from '../words/index.ts';
import { pathOf } from './mark-paths.ts';
import type { Mark, View } from './marks.ts';
import { textWidth } from './text-size.ts';

const SCALE_BARS = {
  metric: [0.5, 1, 2, 5, 10, 20].map((metres) => ({ length: millimetres(metres * 1000), text: sayDecimal(`${metres} m`) })),
  imperial: [1, 3, 6, 10, 20, 50].map((feet) => ({ length: inches(feet * 12), text: say`${feet} ft` })),
} as const;

/** A whole measure to the drawing's scale, in the lower left corner of its box. */
export function scaleBar(style: LengthStyle, scale: number, { width, height, textHeight: h }: View): readonly Mark[] {
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

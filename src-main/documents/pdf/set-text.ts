import type { Content } from 'pdfmake/interfaces.js';
import { spell } from './fonts.ts';

/** In points, to be read at arm's length. */
export const TEXT_SIZE = 11;
export const SMALL = 9.5;
export const HEADING = 13;
export const INK = '#000000';
/** As dark as small letters have to be on white, also from a printer without colour. */
export const SOFT = '#444444';
/** Of a box to tick. */
export const BOX = 11;

/** Of a word that no column would hold, what may stand on one line. */
const LONG_WORD = /\S{20}(?=\S)/gu;

/** A text as the library takes it, each letter in the font that has it. */
export function set(text: string): { readonly text: Content } {
  return { text: spell(text).map((run) => ({ text: run.text.replace(LONG_WORD, '$&\u200B'), font: run.font })) };
}

export function tickBox(): Content {
  return { canvas: [{ type: 'rect', x: 0.5, y: 1.5, w: BOX, h: BOX, lineWidth: 1, lineColor: INK }] };
}

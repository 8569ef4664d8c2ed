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

/** A word that a column might be too narrow for. */
const LONG_WORD = /(\S{21,})/u;

/** A text as the library takes it, each letter in the font that has it; long words may be broken anywhere. */
export function set(text: string): { readonly text: Content } {
  const parts = spell(text).flatMap(({ font, text: run }) => run.split(LONG_WORD).filter((part) => part !== '').map((part) => ({ text: part, font, ...(LONG_WORD.test(part) ? { wordBreak: 'break-all' } : {}) })));
  return { text: parts as Content[] };
}

/** In points: as wide as hardly any letter is, and what a line of text takes. */
const WIDEST = 8;
const LINE = 1.5 * TEXT_SIZE;
/** Less than half of any page. */
const MOST_KEPT = 300;

/**
 * Whether texts one under the other surely take less than half a page in a column so many points wide. What is higher than
 * a page and must not be broken, the library leaves out.
 */
export function isSurelyLow(texts: readonly string[], width: number): boolean {
  const lines = texts.flatMap((text) => text.split('\n')).reduce((sum, line) => sum + Math.max(1, Math.ceil((line.length * WIDEST) / width)), 0);
  return lines * LINE < MOST_KEPT;
}

/** A text of which no more than so many letters are seen. */
export function shortened(text: string, most: number): string {
  const letters = [...text.replaceAll(/\s+/g, ' ')];
  return letters.length <= most ? letters.join('') : `${letters.slice(0, most - 1).join('').trimEnd()}…`;
}

export function tickBox(): Content {
  return { canvas: [{ type: 'rect', x: 0.5, y: 1.5, w: BOX, h: BOX, lineWidth: 1, lineColor: INK }] };
}

import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { type Font, openSync } from 'fontkit';

/** The letters that have a font on paper, the first that has a letter setting it. */
const FONTS = [
  ['atkinson-hyperlegible-next', 'latin'],
  ['atkinson-hyperlegible-next', 'latin-ext'],
  ['noto-sans', 'greek'],
  ['noto-sans', 'cyrillic'],
  ['noto-sans', 'latin'],
  ['noto-sans', 'latin-ext'],
  ['noto-sans', 'vietnamese'],
  ['noto-sans', 'greek-ext'],
  ['noto-sans', 'cyrillic-ext'],
] as const;
const WEIGHTS = { normal: 400, bold: 600 } as const;

/** Built, the fonts lie beside the program; from its source, in their packages. */
const BUILT = fileURLToPath(new URL('./fonts/', import.meta.url));

function fileOf(family: string, subset: string, weight: number): string {
  const name = `${family}-${subset}-${weight}-normal.woff`;
  return existsSync(BUILT) ? `${BUILT}${name}` : createRequire(import.meta.url).resolve(`@fontsource/${family}/files/${name}`);
}

/** The fonts' files by the names under which texts ask for them. */
export const FONT_FILES: Readonly<Record<string, Readonly<Record<keyof typeof WEIGHTS, string>>>> = Object.fromEntries(
  FONTS.map(([family, subset]) => [`${family}-${subset}`, { normal: fileOf(family, subset, WEIGHTS.normal), bold: fileOf(family, subset, WEIGHTS.bold) }]),
);
export const FIRST_FONT = Object.keys(FONT_FILES)[0]!;

/** Part of a text that one font sets. */
export interface Run {
  readonly font: string;
  readonly text: string;
}

const opened = new Map<string, Font>();

function hasLetter(font: string, letter: string): boolean {
  const known = opened.get(font) ?? (openSync(FONT_FILES[font]!.normal) as Font);
  opened.set(font, known);
  return [...letter].every((sign) => known.hasGlyphForCodePoint(sign.codePointAt(0)!));
}

const letters = new Intl.Segmenter('en', { granularity: 'grapheme' });
/** What is not seen and no font needs: control characters, joiners, marks of direction and of variation. */
const UNSEEN = /(?!\n)[\p{Cc}\p{Cf}\u{FE00}-\u{FE0F}\p{Zl}\p{Zp}]/gu;
const known = new Map<string, string | null>();

/** The font that has a letter; null where none has. */
function fontOf(letter: string): string | null {
  if (!known.has(letter)) known.set(letter, Object.keys(FONT_FILES).find((font) => hasLetter(font, letter)) ?? null);
  return known.get(letter)!;
}

/** A text as it is set: whole characters in their shortest form, nothing unseen in it. */
function plain(text: string): string {
  return text.toWellFormed().normalize('NFC').replaceAll('\t', ' ').replace(UNSEEN, '');
}

/**
 * A text in parts by the font that sets each; what no font has stays, and is shown as the first font's mark of a missing
 * letter.
 *
 * Example: 'Hall, Кухня' is 'Hall, ' in the first font and 'Кухня' in that of Cyrillic.
 */
export function spell(text: string): readonly Run[] {
  const runs: { font: string; text: string }[] = [];
  for (const { segment } of letters.segment(plain(text))) {
    const last = runs.at(-1);
    const font = segment === '\n' ? (last?.font ?? FIRST_FONT) : last && segment.trim() === '' && hasLetter(last.font, segment) ? last.font : (fontOf(segment) ?? FIRST_FONT);
    if (last?.font === font) last.text += segment;
    else runs.push({ font, text: segment });
  }
  return runs;
}

/**
 * The letters of a text that no font has, each once.
 *
 * Example: of 'Bad 浴室 2' they are '浴' and '室'.
 */
export function lettersWithoutFont(text: string): readonly string[] {
  return [...new Set([...letters.segment(plain(text))].map(({ segment }) => segment))].filter((letter) => letter !== '\n' && fontOf(letter) === null);
}

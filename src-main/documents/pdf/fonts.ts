import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { type Font, openSync } from 'fontkit';

/** The families that papers are set in, the first that has a letter setting it. */
const FAMILIES = { AtkinsonHyperlegibleNext: 'atkinson-hyperlegible-next', NotoSans: 'noto-sans' } as const;
const WEIGHTS = { normal: '400Regular', bold: '600SemiBold' } as const;

/** Built, the fonts lie beside the program; from its source, in their packages. */
const BUILT = fileURLToPath(new URL('./fonts/', import.meta.url));

function fileOf(family: keyof typeof FAMILIES, weight: keyof typeof WEIGHTS): string {
  const name = `${family}_${WEIGHTS[weight]}.ttf`;
  return existsSync(BUILT) ? `${BUILT}${name}` : createRequire(import.meta.url).resolve(`@expo-google-fonts/${FAMILIES[family]}/${WEIGHTS[weight]}/${name}`);
}

/** The fonts' files by the names under which texts ask for them. */
export const FONT_FILES: Readonly<Record<keyof typeof FAMILIES, Readonly<Record<keyof typeof WEIGHTS, string>>>> = {
  AtkinsonHyperlegibleNext: { normal: fileOf('AtkinsonHyperlegibleNext', 'normal'), bold: fileOf('AtkinsonHyperlegibleNext', 'bold') },
  NotoSans: { normal: fileOf('NotoSans', 'normal'), bold: fileOf('NotoSans', 'bold') },
};
export type FontName = keyof typeof FONT_FILES;
export const FONTS = ['AtkinsonHyperlegibleNext', 'NotoSans'] as const;
export const FIRST_FONT: FontName = FONTS[0];

/** Part of a text that one font sets. */
export interface Run {
  readonly font: FontName;
  readonly text: string;
}

const opened = new Map<FontName, Font>();

function hasLetter(font: FontName, letter: string): boolean {
  const known = opened.get(font) ?? (openSync(FONT_FILES[font].normal) as Font);
  opened.set(font, known);
  return [...letter].every((sign) => known.hasGlyphForCodePoint(sign.codePointAt(0)!));
}

const letters = new Intl.Segmenter('en', { granularity: 'grapheme' });
/** What is not seen and no font needs: control characters, joiners, marks of direction and of variation. */
const UNSEEN = /(?!\n)[\p{Cc}\p{Cf}\u{FE00}-\u{FE0F}\p{Zl}\p{Zp}]/gu;
/** Of which the first family has a sign or two, such as pi: words of it are set by one family. */
const OTHER_SCRIPT = /[\p{Script=Greek}\p{Script=Cyrillic}]/u;
const known = new Map<string, FontName | null>();

/** The font that has a letter; null where none has. */
function fontOf(letter: string): FontName | null {
  if (!known.has(letter)) known.set(letter, FONTS.find((font) => hasLetter(font, letter) && !(font === FIRST_FONT && OTHER_SCRIPT.test(letter))) ?? null);
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
 * Example: 'Hall, Кухня' is 'Hall, ' in the first family, which has Latin alone, and 'Кухня' in the second.
 */
export function spell(text: string): readonly Run[] {
  const runs: { font: FontName; text: string }[] = [];
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

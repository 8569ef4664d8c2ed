/** Of each English text the words of another language; gaps are numbered: 'Run {0} has {1}.' */
export type Words = Readonly<Record<string, string>>;

/** A language of the app: what it is called in itself, its words, and how it writes numbers and days. */
export interface Language {
  readonly code: string;
  readonly name: string;
  /** Null of English, in which the texts are written. */
  readonly words: Words | null;
  readonly decimalMark: '.' | ',';
  /** The months as they stand in a day, January first. */
  readonly months: readonly string[];
  /** A day from its number, month and year. */
  readonly writeDay: (day: number, month: string, year: number) => string;
}

export const ENGLISH: Language = {
  code: 'en',
  name: 'English',
  words: null,
  decimalMark: '.',
  months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  writeDay: (day, month, year) => `${day} ${month} ${year}`,
};

let spoken: Language = ENGLISH;

/** The language of this process. */
export function spokenLanguage(): Language {
  return spoken;
}

/**
 * Sets the language of this process.
 *
 * Some texts are said once, when their module is loaded: a process speaks before it loads what says something.
 */
export function speak(language: Language): void {
  spoken = language;
}

/**
 * A text in the language that is spoken; it is written in English where it is said.
 *
 * Takes a template whose values are numbers or texts that are said already. A text for which the language has no words
 * stays English. Example: say`Run ${'2214'} has ${8}.` is 'Run 2214 has 8.'
 */
export function say(texts: TemplateStringsArray, ...values: readonly (string | number)[]): string {
  const words = spoken.words?.[textKey(texts)];
  if (words === undefined) return texts.reduce((said, text, index) => `${said}${values[index - 1]}${text}`);
  return words.replace(/\{(\d+)\}/g, (_, gap: string) => String(values[Number(gap)]));
}

/**
 * Things one after the other: `sayList(['A', 'B', 'C'])` is 'A, B and C'.
 */
export function sayList(things: readonly string[]): string {
  const last = things.at(-1) ?? '';
  return things.length < 2 ? last : say`${things.slice(0, -1).join(', ')} and ${last}`;
}

/** What a text is found by: 'Run {0} has {1}.' */
export function textKey(texts: readonly string[]): string {
  return texts.reduce((key, text, index) => `${key}{${index - 1}}${text}`);
}

/** A number written with a point, such as "3.76", as the language writes it: '3,76' in German. */
export function sayDecimal(written: string): string {
  return spoken.decimalMark === '.' ? written : written.replace(/(?<=\d)\.(?=\d)/g, spoken.decimalMark);
}

/** A day such as "2026-03-02" as the language writes it: '2 Mar 2026'; what is no such day stays as it is. */
export function sayDay(day: string): string {
  const [, year, month, number] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day) ?? [];
  const name = spoken.months[Number(month) - 1];
  return name === undefined ? day : spoken.writeDay(Number(number), name, Number(year));
}

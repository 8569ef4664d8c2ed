import { GERMAN } from './german/index.ts';
import { ENGLISH, type Language } from './say.ts';

export const LANGUAGES: readonly Language[] = [ENGLISH, GERMAN];

/**
 * The language of a code such as "de" or "de-AT"; English where there is none of it.
 *
 * Example: `languageOf('de-CH').name` is 'Deutsch'.
 */
export function languageOf(code: string): Language {
  const [plain] = code.toLowerCase().split('-');
  return LANGUAGES.find((language) => language.code === plain) ?? ENGLISH;
}

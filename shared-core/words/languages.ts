import { GERMAN } from './german/index.ts';
import { ENGLISH, type Language } from './say.ts';

export const LANGUAGES: readonly Language[] = [ENGLISH, GERMAN];

/**
 * The language that was chosen by its code, or that of the machine where the choice is left to it as "system".
 *
 * Example: `languageChosen('system', 'de-AT').code` is 'de', `languageChosen('en', 'de-AT').code` 'en'.
 */
export function languageChosen(choice: string, codeOfMachine: string): Language {
  return languageOf(choice === 'system' ? codeOfMachine : choice);
}

/**
 * The language of a code such as "de" or "de-AT"; English where there is none of it.
 *
 * Example: `languageOf('de-CH').name` is 'Deutsch'.
 */
export function languageOf(code: string): Language {
  const [plain] = code.toLowerCase().split('-');
  return LANGUAGES.find((language) => language.code === plain) ?? ENGLISH;
}

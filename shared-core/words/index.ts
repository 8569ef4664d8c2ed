export { ENGLISH, type Language, say, sayDay, sayDecimal, sayList, speak, spokenLanguage, textKey, type Words } from './say.ts';
export { languageChosen, languageOf, LANGUAGES } from './languages.ts';

import { languageOf, spokenLanguage } from '../../../shared-core/words/index.ts';

/** A moment as its day and time, in the country's own way where its language is spoken; from an ISO date and time in UTC. */
export function sayWhen(moment: string): string {
  const locale = languageOf(navigator.language) === spokenLanguage() ? undefined : spokenLanguage().code;
  return new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' }).format(new Date(moment));
}

import type { LengthStyle } from '../../../shared-core/units/index.ts';
import { languageOf } from '../../../shared-core/words/index.ts';

/** Where walls are measured in feet and inches; the UK's decorators measure in metres. */
const FEET = ['US', 'LR', 'MM', 'CA'];
const EURO = ['AT', 'BE', 'BG', 'CY', 'DE', 'EE', 'ES', 'FI', 'FR', 'GR', 'HR', 'IE', 'IT', 'LT', 'LU', 'LV', 'MT', 'NL', 'PT', 'SI', 'SK'];
const CURRENCIES: Readonly<Record<string, string>> = { AU: 'AUD', CA: 'CAD', CH: 'CHF', CZ: 'CZK', DK: 'DKK', GB: 'GBP', HU: 'HUF', IN: 'INR', JP: 'JPY', LI: 'CHF', NO: 'NOK', NZ: 'NZD', PL: 'PLN', RO: 'RON', SE: 'SEK', ZA: 'ZAR' };

/**
 * What a new house is proposed to be measured and paid in, by the machine's language and the one that is spoken.
 *
 * A machine whose language would not lead to the one spoken says nothing of where the house is. Example:
 * `usualHouse('en-US', 'en')` has feet and USD, `usualHouse('de-AT', 'de')` and `usualHouse('en-US', 'de')` metres and EUR.
 */
export function usualHouse(machine: string, spoken: string): { readonly lengths: LengthStyle; readonly currency: string } {
  const region = new Intl.Locale(languageOf(machine).code === spoken ? machine : spoken).maximize().region ?? 'US';
  return { lengths: FEET.includes(region) ? 'imperial' : 'metric', currency: EURO.includes(region) ? 'EUR' : (CURRENCIES[region] ?? 'USD') };
}

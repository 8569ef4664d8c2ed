import { assert } from '../base/index.ts';
import { decodeHouse } from './document.ts';
import type { House } from './types.ts';

/** A house with a name and nothing in it yet. */
export function newHouse(name: string, lengths: House['lengths'] = 'imperial', currency = 'USD'): House {
  const outcome = decodeHouse({ format: 'struckline-house', version: 1, name, lengths, currency });
  assert(outcome.ok, 'an empty house is a good house');
  return outcome.value;
}

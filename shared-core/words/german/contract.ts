import type { Words } from '../say.ts';

/** The German of what `shared-core/contract` says. */
export const CONTRACT: Words = {
  'is not the name of a house file; it takes a name that ends in .struckline': 'ist nicht der Name einer Hausdatei; erwartet: ein Name, der auf .struckline endet',
  'is a hidden name; it takes a name that does not begin with a dot': 'ist ein versteckter Name; erwartet: ein Name, der nicht mit einem Punkt beginnt',
  'is not base64': 'ist kein base64',
};

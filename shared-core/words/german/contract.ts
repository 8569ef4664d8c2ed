import type { Words } from '../say.ts';

/** The German of what `shared-core/contract` says. */
export const CONTRACT: Words = {
  'is not the name of a house file; it takes a name that ends in .struckline': 'ist nicht der Name einer Hausdatei; erwartet: ein Name, der auf .struckline endet',
  'is a hidden name; it takes a name that does not begin with a dot': 'ist ein versteckter Name; erwartet: ein Name, der nicht mit einem Punkt beginnt',
  'This is larger than the {0} MB that Struckline takes at once; a house is smaller. Check that it is the right file.': 'Das ist größer als die {0} MB, die Struckline auf einmal annimmt; ein Haus ist kleiner. Bitte prüfen, ob es die richtige Datei ist.',
  'is not base64': 'ist kein base64',
  'is not the name of a back-up': 'ist nicht der Name einer Sicherung',
};

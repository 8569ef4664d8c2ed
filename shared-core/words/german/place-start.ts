import type { Words } from '../say.ts';

/** The German of what `src-renderer/places/start` says. */
export const PLACE_START: Words = {
  'Find a house': 'Haus suchen',
  'its name': 'Name des Hauses',
  '{0} room': '{0} Raum',
  '{0} rooms': '{0} Räume',
  'worked on {0}': 'bearbeitet am {0}',
  'Open {0} in a window of its own': '{0} in einem eigenen Fenster öffnen',
  'Open it in a window of its own': 'In einem eigenen Fenster öffnen',
  'Take {0} off the list': '{0} von der Liste nehmen',
  'Take it off the list; its file stays where it is': 'Von der Liste nehmen; die Datei bleibt, wo sie ist',
  'No house here is called ‘{0}’.': 'Hier heißt kein Haus „{0}“.',
  'in {0}': 'in {0}',

  'From a measured house to one bulk order: every strip, every cut, every roll of one run.': 'Vom Aufmaß des Hauses zur Gesamtbestellung: jede Bahn, jeder Zuschnitt, jede Rolle aus einer Anfertigung.',
  Houses: 'Häuser',
  'Looking in the folder': 'Ordner wird durchgesehen',
  'No house here yet. Look round in the demo house, or start one of your own.': 'Hier ist noch kein Haus. Das Beispielhaus ansehen oder ein eigenes anlegen.',
  'Open a demo house': 'Beispielhaus öffnen',
  'Kept in {0}': 'Abgelegt in {0}',
  'A new house': 'Neues Haus',
  Name: 'Name',
  'Lengths in': 'Längen in',
  'feet and inches': 'Fuß und Zoll',
  metres: 'Metern',
  Currency: 'Währung',
  'Start this house': 'Haus anlegen',
  'Read in a house document (JSON) or a house file (.struckline)': 'Hausdokument (JSON) oder Hausdatei (.struckline) einlesen',
  'Either can be dropped on this window too.': 'Beides lässt sich auch auf dieses Fenster ziehen.',
  'The house wants a name, an address for example.': 'Das Haus braucht einen Namen, zum Beispiel eine Adresse.',
  'A currency is three letters, such as USD or EUR.': 'Eine Währung besteht aus drei Buchstaben, zum Beispiel EUR oder CHF.',
};

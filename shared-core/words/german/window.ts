import type { Words } from '../say.ts';

/** The German of what the files of `src-renderer` beside its folders say. */
export const WINDOW: Words = {
  Appearance: 'Darstellung',
  Language: 'Sprache',
  Colours: 'Farben',
  light: 'hell',
  dark: 'dunkel',
  Contrast: 'Kontrast',
  more: 'mehr',
  'Size of text': 'Schriftgröße',
  Motion: 'Bewegung',
  none: 'keine',
  'What is undone, written to files and answered by the file system is said in the new language once Struckline is started again.':
    'Was rückgängig gemacht wird, was in Dateien geschrieben wird und was das Dateisystem antwortet, steht in der neuen Sprache da, sobald Struckline neu gestartet ist.',
  'For every house on this machine, kept between starts.': 'Für alle Häuser auf diesem Rechner, auch nach einem Neustart.',
  'as the system says': 'wie im System',

  'Find in this house': 'In diesem Haus suchen',
  'Find anything': 'Suchen',
  'A room or storey can be found, a wall by its door or window, a pattern by number, name or supplier, a run, an order, a package, what is kept for repairs, a place.':
    'Zu finden sind Räume und Geschosse, Wände nach Tür oder Fenster, Muster nach Nummer, Name oder Lieferant, Anfertigungen, Bestellungen, Pakete, aufgehobene Reste und die Bereiche.',

  '{0} – Struckline': '{0} – Struckline',
  'Go to the sheet': 'Zum Blatt',
  'All houses': 'Alle Häuser',
  'Name of the house': 'Name des Hauses',
  'Open this house in another window': 'Dieses Haus in einem weiteren Fenster öffnen',
  'Lengths in': 'Längen in',
  'feet and inches': 'Fuß und Zoll',
  metres: 'Metern',
  'Undo: {0}': 'Rückgängig: {0}',
  'Nothing to undo': 'Nichts rückgängig zu machen',
  Undo: 'Rückgängig',
  'Redo: {0}': 'Wiederholen: {0}',
  'Nothing to redo': 'Nichts zu wiederholen',
  Redo: 'Wiederholen',
  Places: 'Bereiche',
  'The house as one JSON document, for a copy or for scripts': 'Das Haus als ein JSON-Dokument, als Kopie oder für Skripte',
  'Write out': 'Ausgeben',
  Print: 'Drucken',
  House: 'Haus',
  Survey: 'Aufmaß',
  Coverings: 'Beläge',
  'Set out': 'Einteilung',
  Order: 'Bestellung',
  Deliveries: 'Lieferungen',
  Undone: 'Rückgängig gemacht',
  'Done again': 'Wiederholt',

  Keys: 'Tasten',
  or: 'oder',
  'Ctrl is the command key on a keyboard that has one. Tab and Shift + Tab go through everything there is; Esc closes a sheet such as this one. Ctrl with +, - and 0 enlarges the whole window, by the browser.':
    'Strg ist die Befehlstaste auf Tastaturen, die eine haben. Tab und Umschalt + Tab gehen durch alles, was da ist; Esc schließt ein Blatt wie dieses. Strg mit +, - und 0 vergrößert das ganze Fenster, durch den Browser.',

  'Drop it here: a house file (.struckline) is opened, a house document (.json) becomes a new house.': 'Hier ablegen: Eine Hausdatei (.struckline) wird geöffnet, aus einem Hausdokument (.json) wird ein neues Haus.',
  'Close this message': 'Diese Meldung schließen',
  '{0} files were dropped; one is taken at a time.': '{0} Dateien wurden abgelegt; angenommen wird immer nur eine.',
  Prep: 'Vorarbeiten',
  Calendar: 'Kalender',
  '{0} was written out.': '{0} wurde ausgegeben.',
};

import type { Words } from '../say.ts';

/** The German of what `src-renderer/places/paperwork` says. */
export const PLACE_PAPERWORK: Words = {
  Paperwork: 'Papiere',
  Papers: 'Blätter',
  'Looking at what there is to write': 'Es wird nachgesehen, was zu schreiben ist',
  'Nothing to write yet. Survey a room, and its papers stand here: orders for the suppliers, a sheet for each room, the cuts, the quote, the record of the house.':
    'Noch nichts zu schreiben. Miss einen Raum auf, dann stehen hier seine Blätter: Bestellungen für die Lieferanten, ein Blatt für jeden Raum, die Zuschnitte, das Angebot, die Hausakte.',
  'Survey a room': 'Raum aufmessen',

  'For the supplier': 'Für den Lieferanten',
  'For the room': 'Für den Raum',
  'For the table': 'Für den Tapeziertisch',
  'For the customer': 'Für den Kunden',
  'To keep': 'Zum Aufheben',

  'Names and addresses': 'Namen und Anschriften',
  'Who sends the papers': 'Wer die Blätter schickt',
  Customer: 'Kunde',
  'Where goods are delivered': 'Wohin geliefert wird',
  'Goods are wanted by': 'Ware wird gewünscht bis',
  'year, month and day': 'Jahr, Monat und Tag',
  'Address of {0}': 'Anschrift von {0}',

  A4: 'A4',
  'US Letter': 'US Letter',
  '{0}, usual here': '{0}, hier üblich',
  'Size of paper': 'Papierformat',
  'Save PDF': 'PDF sichern',
  Print: 'Drucken',
  'Save CSV': 'CSV sichern',
  'Save calendar file': 'Kalenderdatei sichern',
  'Copy text for a mail': 'Text für eine E-Mail kopieren',
  'Save text': 'Text sichern',
  '{0} was written out.': '{0} wurde ausgegeben.',
  'Copied, to paste into a mail.': 'Kopiert, zum Einfügen in eine E-Mail.',
  'Nothing was copied: this browser does not give out its clipboard here.': 'Es wurde nichts kopiert: Dieser Browser gibt hier seine Zwischenablage nicht frei.',
  'Making the paper': 'Das Blatt wird hergestellt',
  'Being made again': 'Wird neu hergestellt',
  'Give up': 'Aufgeben',
  'It was given up before it was made.': 'Es wurde aufgegeben, bevor es fertig war.',
  'It was given up: this is the paper as it was before the last change.': 'Es wurde aufgegeben: Dies ist das Blatt, wie es vor der letzten Änderung war.',
  'Make it again': 'Neu herstellen',
  'Make it': 'Herstellen',
  'The paper was made, but it can\'t be shown here. Save it and look at it in another program.':
    'Das Blatt ist fertig, kann aber hier nicht gezeigt werden. Sichere es und sieh es in einem anderen Programm an.',
  'The fonts of the papers don\'t have these letters; a mark stands for each: {0}': 'Diese Zeichen haben die Schriften der Blätter nicht; für jedes steht eine Marke: {0}',

  'Page {0} of {1}': 'Seite {0} von {1}',
  '{0}, page {1} of {2}': '{0}, Seite {1} von {2}',
  'This page can\'t be drawn here. Save the PDF and look at it in another program.': 'Diese Seite kann hier nicht gezeichnet werden. Sichere das PDF und sieh es in einem anderen Programm an.',
  'Getting page {0} of {1} ready': 'Seite {0} von {1} wird vorbereitet',
  'The pages could not be made ready for the printer. Save the PDF and print it from another program.':
    'Die Seiten konnten nicht für den Drucker vorbereitet werden. Sichere das PDF und drucke es aus einem anderen Programm.',

  'Save all papers': 'Alle Blätter sichern',
  '{0} of {1}: {2}': '{0} von {1}: {2}',
  Stop: 'Anhalten',
  'Stopped; no file was written.': 'Angehalten; keine Datei wurde geschrieben.',
  'No file was written.': 'Keine Datei wurde geschrieben.',
  'Stopped; {0} of {1} files are beside the house file, in': 'Angehalten; {0} von {1} Dateien liegen neben der Hausdatei in',
  '{0} file is beside the house file, in': '{0} Datei liegt neben der Hausdatei in',
  '{0} files are beside the house file, in': '{0} Dateien liegen neben der Hausdatei in',
};

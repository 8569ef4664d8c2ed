import type { Words } from '../say.ts';
import { PAPERS } from './host-papers.ts';

const COMMAND_LINE: Words = {
  'Before anybody begins': 'Bevor jemand anfängt',
  'The usual cautions, not advice for this house: local codes and licensed practice come first.':
    'Die üblichen Hinweise, keine Beratung für dieses Haus: Örtliche Vorschriften und zugelassene Fachleute gehen vor.',
  'then {0} before what follows': 'danach {0}, bevor es weitergeht',
  'What is to be done, in order': 'Was zu tun ist, der Reihe nach',
  'What is cut for it': 'Was dafür zugeschnitten wird',
  'struckline new FILE [--from house.json]   make a house file': 'struckline new DATEI [--from haus.json]   eine Hausdatei anlegen',
  "struckline plan FILE [--json]             the plan: rooms with their strips and rolls, the house's order":
    'struckline plan DATEI [--json]            der Plan: Räume mit Bahnen und Rollen, die Bestellung des Hauses',
  'struckline order FILE [--csv OUT]         the bulk order, grouped by pattern number and run number':
    'struckline order DATEI [--csv ZIEL]       die Gesamtbestellung, nach Musternummer und Anfertigungsnummer',
  'struckline import FILE house.json         replace the house in FILE; can be undone in the app':
    'struckline import DATEI haus.json         das Haus in DATEI ersetzen; in der App rückgängig zu machen',
  'struckline export FILE                    the house as an exchange document': 'struckline export DATEI                   das Haus als Austauschdokument',
  'struckline rooms FILE [--csv OUT]         the rooms as CSV: a row for each wall and what is on it':
    'struckline rooms DATEI [--csv ZIEL]       die Räume als CSV: je eine Zeile für jede Wand und was daran ist',
  'struckline add-rooms FILE rooms.csv       add the rooms of such a table to the house in FILE; can be undone in the app':
    'struckline add-rooms DATEI raeume.csv     die Räume einer solchen Tabelle zum Haus in DATEI hinzufügen; in der App rückgängig zu machen',
  'struckline calendar FILE [--ics OUT]      the days of the work, for a calendar program': 'struckline calendar DATEI [--ics ZIEL]    die Tage der Arbeit, für ein Kalenderprogramm',
  'struckline schema                         the JSON Schema of the exchange document': 'struckline schema                         das JSON-Schema des Austauschdokuments',
  'struckline check FILE                     faults and warnings': 'struckline check DATEI                    Fehler und Hinweise',
  "Exit status: 0; 1 for bad input, with nothing changed; 3 where the plan can't be met.": 'Rückgabewert: 0; 1 bei falscher Eingabe, ohne dass etwas geändert wurde; 3, wo der Plan nicht ausführbar ist.',
  'Say which command.': 'Bitte einen Befehl angeben.',
  '‘{0}’ is not a command.': '„{0}“ ist kein Befehl.',
  '{0} has no option --{1}.': '{0} hat keine Option --{1}.',
  '{0} takes no file.': '{0} erwartet keine Datei.',
  '{0} takes one file.': '{0} erwartet eine Datei.',
  '{0} takes {1} files.': '{0} erwartet {1} Dateien.',
  'The order was not written: {0}': 'Die Bestellung wurde nicht geschrieben: {0}',
  'The order was written to {0}.\n': 'Die Bestellung wurde in {0} geschrieben.\n',
  'The rooms were not written: {0}': 'Die Räume wurden nicht geschrieben: {0}',
  'The rooms were written to {0}.\n': 'Die Räume wurden in {0} geschrieben.\n',
  'There is no day to write yet: say what is on the walls or hang something, and on which day the work begins.':
    'Es gibt noch keinen Tag zu schreiben: angeben, was an den Wänden ist, oder etwas anbringen, und an welchem Tag die Arbeit beginnt.',
  'Two people.': 'Zu zweit.',
  'Then {0} before what follows.': 'Danach {0}, bevor das Nächste folgt.',
  'Order {0} is expected': 'Bestellung {0} wird erwartet',
  'Order {0} is expected from {1}': 'Bestellung {0} wird von {1} erwartet',
  ', run {0}': ', Anfertigung {0}',
  "Can't be met: {0}": 'Nicht ausführbar: {0}',
  'Look: {0}': 'Hinweis: {0}',
  'The facts are good and there is nothing to look at.\n': 'Die Angaben sind in Ordnung; Hinweise gibt es keine.\n',
};

const DESKTOP: Words = {
  'Only the window of Struckline itself may call its office.': 'Nur das Fenster von Struckline selbst darf hier etwas aufrufen.',
  'A call names its method as a short text.': 'Ein Aufruf nennt seine Methode als kurzen Text.',
  'A call takes its argument as plain data.': 'Zu einem Aufruf gehören reine Daten.',
  'This is not a file on the disk; save it first, then drop it here.': 'Das ist keine Datei auf der Festplatte; zuerst speichern, dann hier ablegen.',
  'Struckline could not start': 'Struckline konnte nicht starten',
  'Houses are kept in {0}.': 'Die Häuser liegen in {0}.',
  'There is nothing at this address.': 'Unter dieser Adresse ist nichts.',

  'This window has stopped.': 'Dieses Fenster ist stehen geblieben.',
  'Its process ended by itself ({0}). Every change that was taken is in the house file. What stood in a field and was not taken yet has to be typed again.':
    'Sein Prozess hat sich von selbst beendet ({0}). Jede übernommene Änderung steht in der Hausdatei. Was in einem Feld stand und noch nicht übernommen war, ist noch einmal einzugeben.',
  'Load it again': 'Neu laden',
  'Close the window': 'Fenster schließen',
  'This window does not answer.': 'Dieses Fenster antwortet nicht.',
  'It may be busy with something large. Every change that was taken is in the house file. What stands in a field and was not taken yet is lost if the window is loaded again.':
    'Vielleicht rechnet es an etwas Großem. Jede übernommene Änderung steht in der Hausdatei. Was in einem Feld steht und noch nicht übernommen ist, geht verloren, wenn das Fenster neu geladen wird.',
  Wait: 'Warten',
  '{0} was not opened.': '{0} wurde nicht geöffnet.',
  'All right': 'In Ordnung',
  'Open a house': 'Haus öffnen',
  'Houses of Struckline': 'Häuser von Struckline',
  'Struckline met a fault of its own': 'In Struckline selbst ist ein Fehler aufgetreten',
  'Every change that was taken is in the house file. Struckline ends now; start it again.': 'Jede übernommene Änderung steht in der Hausdatei. Struckline wird jetzt beendet; bitte neu starten.',
  'A process that helps the windows ({0}) ended by itself: {1}, {2}.': 'Ein Prozess, der den Fenstern hilft ({0}), hat sich von selbst beendet: {1}, {2}.',
  'The Struckline authors, MIT licence': 'Die Autoren von Struckline, MIT-Lizenz',

  '&About Struckline': '&Über Struckline',
  Services: 'Dienste',
  'Hide Struckline': 'Struckline ausblenden',
  'Hide others': 'Andere ausblenden',
  'Show all': 'Alle einblenden',
  'Quit Struckline': 'Struckline beenden',
  '&File': '&Datei',
  '&New window': '&Neues Fenster',
  '&Open a house…': 'Haus ö&ffnen …',
  '&Close the window': 'Fenster &schließen',
  'E&xit': '&Beenden',
  '&Quit': '&Beenden',
  '&Edit': '&Bearbeiten',
  '&Undo': '&Rückgängig',
  '&Redo': 'Wieder&holen',
  'Cu&t': '&Ausschneiden',
  '&Copy': '&Kopieren',
  '&Paste': '&Einfügen',
  '&Delete': '&Löschen',
  'Select &all': 'Alles aus&wählen',
  '&View': '&Ansicht',
  '&Actual size': '&Originalgröße',
  '&Larger': '&Größer',
  '&Smaller': '&Kleiner',
  '&Full screen': '&Vollbild',
  '&Window': '&Fenster',
  '&Minimize': '&Minimieren',
  Zoom: 'Zoomen',
  'Bring all to front': 'Alle nach vorne bringen',
  '&Help': '&Hilfe',
};

const PLAN_TEXT: Words = {
  '{0}, {1} piece, {2} alone': '{0}, {1} Zuschnitt, allein {2}',
  '{0}, {1} pieces, {2} alone': '{0}, {1} Zuschnitte, allein {2}',
  'from wall {0} at {1}': 'ab Wand {0} bei {1}',
  '{0} mismatch at the kill point': '{0} Abweichung an der Schlussnaht',
  '  {0} on the ceiling: {1} along wall {2}, {3} alone': '  {0} an der Decke: {1} entlang Wand {2}, allein {3}',
  '{0} strip': '{0} Bahn',
  '{0} strips': '{0} Bahnen',
  '{0} length': '{0} Stück',
  '{0} lengths': '{0} Stücke',
  'Nothing to order yet: no room has a covering that comes in rolls.\n': 'Noch nichts zu bestellen: Kein Raum hat einen Belag, der in Rollen kommt.\n',
  'run {0}': 'Anfertigung {0}',
  'no run has it': 'keine Anfertigung reicht',
  'run not known yet': 'Anfertigung noch nicht bekannt',
  ' (= {0} singles)': ' (= {0} Einzelrollen)',
  'proved the fewest': 'als kleinste Zahl bewiesen',
  '{0} at least': 'mindestens {0}',
  ', {0} on order': ', {0} bestellt',
  '{0}, {1}: buy {2}{3}{4}{5}': '{0}, {1}: {2}{3} kaufen{4}{5}',
  ' as {0}': ' als {0}',
  '  for {0}: {1} needed ({2}; {3} room by room), {4} spare, {5} in hand{6}': '  für {0}: {1} gebraucht ({2}; Raum für Raum {3}), {4} Reserve, {5} vorhanden{6}',
};

const LOOPBACK: Words = {
  'no display here': 'hier gibt es keinen Bildschirm',
  'no window is opened for root': 'für root wird kein Fenster geöffnet',
  'no Chromium-family browser found': 'kein Browser der Chromium-Familie gefunden',
  "no folder for the browser's profile: {0}": 'kein Ordner für das Profil des Browsers: {0}',
  'the browser did not start': 'der Browser ist nicht gestartet',
  "Struckline's window is not built yet: run 'npm run build' first.": 'Das Fenster von Struckline ist noch nicht gebaut: zuerst „npm run build“ ausführen.',
  'Struckline cannot keep houses in {0}: {1}': 'Struckline kann in {0} keine Häuser ablegen: {1}',
  'the browser window did not open': 'das Fenster des Browsers hat sich nicht geöffnet',
  'Struckline is at {0} ({1}; open the address in a browser on this machine)\n': 'Struckline ist unter {0} erreichbar ({1}; die Adresse in einem Browser auf diesem Rechner öffnen)\n',
  'This server answers to {0} alone.': 'Dieser Server antwortet nur unter {0}.',
  'This server answers to its own pages alone.': 'Dieser Server antwortet nur seinen eigenen Seiten.',
  'This address of Struckline is used up or incomplete. Start Struckline again and use the address it gives then.\n':
    'Diese Adresse von Struckline ist verbraucht oder unvollständig. Struckline neu starten und die dann genannte Adresse verwenden.\n',
  'This request is not understood. It takes HTTP/1.1 with one Host, a path that is spelled right, and neither Upgrade nor Expect.':
    'Diese Anfrage ist nicht zu verstehen. Erwartet: HTTP/1.1 mit einem Host, ein richtig geschriebener Pfad, weder Upgrade noch Expect.',
  'This request came too slowly and was given up. Send it again.': 'Diese Anfrage kam zu langsam und wurde aufgegeben. Bitte noch einmal senden.',
  'The address or the headers of this request are too long. Together they may have 16 KB.': 'Adresse und Kopfzeilen dieser Anfrage sind zu lang. Zusammen dürfen sie 16 KB haben.',
  "Too many programs that are not Struckline's window ask this server at once. Try again in a second.":
    'Zu viele Programme, die nicht das Fenster von Struckline sind, fragen diesen Server zugleich. In einer Sekunde noch einmal versuchen.',
  'Pages are read by GET, calls are made by POST.': 'Seiten werden mit GET gelesen, Aufrufe mit POST gemacht.',
  'There is nothing at this address; calls are posted to {0} and the name of a method.': 'Unter dieser Adresse ist nichts; Aufrufe gehen mit POST an {0} und den Namen einer Methode.',
  'The call was not understood: {0}.': 'Der Aufruf war nicht zu verstehen: {0}.',
  'Struckline met a fault of its own and did not do this. Close the window and start Struckline again.':
    'In Struckline selbst ist ein Fehler aufgetreten; ausgeführt wurde das nicht. Das Fenster schließen und Struckline neu starten.',
  'usage: npm start -- [--folder DIR] [FILE.struckline]': 'Aufruf: npm start -- [--folder ORDNER] [DATEI.struckline]',
  '--folder takes the folder where houses are kept ({0})': '--folder erwartet den Ordner, in dem die Häuser liegen ({0})',
  '{0} files were named; one can be opened at the start ({1})': '{0} Dateien angegeben; beim Start lässt sich eine öffnen ({1})',
  '"{0}" is not the name of a house file, which ends in .struckline ({1})': '„{0}“ ist nicht der Name einer Hausdatei; der endet auf .struckline ({1})',
  '"{0}" does not lie in {1}; leave --folder out to open the folder that it lies in': '„{0}“ liegt nicht in {1}; --folder weglassen, um den Ordner zu öffnen, in dem die Datei liegt',
};

const OFFICE: Words = {
  '{0} is not the name of a house file; it takes a name that ends in {1}.': '{0} ist nicht der Name einer Hausdatei; erwartet: ein Name, der auf {1} endet.',
  'a table of rooms': 'eine Raumtabelle',
  'a table of rooms is CSV text': 'eine Raumtabelle ist CSV-Text',
  'Line {0}: {1}': 'Zeile {0}: {1}',
  '{0} is not a house file; a change is written into a file that ends in {1}.': '{0} ist keine Hausdatei; eine Änderung wird in eine Datei geschrieben, die auf {1} endet.',
  'The house was changed meanwhile by another program; nothing was changed. Try again.': 'Das Haus wurde inzwischen von einem anderen Programm geändert; hier wurde nichts geändert. Noch einmal versuchen.',
  'a house document': 'ein Hausdokument',
  'a house document is JSON text': 'ein Hausdokument ist JSON-Text',
  '{0} is {1} bytes, far larger than {2}. Check that it is the right file.': '{0} hat {1} Byte und ist weit größer als {2}. Prüfen, ob es die richtige Datei ist.',
  "{0} can't be read: {1}": '{0} lässt sich nicht lesen: {1}',
  '{0} is not text in UTF-8; {1}.': '{0} ist kein Text in UTF-8; {1}.',

  'The document was not taken; nothing was changed.': 'Das Dokument wurde nicht übernommen; es wurde nichts geändert.',
  'Nothing was changed: this house can only be looked at.': 'Es wurde nichts geändert: dieses Haus lässt sich nur ansehen.',
  'The copy could not be made; write the house out as a document instead.': 'Die Kopie ließ sich nicht anlegen; das Haus stattdessen als Dokument ausgeben.',
  'The back-up was not restored; the house stands as it did.': 'Die Sicherung wurde nicht wiederhergestellt; das Haus steht da wie vorher.',
  "This back-up can't be restored; nothing was changed.": 'Diese Sicherung lässt sich nicht wiederherstellen; es wurde nichts geändert.',
  'The house file could not be read.': 'Die Hausdatei ließ sich nicht lesen.',
  "{0} holds facts that can't be read or contradict one another. Nothing was changed. A back-up may still have the house.":
    'Die Angaben in {0} lassen sich nicht lesen oder widersprechen einander. Es wurde nichts geändert. In einer Sicherung ist das Haus vielleicht noch.',
  'This house file keeps no such photo.': 'Ein solches Foto gibt es in dieser Hausdatei nicht.',
  'The host knows no call of that name; it knows {0}.': 'Einen Aufruf dieses Namens gibt es nicht; vorhanden: {0}.',
  'The call {0} was not understood; nothing was changed.': 'Der Aufruf {0} war nicht zu verstehen; es wurde nichts geändert.',
  'The host failed: {0}. What was saved before is still in the file.': 'Fehler im Programm: {0}. Was vorher gespeichert wurde, steht noch in der Datei.',
  'The house was changed in another window meanwhile; this change was not made. Look at the house as it is now and make it again.':
    'Das Haus wurde inzwischen in einem anderen Fenster geändert; diese Änderung wurde nicht gemacht. Das Haus ansehen, wie es jetzt ist, und die Änderung noch einmal machen.',

  '{0} is larger than the {1} MB that can be taken in so. Copy it into {2} instead.': '{0} ist größer als die {1} MB, die sich so übernehmen lassen. Die Datei stattdessen in {2} kopieren.',
  '{0} was not taken in; nothing was changed.': '{0} wurde nicht übernommen; es wurde nichts geändert.',
  '{0} is not the name of a house file, which ends in {1}.': '{0} ist nicht der Name einer Hausdatei; der endet auf {1}.',
  'That house is on the list no longer. Open it by its file again.': 'Dieses Haus steht nicht mehr in der Liste. Noch einmal über seine Datei öffnen.',
  'There is no {0} in the folder of houses.': 'Im Ordner der Häuser gibt es {0} nicht.',
  '{0} is no longer in {1}. It may have been moved or renamed.': '{0} liegt nicht mehr in {1}. Die Datei wurde vielleicht verschoben oder umbenannt.',
  'The house file holds facts that contradict one another; nothing was changed.': 'Die Angaben in der Hausdatei widersprechen einander; es wurde nichts geändert.',
  '{0} is no longer there: it was moved, renamed or removed, or its disk is not connected.': '{0} ist nicht mehr da: verschoben, umbenannt oder entfernt, oder das Laufwerk ist nicht angeschlossen.',

  'The usual ones hold; a change makes a new file and keeps this one as {0}.': 'Es gelten die üblichen; eine Änderung legt eine neue Datei an und behält diese als {0}.',
  'The settings in {0} are not settings of Struckline.': 'Die Einstellungen in {0} sind keine von Struckline.',
  'The settings in {0} are of version {1}; this Struckline reads version {2}.': 'Die Einstellungen in {0} haben die Version {1}; dieses Struckline liest Version {2}.',
  "The settings in {0} can't be read: {1}.": 'Die Einstellungen in {0} lassen sich nicht lesen: {1}.',
};

const STORE: Words = {
  '{0} is there already; it was left as it is. Choose another name.': '{0} gibt es schon; die Datei bleibt, wie sie ist. Einen anderen Namen wählen.',
  '{0} is a database of another program, not a house file. Nothing was changed.': '{0} ist eine Datenbank eines anderen Programms, keine Hausdatei. Es wurde nichts geändert.',
  '{0} was written by a newer Struckline (file version {1}, this one reads up to {2}). Nothing was changed; open it with the newer one.':
    '{0} stammt von einem neueren Struckline (Dateiversion {1}, dieses liest bis {2}). Es wurde nichts geändert; mit dem neueren öffnen.',
  "{0} can't be read: {1}. Nothing was changed.": '{0} lässt sich nicht lesen: {1}. Es wurde nichts geändert.',
  'The edit was refused; nothing was changed.': 'Die Änderung wurde nicht angenommen; es wurde nichts geändert.',
  'This change would leave facts that contradict one another; nothing was changed.': 'Diese Änderung ließe Angaben zurück, die einander widersprechen; es wurde nichts geändert.',
  'There is nothing to undo.': 'Es gibt nichts rückgängig zu machen.',
  'There is nothing to redo.': 'Es gibt nichts zu wiederholen.',
  "This can't be undone, as the record of it is damaged; nothing was changed.": 'Das lässt sich nicht rückgängig machen, weil die Aufzeichnung davon beschädigt ist; es wurde nichts geändert.',
  "This can't be done again, as the record of it is damaged; nothing was changed.": 'Das lässt sich nicht wiederholen, weil die Aufzeichnung davon beschädigt ist; es wurde nichts geändert.',
  '{0} is not as Struckline wrote it: another program has changed its form. Nothing was changed. A back-up may still have the house.':
    '{0} ist nicht mehr, wie Struckline die Datei geschrieben hat: ein anderes Programm hat ihren Aufbau geändert. Es wurde nichts geändert. In einer Sicherung ist das Haus vielleicht noch.',
  "{0} is damaged in places. What can still be read of the house is shown; it can't be changed. Restore a back-up, or save a copy: what can be read goes into it, without what could be undone.":
    '{0} ist stellenweise beschädigt. Gezeigt wird, was sich vom Haus noch lesen lässt; ändern lässt es sich nicht. Eine Sicherung wiederherstellen oder eine Kopie sichern: hinein kommt, was sich lesen lässt, ohne das, was sich rückgängig machen ließ.',
  '{0} or its folder is protected: the house can be looked at, not changed. Save a copy to work on it.':
    'Die Datei {0} oder ihr Ordner ist geschützt: das Haus lässt sich ansehen, nicht ändern. Zum Arbeiten eine Kopie sichern.',
  '{0} was written by an older Struckline, and no back-up of it could be made before it is brought to the new form ({1}). The house can be looked at, not changed; save a copy to work on it.':
    '{0} stammt von einem älteren Struckline, und vor dem Umstellen auf die neue Form ließ sich keine Sicherung anlegen ({1}). Das Haus lässt sich ansehen, nicht ändern; zum Arbeiten eine Kopie sichern.',
  '{0} was moved, replaced or removed while it was open; this change was not made. Open the house again.':
    '{0} wurde verschoben, ersetzt oder gelöscht, während die Datei offen war; diese Änderung wurde nicht gemacht. Das Haus noch einmal öffnen.',
  'The last back-up could not be made: {0}. It is tried again at the next change.': 'Die letzte Sicherung ließ sich nicht anlegen: {0}. Bei der nächsten Änderung wird es wieder versucht.',
  'It is damaged in places that the house itself does not show.': 'Die Datei ist an Stellen beschädigt, die am Haus selbst nicht zu sehen sind.',
  'The house file holds facts that contradict one another.': 'Die Angaben in der Hausdatei widersprechen einander.',
  '{0} is not there.': '{0} gibt es nicht.',
  '{0} is empty; it holds no house. Nothing was changed. A back-up may still have it.': '{0} ist leer und enthält kein Haus. Es wurde nichts geändert. In einer Sicherung ist es vielleicht noch.',
  '{0} is not a house file. Nothing was changed.': '{0} ist keine Hausdatei. Es wurde nichts geändert.',
  '{0} is damaged, or its disk does not read as it should: parts of it are not as Struckline wrote them. Nothing was changed. A back-up may still have the house.':
    '{0} ist beschädigt, oder das Laufwerk liest nicht, wie es soll: Teile davon sind nicht mehr, wie Struckline sie geschrieben hat. Es wurde nichts geändert. In einer Sicherung ist das Haus vielleicht noch.',
  'The disk on which {0} lies is full. Nothing was changed. Make room on it, then try again.':
    'Das Laufwerk, auf dem {0} liegt, ist voll. Es wurde nichts geändert. Platz schaffen und noch einmal versuchen.',
  'The disk on which {0} lies does not read or write as it should. Nothing was changed. Check that it is connected, then try again.':
    'Das Laufwerk, auf dem {0} liegt, liest oder schreibt nicht, wie es soll. Es wurde nichts geändert. Prüfen, ob es angeschlossen ist, und noch einmal versuchen.',
  '{0} or its folder is protected. Nothing was changed. Allow yourself to read and write both, or copy the file to where you may.':
    'Die Datei {0} oder ihr Ordner ist geschützt. Es wurde nichts geändert. Sich das Lesen und Schreiben von beiden erlauben oder die Datei dorthin kopieren, wo es erlaubt ist.',
  '{0} is in use by another program. Nothing was changed. Try again once that is done with it.':
    '{0} wird von einem anderen Programm benutzt. Es wurde nichts geändert. Noch einmal versuchen, sobald es damit fertig ist.',
  "{0} can't be opened where it lies. Nothing was changed. Check that it is a file, that its disk is connected and that you may read its folder.":
    '{0} lässt sich dort, wo die Datei liegt, nicht öffnen. Es wurde nichts geändert. Prüfen, ob es eine Datei ist, ob ihr Laufwerk angeschlossen ist und ob ihr Ordner gelesen werden darf.',
  'The house file holds no house. Nothing was changed. A back-up may still have it.': 'Die Hausdatei enthält kein Haus. Es wurde nichts geändert. In einer Sicherung ist es vielleicht noch.',
  'stands for a photo that this house file does not keep; it takes the photo itself, as a data URL': 'steht für ein Foto, das in dieser Hausdatei nicht liegt; hierher gehört das Foto selbst, als Daten-URL',
  'is missing from the house file, or damaged in it': 'fehlt in der Hausdatei oder ist darin beschädigt',
  "is damaged and can't be read": 'ist beschädigt und lässt sich nicht lesen',
};

/** The German of what `src-main` says. */
export const HOST: Words = { ...PAPERS, ...COMMAND_LINE, ...DESKTOP, ...PLAN_TEXT, ...LOOPBACK, ...OFFICE, ...STORE };

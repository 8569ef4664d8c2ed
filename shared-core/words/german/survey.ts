import type { Words } from '../say.ts';

/** The German of the columns of tables of rooms and walls; a column is known by its English words too. */
const COLUMNS: Words = {
  'storey, story, floor, level': 'Geschoss, Stockwerk, Etage, storey, story, floor, level',
  'room, room name, name of the room': 'Raum, Zimmer, Raumname, Name des Raums, room, room name, name of the room',
  'wall, walls, wall name': 'Wand, Wände, Wandname, wall, walls, wall name',
  'what, kind, type, item': 'Was, Art, Typ, what, kind, type, item',
  'name, label': 'Name, Bezeichnung, name, label',
  'length, wall length': 'Länge, Wandlänge, length, wall length',
  'corner, turn, angle, inner angle, corner at its right, right corner': 'Ecke, Winkel, Innenwinkel, rechte Ecke, Ecke rechts, corner, turn, angle, inner angle, corner at its right, right corner',
  'height, high, ht': 'Höhe, hoch, height, high, ht',
  'floor line, base, base line, baseline': 'Bodenlinie, Grundlinie, floor line, base, base line, baseline',
  'lean, plumb, out of plumb, lean of its right corner': 'Lotabweichung, Lot, Lotabweichung der rechten Ecke, lean, plumb, out of plumb, lean of its right corner',
  'looked at most, focal wall, focal': 'Blickwand, looked at most, focal wall, focal',
  'entrance, way in': 'Eingang, entrance, way in',
  'from left, from, distance, distance from the left': 'von links, Abstand von links, Abstand, from left, from, distance, distance from the left',
  'width, wide': 'Breite, breit, width, wide',
  'sill, sill height, from floor, above floor, lower edge': 'Brüstung, Brüstungshöhe, vom Boden, über dem Boden, Unterkante, sill, sill height, from floor, above floor, lower edge',
  'reveal, reveal depth, depth': 'Leibung, Leibungstiefe, Tiefe, reveal, reveal depth, depth',
  'covered, covered sides, reveal sides, sides': 'beklebt, beklebte Seiten, Leibungsseiten, Seiten, covered, covered sides, reveal sides, sides',
  'note, notes, remark, remarks, comment, comments': 'Notiz, Notizen, Bemerkung, Bemerkungen, Anmerkung, Anmerkungen, note, notes, remark, remarks, comment, comments',

  'wall, name, wall name, wall no, letter, no, number': 'Wand, Name, Wandname, Wand Nr, Buchstabe, Nr, Nummer, wall, name, wall name, wall no, letter, no, number',
  'length, wall length, width, wall width, long, run, measure, size': 'Länge, Wandlänge, Breite, Wandbreite, lang, Maß, length, wall length, width, wall width, long, run, measure, size',
  'corner, turn, angle, inner angle, corner at its right, right corner, corner right':
    'Ecke, Winkel, Innenwinkel, rechte Ecke, Ecke rechts, corner, turn, angle, inner angle, corner at its right, right corner, corner right',
  'height, wall height, ceiling height, high, ht': 'Höhe, Wandhöhe, Raumhöhe, Deckenhöhe, hoch, height, wall height, ceiling height, high, ht',
  'floor line, floor, floor level, base, base line, baseline': 'Bodenlinie, Boden, Grundlinie, floor line, floor, floor level, base, base line, baseline',
};

/** The German of what stands in a cell or a field. */
const CELLS: Words = {
  room: 'Raum',
  wall: 'Wand',
  rail: 'Leiste',
  furniture: 'Möbel',
  left: 'links',
  right: 'rechts',
  head: 'Sturz',
  sill: 'Brüstung',
  and: 'und',
  all: 'alle',
  'yes, y, x, true, 1': 'ja, j, wahr, yes, y, x, true, 1',
  'no, n, false, 0, -': 'nein, falsch, no, n, false, 0, -',
  inside: 'innen',
  outside: 'außen',
  straight: 'gerade',
  degrees: 'Grad',
  to: 'bis',
};

const SENTENCES: Words = {
  'the left side of {0}': 'linke Seite von {0}',
  'the right side of {0}': 'rechte Seite von {0}',
  'the head of {0}': 'Sturz von {0}',
  'the sill of {0}': 'Brüstung von {0}',
  "the wall's left end": 'linkes Ende der Wand',
  "the wall's right end": 'rechtes Ende der Wand',
  'the middle of the wall': 'Mitte der Wand',
  'the floor': 'Boden',
  'the top of the wall': 'Oberkante der Wand',

  'This table has {0} characters; at most {1} are taken at once': 'Diese Tabelle hat {0} Zeichen; auf einmal werden höchstens {1} angenommen',
  'There is no table here; {0}': 'Hier ist keine Tabelle; {0}',
  'There is no row under the headings; {0}': 'Unter der Kopfzeile steht keine Zeile; {0}',
  'the house would have more rooms than the {0} that it takes.': 'Damit hätte das Haus mehr als die {0} Räume, die es haben kann.',
  '{0} has the {1} walls that a room takes in rows above already.': '{0} hat in Zeilen darüber schon die {1} Wände, die ein Raum haben kann.',
  'wall {0} has the {1} openings that a wall takes in rows above already.': 'Wand {0} hat in Zeilen darüber schon die {1} Öffnungen, die eine Wand haben kann.',
  '{0} has the {1} rails that a room takes in rows above already.': '{0} hat in Zeilen darüber schon die {1} Leisten, die ein Raum haben kann.',
  '{0} has the {1} pieces of furniture that a room takes in rows above already.': '{0} hat in Zeilen darüber schon die {1} Möbelstücke, die ein Raum haben kann.',
  'This table has {0} rows; at most {1} are taken at once': 'Diese Tabelle hat {0} Zeilen; auf einmal werden höchstens {1} angenommen',
  'Column {0}: {1} stands under no heading.': 'Spalte {0}: {1} steht unter keiner Überschrift.',
  'there is nothing; it takes {0}.': 'hier steht nichts; erwartet: {0}.',
  '{0} is no corner. {1}': '{0} ist keine Ecke. {1}',
  '{0} is no short name; it takes 1 to 40 letters, digits, dots, dashes and underscores, such as A.':
    '{0} ist kein Kurzname; erwartet: 1 bis 40 Buchstaben, Ziffern, Punkte, Striche und Unterstriche, zum Beispiel A.',

  'it takes a row of headings and one row for each wall and each opening; the headings are {0}':
    'angenommen werden eine Kopfzeile und je Wand und Öffnung eine Zeile; die Überschriften sind {0}',
  'a {0} takes none, and there stands {1}.': 'bleibt in einer Zeile der Art „{0}“ leer, hier steht aber {1}.',
  'there is nothing, and no room in a row above; it takes the name of the room.': 'hier steht nichts, und darüber steht kein Raum; erwartet: der Name des Raums.',
  '{0} has a wall {1} in a row above already; each wall has a name of its own.': '{0} hat in einer Zeile darüber schon eine Wand {1}; jede Wand hat einen eigenen Namen.',
  'a length': 'eine Länge',
  'A height': 'Eine Höhe',
  'A floor line': 'Eine Bodenlinie',
  'there is nothing, and no wall of the room before it has one; it takes a length.': 'hier steht nichts, und keine Wand des Raums davor hat eine Höhe; erwartet: eine Länge.',
  'wall {0} is it already; a room takes one.': 'das ist schon Wand {0}; ein Raum hat nur eine.',
  'how far it is from the left end of its wall': 'der Abstand vom linken Ende der Wand',
  'its width': 'die Breite',
  'its height': 'die Höhe',
  'the height of its sill': 'die Brüstungshöhe',
  'there is nothing; what is covered in it wants its depth.': 'hier steht nichts; zu beklebten Seiten gehört die Tiefe.',
  'the height of its lower edge above the floor': 'die Höhe der Unterkante über dem Boden',
  'how high it is itself': 'die eigene Höhe',
  'none yet': 'noch keine',
  'there is nothing, and no wall in a row above; a {0} stands on one.': 'hier steht nichts, und darüber steht keine Wand; die Art „{0}“ braucht eine.',
  '{0} is no wall of {1} in a row above; its walls are {2}.': '{0} ist keine Wand von {1} in einer Zeile darüber; Wände: {2}.',
  '{0} is nothing that a row is of; it takes {1}.': '{0} ist keine Art von Zeile; angenommen werden {1}.',
  '{0} is neither yes nor no; it takes yes, or nothing.': '{0} ist weder ja noch nein; erwartet: ja oder nichts.',
  '{0} names more than the sides of a reveal; it takes some of {1}.': '{0} nennt mehr als die Seiten einer Leibung; möglich sind {1}.',

  'A corner is inside, outside or straight on, or its inner angle in degrees, such as 135.': 'Eine Ecke ist innen, außen oder gerade, oder ihr Innenwinkel in Grad, zum Beispiel 135.',
  '8\' to 9\' 6"': '2,4 m bis 2,9 m',
  '{0} is one length, or two for the left and the right end, such as {1}': '{0} ist eine Länge, oder zwei für das linke und das rechte Ende, zum Beispiel {1}',

  'a length, such as {0}': 'eine Länge, zum Beispiel {0}',
  'there is nothing, and no wall before it has one; it takes a length, or write one in the field above.':
    'hier steht nichts, und keine Wand davor hat eine Höhe; erwartet: eine Länge, hier oder im Feld darüber.',
  'it takes one row for each wall, with the columns {0}': 'angenommen wird je Wand eine Zeile mit den Spalten {0}',
  'Line {0}: {1} can be read in two ways, as decimals and as cells; keep the cells apart by tabs or semicolons, or put headings above them':
    'Zeile {0}: {1} lässt sich auf zwei Arten lesen, als Nachkommastellen und als Zellen; die Zellen mit Tabulatoren oder Semikolons trennen oder eine Kopfzeile darübersetzen',
  '{0} is a row further up already; each wall has a name of its own.': '{0} steht schon in einer Zeile weiter oben; jede Wand hat einen eigenen Namen.',
  'the room has a wall {0} already; leave its name out, or put these walls in their place.': 'der Raum hat schon eine Wand {0}; den Namen weglassen oder diese Wände an die Stelle der anderen setzen.',
};

/** The German of what `shared-core/survey` says. */
export const SURVEY: Words = { ...COLUMNS, ...CELLS, ...SENTENCES };

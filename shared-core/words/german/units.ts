import type { Words } from '../say.ts';

/** The German of what `shared-core/units` says. */
export const UNITS: Words = {
  '{0} sq ft': '{0} ft²',

  'write for example 1/2 or 1/3': 'zum Beispiel 1/2 oder 1/3 schreiben',
  'There is no fraction here; {0}': 'Hier steht kein Bruch; {0}',
  '‘{0}’ is not a fraction; {1}': '„{0}“ ist kein Bruch; {1}',
  '‘{0}’ has a zero under the line; {1}': '„{0}“ hat eine Null unter dem Strich; {1}',
  '‘{0}’ is too fine; the number under the line may be up to {1}': '„{0}“ ist zu fein; die Zahl unter dem Strich darf höchstens {1} sein',
  '‘{0}’ is nothing; {1}': '„{0}“ ist nichts; {1}',
  '‘{0}’ is not less than one; {1}': '„{0}“ ist nicht kleiner als eins; {1}',

  'it takes a GTIN of 8, 12, 13 or 14 digits, the last of which checks the others': 'gebraucht wird eine GTIN mit 8, 12, 13 oder 14 Ziffern, deren letzte die anderen prüft',
  '{0} does not check; the last digit should be {1}: a digit was read or typed wrongly': '{0} geht nicht auf; die letzte Ziffer müsste {1} sein: eine Ziffer ist falsch gelesen oder falsch getippt',
  '{0} is not of digits alone; {1}': '{0} besteht nicht nur aus Ziffern; {1}',
  '{0} has 1 digit; {1}': '{0} hat 1 Ziffer; {1}',
  '{0} has {1} digits; {2}': '{0} hat {1} Ziffern; {2}',

  'write for example 12 in, 12\' 4 1/2" or 3.76 m': 'zum Beispiel 3,76 m, 12 in oder 12\' 4 1/2" schreiben',
  'is not a number; write for example 12, 3.76 or 3,76, with no mark between thousands': 'ist keine Zahl; zum Beispiel 12, 3,76 oder 3.76 schreiben, ohne Zeichen zwischen den Tausendern',
  'is not a unit of length; the units are in, ft, yd, mm, cm and m': 'ist keine Längeneinheit; die Einheiten sind mm, cm, m, in, ft und yd',
  'can be read in two ways after {0}; put a space there': 'lässt sich nach {0} auf zwei Arten lesen; dort ein Leerzeichen setzen',
  'is not understood; {0}': 'ist nicht zu verstehen; {0}',
  'has a zero under the line; write for example 7/8': 'hat eine Null unter dem Strich; zum Beispiel 7/8 schreiben',
  'is not less than one; write the whole number first, for example 4 1/2': 'ist nicht kleiner als eins; die ganze Zahl davor schreiben, zum Beispiel 4 1/2',

  'write for example {0}': 'zum Beispiel {0} schreiben',
  'There is no amount here; {0}': 'Hier steht kein Betrag; {0}',
  '‘{0}…’ is too long for an amount; {1}': '„{0}…“ ist zu lang für einen Betrag; {1}',
  '‘{0}’ {1}': '„{0}“ {1}',
  'is below zero; {0}': 'ist kleiner als null; {0}',
  'has marks between thousands; write the digits without them, and {0}': 'hat Zeichen zwischen den Tausendern; diese weglassen und {0}',
  'is not an amount; {0}, without a currency sign': 'ist kein Betrag; {0}, ohne Währungszeichen',
  'has too many decimals; {0} has no decimals, and there are no marks between thousands': 'hat zu viele Nachkommastellen; {0} hat keine, und zwischen den Tausendern steht kein Zeichen',
  'has too many decimals; {0} has up to {1} decimals, and there are no marks between thousands': 'hat zu viele Nachkommastellen; {0} hat bis zu {1}, und zwischen den Tausendern steht kein Zeichen',
  'is too much; the most accepted is {0}': 'ist zu viel; höchstens {0} ist möglich',

  'In ‘{0}’, there is no length before ‘{1}’': 'In „{0}“ steht keine Länge vor „{1}“',
  'In ‘{0}’, there is no length after ‘{1}’': 'In „{0}“ steht keine Länge nach „{1}“',
  'In ‘{0}’: {1}': 'In „{0}“: {1}',
  '‘{0}’ can be read in two ways; write {1} for one length, or {2} minus {3} to take away': '„{0}“ lässt sich auf zwei Arten lesen; {1} schreiben für eine einzige Länge oder {2} minus {3} zum Abziehen',

  '‘{0}’': '„{0}“',

  'is more than 1000 m; that is the longest length accepted': 'ist mehr als 1000 m; das ist die größte mögliche Länge',
  'There is no length here; {0}': 'Hier steht keine Länge; {0}',
  'is not understood there; {0}': 'ist dort nicht zu verstehen; {0}',
  'has no number after it; {0}': 'hat keine Zahl hinter sich; {0}',
  'has no number before it': 'hat keine Zahl vor sich',
  'is not understood there': 'ist dort nicht zu verstehen',
  'has decimals and a fraction together; write one of them, for example 4.5 or 4 1/2': 'hat Nachkommastellen und einen Bruch zugleich; nur eines davon schreiben, zum Beispiel 4,5 oder 4 1/2',
  'has no unit; {0}': 'hat keine Einheit; {0}',
  'does not go with ‘{0}’; write all of it in feet and inches, or all of it in metric': 'passt nicht zu „{0}“; alles in Metern und Zentimetern schreiben oder alles in Fuß und Zoll',
  'cannot come after ‘{0}’; write the larger unit first and each unit once, for example 12 ft 4 in': 'kann nicht nach „{0}“ stehen; die größere Einheit zuerst schreiben und jede nur einmal, zum Beispiel 12 ft 4 in',
  'has to be a whole number, as more follows it; only the last number may have decimals or a fraction': 'muss eine ganze Zahl sein, weil noch etwas folgt; nur die letzte Zahl darf Nachkommastellen oder einen Bruch haben',
  'has no unit; write metres as one number, for example 3.76, or write 3 m 76 cm': 'hat keine Einheit; Meter als eine Zahl schreiben, zum Beispiel 3,76, oder 3 m 76 cm schreiben',
  'has no unit; write feet and inches as 12 4 1/2, 12\' 4 1/2" or 12 ft 4 1/2 in': 'hat keine Einheit; Fuß und Zoll als 12 4 1/2, 12\' 4 1/2" oder 12 ft 4 1/2 in schreiben',
  'In ‘{0}’, ‘{1}’ {2}': 'In „{0}“: „{1}“ {2}',
  '‘{0}…’ is more than {1} characters; {2}': '„{0}…“ hat mehr als {1} Zeichen; {2}',

  'Line {0}: {1}': 'Zeile {0}: {1}',
  '{0} has a space before its quote; a quote stands first in its cell': '{0} hat ein Leerzeichen vor dem Anführungszeichen; ein Anführungszeichen steht am Anfang der Zelle',
  'the quote before {0} is not closed; a cell in quotes ends with a quote': 'das Anführungszeichen vor {0} ist nicht geschlossen; eine Zelle in Anführungszeichen endet mit einem Anführungszeichen',
  'after {0} the cell goes on; a quote within a cell in quotes is written twice': 'nach {0} geht die Zelle weiter; ein Anführungszeichen innerhalb einer Zelle in Anführungszeichen wird doppelt geschrieben',

  '{0} is no heading that is known; those that are known are {1}; leave other columns out': '{0} ist keine bekannte Überschrift; bekannt sind {1}; andere Spalten weglassen',
  '{0} is a second column for the {1}; it takes one of each': '{0} ist eine zweite Spalte für {1}; angenommen wird von jeder eine',
  'there is no column for the {0}; known by {1}': 'es fehlt die Spalte {0}; bekannt als {1}',
};

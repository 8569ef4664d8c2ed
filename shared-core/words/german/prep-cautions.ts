import type { Words } from '../say.ts';

/** The German of the cautions of `shared-core/prep`. */
export const PREP_CAUTIONS: Words = {
  'The textured coating may hold asbestos. It is not sanded, scraped, drilled or broken before a sample was tested; sound, it is left or skimmed over.':
    'Die Strukturbeschichtung kann Asbest enthalten. Bevor eine Probe geprüft ist, wird sie nicht geschliffen, abgestoßen, angebohrt oder aufgebrochen; unbeschädigt bleibt sie, wie sie ist, oder wird überspachtelt.',
  'Ask a licensed asbestos surveyor for the sample, and a licensed contractor where it has to come off.': 'Für die Probe eine zugelassene Fachkraft für Asbest fragen, zum Entfernen einen zugelassenen Fachbetrieb.',
  'Old fillers and patching compounds may hold asbestos. Have what is filled already tested before it is sanded, scraped or raked out.':
    'Alte Spachtel- und Ausbessermassen können Asbest enthalten. Was schon gespachtelt ist, prüfen lassen, bevor es geschliffen, abgestoßen oder aufgekratzt wird.',
  'Ask a licensed asbestos surveyor.': 'Eine zugelassene Fachkraft für Asbest fragen.',
  '16 CFR 1304: patching compounds banned in the US from 1978, which does not clear old stock; years as for textured coatings, from memory':
    '16 CFR 1304: Ausbessermassen in den USA ab 1978 verboten, was alte Vorräte nicht ausschließt; Jahre wie bei Strukturbeschichtungen, aus dem Gedächtnis',
  'Mould harms the lungs: gloves, goggles and a P2 or N95 mask, the door shut, the window open. Its cause is put right first; it is never papered or painted over.':
    'Schimmel schadet der Lunge: Handschuhe, Schutzbrille und Maske P2 oder N95, Tür zu, Fenster auf. Erst wird die Ursache behoben; übertapeziert oder überstrichen wird er nie.',
  'Up to about {0} a householder takes it on, more is a professional’s.': 'Bis etwa {0} kann ein Laie selbst entfernen, mehr ist Sache eines Fachbetriebs.',
  'Ask a licensed mould remediation contractor where it is more, comes back, or somebody in the house is ill.': 'Einen zugelassenen Fachbetrieb für Schimmelsanierung fragen, wenn es mehr ist, wiederkommt oder jemand im Haus krank ist.',
  'US EPA on mould': 'US EPA zu Schimmel',
  'Water and steam carry current: isolate the circuit and prove it dead before walls are wetted or steamed and before plates come off. Foil and metallic papers never go behind plates.':
    'Wasser und Dampf leiten Strom: Stromkreis freischalten und Spannungsfreiheit prüfen, bevor Wände nass werden oder gedämpft wird und bevor Abdeckungen abgenommen werden. Folien- und Metalltapeten kommen nie hinter Abdeckungen.',
  'Water, steam and metal carry current: isolate the circuit and prove it dead before walls are wetted or steamed and before plates come off. {0} conducts: cut it back round every plate, never tuck it behind.':
    'Wasser, Dampf und Metall leiten Strom: Stromkreis freischalten und Spannungsfreiheit prüfen, bevor Wände nass werden oder gedämpft wird und bevor Abdeckungen abgenommen werden. {0} leitet: um jede Abdeckung herum zurückschneiden, nie dahinterstecken.',
  'Ask a licensed electrician where a circuit can’t be isolated or a plate is damaged.': 'Eine zugelassene Elektrofachkraft fragen, wenn ein Stromkreis nicht freizuschalten oder eine Abdeckung beschädigt ist.',
  'common practice, from memory; local wiring rules come first': 'üblich, aus dem Gedächtnis; örtliche Installationsvorschriften gehen vor',
  'The work is reached from a ladder or a trestle: stand it on firm, level ground, a ladder 1 out for every 4 up and 3 ft (0.9 m) above a landing that it leads to, and never lean out.':
    'Gearbeitet wird von Leiter oder Bock: auf festen, ebenen Boden stellen, eine Leiter auf 4 hoch 1 heraus und 3 ft (0,9 m) über den Absatz hinaus, auf den sie führt, und sich nie hinauslehnen.',
  'Ceilings, and walls higher than {0}: there are such here.': 'Decken sowie Wände über {0}: Hier gibt es solche.',
  'Ask a licensed scaffolder where a trestle does not reach.': 'Einen zugelassenen Gerüstbauer fragen, wo ein Bock nicht reicht.',
  '29 CFR 1926.1053 on ladders, from memory; the height is common practice, no source': '29 CFR 1926.1053 zu Leitern, aus dem Gedächtnis; die Höhe ist üblich, ohne Quelle',
  'Over stairs no ladder stands level: build a platform of boards tied to ladder and steps, or a stair scaffold, and have a second person there. A fall down the stairs is the worst of the house.':
    'Über Stufen steht keine Leiter eben: eine Bühne aus Bohlen bauen, an Leiter und Stufen gesichert, oder ein Treppengerüst, und eine zweite Person dabeihaben. Ein Sturz die Treppe hinunter ist der schlimmste im Haus.',
  'A leaning ladder stands 1 out for every 4 up and reaches 3 ft (0.9 m) above the landing.': 'Eine Anlegeleiter steht auf 4 hoch 1 heraus und reicht 3 ft (0,9 m) über den Absatz.',
  'Ask a licensed scaffolder for a stair tower.': 'Für ein Treppenhaus einen zugelassenen Gerüstbauer fragen.',
  '29 CFR 1926.1053 on ladders, from memory; the platform is common practice, no source': '29 CFR 1926.1053 zu Leitern, aus dem Gedächtnis; die Bühne ist üblich, ohne Quelle',
  'Dust of fillers and plaster holds silica, which scars the lungs: sand wet or with extraction, wear a P3 or P100 mask, vacuum instead of sweeping.':
    'Staub von Spachtel und Putz enthält Quarz, der die Lunge vernarben lässt: nass oder mit Absaugung schleifen, Maske P3 oder P100 tragen, saugen statt fegen.',
  'At most 50 µg/m³ of air over 8 hours, from 25 on action is due (29 CFR 1926.1153). Nobody measures it here: take it as reached where dry sanding has no extraction.':
    'Höchstens 50 µg/m³ Luft über 8 Stunden, ab 25 ist zu handeln (29 CFR 1926.1153). Hier misst es niemand: Beim Trockenschleifen ohne Absaugung als erreicht ansehen.',
  'Ask a licensed industrial hygienist where dust is raised for days.': 'Eine zugelassene Fachkraft für Arbeitshygiene fragen, wenn tagelang Staub entsteht.',
  'Solvents in primers, stain block and knotting make dizzy and catch fire: windows open, no flame or spark, gloves, used rags laid out flat to dry outside; nobody sleeps in the room before it is aired.':
    'Lösemittel in Grundierung, Absperrgrund und Astsperre machen benommen und entzünden sich: Fenster auf, keine Flamme, keine Funken, Handschuhe, gebrauchte Lappen draußen ausgebreitet trocknen; niemand schläft im Raum, bevor er gelüftet ist.',
  'Ask for the safety data sheet, and a licensed professional where the room can’t be aired.': 'Nach dem Sicherheitsdatenblatt fragen und nach einem zugelassenen Fachbetrieb, wenn der Raum nicht zu lüften ist.',
  '{0} lets no vapour through. On a damp or cold outside wall it invites mould behind it: dry the wall for good, or choose a covering that breathes.':
    '{0} lässt keinen Dampf durch. An einer feuchten oder kalten Außenwand lädt das zu Schimmel dahinter ein: die Wand dauerhaft trocknen oder einen atmenden Belag wählen.',
  'Ask a licensed surveyor where a wall is cold or was damp.': 'Einen zugelassenen Bausachverständigen fragen, wenn eine Wand kalt ist oder feucht war.',
  'US law has rules for more than {0} of paint disturbed in a room (40 CFR 745.83), in housing with federal help for more than {1} (24 CFR 35.1350).':
    'US-Recht hat Regeln für mehr als {0} bearbeitete Farbe in einem Raum (40 CFR 745.83), in bundesgefördertem Wohnraum für mehr als {1} (24 CFR 35.1350).',
  'Both are reached.': 'Beides ist erreicht.',
  'The second alone is reached.': 'Nur das Zweite ist erreicht.',
  'Neither is reached; the caution holds all the same.': 'Keines ist erreicht; die Vorsicht gilt trotzdem.',
  'Outside the US the law of the country holds instead.': 'Außerhalb der USA gilt stattdessen das Recht des Landes.',
  'Outside the US, as here ({0}), the law of the country holds instead.': 'Außerhalb der USA, wie hier ({0}), gilt stattdessen das Recht des Landes.',
  'It is not known when the house was built, so old paint may hold lead: have it tested or take it for lead. Keep children and pregnant women away, sheet up, damp what is sanded or scraped, no dry power sanding and no flame, clean up wet.':
    'Das Baujahr des Hauses ist nicht bekannt, alte Farbe kann also Blei enthalten: prüfen lassen oder als bleihaltig behandeln. Kinder und Schwangere fernhalten, abdecken, Geschliffenes und Abgestoßenes feucht halten, keine Maschine trocken und keine Flamme, nass reinigen.',
  'In a house of {0} old paint may hold lead: have it tested or take it for lead. Keep children and pregnant women away, sheet up, damp what is sanded or scraped, no dry power sanding and no flame, clean up wet.':
    'In einem Haus von {0} kann alte Farbe Blei enthalten: prüfen lassen oder als bleihaltig behandeln. Kinder und Schwangere fernhalten, abdecken, Geschliffenes und Abgestoßenes feucht halten, keine Maschine trocken und keine Flamme, nass reinigen.',
  'Ask a licensed lead inspector for a test, and a certified lead-safe renovator.': 'Für die Prüfung eine zugelassene Fachkraft für Blei fragen, für die Arbeit einen dafür zertifizierten Betrieb.',
  'Ask a licensed lead specialist, and the local authority which rules hold.': 'Eine zugelassene Fachkraft für Blei fragen und die Behörde am Ort, welche Regeln gelten.',
  'In the US suspect up to the mid-1980s; here up to {0}, to be sure. Nothing says that it is later: take it as reached.': 'In den USA bis Mitte der 1980er Jahre verdächtig; hier sicherheitshalber bis {0}. Nichts sagt, dass es jünger ist: als erreicht ansehen.',
  'Suspect up to {0}, the year of the United Kingdom; other countries have their own. Nothing says that it is later: take it as reached.': 'Verdächtig bis {0}, dem Jahr des Vereinigten Königreichs; andere Länder haben ihr eigenes. Nichts sagt, dass es jünger ist: als erreicht ansehen.',
  'years in the US and the United Kingdom, from memory; local rules come first': 'Jahre der USA und des Vereinigten Königreichs, aus dem Gedächtnis; örtliche Regeln gehen vor',
  'That is reached.': 'Das ist erreicht.',
  'That is not reached.': 'Das ist nicht erreicht.',
  'How much it is here is not known, so it counts as more.': 'Wie viel es hier ist, ist nicht bekannt, also zählt es als mehr.',
  'Here it is {0}.': 'Hier sind es {0}.',
};

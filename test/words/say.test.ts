import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { ENGLISH, languageOf, LANGUAGES, say, sayDay, sayDecimal, sayList, speak, spokenLanguage, textKey, type Words } from '../../shared-core/words/index.ts';
import { textsOf, textsOfFolder } from './find-texts.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const GERMAN_FILES = readdirSync(join(ROOT, 'shared-core/words/german')).map((name) => name.replace('.ts', '')).filter((name) => name !== 'index');
const PLACES = ['house', 'start', 'survey', 'prep', 'coverings', 'set-out', 'order', 'deliveries', 'calendar', 'paperwork'];
/** Folders whose every text is said and has words, with the file of these words. */
const SAID = [
  ...['words', 'units', 'house', 'survey', 'setting-out', 'ordering', 'prep', 'calendar', 'costing', 'plan', 'drawing', 'contract'].map((name) => [`shared-core/${name}`, name] as const),
  ...['host', 'state', 'parts', 'drawing'].map((name) => [`src-renderer/${name}`, `window-${name}`] as const),
  ...PLACES.map((name) => [`src-renderer/places/${name}`, `place-${name}`] as const),
  ['src-main/**', 'host'] as const,
  ['src-renderer/*', 'window'] as const,
];

/** Files whose texts are for programs: style, the columns of a table, what a browser is told, SQL, names of files. */
const FOR_PROGRAMS = ['src-renderer/places/paperwork/print-pages.ts', 'src-main/documents/order-csv.ts', 'src-main/documents/pdf/svg.ts', 'src-main/office/window-files.ts', 'src-main/store/migrations.ts', 'src-main/store/back-ups.ts'];

afterEach(() => speak(ENGLISH));

describe('English', () => {
  it('is what stands where it is said', () => {
    expect(spokenLanguage()).toBe(ENGLISH);
    expect(say`Run ${'2214'} has ${8}.`).toBe('Run 2214 has 8.');
    expect([say``, say`${1}`, say`${1}${2} `]).toEqual(['', '1', '12 ']);
    expect(sayDecimal('3.76')).toBe('3.76');
    expect(sayDay('2026-03-02')).toBe('2 Mar 2026');
  });
});

describe('another language', () => {
  const speakWith = (words: Words) => speak({ ...ENGLISH, words, decimalMark: ',', writeDay: (day, month, year) => `${year} ${month} ${day}` });

  it('has words for a text by its key, with the gaps in its own order', () => {
    expect(textKey(['Run ', ' has ', '.'])).toBe('Run {0} has {1}.');
    speakWith({ 'Run {0} has {1}.': '{1} of {0}: {1}.' });
    expect(say`Run ${'2214'} has ${8}.`).toBe('8 of 2214: 8.');
  });

  it('puts a value in as it is, whatever stands in it', () => {
    speakWith({ '{0} and {1}': '{0} und {1}' });
    expect(say`${'{1}$&'} and ${'{0}'}`).toBe('{1}$& und {0}');
  });

  it('names things one after the other', () => {
    expect([[], ['A'], ['A', 'B'], ['A', 'B', 'C']].map(sayList)).toEqual(['', 'A', 'A and B', 'A, B and C']);
  });

  it('leaves English what it has no words for', () => {
    speakWith({});
    expect(say`Run ${'2214'} has ${8}.`).toBe('Run 2214 has 8.');
  });

  it('writes numbers and days its own way, and leaves alone what is neither', () => {
    speakWith({});
    expect(['3.76', '3.76 m', '12', '-0.5', 'a.b', '1.'].map(sayDecimal)).toEqual(['3,76', '3,76 m', '12', '-0,5', 'a.b', '1.']);
    expect(['2026-03-02', '2026-13-02', '2 March', ''].map(sayDay)).toEqual(['2026 Mar 2', '2026-13-02', '2 March', '']);
  });

  it('is found by its code, whatever the country', () => {
    expect(languageOf('de-CH').name).toBe('Deutsch');
    expect(['de', 'DE', 'en-GB', 'xx', ''].map((code) => languageOf(code).code)).toEqual(['de', 'de', 'en', 'en', 'en']);
    expect(new Set(LANGUAGES.map(({ code }) => code)).size).toBe(LANGUAGES.length);
    expect(LANGUAGES.map(({ months }) => months.length)).toEqual(LANGUAGES.map(() => 12));
  });
});

describe('the texts of a file', () => {
  it('are found in code and markup, said and unsaid', () => {
    expect(textsOf('a.ts', "const a = say`Run $" + "{b ? say`one` : 'of two'} has`; throw new Error('not for users'); find.closest('a b'); open('My App/Inner Folder/a b');")).toEqual({
      said: ['Run {0} has', 'one'],
      unsaid: ['a.ts: of two'],
    });
    expect(textsOf('a.svelte', '<p class="a b" title="Yes">{say`Said`} no, {`two $' + '{3} words`}</p><Field label="One" value="it is" />')).toEqual({
      said: ['Said'],
      unsaid: ['a.svelte: title', 'a.svelte: no,', 'a.svelte: two … words', 'a.svelte: label'],
    });
  });

  it.each(SAID.filter(([folder]) => folder.startsWith('src-')))('of %s are all said', (folder) => {
    const { unsaid } = textsOfFolder(ROOT, folder);
    expect(unsaid.filter((text) => !FOR_PROGRAMS.some((file) => text.startsWith(`${file}:`)))).toEqual([]);
  });
});

describe('German', () => {
  it('has the gaps and the outer space of the English', () => {
    const gapsOf = (text: string) => [...new Set(text.match(/\{\d+\}/g))].sort();
    const outerSpaceOf = (text: string) => [/^\s*/.exec(text)?.[0], /\s*$/.exec(text)?.[0]];
    for (const [key, words] of Object.entries(languageOf('de').words ?? {})) {
      expect([words, gapsOf(words)]).toEqual([words, gapsOf(key)]);
      expect([words, outerSpaceOf(words)]).toEqual([words, outerSpaceOf(key)]);
    }
  });

  it.each(GERMAN_FILES)('of %s.ts is not said otherwise elsewhere', async (name) => {
    const { words } = languageOf('de');
    const modules = (await import(`../../shared-core/words/german/${name}.ts`)) as Readonly<Record<string, Words>>;
    for (const own of Object.values(modules)) expect(words).toMatchObject(own);
  });

  it.each(SAID)('of %s has words for every text in %s.ts, and no others', async (folder, name) => {
    const own = Object.values((await import(`../../shared-core/words/german/${name}.ts`)) as Readonly<Record<string, Words>>);
    expect(Object.keys(Object.assign({}, ...own) as Words).sort()).toEqual([...new Set(textsOfFolder(ROOT, folder).said)].sort());
  });

  it('is what the core says once it is spoken, and never what it writes', async () => {
    speak(languageOf('de'));
    const { applyEdit, nameEdit, newHouse, writeDocument } = await import('../../shared-core/house/index.ts');
    const { millimetres, moneyOf, parseMeasure, printLength, printMoney, showArea, rectangleArea, showLength, showMoney } = await import('../../shared-core/units/index.ts');
    const messageOf = (outcome: ReturnType<typeof parseMeasure> | ReturnType<typeof applyEdit>) => (outcome.ok ? '' : outcome.faults[0]?.message);

    expect(showLength(millimetres(3760), 'metric')).toBe('3,76 m');
    expect(showArea(rectangleArea(millimetres(4113), millimetres(3000)), 'metric')).toBe('12,34 m²');
    expect(showMoney(moneyOf(8400), 'EUR')).toBe('84,00 EUR');
    expect([printLength(millimetres(3760), 'metric'), printMoney(moneyOf(8400), 'EUR')]).toEqual(['3.76 m', '84.00']);
    expect(messageOf(parseMeasure('3 m 4 x', 'metric'))).toBe('In „3 m 4 x“: „x“ ist keine Längeneinheit; die Einheiten sind mm, cm, m, in, ft und yd');

    const house = newHouse('Erlenhof 7', 'metric', 'EUR');
    const room = { id: 'bed1', name: 'Kammer', walls: [{ id: 'A', length: '3,76 m', height: '2.4 m' }] };
    const furnished = applyEdit(house, { kind: 'add-room', room });
    expect(messageOf(furnished)).toBe('');
    if (!furnished.ok) return;
    expect(nameEdit(furnished.value, { kind: 'change-wall', room: 'bed1', wall: 'A', facts: { length: '4 m', height: '2,5 m' } })).toBe('Länge und Höhe von Wand A in Kammer ändern');
    expect(messageOf(applyEdit(furnished.value, { kind: 'change-wall', room: 'bed1', wall: 'A', facts: { length: '400 m' } }))).toBe('ist 400 m; höchstens 100 m ist möglich. Einheit prüfen');
    expect(messageOf(applyEdit(furnished.value, { kind: 'change-wall', room: 'bed1', wall: 'A', facts: { turn: 'left' } }))).toBe('ist "left"; erwartet: "inside", "outside", "straight" oder ein Innenwinkel von "10" bis "350" Grad');
    expect(writeDocument(furnished.value)).toContain('"length": "3.76 m"');

    const { readRoomTable, readTurnTyped, writeRoomTable } = await import('../../shared-core/survey/index.ts');
    const table = writeRoomTable(furnished.value);
    expect(table).toContain('Storey,Room,Wall,What,');
    expect(table).toContain(',Kammer,A,wall,,"3,76 m",inside,');
    expect(readRoomTable(table, house).edit?.rooms).toMatchObject([{ name: 'Kammer', walls: [{ id: 'A', length: '3,76 m', turn: 'inside' }] }]);
    const typed = 'Raum;Wand;Was;Länge;Ecke;Höhe;von links;Breite;Brüstung;Eingang\nFlur;A;Wand;3,2 m;außen;2,4 m bis 2,6 m;;;;\nFlur;A;Tür;;;2 m;0,5 m;90 cm;;ja';
    const { edit, rows } = readRoomTable(typed, house);
    expect(rows.flatMap(({ troubles }) => troubles)).toEqual([]);
    expect(rows[0]?.cells).toMatchObject({ what: 'Wand', corner: 'außen', height: '2,4 m bis 2,6 m' });
    expect(edit?.rooms[0]?.walls).toMatchObject([{ turn: 'outside', height: ['2,4 m', '2,6 m'], openings: [{ kind: 'door', entrance: true }] }]);
    expect(readRoomTable('Raum;Wand;Länge;Höhe\nFlur;A;;2 m', house).rows[0]?.troubles).toEqual([{ column: 'length', words: 'Länge: hier steht nichts; erwartet: eine Länge.' }]);
    expect(['innen', 'auß', '92,5 Grad', 'inside'].map(readTurnTyped)).toEqual(['inside', 'outside', '92.5', 'inside']);
  });
});

import { describe, expect, test } from 'vitest';
import { LANGUAGES } from '../../shared-core/words/index.ts';
import { FIRST_FONT, lettersWithoutFont, spell } from '../../src-main/documents/pdf/fonts.ts';
import { type Block, type Sheet, TICK_BOX } from '../../src-main/documents/pdf/sheet.ts';
import { type Frame, writePdf } from '../../src-main/documents/pdf/write-pdf.ts';
import { readPdf } from './read-pdf.ts';

const FRAME: Frame = { title: 'Sheet', house: 'Larkfield', size: 'a4', stamp: { changed: '2026-03-02T12:00:00.000Z', revision: 3, mark: 'ABCD-0123' } };
const sheetOf = (...blocks: readonly Block[]): Sheet => ({ title: 'Order', about: 'Northgate', blocks });
const written = async (...blocks: readonly Block[]) => readPdf((await writePdf([sheetOf(...blocks)], FRAME)).bytes);

describe('fonts', () => {
  test('a text is set in parts by the font that has its letters, spaces with what stands before them', () => {
    expect(spell('Hall, Кухня 2')).toEqual([{ font: FIRST_FONT, text: 'Hall, ' }, { font: 'NotoSans', text: 'Кухня ' }, { font: FIRST_FONT, text: '2' }]);
    expect(spell('Κήπος').map(({ font }) => font)).toEqual(['NotoSans']);
    expect(spell('Łódź').map(({ text }) => text).join('')).toBe('Łódź');
    expect(spell('')).toEqual([]);
  });

  test('marks that are put together are one letter, and what is not seen is left out', () => {
    expect(spell('e\u0301').map(({ text }) => text)).toEqual(['é']);
    expect(spell('a\u0007b\u200Dc\u202Ed\uFE0F\uD800').map(({ text }) => text).join('')).toBe('abcd\uFFFD');
    expect(lettersWithoutFont('e\u0301\u202E\u0007 ok')).toEqual([]);
  });

  test('letters that no font has are named once each', () => {
    expect(lettersWithoutFont('Bad 浴室 浴 ✋🏽')).toEqual(['浴', '室', '✋🏽']);
  });

  test('every text of the app has its letters, in each of its languages', () => {
    const texts = LANGUAGES.flatMap(({ words, months, name }) => [name, ...months, ...Object.entries(words ?? {}).flat()]);
    expect(texts.length).toBeGreaterThan(2000);
    // A sign that stands on a screen alone.
    expect(lettersWithoutFont(texts.join(' '))).toEqual(['▼']);
  });

  test('the alphabets of Latin, Greek and Cyrillic are whole', () => {
    const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, index) => String.fromCodePoint(from + index)).filter((letter) => /\p{L}/u.test(letter));
    expect(lettersWithoutFont([...range(0x41, 0x17f), ...range(0x386, 0x3ce), ...range(0x400, 0x45f), 'Ґ', 'ґ', 'ẞ', 'Ș', 'ș', 'Ț', 'ț'].join(''))).toEqual([]);
  });
});

describe('a PDF', () => {
  test('has the head of a table on each page that the table runs over, and breaks no row', async () => {
    const { pages } = await written({ kind: 'heading', text: 'Lines' }, {
      kind: 'table',
      heading: 'K-2041',
      columns: [{ head: 'Roll' }, { head: 'Where it goes', isWide: true }, { head: 'Seen', as: 'tick' }],
      rows: Array.from({ length: 90 }, (_, index) => [`R${index}.`, `from${index} ${'a longer text that takes two lines of its column '.repeat(3)}until${index}`, TICK_BOX]),
    });
    expect(pages.length).toBeGreaterThan(3);
    for (const page of pages) {
      expect(page).toContain('Lines K-2041 Roll Where it goes Seen');
      for (const [, number] of page.matchAll(/from(\d+)/g)) expect(page).toContain(`until${number}`);
    }
    for (let index = 0; index < 90; index += 1) expect(pages.filter((page) => page.includes(`R${index}.`))).toHaveLength(1);
  });

  test('keeps a heading with what follows it', async () => {
    const filler: readonly Block[] = Array.from({ length: 40 }, (_, index) => ({ kind: 'text', text: `Line ${index}` }));
    for (let lines = 28; lines <= 40; lines += 1) {
      const { pages } = await written(...filler.slice(0, lines), { kind: 'heading', text: 'Cautions' }, { kind: 'caution', text: 'Lead', notes: ['Ask first'] });
      expect(pages.find((page) => page.includes('Cautions'))).toContain('Ask first');
    }
  });

  test('loses no heading that nothing follows', async () => {
    const { pages } = await written({ kind: 'heading', text: 'First' }, { kind: 'heading', text: 'Second' });
    expect(pages.join(' ')).toContain('First Second');
  });

  test('says which letters have no font, in its text and to whoever asked', async () => {
    const { bytes, unset } = await writePdf([sheetOf({ kind: 'text', text: 'Bad 浴室' })], FRAME);
    expect(unset).toEqual(['浴', '室']);
    expect((await readPdf(bytes)).pages.at(-1)).toContain('U+6D74, U+5BA4');
  });

  test('has its date from the last edit, and none of its own where that is not known', async () => {
    expect((await written()).info['CreationDate']).toBe('D:20260302120000Z');
    const unknown = await readPdf((await writePdf([sheetOf()], { ...FRAME, stamp: { changed: null, revision: null, mark: 'ABCD-0123' } })).bytes);
    expect(unknown.info['CreationDate']).toBe('D:19700101000000Z');
    expect(unknown.pages[0]).not.toMatch(/as of|revision/);
  });

  const words = Array.from({ length: 900 }, (_, index) => `m${index}`);
  const text = Array.from({ length: 4 }, () => words.join(' ')).join(' ');
  const roll = { number: 1, rollLength: 1000, left: 'nothing left', cuts: words.map((label, index) => ({ label, tapeLabel: label, goesTo: 'hall', length: '1 m', at: '2 m', top: '', from: index, to: index + 1, isOffcut: false, isOther: false })) };
  const heads = { roll: 'Roll', piece: 'Piece', goesTo: 'For', length: 'Length', at: 'At', top: 'Top' };
  const HIGH: readonly (readonly [string, readonly Block[]])[] = [
    ['a row of a table', [{ kind: 'table', columns: [{ head: 'a' }, { head: 'b', width: 60 }], rows: [['x', text]] }]],
    ['a row of a table under a heading', [{ kind: 'heading', text: 'h' }, { kind: 'table', heading: 'of', columns: [{ head: 'a', isWide: true }], rows: [[text], ['last']] }]],
    ['a caution', [{ kind: 'caution', text, notes: ['last'] }]],
    ['the notes of a caution under a heading', [{ kind: 'heading', text: 'h' }, { kind: 'caution', text: 'first', notes: words }]],
    ['a text under a heading', [{ kind: 'heading', text: 'h' }, { kind: 'text', text }]],
    ['something to tick', [{ kind: 'ticks', of: [{ text: 'first', notes: words }] }]],
    ['facts under a heading', [{ kind: 'heading', text: 'h' }, { kind: 'facts', of: [{ head: 'a', text }] }]],
    ['a roll', [{ kind: 'heading', text: 'h' }, { kind: 'rolls', heading: 'K-2041', note: 'from the start', heads, rolls: [roll] }]],
    ['a roll that goes to what has a long name', [{ kind: 'rolls', heading: 'K-2041', note: 'from the start', heads, rolls: [{ ...roll, cuts: roll.cuts.map((cut) => ({ ...cut, goesTo: 'hall '.repeat(100) })) }] }]],
  ];
  test.each(HIGH)('loses nothing of what is higher than a page: %s', async (_, blocks) => {
    const { pages } = await written(...blocks);
    expect(pages.length).toBeGreaterThan(2);
    const found = new Set(pages.join(' ').split(' '));
    expect(words.filter((word) => !found.has(word))).toEqual([]);
  });

  test('has a running head that ends before the text, whatever the house is called', async () => {
    const frame = { ...FRAME, house: 'H'.repeat(500) };
    const { pages, rightmost } = await readPdf((await writePdf([{ ...sheetOf({ kind: 'text', text: 'Here' }), about: 'W'.repeat(80) }], frame)).bytes);
    expect(pages[0]!.replaceAll(' ', '')).toMatch(/H{47}…/);
    expect(pages[0]!.replaceAll(' ', '')).not.toMatch(/H{48}/);
    expect(rightmost).toBeLessThanOrEqual(595.28 - 40);
  });

  test('lets no word stand beyond its column', async () => {
    const long = 'K-'.padEnd(300, '20410');
    const { pages, rightmost } = await written({ kind: 'table', columns: [{ head: 'Pattern' }, { head: 'Run' }, { head: 'For', isWide: true }], rows: [[long, long, long]] }, { kind: 'text', text: long }, { kind: 'facts', of: [{ head: 'Long', text: long }] });
    expect(pages.length).toBeGreaterThan(0);
    expect(rightmost).toBeLessThanOrEqual(595.28 - 40);
  });
});

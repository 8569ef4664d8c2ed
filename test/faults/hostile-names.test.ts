import { readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import type { HouseListing, OpenedHouse, WrittenText } from '../../shared-core/contract/index.ts';
import { drawRoomPlan } from '../../shared-core/drawing/index.ts';
import { decodeHouse, type House, newHouse } from '../../shared-core/house/index.ts';
import { papersOf, planHouse } from '../../shared-core/plan/index.ts';
import { drawOutline, readRoomTable, writeRoomTable } from '../../shared-core/survey/index.ts';
import { readSeparated, separatedCell, writeSeparated } from '../../shared-core/units/index.ts';
import { calendarFile, makePaper, orderCsv } from '../../src-main/documents/index.ts';
import { fileNameOf } from '../../src-main/office/file-names.ts';
import type { Office } from '../../src-main/office/index.ts';
import { exampleDocument, houseOf, type Loose } from '../builders.ts';
import { badlySaid } from './words-of-a-failure.ts';
import { officeForAll } from './office-for-all.ts';

/** Texts that a house can bear as any of its names. */
const BORNE: readonly string[] = [
  '<script>alert(1)</script>', '"><img src=x onerror=alert(1)>', '=1+1', '+1', '-1', '@SUM(1)', `=HYPERLINK("http://x.example","y")`, '＝1+1', 'a;=1+1;b', 'a\n=1+1', 'a\r\n@SUM(1)', 'a\t-1', `x";=1+1`, `a;"=1`, '"=1', '; =1+1', "'=1+1", "a;'=1",
  '../../etc/passwd', '..\\..\\x', 'C:\\Windows\\x', '/', '...', '~', '-rf', 'CON', 'nul.txt', 'COM1', 'lpt9.doc', 'aux.', 'CONIN$',
  'a\u202egpj.exe', 'e\u0301\u0301\u0301\u0301'.repeat(10), '👩‍👩‍👧‍👦 🏠', '𝒳'.repeat(28), '漢'.repeat(58), 'a\u0007b\u001b[31mc', 'a\u0085b', 'BEGIN:VEVENT\r\nSUMMARY:y', 'a,b\\;c:d"e', '{0} $& %s', 'constructor',
];
/** Texts that are none. */
const REFUSED: readonly (readonly [string, string])[] = [['a zero', 'a\u0000b'], ['half a letter', 'a\ud800b'], ['a thousand marks', `e${'\u0301'.repeat(1000)}`], ['nothing but space', ' \t\r\n ']];

const NAMES = new Set(['name', 'note', 'orderNote', 'patternNumber', 'supplier', 'material', 'run', 'storey', 'paste', 'place', 'what', 'caption', 'contractor', 'customer', 'deliverTo', 'address', 'batch']);

/** A house of rooms that ask for much, its every name and note as given. */
function documentNamed(name: string): Loose {
  const document = exampleDocument();
  Object.assign(document, { orderNote: 'x', contractor: 'x', customer: 'x', deliverTo: 'x' });
  document.work = { starts: '2026-03-02' };
  document.expenses = [{ what: 'x', cost: '1' }];
  document.leftovers = [{ covering: document.coverings[0].id, run: 'x', length: '1 m', place: 'x' }];
  document.suppliers = [{ id: 'x', name: 'x', address: 'x', note: 'x' }];
  document.orders = [{ id: 'o1', placed: '2026-02-01', expected: '2026-02-20', supplier: 'x', note: 'x', deliverTo: 'x', lines: [{ covering: document.coverings[0].id, patternNumber: 'x', rolls: 3 }] }];
  for (const covering of document.coverings) Object.assign(covering, { name: 'x', note: 'x', supplier: 'x', material: 'x', patternNumber: 'x', ...(covering.kind === 'paint' ? { batches: [{ batch: 'x', place: 'x' }] } : {}) });
  for (const room of document.rooms) {
    Object.assign(room, { storey: 'x', note: 'x' });
    for (const wall of room.walls) wall.note = 'x';
  }
  return JSON.parse(JSON.stringify(document), (key, value: unknown) => (NAMES.has(key) && typeof value === 'string' ? name : value));
}

const houseNamed = (name: string): House => houseOf(documentNamed(name));
const WRITTEN = new Date('2026-03-01T10:20:30Z');
const eventsOf = (calendar: string) => new ICAL.Component(ICAL.parse(calendar)).getAllSubcomponents('vevent');
const propertiesOf = (calendar: string) => new Set(eventsOf(calendar).flatMap((event) => event.getAllProperties().map((property) => property.name)));
const plain = calendarFile(houseNamed('Plain'), planHouse(houseNamed('Plain'), 'instant'), WRITTEN)!;

/** What a spreadsheet might take for a formula; a number is one for nobody. */
const isRun = (cell: string) => /^["'\s]*[=+\-@＝＋－＠]/.test(cell) && !/^\s*'/.test(cell.replace(/^[\s"]+/, '')) && !/^-?\d+(?:\.\d+)?$/.test(cell);

/** What Windows, macOS and Linux all take, in sight, not hidden and at most 200 bytes long. */
const isGoodFileName = (file: string) => file === file.normalize('NFC') && file.isWellFormed() && Buffer.byteLength(file) <= 200 && !/[/\\:*?"<>|\p{C}]|^[\s.-]|[\s.]\.[^.]*$|\s{2}/u.test(file) && !/^(?:con|prn|aux|nul|conin\$|conout\$|com\d|lpt\d)(?:\.|$)/i.test(file);

/** Every cell as a library reads it that is not ours, whatever it takes to keep cells apart. */
function cellsOf(csv: string): readonly string[] {
  const read = (delimiter: string | string[], quote: string | false) => (parse(csv, { delimiter, quote, relax_quotes: true, relax_column_count: true, skip_records_with_error: false }) as string[][]).flat();
  return [...read(',', '"'), ...read(';', false), ...read('\t', false), ...csv.split(/[;\t\r\n]/)];
}

let folder: string;
let office: Office;

officeForAll((one, place) => {
  office = one;
  folder = place;
});

describe.each(BORNE.map((name) => [name.slice(0, 30), name]))('a house in which everything is called %j', (_short, name) => {
  const house = houseNamed(name);
  const plan = planHouse(house, 'instant');

  it('has no cell in its tables that a spreadsheet would run, and its rooms are read again as they were', () => {
    expect(cellsOf(orderCsv(house, plan)).filter(isRun)).toEqual([]);
    const rooms = writeRoomTable(house);
    expect(cellsOf(rooms).filter(isRun)).toEqual([]);
    const table = readRoomTable(rooms, newHouse('Other', 'metric'));
    expect(table.faults).toEqual([]);
    expect(table.rows.flatMap(({ troubles }) => troubles)).toEqual([]);
    expect(new Set(table.edit!.rooms.flatMap((room) => [room.name, room.storey, room.note, ...room.walls!.map(({ note }) => note)]))).toEqual(new Set([name.trim()]));
  });

  it('has it in its calendar as text and in no line of its own', () => {
    const file = calendarFile(house, plan, WRITTEN)!;
    expect(eventsOf(file)).toHaveLength(eventsOf(plain).length);
    expect(propertiesOf(file)).toEqual(propertiesOf(plain));
    expect(file.replaceAll('\r\n', '')).not.toMatch(/[\u0000-\u0008\u000a-\u001f\u007f]/);
    const seen = name.replaceAll(/\r\n|\r/g, '\n').replaceAll(/(?![\n\t])\p{Cc}/gu, '').trim();
    expect(eventsOf(file).map((event) => String(event.getFirstPropertyValue('location')))).toEqual(eventsOf(file).map(() => seen));
  });

  it('has it in the text of its order as it is, and its papers can be made', async () => {
    const facts = { house, plan, stamp: { changed: null, revision: 0, mark: '0000-0000' } };
    const papers = papersOf(house, plan);
    const mail = await makePaper(facts, papers.find(({ kind }) => kind === 'order')!, 'text', 'a4');
    expect(new TextDecoder().decode(mail.bytes)).toContain(name.trim());
    for (const kind of ['order', 'job-sheet', 'cut-list', 'record'] as const) {
      const sheet = await makePaper(facts, papers.find((one) => one.kind === kind)!, 'pdf', 'letter');
      expect([kind, Buffer.from(sheet.bytes.subarray(0, 5)).toString(), isGoodFileName(fileNameOf(sheet.title, sheet.ending))]).toEqual([kind, '%PDF-', true]);
    }
  });

  it('is drawn with it as plain text, not as marks of a page', () => {
    const room = house.rooms[0]!;
    const drawing = drawRoomPlan(room, drawOutline(room), 'metric');
    expect(drawing.description).toContain(room.name);
    expect(JSON.stringify(drawing.shapes)).not.toMatch(/&(?:lt|gt|quot|amp);/);
  });

  it('gets files with names that any disk takes', () => {
    expect(['.struckline', ' 12.struckline', ', job sheets.txt', '.json'].map((rest) => fileNameOf(name, rest)).filter((file) => !isGoodFileName(file))).toEqual([]);
  });
});

describe('a house of such a name', () => {
  it.each(['../../etc/passwd', 'C:\\Windows\\x', 'CON', 'a\u202egpj.exe', '漢'.repeat(80), '...'])('such as %j lies in the folder of houses, is listed by its name and can be written out', async (name) => {
    const made = await office.call('create-house', { name, lengths: 'metric', currency: 'EUR' });
    const { file } = (made as { value: OpenedHouse }).value;
    await office.call('edit-house', { file, revision: 0, edit: { kind: 'add-room', room: { id: 'study', name: 'Study', walls: [] } } });
    const listed = await office.call('list-houses', {});
    expect((listed as { value: readonly HouseListing[] }).value.find((one) => one.file === file)?.name).toBe(name);
    const papers = [await office.call('export-document', { file }), await office.call('write-paper', { file, paper: { kind: 'record', of: null }, form: 'pdf', size: 'a4' })];
    const names = [file, ...papers.map((reply) => (reply.ok ? (reply.value as WrittenText).fileName : badlySaid(reply)!))];
    expect(names.filter((one) => !isGoodFileName(one))).toEqual([]);
    const renamed = await office.call('edit-house', { file, revision: 1, edit: { kind: 'change-house', facts: { built: 1900 } } });
    expect(renamed.ok).toBe(true);
    expect([readdirSync(folder), readdirSync(join(folder, 'houses')).includes(file)]).toEqual([['houses'], true]);
  });
});

describe('a name that is no text', () => {
  it.each(REFUSED)('because of %s is refused in words, wherever it stands, and no file is made', async (_what, name) => {
    const before = readdirSync(join(folder, 'houses'));
    const document = documentNamed(name);
    const read = decodeHouse(document);
    expect(read.ok ? [] : read.faults.map(({ path }) => path)).toContain('name');
    expect(read.ok ? [] : read.faults.filter(({ message }) => !/^(?:is|holds) .*(?:it takes|Write it again)/s.test(message) && !message.startsWith('More is wrong'))).toEqual([]);
    expect(badlySaid(await office.call('import-document', { text: JSON.stringify(document) }))).toBeNull();
    expect(await office.call('create-house', { name, lengths: 'metric', currency: 'EUR' })).toMatchObject({ ok: false, error: { code: 'bad-argument', details: [{ path: 'name' }] } });
    expect(readdirSync(join(folder, 'houses'))).toEqual(before);
  });
});

describe('a house file that lies elsewhere', () => {
  it('gives papers names that any disk takes, whatever its own is', async () => {
    const source = join(folder, 'houses', readdirSync(join(folder, 'houses')).find((name) => name.endsWith('.struckline'))!);
    const path = join(folder, '-a:b\u202e\n?.struckline');
    writeFileSync(path, readFileSync(source));
    const opened = await office.openPath(path);
    const { file } = (opened as { value: OpenedHouse }).value;
    const papers = [await office.call('export-document', { file }), await office.call('write-paper', { file, paper: { kind: 'record', of: null }, form: 'pdf', size: 'a4' })];
    expect(papers.map((reply) => reply.ok && (reply.value as WrittenText).fileName)).toEqual(['a b.json', expect.stringMatching(/^House record, .+\.pdf$/)]);
    rmSync(path);
  });
});

describe('a table that is written', () => {
  const text = fc.string({ unit: fc.constantFrom('=', '+', '-', '@', "'", '"', ';', ',', '\t', '\n', '\r', ' ', 'a', '1', '＝') });

  it('has no cell that would be run and is read again as it was, whatever stands in it', () => {
    fc.assert(
      fc.property(fc.array(text, { minLength: 1, maxLength: 4 }), (cells) => {
        const csv = writeSeparated([['first', 'second', 'third', 'last'], cells]);
        expect(cellsOf(csv).filter(isRun)).toEqual([]);
        const trimmed = cells.map((cell) => cell.trim());
        const read = readSeparated(writeSeparated([['first', 'second', 'third', 'last'], trimmed]));
        expect(read.ok && (read.value[1]?.cells ?? trimmed.map(() => ''))).toEqual(trimmed);
      }),
      { numRuns: 2_000 },
    );
  });

  it('keeps what looks like no formula as it is', () => {
    expect(['a-b', 'K-2041', 'a; b', '3 + 4', 'x\ny', "don't", '12-14'].map((cell) => separatedCell(cell, '\t').replaceAll('"', ''))).toEqual(['a-b', 'K-2041', 'a; b', '3 + 4', 'x\ny', "don't", '12-14']);
    expect(separatedCell(-3, ',')).toBe('-3');
  });
});

describe('the window', () => {
  it('never makes marks of a page out of a text', () => {
    const root = join(import.meta.dirname, '..', '..', 'src-renderer');
    const files = (readdirSync(root, { recursive: true }) as string[]).filter((name) => /\.(?:svelte|ts|js|html)$/.test(name) && statSync(join(root, name)).isFile());
    expect(files.length).toBeGreaterThan(100);
    const marks = /\{@html|\binnerHTML\b|\bouterHTML\b|insertAdjacentHTML|document\.write|srcdoc|createContextualFragment|DOMParser|\beval\(|new Function/;
    expect(files.filter((name) => marks.test(readFileSync(join(root, name), 'utf8')))).toEqual([]);
  });
});

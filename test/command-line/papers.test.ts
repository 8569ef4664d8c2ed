import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { runCommandLine } from '../../src-main/command-line/run.ts';
import { readPdf } from '../documents/read-pdf.ts';
import { exampleDocument } from '../builders.ts';

let folder: string;
let file: string;
const at = (name: string) => join(folder, name);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-papers-'));
  file = at('house.json');
  writeFileSync(file, JSON.stringify({ ...exampleDocument(), work: { starts: '2026-03-02' } }));
  utimesSync(file, new Date('2026-03-05T12:00:00Z'), new Date('2026-03-05T12:00:00Z'));
});

afterEach(() => rmSync(folder, { recursive: true }));

describe('the papers of a house', () => {
  test('are listed by the words that they are asked for by', async () => {
    const { status, output } = await runCommandLine(['papers', file]);
    expect(status).toBe(0);
    expect(output.split('\n')).toEqual(expect.arrayContaining(['order north: Order for north (pdf, csv, text)', 'job-sheet bed1: Job sheet, Front bedroom (pdf)', 'calendar: Calendar (pdf, ics)', 'record: House record (pdf)']));
  });

  test('are each written by their words as a PDF of the paper that was asked for', async () => {
    const { output } = await runCommandLine(['papers', file]);
    const names = output.trim().split('\n').map((line) => line.split(':')[0]!.split(' '));
    expect(names.length).toBeGreaterThan(5);
    for (const [index, name] of names.entries()) {
      const out = at(`${index}.pdf`);
      expect(await runCommandLine(['paper', file, ...name, '--pdf', out, '--size', 'a4'])).toMatchObject({ status: 0, output: expect.stringContaining(out) });
      const { pages, size } = await readPdf(readFileSync(out));
      expect(size).toEqual([595.28, 841.89]);
      expect(pages[0]).toContain('as of 5 Mar 2026');
    }
  });

  test('go all into a folder in all their forms, once', async () => {
    const into = at('all');
    expect((await runCommandLine(['papers', file, '--into', into])).status).toBe(0);
    const written = readdirSync(into);
    expect(written.filter((name) => name.endsWith('.csv'))).toHaveLength(written.filter((name) => name.endsWith('.txt')).length);
    expect(written).toEqual(expect.arrayContaining(['Order for north, 7 Alder Court.pdf', 'Order for north, 7 Alder Court.csv', 'Calendar, 7 Alder Court.ics', 'House record, 7 Alder Court.pdf']));
    const before = readFileSync(join(into, 'House record, 7 Alder Court.pdf'));
    expect(await runCommandLine(['papers', file, '--into', into])).toMatchObject({ status: 1, errors: expect.stringMatching(/The papers were not written: .*exist/) });
    expect(readFileSync(join(into, 'House record, 7 Alder Court.pdf'))).toEqual(before);
  });

  test('of a house without any are none', async () => {
    writeFileSync(file, JSON.stringify({ format: 'struckline-house', version: 1, name: 'Bare' }));
    expect(await runCommandLine(['papers', file])).toEqual({ status: 0, output: 'There is nothing to write down yet: survey a room and hang something in it.\n', errors: '' });
    expect(await runCommandLine(['paper', file, 'record', '--pdf', at('r.pdf')])).toMatchObject({ status: 1, errors: expect.stringMatching(/nothing to write down yet/) });
  });
});

describe('a paper', () => {
  test('goes to standard output as text, and as a PDF to a file alone', async () => {
    const csv = await runCommandLine(['paper', file, 'order', 'north', '--csv', '-']);
    expect(csv).toMatchObject({ status: 0, output: expect.stringMatching(/^Pattern number,Run number,/) });
    expect((await runCommandLine(['paper', file, 'order', 'north', '--text', '-'])).output).toContain('any run, but all of one run');
    expect(await runCommandLine(['paper', file, 'order', 'north', '--pdf', '-'])).toMatchObject({ status: 1, errors: expect.stringMatching(/not printed on a terminal/) });
  });

  test('that is not there is told with those that are', async () => {
    expect(await runCommandLine(['paper', file, 'poster', '--pdf', at('p.pdf')])).toMatchObject({ status: 1, errors: expect.stringMatching(/There is no paper poster of this house; there are order north,/) });
    expect(await runCommandLine(['paper', file, 'order', 'south', '--pdf', at('p.pdf')])).toMatchObject({ status: 1, errors: 'struckline: There is no paper order south of this house; there are order north, order.\n' });
    expect(await runCommandLine(['paper', file, 'record', '--csv', at('p.csv')])).toMatchObject({ status: 1, errors: expect.stringMatching(/record has no form csv; it has pdf/) });
    expect(existsSync(at('p.pdf'))).toBe(false);
  });

  test('is wanted in one form, on one of two papers, in place of nothing', async () => {
    expect(await runCommandLine(['paper', file, 'record'])).toMatchObject({ status: 1, errors: expect.stringMatching(/in which form/) });
    expect(await runCommandLine(['paper', file, 'record', '--pdf', at('a.pdf'), '--csv', at('a.csv')])).toMatchObject({ status: 1 });
    expect(await runCommandLine(['paper', file, 'record', '--pdf', at('a.pdf'), '--size', 'a5'])).toMatchObject({ status: 1, errors: 'struckline: --size is a5; it takes a4, letter.\n' });
    writeFileSync(at('a.pdf'), 'mine');
    expect(await runCommandLine(['paper', file, 'record', '--pdf', at('a.pdf')])).toMatchObject({ status: 1, errors: expect.stringMatching(/The paper was not written/) });
    expect(readFileSync(at('a.pdf'), 'utf8')).toBe('mine');
    expect(await runCommandLine(['paper', file])).toMatchObject({ status: 1, errors: expect.stringMatching(/takes a file and the kind of a paper/) });
  });

  test('is the same from a house file as from its document, but for what the file knows of its changes', async () => {
    const house = at('house.struckline');
    expect((await runCommandLine(['new', house, '--from', file])).status).toBe(0);
    await runCommandLine(['paper', house, 'record', '--pdf', at('one.pdf')]);
    await runCommandLine(['paper', file, 'record', '--pdf', at('other.pdf')]);
    const [one, other] = await Promise.all(['one.pdf', 'other.pdf'].map(async (name) => (await readPdf(readFileSync(at(name)))).pages.map((page) => page.replace(/as of [^·]+ · (?:revision \d+ · )?/, ''))));
    expect(one).toEqual(other);
  });

  test('says which letters no font has', async () => {
    writeFileSync(file, JSON.stringify({ ...exampleDocument(), name: 'Haus 浴室 Ω Ж ő' }));
    const { status, output } = await runCommandLine(['paper', file, 'record', '--pdf', at('r.pdf')]);
    expect({ status, output }).toEqual({ status: 0, output: expect.stringMatching(/Letters without a font are shown as missing: 浴 室\n$/) });
    const { pages } = await readPdf(readFileSync(at('r.pdf')));
    expect(pages.at(-1)).toContain('U+6D74, U+5BA4');
    expect(pages[0]).toContain('Ω Ж ő');
  });

  test('of an order is one for its suppliers, whether there is one or more', async () => {
    expect((await runCommandLine(['order', file, '--pdf', at('one.pdf')])).status).toBe(0);
    const document = exampleDocument();
    document.coverings.find(({ id }: { id: string }) => id === 'ivy').supplier = 'weir';
    writeFileSync(file, JSON.stringify(document));
    expect((await runCommandLine(['order', file, '--pdf', at('two.pdf')])).status).toBe(0);
    expect((await readPdf(readFileSync(at('one.pdf')))).pages[0]).toContain('Order, not placed yet north');
    const { pages } = await readPdf(readFileSync(at('two.pdf')));
    expect(pages.map((page) => /not placed yet (\w+)/.exec(page)?.[1])).toEqual(['north', 'weir']);
  });

  test('into a folder that is a file is told', async () => {
    mkdirSync(at('in'));
    writeFileSync(at('in/file'), '');
    expect(await runCommandLine(['papers', file, '--into', at('in/file')])).toMatchObject({ status: 1, errors: expect.stringMatching(/The papers were not written/) });
  });
});

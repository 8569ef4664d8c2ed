import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, test } from 'vitest';
import { sayMoment, sayPeople } from '../../shared-core/calendar/index.ts';
import { quoteOf } from '../../shared-core/costing/index.ts';
import { nameCovering } from '../../shared-core/house/index.ts';
import { cutSheet, nameRoom, toBePlaced, toolsFor } from '../../shared-core/plan/index.ts';
import { CAUTION_KINDS } from '../../shared-core/prep/index.ts';
import { printMoney, showLength, showMoney } from '../../shared-core/units/index.ts';
import { sayDay } from '../../shared-core/words/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { desk, houseAtWork, papersFor } from './paper-house.ts';
import { inOneLine, readPdf } from './read-pdf.ts';

const papers = papersFor(houseAtWork());
const { house, plan } = papers;
const textOf = async (...of: Parameters<typeof papers.make>) => (await readPdf((await papers.make(...of)).bytes)).pages.join(' ');
const timesIn = (text: string, part: string) => text.split(inOneLine(part)).length - 1;

describe('every paper of a house', () => {
  test('is listed once, in the order of the work', () => {
    const names = papers.list.map(({ kind, of }) => JSON.stringify([kind, of]));
    expect(new Set(names).size).toBe(names.length);
    expect([...new Set(papers.list.map(({ kind }) => kind))]).toEqual(['order', 'orders', 'placed-order', 'goods-in', 'job-sheets', 'job-sheet', 'cut-list', 'shopping-list', 'quote', 'calendar', 'record']);
  });

  test('says on each of its pages which house, as of when, from which state of it, and which page of how many', async () => {
    for (const { kind, of } of papers.list) {
      const { pages, info, language } = await readPdf((await papers.make(kind, of)).bytes);
      expect(pages.length).toBeGreaterThan(0);
      expect(language).toBe('en');
      expect(String(info['Title'])).toContain(house.name);
      for (const [index, page] of pages.entries()) {
        expect(page).toContain(house.name);
        expect(page).toMatch(/as of 2 Mar 2026 · revision 17 · [0-9A-F]{4}-[0-9A-F]{4}/);
        expect(page).toContain(`Page ${index + 1} of ${pages.length}`);
      }
    }
  }, 120_000);

  test('is the same to the last byte when it is made again, and another when the house is', async () => {
    const again = papersFor(houseAtWork());
    for (const { kind, of, forms } of papers.list.filter((one) => one.kind !== 'job-sheets')) {
      for (const form of forms) expect(Buffer.compare((await papers.make(kind, of, form)).bytes, (await again.make(kind, of, form)).bytes)).toBe(0);
    }
    const other = await papersFor(houseAtWork((one) => { one.name = 'Elsewhere'; })).make('record');
    expect(Buffer.compare(other.bytes, (await papers.make('record')).bytes)).not.toBe(0);
  }, 120_000);

  test('is on the paper that was asked for', async () => {
    expect((await readPdf((await papers.make('quote', null, 'pdf', 'a4')).bytes)).size).toEqual([595.28, 841.89]);
    expect((await readPdf((await papers.make('quote', null, 'pdf', 'letter')).bytes)).size).toEqual([612, 792]);
  });

  test('is not made where there is nothing to write on it, or not in that form', async () => {
    expect(await desk(demoHouse()).make({ kind: 'calendar', of: null }, 'ics', 'a4')).toBeNull();
    expect(await desk(house).make({ kind: 'job-sheet', of: 'nowhere' }, 'pdf', 'a4')).toBeNull();
    expect(await desk(house).make({ kind: 'quote', of: null }, 'csv', 'a4')).toBeNull();
  });

  test('has a name of its own for its file', async () => {
    const named = papersFor(houseAtWork(({ rooms }) => { for (const [index, room] of rooms.entries()) room.name = ['Bed 1/2', 'Bed 1:2', 'BED 1/2'][index % 3]; }));
    const names = await Promise.all(named.list.filter(({ kind }) => kind === 'job-sheet').map(async ({ kind, of }) => (await named.make(kind, of)).fileName));
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(house.rooms.length);
    expect(names.every((name) => /^Job sheet, Bed 1 2, .+\.pdf$/i.test(name))).toBe(true);
  });
});

describe('the order sheet', () => {
  test.each(toBePlaced(house, plan.order).map(({ supplier }) => supplier))('for %s has its lines with run, rolls and price, and what they come to', async (supplier) => {
    const text = await textOf('order', supplier);
    const { lines, gross } = toBePlaced(house, plan.order).find((one) => one.supplier === supplier)!;
    expect(text).toContain('All rolls of a line are to be of one run');
    for (const line of lines) {
      expect(text).toContain(line.run === null ? 'any, all of one run' : `${line.run}, and no other`);
      expect(text).toContain(String(line.patternNumber ?? nameCovering(house, line.covering)));
      expect(text).toMatch(new RegExp(`${line.toBuy} (rolls?|spools?|murals?)`));
      if (line.price !== null) expect(text).toContain(printMoney(line.price, house.currency));
    }
    if (gross !== null) expect(text).toContain(inOneLine(showMoney(gross, house.currency)));
    expect(text).toContain(inOneLine(house.deliverTo!));
    // Nobody said by when; the calendar knows when the first of it is hung.
    const rooms = new Set(lines.flatMap((line) => line.rooms));
    const days = plan.calendar!.bookings.filter(({ job }) => plan.jobs.some(({ id, kind, room }) => id === job && kind === 'hanging' && rooms.has(room!))).map(({ from }) => from.day);
    expect(text).toContain(`Wanted by ${sayDay(days.toSorted()[0]!)}, when the first of it is hung`);
  });

  test('of a placed order stays as it was placed', async () => {
    const text = await textOf('placed-order', '1');
    for (const part of ['Order 1', 'Placed 2 Mar 2026', 'Wanted by 21 Mar 2026', 'The yard Gate 2', '2207, and no other', "6 rolls of 33 ft (= 12 singles)", '3 packs of 2', '252.00']) expect(text).toContain(part);
  });

  test('as a table is read by another reader with a column for each thing, and runs no formula', async () => {
    const evil = papersFor(houseAtWork((one) => {
      Object.assign(one.coverings.find(({ id }: { id: string }) => id === 'fern'), { name: '=cmd|x!A1', patternNumber: '+1;@2' });
      Object.assign(one, { orders: [], deliveries: [] });
    }));
    const supplier = house.coverings.find(({ id }) => id === 'fern')!.supplier!;
    const rows = parse(Buffer.from((await evil.make('order', supplier, 'csv')).bytes), { columns: true }) as readonly Readonly<Record<string, string>>[];
    const { lines } = toBePlaced(evil.house, evil.plan.order).find((one) => one.supplier === supplier)!;
    expect(rows.map((row) => [row['Run number'], Number(row['Rolls']), row['Price'], row['Currency']])).toEqual(
      expect.arrayContaining(lines.map((line) => [line.run ?? '', line.toBuy, printMoney(line.price!, house.currency), 'USD'])),
    );
    expect(rows).toHaveLength(lines.length);
    for (const cell of rows.flatMap((row) => Object.values(row))) expect(cell).not.toMatch(/^[=+\-@\t\r]|;[=+\-@]/);
    expect(rows.find((row) => row['Run number'] === '2207')).toMatchObject({ 'Pattern number': "'+1;'@2", Name: "'=cmd|x!A1" });
  });

  test('as a mail has the same lines in words', async () => {
    const { supplier, lines, gross } = toBePlaced(house, plan.order).find((one) => one.lines.length > 1)!;
    const mail = new TextDecoder().decode((await papers.make('order', supplier, 'text')).bytes);
    for (const line of lines) {
      expect(mail).toContain(line.run === null ? 'any run, but all of one run' : `run number ${line.run}, and no other`);
      expect(mail).toMatch(new RegExp(`${line.toBuy} (rolls?|spools?)`));
    }
    expect(mail).toContain(`To pay: ${showMoney(gross!, house.currency)}`);
    expect(mail).toContain(house.deliverTo!);
  });
});

describe('the goods-in sheet', () => {
  test('has what of placed orders is still to come, then what is to be placed', async () => {
    const text = await textOf('goods-in');
    // 6 of run 2207 were ordered; of 4 that came one was damaged.
    expect(text).toContain("K-2041 2207 3 rolls of 33 ft (= 6 singles)");
    for (const { lines } of toBePlaced(house, plan.order)) for (const line of lines) expect(text).toMatch(new RegExp(`${line.toBuy} (rolls?|spools?)`));
    expect(timesIn(text, 'What else came')).toBe(1 + toBePlaced(house, plan.order).length);
  });
});

describe('the cut list', () => {
  let text = '';
  beforeAll(async () => {
    text = await textOf('cut-list');
  });

  test('has every cut of every roll with its length, its place and where it goes', () => {
    for (const list of plan.cuts) {
      for (const roll of cutSheet(house, plan, list)) {
        for (const { label, room, where, length, from } of roll.cuts) {
          const cell = inOneLine(`${label} ${[room, where].filter((part) => part !== '').join(', ')}`);
          const at = text.split(cell).slice(1).map((rest) => rest.slice(0, 120));
          expect(at.some((rest) => rest.includes(`${showLength(length, house.lengths)} ${showLength(from, house.lengths)}`)), `${cell} of roll ${roll.number}`).toBe(true);
        }
      }
    }
  });

  test('has as many cuts as the plan', () => {
    const cuts = plan.cuts.reduce((sum, { rolls }) => sum + rolls.reduce((own, roll) => own + roll.cuts.length, 0), 0);
    const rolls = plan.cuts.reduce((sum, list) => sum + list.rolls.length, 0);
    expect(timesIn(text, 'left over:')).toBe(rolls);
    expect(cuts).toBeGreaterThan(rolls);
  });
});

describe('a job sheet', () => {
  test('carries every kind of caution there is, each in full at its head with its threshold, whom to ask and its source', async () => {
    const demo = papersFor(demoHouse());
    expect(new Set(demo.plan.prep.cautions.map(({ kind }) => kind))).toEqual(new Set(CAUTION_KINDS));
    for (const { id } of demo.house.rooms) {
      const text = (await readPdf((await demo.make('job-sheet', id)).bytes)).pages.join(' ');
      for (const { words, threshold, ask, source } of demo.plan.prep.cautions.filter(({ room }) => room === id)) {
        expect(text).toContain(inOneLine([words, ...(threshold === null ? [] : [threshold]), ask, source].join(' ')));
      }
    }
  });

  test.each(house.rooms.map(({ id }) => id))('of %s has its tasks in their order, each with its cautions, its pieces with their rolls, and what to tick', async (id) => {
    const text = (await readPdf((await papers.make('job-sheet', id)).bytes)).pages.map((page) => page.replaceAll(/(?:Larkfield, Mill Lane 3 Job sheet: .*)?as of 2 Mar 2026 .*? Page \d+ of \d+/g, '')).join(' ');
    const jobs = plan.jobs.filter(({ room }) => room === id);
    const places = jobs.map(({ words }, index) => text.indexOf(inOneLine(`${index + 1}. ${words}`)));
    expect(places.every((place, index) => place > (places[index - 1] ?? 0))).toBe(true);
    for (const [index, job] of jobs.entries()) {
      const beside = text.slice(places[index], places[index + 1] ?? text.length);
      const task = plan.prep.tasks.find((one) => one.id === job.id);
      for (const caution of plan.prep.cautions.filter((one) => task?.cautions.includes(one.id))) expect(beside).toContain(`! ${inOneLine(caution.words)}`);
    }
    const rolls = plan.cuts.flatMap((list) => cutSheet(house, plan, list).map((roll, index) => ({ ...roll, cuts: roll.cuts.filter((_, place) => list.rolls[index]!.cuts[place]!.placed.room === id) })));
    for (const { cuts } of rolls) for (const { label, length, from } of cuts) expect(text).toMatch(new RegExp(`${escaped(label)} .{0,90}${escaped(showLength(length, house.lengths))} ${escaped(showLength(from, house.lengths))}`));
    for (const tool of toolsFor(house, plan, id)) expect(text).toContain(tool);
    if (rolls.some(({ cuts }) => cuts.length > 0)) {
      expect(text).toContain('Pattern number and run number are read on every label before cutting, and the labels kept.');
      expect(text).toContain('The first three strips are hung, and were checked in daylight.');
      expect(text).toContain('Corner Top Middle Bottom');
    }
  });

  test('says what can\'t be met in its room and is worth a look there, and what its coverings ask for', async () => {
    const odd = papersFor(houseAtWork((one) => {
      Object.assign(one.coverings.find(({ id }: { id: string }) => id === 'oat'), { sequence: 'required' });
      const wall = one.rooms.find(({ id }: { id: string }) => id === 'study').walls[0];
      Object.assign(wall, { height: '40 ft' });
    }));
    const text = (await readPdf((await odd.make('job-sheet', 'study')).bytes)).pages.join(' ');
    const [problems, warnings] = [odd.plan.problems, odd.plan.warnings].map((all) => all.filter(({ room }) => room === 'study'));
    expect(problems!.length).toBeGreaterThan(0);
    for (const { message } of problems!) expect(text).toContain(`Can't be met: ${inOneLine(message)}`);
    for (const { message } of warnings!) expect(text).toContain(`Look: ${inOneLine(message)}`);
    const advice = odd.plan.warnings.filter(({ covering }) => covering === 'oat');
    expect(advice.length).toBeGreaterThan(0);
    for (const { message } of advice) expect(text).toContain(inOneLine(message));
    const supplier = odd.house.coverings.find(({ id }) => id === 'oat')!.supplier!;
    expect((await readPdf((await odd.make('order', supplier)).bytes)).pages.join(' ')).toContain('please send rolls that follow one another');
  });

  test('has the label check where a mural alone hangs, which is cut from no roll', async () => {
    const lake = papersFor(houseAtWork((one) => {
      one.coverings.push({ id: 'lake', kind: 'mural', patternNumber: 'M-7', panels: 4, panelWidth: '1 m', panelHeight: '2.7 m' });
      const study = one.rooms.find(({ id }: { id: string }) => id === 'study');
      study.bands = [{ id: 'lake', covering: 'lake', walls: [study.walls[0].id] }];
    }));
    const text = (await readPdf((await lake.make('job-sheet', 'study')).bytes)).pages.join(' ');
    for (const part of ['M-7', 'labels kept', 'first three strips']) expect(text).toContain(part);
  });

  test('keeps a caution where a task is done by others', async () => {
    const task = plan.prep.tasks.find(({ cautions }) => cautions.length > 0)!;
    const others = papersFor(houseAtWork((one) => { one.tasks = [{ task: task.id, isOthers: true }]; }));
    const text = (await readPdf((await others.make('job-sheet', task.room)).bytes)).pages.join(' ');
    const beside = text.slice(text.indexOf(`. ${inOneLine(task.words)}`));
    expect(beside).toContain('done by others');
    expect(beside).toContain(`! ${inOneLine(plan.prep.cautions.find(({ id }) => id === task.cautions[0])!.words)}`);
  });
});

describe('the other papers', () => {
  test('the quote has its lines, its sums and what is not included', async () => {
    const priced = papersFor(houseAtWork((one) => { one.materials = plan.prep.materials.map(({ material }) => ({ material, packs: [{ amount: 1000, price: '9.50' }] })); }));
    const quote = quoteOf({ house: priced.house, cost: priced.plan.cost, jobs: priced.plan.jobs });
    const text = (await readPdf((await priced.make('quote')).bytes)).pages.join(' ');
    expect(quote.gross).not.toBeNull();
    for (const { words, amount } of quote.lines) expect(text).toMatch(new RegExp(`${escaped(words)}.*?${escaped(printMoney(amount!, 'USD'))}`));
    for (const part of [...[quote.net, quote.tax, quote.gross].map((amount) => showMoney(amount!, 'USD')), ...quote.excluded, 'Signature']) expect(text).toContain(inOneLine(part));
    for (const missing of quoteOf({ house, cost: plan.cost, jobs: plan.jobs }).missing) expect(await textOf('quote')).toContain(inOneLine(missing));
  });

  test('the calendar has every job with its times, by room and one by one, and what is delivered when', async () => {
    const text = await textOf('calendar');
    for (const { job: id, from, to } of plan.calendar!.bookings) {
      const job = plan.jobs.find((one) => one.id === id)!;
      expect(text).toContain(inOneLine(`${sayMoment(from)} ${sayMoment(to)} ${job.room === null ? 'The whole house' : nameRoom(house, job.room)} ${job.words} ${sayPeople(job)}`));
    }
    expect(text).toContain(`${sayDay('2026-03-20')} 1`);
  });

  test('the shopping list has every paint and material with what is needed of it', async () => {
    const text = await textOf('shopping-list');
    for (const { covering } of plan.prep.paints) expect(text).toContain(nameCovering(house, covering));
    for (const { words } of plan.prep.materials) expect(text).toContain(words);
    expect(plan.prep.materials.length).toBeGreaterThan(2);
  });

  test('the record has every room with what hangs there and its run, leftovers, batches, orders and deliveries', async () => {
    const text = await textOf('record');
    for (const room of house.rooms) expect(text).toContain(room.name);
    for (const part of ['2207, planned', 'K-2099 Ivy trail 88 2 of 4\' 3" loft, blue box', 'S-0417, 2.5 L', 'order 1', 'run 2207: 4 rolls, 1 damaged', inOneLine(house.suppliers[0]!.address!)]) expect(text).toContain(part);
  });
});

function escaped(text: string): string {
  return inOneLine(text).replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

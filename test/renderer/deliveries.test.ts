import { describe, expect, test } from 'vitest';
import type { House } from '../../shared-core/house/index.ts';
import { type CheckedDelivery, keepLedger, type Ledger } from '../../shared-core/ordering/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { tabSeparated } from '../../src-renderer/parts/copy-table.ts';
import { inOrder, rowsAgainstOrder, type RunRow } from '../../src-renderer/places/deliveries/against-order.ts';
import { sayKeeping, saySendingBack, withDecision } from '../../src-renderer/places/deliveries/decide.ts';
import { sayPacks, sayWhy } from '../../src-renderer/places/deliveries/go-back.ts';
import { coveringsWithNumber, received, sayUnknown } from '../../src-renderer/places/deliveries/labels.ts';
import { sayLeft } from '../../shared-core/plan/index.ts';
import { notYetKept } from '../../src-renderer/places/deliveries/leftovers.ts';
import { numbersInOrder } from '../../src-renderer/places/deliveries/package-order.ts';
import { runsOfRoom, sayReadiness, withHung, withoutHung } from '../../src-renderer/places/deliveries/rooms.ts';
import { sayPackage, sayReceived } from '../../src-renderer/places/deliveries/say-package.ts';
import { openPoints } from '../../src-renderer/state/open-points.ts';
import { inches } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const PAPER = wallcovering({ soldIn: [{ rolls: 2, price: '80.00' }] });
const came = (run: string, rolls: number, more: Loose = {}) => ({ covering: 'paper', patternNumber: 'P-1', run, rolls, ...more });
const ordered = (...lines: Loose[]) => [{ id: 'N-1', placed: '2026-03-02', lines: lines.map((line) => ({ covering: 'paper', ...line })) }];
const house = (facts: Loose): House => houseOf(documentOf({ coverings: [PAPER], ...facts }));
const ledgerOf = (one: House) => keepLedger(one, 'paper');
const last = ({ deliveries }: Ledger): CheckedDelivery => deliveries.at(-1)!;
const receive = (orders: Loose, ...deliveries: Loose[]) => {
  const one = house({ orders, deliveries });
  return sayReceived(one, ledgerOf(one), last(ledgerOf(one)));
};

describe('what a package means', () => {
  const TEN = ordered({ rolls: 10, run: '2214' });

  test('is said at once when it is recorded', () => {
    expect(receive(TEN, came('2214', 10))).toEqual({ sign: '=', words: '10 rolls of P-1, run 2214. As ordered.', tone: 'quiet' });
    expect(receive(ordered({ rolls: 10, run: '2214' }, { rolls: 4, run: '2207' }), came('2214', 10)).words).toBe('10 rolls of P-1, run 2214. As ordered.');
    expect(receive(TEN, came('2214', 4)).words).toBe('4 rolls of P-1, run 2214. As ordered; 6 still to come.');
    expect(receive(TEN, came('2214', 10, { damaged: 2, short: 1 }))).toEqual({ sign: '−3', words: '10 rolls of P-1, run 2214. 2 damaged, 1 missing: 3 still to come.', tone: 'look' });
    expect(receive(TEN, came('2214', 12))).toEqual({ sign: '+2', words: '12 rolls of P-1, run 2214. 2 more than ordered.', tone: 'look' });
    expect(receive(TEN, came('2214', 13, { damaged: 1 })).words).toBe('13 rolls of P-1, run 2214. 1 damaged; 2 more than ordered.');
    expect(receive(TEN, came('2215', 3))).toEqual({ sign: '≠', words: '3 rolls of P-1, run 2215. Run 2215 was not ordered: keep it or send it back.', tone: 'stop' });
    expect(receive(TEN, came('9', 1, { patternNumber: 'P-7' })).words).toBe('1 roll of P-7, run 9. Pattern P-7 came for P-1: it counts for no room. Send it back, or correct its label below.');
    expect(receive([], came('2214', 3)).words).toBe('3 rolls of P-1, run 2214. Nothing of it was ordered; it counts for its run.');
  });

  test('says a first run of any one run asked for is as ordered, a second one is not', () => {
    const any = ordered({ rolls: 10 });
    expect(receive(any, came('2214', 8)).words).toBe('8 rolls of P-1, run 2214. As ordered; 2 still to come.');
    expect(receive(any, came('2214', 8), came('2215', 2)).tone).toBe('stop');
  });

  test('is quiet once it is decided or gone back', () => {
    const said = (delivery: Loose, more: Loose = {}) => {
      const one = house({ orders: TEN, deliveries: [delivery], ...more });
      return sayPackage(one, ledgerOf(one), last(ledgerOf(one)));
    };
    expect(said(came('2215', 3, { decision: 'keep' }))).toEqual({ sign: '=', words: 'kept', tone: 'quiet' });
    expect(said(came('2215', 3, { decision: 'send-back' }))).toEqual({ sign: '≠', words: 'to go back', tone: 'look' });
    expect(said(came('2215', 3, { decision: 'send-back' }), { returns: [{ covering: 'paper', run: '2215', rolls: 3 }] })).toEqual({ sign: '=', words: 'gone back', tone: 'quiet' });
    expect(said(came('2214', 12), { returns: [{ covering: 'paper', run: '2214', rolls: 2 }] }).words).toBe('as ordered; 2 gone back');
  });
});

describe('against the order', () => {
  const one = house({
    orders: ordered({ rolls: 10, run: '2214' }, { rolls: 4, run: '2207', closed: true }),
    deliveries: [came('2214', 6, { damaged: 2 }), came('2214', 3, { short: 1, received: '2026-03-05' }), came('2215', 3, { decision: 'keep' }), came('2216', 1), came('9', 2, { patternNumber: 'P-7' })],
  });
  const [pattern] = rowsAgainstOrder(one, [ledgerOf(one)]);
  const byRun = new Map(pattern!.rows.map((row) => [`${row.label} ${row.run}`, row]));
  const figures = ({ ordered: asked, sound, damaged, missing, ofAnotherRun, toCome }: RunRow) => [asked, sound, damaged, missing, ofAnotherRun, toCome].map(({ rolls }) => rolls);
  const words = (row: RunRow) => row.findings.map(({ sign, words: said, tone }) => `${sign} ${said} (${tone})`);

  test('each run has its figures and its difference', () => {
    expect([...byRun.keys()]).toEqual(['P-1 2214', 'P-1 2207', 'P-1 2215', 'P-1 2216', 'P-7 9']);
    expect(figures(byRun.get('P-1 2214')!)).toEqual([10, 6, 2, 1, 3, 1]);
    expect(words(byRun.get('P-1 2214')!)).toEqual(['−1 1 still to come (look)']);
    expect(words(byRun.get('P-1 2207')!)).toEqual(['−4 4 will not come (quiet)']);
    expect(words(byRun.get('P-1 2215')!)).toEqual(['= kept (quiet)']);
    expect(words(byRun.get('P-1 2216')!)).toEqual(['≠ run 2216 was not ordered (stop)']);
    expect(words(byRun.get('P-7 9')!)).toEqual(['≠ pattern P-7 came for P-1 (stop)']);
  });

  test('each figure has lines of arithmetic that come to it', () => {
    for (const row of pattern!.rows) {
      for (const figure of [row.ordered, row.sound, row.damaged, row.missing, row.toCome]) {
        if (figure.lines.length > 0) expect(figure.lines.at(-1)!.text, row.key).toMatch(new RegExp(`(= ${figure.rolls}\\.|^${figure.rolls} rolls? in order|: ${figure.rolls}( damaged| missing)?\\.)`));
      }
    }
    expect(byRun.get('P-1 2214')!.sound.lines.map(({ text }) => text)).toEqual(['Package 1: 6 on the label - 2 damaged - 0 missing = 4.', 'Package 2 of 5 Mar 2026: 3 on the label - 0 damaged - 1 missing = 2.', '4 + 2 = 6.']);
    expect(byRun.get('P-1 2214')!.ofAnotherRun.lines[0]!.text).toBe('3 rolls kept of run 2215.');
    expect(byRun.get('P-1 2214')!.toCome.lines).toEqual([{ text: '10 ordered - 6 come sound - 3 of another run = 1.', rule: 'damaged and missing rolls stay still to come' }]);
    expect(byRun.get('P-1 2207')!.toCome.lines[0]!.text).toBe('4 ordered - 0 come sound - 0 of another run - 4 that will not come = 0.');
  });

  test('rows are sorted by what is to come or stops, and filtered by every word', () => {
    const runs = (order: Parameters<typeof inOrder>[1], isBackwards: boolean, filter = '') => inOrder([pattern!], order, isBackwards, filter).flatMap(({ rows }) => rows.map(({ run }) => run));
    expect(runs('pattern', false)).toEqual(['2214', '2207', '2215', '2216', '9']);
    const few = house({ orders: ordered({ rolls: 3, run: '1' }, { rolls: 2, run: '2' }), deliveries: [came('1', 3)] });
    expect(inOrder(rowsAgainstOrder(few, [ledgerOf(few)]), 'to-come', false, '')[0]!.rows.map(({ run }) => run)).toEqual(['2', '1']);
    expect(runs('to-come', false)[0]).toBe('2214');
    expect(runs('to-come', true).at(-1)).toBe('2214');
    expect(runs('state', false)).toEqual(['2216', '9', '2214', '2207', '2215']);
    expect(runs('pattern', false, 'P-1 still')).toEqual(['2214']);
    expect(runs('pattern', false, 'nothing like it')).toEqual([]);
  });

  test('a covering without a pattern number takes any label as its own', () => {
    const unnamed = houseOf(documentOf({ coverings: [{ ...PAPER, patternNumber: undefined, name: 'Plain' }], deliveries: [came('1', 2, { patternNumber: 'X' })] }));
    expect(rowsAgainstOrder(unnamed, [ledgerOf(unnamed)])[0]!.rows).toMatchObject([{ label: 'Plain', run: '1', findings: [{ words: 'nothing was ordered; it counts' }] }]);
  });
});

test('packages are sorted by each column, runs by their figures', () => {
  const one = house({ deliveries: [came('100', 3), came('20', 9, { damaged: 1 }), came('3', 9)] });
  const rows = ledgerOf(one).deliveries.map((checked) => ({ checked, finding: sayPackage(one, ledgerOf(one), checked) }));
  expect(numbersInOrder(rows, 'run', false, '')).toEqual([2, 1, 0]);
  expect(numbersInOrder(rows, 'rolls', true, '')).toEqual([1, 2, 0]);
  expect(numbersInOrder(rows, 'state', false, '')).toEqual([1, 0, 2]);
  expect(numbersInOrder(rows, 'number', false, 'damaged p-1')).toEqual([1]);
});

test('what keeping and sending back would mean is said before it is decided', () => {
  const one = house({ orders: ordered({ rolls: 10, run: '2214' }), deliveries: [came('2214', 6), came('2215', 3)] });
  const checked = last(ledgerOf(one));
  expect(sayKeeping(one, ledgerOf(one), checked)).toBe('Its 3 rolls count as in hand in place of 3 still to come of run 2214, and the rooms are planned anew, each from one run.');
  expect(saySendingBack(one, ledgerOf(one), checked)).toBe('Its 3 rolls go back and hang nowhere; 4 rolls stay still to come.');
  const all = house({ orders: ordered({ rolls: 6, run: '2214' }), deliveries: [came('2214', 6), came('2215', 1)] });
  expect(sayKeeping(all, ledgerOf(all), last(ledgerOf(all)))).toBe('Its 1 roll counts as in hand beyond what was ordered, and the rooms are planned anew, each from one run.');
  expect(withDecision(one, 1, 'keep')[1]).toEqual({ ...one.deliveries[1], decision: 'keep' });
  expect(withDecision({ ...one, deliveries: withDecision(one, 1, 'keep') }, 1, null)[1]).toEqual(one.deliveries[1]);
});

describe('rooms', () => {
  const hall = (more: Loose = {}) => house({ coverings: [{ ...PAPER, spareRolls: 0 }], rooms: [room(['10 ft', '10 ft', '10 ft', '10 ft'], { id: 'hall', name: 'Hall' })], ...more });
  const needed = planHouse(hall()).order[0]!.rollsNeeded;
  const readiness = (one: House) => {
    const plan = planHouse(one);
    return sayReadiness(one, plan.order, plan.readiness[0]!);
  };

  test('say what they wait for and whether it comes', () => {
    expect(readiness(hall())).toBe(`waits for ${needed} rolls of P-1, run not known yet, which are not ordered yet`);
    const orders = ordered({ rolls: needed, run: '2214' });
    expect(readiness(hall({ orders, deliveries: [came('2214', needed - 1)] }))).toBe('waits for 1 roll of P-1, run 2214, which is on its way');
    expect(readiness(hall({ orders, deliveries: [came('2214', needed)] }))).toBe('can start now');
    expect(readiness(hall({ orders: ordered({ rolls: 1, run: '2214' }), offers: [{ covering: 'paper', run: '2214', rolls: 40 }] }))).toBe(`waits for ${needed} rolls of P-1, run 2214, of which 1 is on the way`);
  });

  test('are recorded as hung from the run they are planned from, and as before when that is taken back', () => {
    const one = hall({ deliveries: [came('2214', needed)] });
    const found = runsOfRoom(one, planHouse(one), 'hall');
    expect(found).toEqual({ runs: [{ covering: 'paper', run: '2214' }] });
    const hung = { ...one, runChoices: withHung(one, 'hall', [{ covering: 'paper', run: '2214' }], '2026-03-20') };
    expect(hung.runChoices).toEqual([{ covering: 'paper', room: 'hall', run: '2214', hung: true, day: '2026-03-20' }]);
    expect(readiness(hung)).toBe('is hung');
    expect(withoutHung(hung, 'hall', [])).toEqual([]);
    const chosen = [{ covering: 'paper', room: 'hall', run: '2214', hung: false }];
    expect(withoutHung(hung, 'hall', chosen)).toEqual(chosen);
    expect(runsOfRoom(hall(), planHouse(hall()), 'hall')).toEqual({ trouble: 'The run of P-1 is not known yet.' });
  });
});

test('what goes back is said with why and in packs', () => {
  const one = house({});
  const line = (rolls: number, why: Parameters<typeof sayWhy>[1]['why']) => ({ covering: 'paper', patternNumber: 'P-7', run: '9', rolls, why });
  expect(sayWhy(one, line(2, 'wrong-pattern'))).toBe('came for P-1');
  expect(sayWhy(one, line(2, 'run-not-ordered'))).toBe('run 9 was not ordered');
  expect(sayWhy(one, line(2, 'not-sent'))).toContain('ask the supplier to keep it');
  expect(sayPacks(one, line(4, 'not-needed'))).toBe('2 × 2');
  expect(sayPacks(one, line(3, 'wrong-pattern'))).toBe('');
});

test('what is left is kept once: whole rolls as one length each, offcuts by what a tape surely shows', () => {
  const left = { covering: 'paper', run: '2214', wholeRolls: 1, lengths: [{ length: inches(65), count: 4 }, { length: inches(20.02), count: 1 }] };
  const one = house({});
  expect(sayLeft(one, left)).toEqual(['1 roll not begun', `4 of 5' 5"`, `1 of 1' 8"`]);
  const kept = notYetKept(one, left);
  expect(kept).toEqual([
    { covering: 'paper', run: '2214', length: '30 ft', count: 1 },
    { covering: 'paper', run: '2214', length: `5' 5"`, count: 4 },
    { covering: 'paper', run: '2214', length: `1' 8"`, count: 1 },
  ]);
  expect(notYetKept(house({ leftovers: kept }), left)).toEqual([]);
  expect(notYetKept(house({ leftovers: kept.slice(1) }), left)).toEqual(kept.slice(0, 1));
});

test('a label finds its covering by its number, whatever its capitals, and says what else has to be told', () => {
  const two = houseOf(documentOf({ coverings: [PAPER, { ...PAPER, id: 'other' }, { ...PAPER, id: 'third', patternNumber: 'P-3' }] }));
  expect(coveringsWithNumber(two, ' p-3 ').map(({ id }) => id)).toEqual(['third']);
  expect(sayUnknown(two, 'P-9')).toBe('No covering of this house has the number P-9: for which pattern did it come?');
  expect(sayUnknown(two, 'P-1')).toBe('More than one covering of this house has the number P-1: for which pattern did it come?');
});

test('a day is a day of the calendar, year first', () => {
  expect(received(' 2028-02-29 ')).toEqual({ received: '2028-02-29' });
  expect(received('')).toEqual({});
  for (const typed of ['2026-02-29', '2026-13-01', '3/2/2026', 'today']) expect(received(typed)).toHaveProperty('trouble');
});

test('a table is copied with tabs, quotes where they are needed, and no formulas', () => {
  expect(tabSeparated(['Run', 'Rolls'], [['22\t14', 3], ['say "so"', 0], ['=1+1', -2]])).toBe('Run\tRolls\n"22\t14"\t3\n"say ""so"""\t0\n\'=1+1\t-2\n');
});

test('the rail says what is to decide, which stops, or else what is to come', () => {
  const point = (facts: Loose) => {
    const one = house(facts);
    return openPoints(one, planHouse(one)).deliveries;
  };
  const orders = ordered({ rolls: 4, run: '2214' });
  expect(point({})).toBeNull();
  expect(point({ orders })).toEqual({ words: '4 rolls to come', stops: false });
  expect(point({ orders, deliveries: [came('2215', 1)] })).toEqual({ words: '1 package to decide', stops: true });
  expect(point({ orders, deliveries: [came('2215', 1, { decision: 'send-back' }), came('2214', 4)] })).toBeNull();
});

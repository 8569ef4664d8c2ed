import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { keepLedger } from '../../shared-core/ordering/index.ts';
import { type Loose } from '../builders.ts';
import { came, FERN, fernHouse, placed, rolls } from './fern-house.ts';

const ledgerOf = (facts: Loose) => keepLedger(fernHouse(facts), 'fern');
const tenOfAnyRun = [placed([{ rolls: 10 }])];

describe('a ledger', () => {
  test('of 10 ordered of any one run and 8 come, 2 of them damaged, has 6 in hand and 4 on order', () => {
    const ledger = ledgerOf({ orders: tenOfAnyRun, deliveries: [came('2214', 8, { damaged: 2 })] });
    expect(ledger.runs).toEqual([{ run: '2214', inHand: 6, onOrder: 4, offered: 0 }]);
    expect(ledger.lines).toMatchObject([{ order: 'first', run: '2214', received: 6, instead: 0, outstanding: 4 }]);
    const second = ledgerOf({ orders: tenOfAnyRun, deliveries: [came('2214', 8, { damaged: 2 }), came('2215', 3)] });
    expect(second.runs).toEqual(ledger.runs);
    expect(second.deliveries.map(({ verdict, sound }) => [verdict, sound])).toEqual([['counts', 6], ['run-not-ordered', 3]]);
  });

  test('counts whatever comes of the right pattern where nothing was ordered, and calls none of it too many', () => {
    const ledger = ledgerOf({ stock: [rolls('1', 2)], deliveries: [came('1', 3), came('2', 4, { short: 1 }), came('2', 5, { patternNumber: 'X-1' })] });
    expect(ledger.runs).toEqual([{ run: '1', inHand: 5, onOrder: 0, offered: 0 }, { run: '2', inHand: 3, onOrder: 0, offered: 0 }]);
    expect(ledger.deliveries.map(({ verdict, tooMany }) => [verdict, tooMany])).toEqual([['counts', 0], ['counts', 0], ['wrong-pattern', 0]]);
  });

  test('counts any label where the covering has no pattern number', () => {
    const { patternNumber: _none, ...plain } = FERN;
    expect(ledgerOf({ coverings: [plain], deliveries: [came('1', 3, { patternNumber: 'whatever' })] }).runs).toMatchObject([{ run: '1', inHand: 3 }]);
  });

  test('says how many came that nobody asked for', () => {
    expect(ledgerOf({ orders: [placed([{ run: '1', rolls: 10 }])], deliveries: [came('1', 8), came('1', 4)] })).toMatchObject({ runs: [{ inHand: 12, onOrder: 0 }], deliveries: [{ tooMany: 0 }, { tooMany: 2 }] });
  });

  test('fills the lines of a run in the order in which they were placed', () => {
    const orders = [placed([{ run: '1', rolls: 4 }, { run: '2', rolls: 5 }]), placed([{ run: '1', rolls: 6 }], { id: 'second' })];
    expect(ledgerOf({ orders, deliveries: [came('1', 7)] }).lines.map(({ order, run, received, outstanding }) => [order, run, received, outstanding])).toEqual([
      ['first', '1', 4, 0],
      ['first', '2', 0, 5],
      ['second', '1', 3, 3],
    ]);
  });

  test('leaves on order of an unknown run what asks for any one run, beside a run that was named', () => {
    const ledger = ledgerOf({ orders: [placed([{ rolls: 2 }, { run: '5', rolls: 2 }])], deliveries: [came('5', 2)] });
    expect(ledger.runs).toEqual([{ run: '5', inHand: 2, onOrder: 0, offered: 0 }, { run: null, inHand: 0, onOrder: 2, offered: 0 }]);
  });

  test('of a line that is closed keeps what came for it and waits for no more', () => {
    const closed = [placed([{ run: '1', rolls: 10, closed: true }])];
    expect(ledgerOf({ orders: closed, deliveries: [came('1', 8)] })).toMatchObject({ runs: [{ inHand: 8, onOrder: 0 }], lines: [{ received: 8, outstanding: 0 }], deliveries: [{ tooMany: 0 }] });
    expect(ledgerOf({ orders: closed, deliveries: [came('2', 8, { decision: 'keep' })] })).toMatchObject({ lines: [{ received: 0, instead: 8, outstanding: 0 }], deliveries: [{ tooMany: 0 }] });
  });

  test('books what comes on a line that is still open before one that is closed', () => {
    const orders = [placed([{ run: '1', rolls: 10, closed: true }]), placed([{ run: '1', rolls: 2 }], { id: 'second' })];
    expect(ledgerOf({ orders, deliveries: [came('1', 8), came('1', 2)] }).lines.map(({ received, outstanding }) => [received, outstanding])).toEqual([[8, 0], [2, 0]]);
  });

  test('takes what went back off what nobody kept, then off what came, then off what was there before, never below 0', () => {
    const facts = (back: number) => ({ stock: [rolls('1', 2)], orders: [placed([{ run: '1', rolls: 3 }])], deliveries: [came('1', 4, { patternNumber: 'X-1' }), came('1', 3)], ...(back === 0 ? {} : { returns: [rolls('1', back)] }) });
    const seen = [0, 3, 4, 5, 7, 8, 9, 12].map((back) => {
      const { runs, deliveries } = ledgerOf(facts(back));
      return [back, runs[0]!.inHand, ...deliveries.map(({ gone }) => gone)];
    });
    expect(seen).toEqual([[0, 5, 0, 0], [3, 5, 3, 0], [4, 5, 4, 0], [5, 4, 4, 1], [7, 2, 4, 3], [8, 1, 4, 3], [9, 0, 4, 3], [12, 0, 4, 3]]);
  });

  test('makes no run of a return whose run nobody has', () => {
    expect(ledgerOf({ returns: [rolls('2241', 2)] }).runs).toEqual([]);
  });
});

const run = fc.constantFrom('1', '2', '3');
const count = (least: number, most: number) => fc.integer({ min: least, max: most });
const delivery = fc
  .record({ covering: fc.constantFrom('fern', 'fern', 'fern', 'moss'), run, rolls: count(0, 12), damaged: count(0, 3), short: count(0, 3), isRight: fc.boolean(), isDecided: fc.boolean(), isKept: fc.boolean() })
  .map(({ damaged, short, isRight, isDecided, isKept, ...facts }): Loose => {
    const lost = Math.min(damaged, facts.rolls);
    return { ...facts, patternNumber: isRight || facts.covering === 'moss' ? 'K-2041' : 'X-1', damaged: lost, short: Math.min(short, facts.rolls - lost), ...(isDecided ? { decision: isKept && isRight ? 'keep' : 'send-back' } : {}) };
  });
const line = fc.record({ covering: fc.constantFrom('fern', 'fern', 'moss'), run: fc.option(run, { nil: undefined }), rolls: count(0, 15), closed: fc.boolean() });
const quantity = fc.record({ covering: fc.constantFrom('fern', 'fern', 'moss'), run, rolls: count(1, 10) });
const facts = fc
  .record({ stock: fc.array(quantity, { maxLength: 3 }), offers: fc.array(quantity, { maxLength: 3 }), returns: fc.array(quantity, { maxLength: 3 }), deliveries: fc.array(delivery, { maxLength: 6 }), lines: fc.array(fc.array(line, { minLength: 1, maxLength: 3 }), { maxLength: 3 }) })
  .map(({ lines, ...rest }) => ({ ...rest, coverings: [FERN, { ...FERN, id: 'moss' }], orders: lines.map((own, index) => ({ id: `o${index}`, placed: '2026-03-02', lines: own })) }));

const total = <Item>(items: readonly Item[], of: (item: Item) => number) => items.reduce((sum, item) => sum + of(item), 0);

describe('whatever was ordered, came and went back', () => {
  const check = (property: (house: ReturnType<typeof fernHouse>, ledger: ReturnType<typeof keepLedger>) => void) =>
    fc.assert(fc.property(facts, (one) => {
      const house = fernHouse(one);
      property(house, keepLedger(house, 'fern'));
    }), { numRuns: 400 });

  test('a line has received, has got instead, or waits for all that it ordered', () => {
    check((_house, { lines }) => {
      for (const { line: own, received, instead, outstanding } of lines) {
        if (own.closed) expect(outstanding).toBe(0);
        else expect(received + instead + outstanding).toBe(own.rolls);
        expect(received + instead).toBeLessThanOrEqual(own.rolls);
      }
    });
  });

  test('what counts of the packages stands on a line or is too many, and what is outstanding is on order of a run', () => {
    check((_house, { lines, runs, deliveries }) => {
      const counted = total(deliveries.filter(({ verdict }) => verdict === 'counts'), ({ sound }) => sound);
      if (lines.length > 0) expect(total(lines, ({ received, instead }) => received + instead) + total(deliveries, ({ tooMany }) => tooMany)).toBe(counted);
      expect(total(runs, ({ onOrder }) => onOrder)).toBe(total(lines, ({ outstanding }) => outstanding));
    });
  });

  test('in hand of a run is what was there and what counts less what went back of it, never below 0', () => {
    check((house, { runs, deliveries }) => {
      expect(new Set(runs.map(({ run: own }) => own)).size).toBe(runs.length);
      for (const stock of runs) {
        const of = (list: readonly { readonly covering: string; readonly run: string; readonly rolls: number }[]) => total(list.filter((one) => one.covering === 'fern' && one.run === stock.run), (one) => one.rolls);
        const ofVerdict = (counts: boolean) => total(deliveries.filter(({ delivery: own, verdict }) => own.run === stock.run && (verdict === 'counts') === counts), ({ sound }) => sound);
        const back = Math.max(0, of(house.returns) - ofVerdict(false));
        expect(stock.inHand).toBe(Math.max(0, of(house.stock) + ofVerdict(true) - back));
        expect(stock.offered).toBe(of(house.offers));
      }
    });
  });

  test('only what has the right label and no other run than was asked for, or is kept, counts', () => {
    check((house, { lines, deliveries }) => {
      const named = new Set([...house.orders.flatMap((order) => order.lines.filter(({ covering }) => covering === 'fern').map((own) => own.run)), ...lines.map((own) => own.run)]);
      for (const { delivery: own, verdict } of deliveries) {
        if (verdict !== 'counts') continue;
        expect([own.covering, own.patternNumber]).toEqual(['fern', 'K-2041']);
        expect(own.decision).not.toBe('send-back');
        expect(lines.length === 0 || own.decision === 'keep' || named.has(own.run)).toBe(true);
      }
    });
  });

  test("another covering's orders and packages change nothing", () => {
    check((house, ledger) => {
      const own = <Item extends { readonly covering: string }>(list: readonly Item[]) => list.filter(({ covering }) => covering === 'fern');
      const orders = house.orders.map((order) => ({ ...order, lines: own(order.lines) }));
      const alone = keepLedger({ ...house, stock: own(house.stock), offers: own(house.offers), returns: own(house.returns), deliveries: own(house.deliveries), orders }, 'fern');
      expect(alone.runs).toEqual(ledger.runs);
      // Only their places in the order differ, as it has fewer lines.
      expect(alone.lines.map((line) => ({ ...line, index: 0 }))).toEqual(ledger.lines.map((line) => ({ ...line, index: 0 })));
    });
  });
});

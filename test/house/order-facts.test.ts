import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit, decodeHouse, type Edit, encodeHouse, type House, nameEdit, readDocument, writeDocument } from '../../shared-core/house/index.ts';
import { exampleDocument, houseOf, type Loose } from '../builders.ts';

/** The exchange example with a second room and everything that an order's life records. */
function orderedDocument(): Loose {
  const document = exampleDocument();
  return {
    ...document,
    tax: { rate: '7.25', included: false },
    orderNote: 'Ring before noon',
    rooms: [...document.rooms, { id: 'hall', name: 'Hall' }, { id: 'landing', name: 'Landing' }],
    suppliers: [{ id: 'north', name: 'Northern Papers', tax: { rate: '20', included: true }, note: 'closed on Mondays', address: 'Weavers Row 2\nFarport' }],
    stock: [{ covering: 'fern', run: '2207', rolls: 3 }],
    offers: [{ covering: 'fern', run: '2214', rolls: 8 }],
    orders: [
      {
        id: 'first',
        placed: '2026-03-02',
        supplier: 'north',
        tax: { rate: '20', included: true },
        note: 'by carrier',
        deliverTo: 'Alder, Mill Lane 3\nby the back gate',
        deliverBy: '2026-03-20',
        lines: [
          { covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 10, packs: [{ rolls: 2, count: 5 }], price: '420.00', rooms: ['bed1', 'attic'], closed: true },
          { covering: 'ivy', rolls: 4, length: '13 yd', price: '72.00', rooms: [], packs: [], closed: false },
        ],
      },
    ],
    deliveries: [{ covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 8, damaged: 2, short: 1, received: '2026-03-05', decision: 'keep' }],
    returns: [{ covering: 'fern', run: '2214', rolls: 2, sent: '2026-03-09' }],
    leftovers: [{ covering: 'fern', run: '2214', length: "5' 5\"", count: 9, place: 'loft' }],
    matching: [{ covering: 'fern', rooms: ['bed1', 'hall', 'landing'] }, { rooms: ['hall', 'landing'] }],
    runChoices: [{ covering: 'fern', room: 'bed1', run: '2214', hung: true, day: '2026-03-27' }, { covering: 'fern', room: 'hall', run: '2207' }],
  };
}

const faultsOf = (document: Loose) => {
  const outcome = decodeHouse(document);
  return outcome.ok ? [] : outcome.faults;
};

/** What is wrong, the change that makes a good document wrong, where it is said to be wrong, and words of what is said. */
const WRONG: readonly (readonly [string, (document: Loose) => void, string, RegExp])[] = [
  ['a line of an unknown covering', (d) => (d.orders[0].lines[1].covering = 'moss'), 'orders[0].lines[1].covering', /is "moss", which is not a covering of this house; its coverings are fern, ivy, line, lake, chalk/],
  ['a line of paint', (d) => (d.orders[0].lines[1].covering = 'chalk'), 'orders[0].lines[1].covering', /a paint; rolls are counted for wallcoverings, borders, linings and murals/],
  ['a line at a price with too many decimals', (d) => (d.orders[0].lines[0].price = '420.001'), 'orders[0].lines[0].price', /420\.001/],
  ['an order of nothing', (d) => (d.orders[0].lines = []), 'orders[0].lines', /is empty; an order has one line or more/],
  ['an order without a day', (d) => delete d.orders[0].placed, 'orders[0].placed', /is missing; it takes a date such as "2026-03-02"/],
  ['two orders of one id', (d) => d.orders.push(d.orders[0]), 'orders[1].id', /is "first", which another of the list has already/],
  ['two suppliers of one id', (d) => d.suppliers.push({ id: 'north' }), 'suppliers[1].id', /already/],
  ['a tax over 100 %', (d) => (d.suppliers[0].tax.rate = '101'), 'suppliers[0].tax.rate', /from "0" to "100"/],
  ['a tax that is a number', (d) => (d.tax.rate = 20), 'tax.rate', /is 20; it takes a rate in percent as a decimal text/],
  ['stock of an unknown covering', (d) => (d.stock[0].covering = 'moss'), 'stock[0].covering', /moss/],
  ['an offer of paint', (d) => (d.offers[0].covering = 'chalk'), 'offers[0].covering', /a paint/],
  ['half a roll on offer', (d) => (d.offers[0].rolls = 0.5), 'offers[0].rolls', /is 0.5; it takes a whole number from 0/],
  ['more damaged than came', (d) => (d.deliveries[0].damaged = 9), 'deliveries[0].damaged', /is 9, more than the 8 rolls delivered/],
  ['more damaged and short than came', (d) => (d.deliveries[0].short = 7), 'deliveries[0].short', /is 7: with 2 damaged that is more than the 8 rolls on the label/],
  ['a wrong pattern that is kept', (d) => (d.deliveries[0].patternNumber = 'K-2042'), 'deliveries[0].decision', /is "keep", but the label says pattern K-2042 and not K-2041; record it under a covering of that number, or send it back/],
  ['a decision that is none', (d) => (d.deliveries[0].decision = 'burn'), 'deliveries[0].decision', /it takes "keep" or "send-back"/],
  ['a return of no rolls', (d) => (d.returns[0].rolls = 0), 'returns[0].rolls', /from 1/],
  ['a return of an unknown covering', (d) => (d.returns[0].covering = 'moss'), 'returns[0].covering', /moss/],
  ['a leftover of no length', (d) => (d.leftovers[0].length = '0 in'), 'leftovers[0].length', /is 0 in; it takes a length above 0/],
  ['a leftover of an unknown covering', (d) => (d.leftovers[0].covering = 'moss'), 'leftovers[0].covering', /moss/],
  ['one room that must match', (d) => (d.matching[1].rooms = ['hall']), 'matching[1].rooms', /names fewer than two rooms/],
  ['a room that must match itself', (d) => (d.matching[1].rooms = ['hall', 'hall']), 'matching[1].rooms[1]', /is "hall" once more; each room stands once/],
  ['an unknown room that must match', (d) => (d.matching[0].rooms[2] = 'attic'), 'matching[0].rooms[2]', /is "attic", which is not a room of this house; its rooms are bed1, hall, landing/],
  ['rooms that match for an unknown covering', (d) => (d.matching[0].covering = 'moss'), 'matching[0].covering', /moss/],
  ['a run chosen for an unknown room', (d) => (d.runChoices[1].room = 'attic'), 'runChoices[1].room', /attic/],
  ['a run chosen of an unknown covering', (d) => (d.runChoices[1].covering = 'moss'), 'runChoices[1].covering', /moss/],
  ['two runs chosen for one room', (d) => (d.runChoices[1].room = 'bed1'), 'runChoices[1]', /says the run of fern in bed1 a second time; each room takes one/],
  ['an address of a supplier that is none', (d) => (d.suppliers[0].address = ' \n '), 'suppliers[0].address', /^is empty; it takes the address of a supplier$/],
  ['an order to somewhere too long', (d) => (d.orders[0].deliverTo = 'x'.repeat(501)), 'orders[0].deliverTo', /^is 501 characters long; it takes a name and an address of at most 500$/],
  ['an order by a day that is none', (d) => (d.orders[0].deliverBy = 'Monday'), 'orders[0].deliverBy', /is "Monday"; it takes a date such as "2026-03-02"/],
  ['a day of hanging where nothing hangs', (d) => (d.runChoices[1].day = '2026-03-27'), 'runChoices[1].day', /^stands without hung; it is the day on which the room was hung$/],
  ['a day of hanging that is none', (d) => (d.runChoices[0].day = '27 March'), 'runChoices[0].day', /a date such as/],
  ...['suppliers', 'stock', 'offers', 'orders', 'deliveries', 'returns', 'leftovers', 'matching', 'runChoices'].map(
    (list) => [`an unknown key in ${list}`, (d: Loose) => (d[list][0].colour = 'red'), `${list}[0].colour`, /is not a key of (a|rolls|rooms)\b/] as const,
  ),
  ['an unknown key of a line', (d) => (d.orders[0].lines[1].colour = 'red'), 'orders[0].lines[1].colour', /is not a key of a line of a placed order; its keys are covering, patternNumber, run/],
  ['an unknown key of a sale unit', (d) => (d.orders[0].lines[0].packs[0].price = '1'), 'orders[0].lines[0].packs[0].price', /is not a key of a number of sale units/],
  ['a spare beyond all that is needed', (d) => (d.rules = { ...d.rules, spareRolls: '1000%' }), 'rules.spareRolls', /^is "1000%"; it takes a whole number of rolls from 0 to 1000, or a percentage from "0%" to "100%", such as "10%"$/],
  ['more taken off a line than was ordered', (d) => (d.orders[0].lines[0].takenOff = 9000), 'orders[0].lines[0].takenOff', /^is 9000, more than the \d+ rolls ordered$/],
  ['an unknown key of a tax', (d) => (d.tax.country = 'US'), 'tax.country', /is not a key of a tax/],
];

describe('facts of an order', () => {
  test('are good as they are', () => {
    expect(faultsOf(orderedDocument())).toEqual([]);
  });

  test.each(WRONG)('with %s are refused with its place and what would be accepted', (_what, change, path, words) => {
    const document = orderedDocument();
    change(document);
    const faults = faultsOf(document);
    expect(faults.map((fault) => fault.path)).toEqual([path]);
    expect(faults[0]!.message).toMatch(words);
  });

  test('take their stated defaults', () => {
    const bare = houseOf({ ...exampleDocument(), suppliers: [{ id: 'n', tax: { rate: '5' } }], orders: [{ id: 'o', placed: '2026-03-02', lines: [{ covering: 'fern', rolls: 2 }] }], deliveries: [{ covering: 'fern', patternNumber: 'K-2041', run: '1', rolls: 2 }], leftovers: [{ covering: 'fern', length: '1 m' }], runChoices: [{ covering: 'fern', room: 'bed1', run: '1' }] });
    expect(bare).toMatchObject({ suppliers: [{ tax: { included: false } }], orders: [{ lines: [{ packs: [], rooms: [], closed: false }] }], deliveries: [{ damaged: 0, short: 0 }], leftovers: [{ count: 1 }], runChoices: [{ hung: false }] });
  });

  test('may name rooms that are gone in an order that went out, and a room with a choice of two coverings', () => {
    const document = orderedDocument();
    document.runChoices[1] = { covering: 'ivy', room: 'bed1', run: '5' };
    expect(faultsOf(document)).toEqual([]);
  });
});

/** What the exchange document says, whatever words were typed for its lengths. */
const factsOf = (house: House): Loose => JSON.parse(JSON.stringify(house, (key, inner: unknown) => (key === 'typed' ? undefined : inner)));

describe('written out and read in again', () => {
  const again = (house: House): House => {
    const outcome = readDocument(writeDocument(house));
    if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
    return outcome.value;
  };

  test('the life of an order is the same', () => {
    const house = houseOf(orderedDocument());
    expect(factsOf(again(house))).toEqual(factsOf(house));
    const { orders, deliveries, returns, matching, runChoices, suppliers, tax, orderNote } = encodeHouse(house);
    const { orders: ordered, ...written } = orderedDocument();
    expect({ deliveries, returns, matching, suppliers, tax, orderNote }).toEqual({ deliveries: written.deliveries, returns: written.returns, matching: written.matching, suppliers: written.suppliers, tax: written.tax, orderNote: written.orderNote });
    expect(orders).toMatchObject(ordered);
    expect(runChoices).toEqual([written.runChoices[0], { ...written.runChoices[1], hung: false }]);
  });

  test('whatever was recorded is the same', () => {
    const text = fc.string({ minLength: 1, maxLength: 40 }).filter((written) => written.trim() !== '').map((written) => written.trim());
    const lines = fc.array(text, { minLength: 1, maxLength: 4 }).map((all) => all.join('\n'));
    const covering = fc.constantFrom('fern', 'ivy', 'line', 'lake');
    const room = fc.constantFrom('bed1', 'hall', 'landing');
    const rolls = fc.nat(100_000);
    const day = fc.date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true }).map((date) => date.toISOString().slice(0, 10));
    const maybe = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });
    const rate = fc.integer({ min: 0, max: 100_000 }).map((thousandths) => (thousandths / 1000).toFixed(3));
    const tax = fc.record({ rate, included: fc.boolean() });
    const length = fc.integer({ min: 1, max: 100_000 }).map((tenths) => `${tenths / 10} mm`);
    const line = fc.record({ covering, patternNumber: maybe(text), run: maybe(text), rolls, packs: fc.array(fc.record({ rolls: fc.integer({ min: 1, max: 1000 }), count: fc.integer({ min: 1, max: 100_000 }) }), { maxLength: 2 }), length: maybe(length), price: maybe(fc.integer({ min: 0, max: 1_000_000 }).map((cents) => (cents / 100).toFixed(2))), rooms: fc.array(room, { maxLength: 3 }), closed: fc.boolean() });
    const lists = fc.record({
      tax: maybe(tax),
      orderNote: maybe(text),
      contractor: maybe(lines),
      customer: maybe(lines),
      deliverTo: maybe(lines),
      deliverBy: maybe(day),
      suppliers: fc.uniqueArray(fc.record({ id: text, name: maybe(text), address: maybe(lines), tax: maybe(tax), note: maybe(text) }), { maxLength: 3, selector: ({ id }) => id }),
      stock: fc.array(fc.record({ covering, run: text, rolls }), { maxLength: 3 }),
      offers: fc.array(fc.record({ covering, run: text, rolls }), { maxLength: 3 }),
      orders: fc.array(fc.record({ placed: day, supplier: maybe(text), tax: maybe(tax), note: maybe(text), deliverTo: maybe(lines), deliverBy: maybe(day), lines: fc.array(line, { minLength: 1, maxLength: 3 }) }), { maxLength: 3 }).map((all) => all.map((one, index) => ({ id: `o${index}`, ...one }))),
      deliveries: fc.array(fc.record({ covering, patternNumber: text, run: text, rolls, damaged: fc.nat(3), short: fc.nat(3), received: maybe(day), isBack: fc.boolean() }).map(({ isBack, ...one }) => ({ ...one, rolls: one.rolls + 6, ...(isBack ? { decision: 'send-back' } : {}) })), { maxLength: 3 }).map((all) => all.map((one) => ({ ...one, rolls: Math.min(one.rolls, 100_000) }))),
      returns: fc.array(fc.record({ covering, run: text, rolls: fc.integer({ min: 1, max: 100_000 }), sent: maybe(day) }), { maxLength: 3 }),
      leftovers: fc.array(fc.record({ covering, run: maybe(text), length, count: fc.integer({ min: 1, max: 10_000 }), place: maybe(text) }), { maxLength: 3 }),
      matching: fc.array(fc.record({ covering: maybe(covering), rooms: fc.uniqueArray(room, { minLength: 2, maxLength: 3 }) }), { maxLength: 2 }),
      runChoices: fc.uniqueArray(fc.record({ covering, room, run: text, hung: fc.boolean(), day: maybe(day) }).map(({ day: hungOn, ...one }) => ({ ...one, ...(one.hung ? { day: hungOn } : {}) })), { maxLength: 4, selector: (one) => `${one.covering} ${one.room}` }),
    });
    const rooms = [...exampleDocument().rooms, { id: 'hall', name: 'Hall' }, { id: 'landing', name: 'Landing' }];
    fc.assert(
      fc.property(lists, fc.constantFrom('imperial', 'metric'), (recorded, lengths) => {
        const house = houseOf({ ...exampleDocument(), rooms, lengths, ...recorded });
        expect(factsOf(again(house))).toEqual(factsOf(house));
      }),
      { numRuns: 150 },
    );
  });
});

const made = (house: House, ...edits: readonly Edit[]): House =>
  edits.reduce((before, edit) => {
    const outcome = applyEdit(before, edit);
    if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
    return outcome.value;
  }, house);

const ORDER: Extract<Edit, { kind: 'place-order' }>['order'] = { id: 'second', placed: '2026-03-12', lines: [{ covering: 'fern', run: '2214', rolls: 6 }] };

/** The edit, the list it sets, what is in it then, and how undo calls it. */
const SETTING: readonly (readonly [Edit, keyof House, Loose, string])[] = [
  [{ kind: 'set-suppliers', suppliers: [{ id: 'south' }] }, 'suppliers', [{ id: 'south' }], 'change the suppliers'],
  [{ kind: 'set-stock', stock: [] }, 'stock', [], 'change the rolls in hand'],
  [{ kind: 'set-offers', offers: [{ covering: 'ivy', run: '5', rolls: 9 }] }, 'offers', [{ covering: 'ivy', run: '5', rolls: 9 }], 'change what can still be had'],
  [{ kind: 'set-orders', orders: [ORDER] }, 'orders', [{ id: 'second' }], 'change the placed orders'],
  [{ kind: 'set-deliveries', deliveries: [] }, 'deliveries', [], 'change the deliveries'],
  [{ kind: 'set-returns', returns: [{ covering: 'fern', run: '2214', rolls: 1 }] }, 'returns', [{ rolls: 1 }], 'change what went back'],
  [{ kind: 'set-leftovers', leftovers: [{ covering: 'fern', length: '2 m' }] }, 'leftovers', [{ count: 1, length: { typed: '2 m' } }], 'change the leftovers'],
  [{ kind: 'set-matching', matching: [] }, 'matching', [], 'change which rooms must match'],
  [{ kind: 'set-run-choices', runChoices: [{ covering: 'fern', room: 'landing', run: '2207' }] }, 'runChoices', [{ room: 'landing', hung: false }], 'change the run of a room'],
];

describe('an edit', () => {
  test.each(SETTING.map((one) => [one[0].kind, ...one] as const))('%s sets its list and leaves the others as they are, to the identity', (_kind, edit, list, expected, name) => {
    const before = houseOf(orderedDocument());
    const after = made(before, edit);
    expect(after[list]).toHaveLength(expected.length);
    expect(after[list]).toMatchObject(expected);
    for (const key of Object.keys(before) as (keyof House)[]) if (key !== list) expect(after[key]).toBe(before[key]);
    expect(before).toEqual(houseOf(orderedDocument()));
    expect(nameEdit(before, edit)).toBe(name);
  });

  test('that receives packages is called by the one, or by how many', () => {
    const house = houseOf(orderedDocument());
    const [first] = encodeHouse(house).deliveries!.map((one) => ({ ...one }));
    const package1 = { covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 3 };
    expect(nameEdit(house, { kind: 'set-deliveries', deliveries: [first!, package1] })).toBe('receive 3 of K-2041, run 2214');
    expect(nameEdit(house, { kind: 'set-deliveries', deliveries: [first!, package1, package1] })).toBe('receive 2 packages');
    expect(nameEdit(house, { kind: 'set-deliveries', deliveries: [{ ...first!, decision: 'send-back' }] })).toBe('change the deliveries');
  });

  test('that places an order puts it last and takes it off the offer, as far as that goes', () => {
    const before = houseOf({ ...orderedDocument(), offers: [{ covering: 'fern', run: '2214', rolls: 8 }, { covering: 'ivy', run: '2214', rolls: 8 }, { covering: 'fern', run: '2215', rolls: 2 }, { covering: 'fern', run: '2214', rolls: 1 }] });
    const placing = (...lines: typeof ORDER.lines) => made(before, { kind: 'place-order', order: { ...ORDER, lines } });
    const left = (house: House) => house.offers.map(({ rolls }) => rolls);
    const after = placing({ covering: 'fern', run: '2214', rolls: 6 });
    expect(after.orders.map(({ id }) => id)).toEqual(['first', 'second']);
    expect(after.orders[0]).toBe(before.orders[0]);
    expect(left(after)).toEqual([2, 8, 2, 1]);
    expect(left(placing({ covering: 'fern', run: '2214', rolls: 6 }, { covering: 'fern', run: '2214', rolls: 6 }))).toEqual([0, 8, 2, 0]);
    expect(left(placing({ covering: 'fern', rolls: 6 }, { covering: 'ivy', run: '2214', rolls: 1 }))).toEqual([8, 7, 2, 1]);
    expect(nameEdit(before, { kind: 'place-order', order: ORDER })).toBe('place order second');
  });

  test('that places an order of an id that is taken is refused', () => {
    const outcome = applyEdit(houseOf(orderedDocument()), { kind: 'place-order', order: { ...ORDER, id: 'first' } });
    expect(outcome.ok ? [] : outcome.faults).toMatchObject([{ path: 'orders[1].id' }]);
  });

  test('that takes a room away forgets its ties and choices, and no order or package', () => {
    const before = houseOf(orderedDocument());
    const after = made(before, { kind: 'remove-room', room: 'hall' });
    expect(after.matching).toEqual([{ covering: 'fern', rooms: ['bed1', 'landing'] }]);
    expect(after.runChoices).toEqual([{ covering: 'fern', room: 'bed1', run: '2214', hung: true, day: '2026-03-27' }]);
    expect([after.orders, after.deliveries]).toEqual([before.orders, before.deliveries]);
    expect(made(before, { kind: 'remove-room', room: 'bed1' }).orders[0]!.lines[0]!.rooms).toEqual(['bed1', 'attic']);
  });

  test('that takes a covering away is refused while an order, a package or a choice names it', () => {
    const free = { ...orderedDocument(), rooms: [{ id: 'bed1', name: 'Bed' }, { id: 'hall', name: 'Hall' }, { id: 'landing', name: 'Landing' }] };
    const messageOf = (facts: Loose, covering = 'fern') => {
      const outcome = applyEdit(houseOf({ ...free, ...facts }), { kind: 'remove-covering', covering });
      return outcome.ok ? 'taken away' : outcome.faults.map(({ path, message }) => `${path} ${message}`).join('\n');
    };
    expect(messageOf({})).toBe('covering is still used by the rolls in hand, what can still be had, the placed orders, the deliveries, what went back, the leftovers, rooms that must match, the choices of run; take it away there first');
    expect(messageOf({}, 'ivy')).toBe('covering is still used by the placed orders; take it away there first');
    expect(messageOf({ stock: [], offers: [], orders: [], deliveries: [], returns: [], leftovers: [], matching: [], runChoices: [] })).toBe('taken away');
    expect(messageOf({}, 'lake')).toBe('taken away');
  });
});

import { describe, expect, test } from 'vitest';
import { applyEdit, decodeHouse, type Edit, encodeHouse, type House, nameEdit, readDocument, writeDocument } from '../../shared-core/house/index.ts';
import { exampleDocument, exampleHouse, houseOf, type Loose } from '../builders.ts';

const CONTRACTOR = 'Tern & Lark, decorators\nQuay Steps 9\n\nFarport';
const PAPERS = { contractor: CONTRACTOR, customer: 'Mx Alder\nMill Lane 3', deliverTo: 'Mill Lane 3\nby the back gate', deliverBy: '2026-03-20' };
const BATCHES = [{ batch: '7A-113', litres: 5, opened: '2026-03-23', place: 'cellar' }, { batch: '7A-114' }];

const PAINT = exampleDocument().coverings.findIndex(({ kind }: Loose) => kind === 'paint');

function paintedWith(batches: unknown): Loose {
  const document = exampleDocument();
  document.coverings[PAINT].batches = batches;
  return document;
}

function made(house: House, edit: Edit): House {
  const outcome = applyEdit(house, edit);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
  return outcome.value;
}

function again(house: House): House {
  const outcome = readDocument(writeDocument(house));
  if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
  return outcome.value;
}

const faultsOf = (document: Loose) => {
  const outcome = decodeHouse(document);
  return outcome.ok ? [] : outcome.faults;
};

describe('who and where the papers of a house are for', () => {
  test('is set, kept over writing and reading with its lines, and taken away again', () => {
    const set = made(exampleHouse(), { kind: 'change-house', facts: PAPERS });
    expect(encodeHouse(again(set))).toMatchObject(PAPERS);
    const taken = made(set, { kind: 'change-house', facts: { contractor: null, customer: null, deliverTo: null, deliverBy: null } });
    expect(encodeHouse(taken)).toEqual(encodeHouse(exampleHouse()));
  });

  test('loses the empty lines about it, and none within it', () => {
    expect(made(exampleHouse(), { kind: 'change-house', facts: { contractor: `\n ${CONTRACTOR}\n\n` } }).contractor).toBe(CONTRACTOR);
  });

  test.each<readonly [string, unknown, RegExp]>([
    ['contractor', 'x'.repeat(501), /^is 501 characters long; it takes a name and an address of at most 500$/],
    ['customer', ' \n ', /^is empty; it takes a name and an address$/],
    ['customer', 7, /^is 7; it takes a name and an address$/],
    ['deliverTo', 'a\u0000b', /^holds a character that no text has/],
    ['deliverBy', '20 March', /^is "20 March"; it takes a date such as "2026-03-02"$/],
  ])('is refused as %s where it is %j', (key, value, words) => {
    const outcome = applyEdit(exampleHouse(), { kind: 'change-house', facts: { [key]: value as string } });
    expect(outcome.ok ? [] : outcome.faults).toEqual([{ path: key, message: expect.stringMatching(words) }]);
  });

  test('is called so by undo', () => {
    expect(Object.keys(PAPERS).map((key) => nameEdit(exampleHouse(), { kind: 'change-house', facts: { [key]: null } }))).toEqual(['who sends the papers', 'customer', 'where goods are delivered', 'the day by which goods are wanted'].map((words) => `change ${words} of the house`));
  });

  test('is with a supplier the address, which its edit sets', () => {
    const house = made(exampleHouse(), { kind: 'set-suppliers', suppliers: [{ id: 'north', address: 'Weavers Row 2\nFarport' }] });
    expect(again(house).suppliers).toEqual([{ id: 'north', address: 'Weavers Row 2\nFarport' }]);
  });
});

describe('batches of a paint', () => {
  test('are set, kept over writing and reading, and called by undo', () => {
    const edit: Edit = { kind: 'change-covering', covering: 'chalk', facts: { batches: BATCHES } };
    const house = made(exampleHouse(), edit);
    expect(again(house).coverings[PAINT]).toMatchObject({ id: 'chalk', batches: BATCHES });
    expect(nameEdit(exampleHouse(), edit)).toBe('change batches of Chalk');
    expect('batches' in made(house, { kind: 'change-covering', covering: 'chalk', facts: { batches: null } }).coverings[PAINT]!).toBe(false);
  });

  test.each<readonly [string, unknown, string, RegExp]>([
    ['no number', [{ litres: 5 }], '[0].batch', /^is missing; it takes a batch number$/],
    ['no paint in it', [{ batch: '1', litres: 0 }], '[0].litres', /^is 0; it takes litres of paint, above 0$/],
    ['a drop of it', [{ batch: '1', litres: 0.001 }], '[0].litres', /^is 0\.001; of a batch there are from 0\.01 to 10000 litres\. Check the unit$/],
    ['a lake of it', [{ batch: '1' }, { batch: '2', litres: 10_001 }], '[1].litres', /^is 10001; of a batch there are from/],
    ['a day that is none', [{ batch: '1', opened: '2026-02-30' }], '[0].opened', /a date such as/],
    ['an unknown key', [{ batch: '1', colour: 'red' }], '[0].colour', /is not a key of a batch of paint; its keys are batch, litres, opened, place/],
  ])('with %s are refused', (_what, batches, path, words) => {
    expect(faultsOf(paintedWith(batches))).toEqual([{ path: `coverings[${PAINT}].batches${path}`, message: expect.stringMatching(words) }]);
  });

  test('belong to a paint alone', () => {
    const document = exampleDocument();
    document.coverings[0].batches = BATCHES;
    expect(faultsOf(document).map(({ path }) => path)).toEqual(['coverings[0].batches']);
    expect(houseOf(paintedWith([])).coverings[PAINT]).toMatchObject({ batches: [] });
  });
});

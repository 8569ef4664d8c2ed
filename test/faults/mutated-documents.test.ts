import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Fault } from '../../shared-core/base/index.ts';
import { encodeHouse, type House, LARGEST_DOCUMENT_CHARACTERS, readDocument, writeDocument } from '../../shared-core/house/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { demoHouse, type Office } from '../../src-main/office/index.ts';
import exchangeExample from '../house/exchange-example.json' with { type: 'json' };
import typedHouse from '../e2e/typed-house.json' with { type: 'json' };
import ties from '../ordering/order-life/ties-carry-over.json' with { type: 'json' };
import { changedDocument } from './mutate-json.ts';
import { chanceOf, seedsOf } from './seeded.ts';
import { badlySaid } from './words-of-a-failure.ts';
import { shareOf } from '../share-of.ts';
import { officeForAll } from './office-for-all.ts';

/** Seeds under which one failed once: the documents they make are the same for ever. */
const SEEDS_THAT_FAILED: readonly number[] = [];
const COUNT = shareOf(10_000, 200);
const PLANNED_ONE_IN = 20;
const IMPORTED_ONE_IN = 30;

const BASES = [encodeHouse(demoHouse()), exchangeExample, typedHouse, ties.house] as unknown as readonly Parameters<typeof changedDocument>[0][];

let folder: string;
let office: Office;

officeForAll((one, place) => {
  office = one;
  folder = place;
});

const ownKeysOf = () => [Object.prototype, Array.prototype, String.prototype, Function.prototype].map((prototype) => Reflect.ownKeys(prototype).length);

/** What is wrong with how faults are said, or null. */
function badlyNamed(faults: readonly Fault[]): string | null {
  if (faults.length === 0) return 'refused without a fault';
  if (faults.length > 101) return `${faults.length} faults`;
  const bad = faults.find(({ path, message }) => message.trim() === '' || message.length > 2_000 || path.length > 500 || (path === '' && !/^(?:This|The document|More) /.test(message) && !message.startsWith('is ')));
  return bad ? `badly named: ${JSON.stringify(bad)}` : null;
}

function readAgain(house: House): string | null {
  const again = readDocument(writeDocument(house));
  if (!again.ok) return `written it is not read again: ${JSON.stringify(again.faults)}`;
  return writeDocument(again.value) === writeDocument(house) ? null : 'written it is read as another house';
}

function planned(house: House): string | null {
  const plan = planHouse(house, 'instant');
  return plan.rooms.length === house.rooms.length ? null : 'a plan that lacks a room';
}

/** What is wrong with how a document is taken, or null. */
async function taken(text: string, seed: number): Promise<{ readonly isGood: boolean; readonly trouble: string | null }> {
  const read = readDocument(text);
  const trouble = read.ok ? readAgain(read.value) ?? (seed % PLANNED_ONE_IN === 0 ? planned(read.value) : null) : badlyNamed(read.faults);
  if (trouble !== null || seed % IMPORTED_ONE_IN !== 0) return { isGood: read.ok, trouble };
  const imported = await office.call('import-document', { text });
  if (imported.ok !== read.ok) return { isGood: read.ok, trouble: `the office takes it otherwise: ${JSON.stringify(imported).slice(0, 500)}` };
  return { isGood: read.ok, trouble: badlySaid(imported) };
}

describe('an exchange document that is changed anywhere', () => {
  it('is a good house or refused by place and in words, and is never run into', async () => {
    const before = ownKeysOf();
    const troubles: string[] = [];
    let good = 0;
    for (const seed of seedsOf(SEEDS_THAT_FAILED, COUNT)) {
      const chance = chanceOf(seed);
      const { text, how } = changedDocument(chance.pick(BASES), chance);
      const { isGood, trouble } = await taken(text, seed).catch((error: unknown) => ({ isGood: false, trouble: `thrown: ${error instanceof Error ? error.stack : String(error)}` }));
      if (isGood) good += 1;
      if (trouble !== null) troubles.push(`seed ${seed} (${how}): ${trouble}`);
    }
    expect(troubles).toEqual([]);
    expect(ownKeysOf()).toEqual(before);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
    // Else hardly anything is tried behind the first look.
    expect(good).toBeGreaterThan(COUNT / 20);
    expect(good).toBeLessThan(COUNT);
    const files = readdirSync(join(folder, 'houses'));
    expect(files.filter((name) => !/^[^.].*\.struckline$/.test(name))).toEqual([]);
    expect(files.every((name) => readFileSync(join(folder, 'houses', name)).length > 0)).toBe(true);
  });
});

describe('a document of which very much is wrong', () => {
  const HEAD = '{"format":"struckline-house","version":1,"name":"x"';
  const times = (text: string, count: number) => Array<string>(count).fill(text).join(',');
  const faultsOf = (text: string) => {
    const read = readDocument(text);
    return read.ok ? [] : read.faults;
  };

  it('names the first hundred and says that there is more', () => {
    const missing = Array.from({ length: 500 }, (_, order) => `{"id":"o${order}","placed":"2026-01-01","lines":[${times('{"covering":"zz","rolls":1}', 300)}]}`).join(',');
    const coverings = Array.from({ length: 500 }, (_, index) => `{"id":"c${index}","kind":"paint"}`).join(',');
    const faults = faultsOf(`${HEAD},"coverings":[${coverings}],"orders":[${missing}]}`);
    expect(faults).toHaveLength(101);
    expect(faults[0]).toEqual({ path: 'orders[0].lines[0].covering', message: `is "zz", which is not a covering of this house; its coverings are ${Array.from({ length: 20 }, (_, index) => `c${index}`).join(', ')} and 480 more` });
    expect(faults[100]).toEqual({ path: '', message: 'More is wrong than these 100; mend these first.' });
  });

  it('by unknown keys names the first hundred, each short', () => {
    const faults = faultsOf(`${HEAD},${Array.from({ length: 100_000 }, (_, index) => `"${'k'.repeat(100)}${index}":1`).join(',')}}`);
    expect(faults).toHaveLength(101);
    expect(faults[0]).toMatchObject({ path: `${'k'.repeat(60)}…`, message: expect.stringMatching(/^is not a key of a house; its keys are format, version/) });
  });

  it('by lists in lists of nothing is refused by what it holds, as large as it may be', () => {
    const text = `${HEAD},"orders":[${times(`{"lines":[${times(`{"rooms":[${times('1', 2_000)}]}`, 50)}]}`, 100)}]}`;
    expect(text.length).toBeGreaterThan(0.95 * LARGEST_DOCUMENT_CHARACTERS);
    expect(faultsOf(text)).toEqual([{ path: '', message: 'This holds more than 500000 values; a house holds fewer' }]);
  });

  it('by bands that each name a wall two hundred times stops at the first room', () => {
    const walls = Array.from({ length: 200 }, (_, index) => `{"id":"w${index}","length":"1 m","height":"1 m"}`).join(',');
    const bands = Array.from({ length: 100 }, (_, index) => `{"id":"b${index}","covering":"c","walls":[${times(`"w${index}"`, 200)}]}`).join(',');
    const rooms = Array.from({ length: 20 }, (_, index) => `{"id":"r${index}","name":"R","walls":[${walls}],"bands":[${bands}]}`).join(',');
    const faults = faultsOf(`${HEAD},"coverings":[{"id":"c","kind":"paint"}],"rooms":[${rooms}]}`);
    expect(faults).toHaveLength(101);
    expect(faults.slice(0, 100).every(({ path }) => path.startsWith('rooms[0].bands[0].walls['))).toBe(true);
  });
});

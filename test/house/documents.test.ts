import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeHouse, documentSchema, LARGEST_DOCUMENT_CHARACTERS, readDocument, writeDocument } from '../../shared-core/house/index.ts';
import { inches, millimetres } from '../../shared-core/units/index.ts';
import { exampleDocument, exampleHouse, faultsOf, houseOf, type Loose } from '../builders.ts';

/** What is wrong, the change that makes a good document wrong, where it is said to be wrong, and words of what is said. */
const WRONG: readonly (readonly [string, (document: Loose) => void, string, RegExp])[] = [
  ['a missing field', (d) => delete d.rooms[0].walls[0].length, 'rooms[0].walls[0].length', /is missing; it takes a length with its unit/],
  ['a missing name', (d) => delete d.name, 'name', /is missing; it takes the name of the house/],
  ['a negative length', (d) => (d.rooms[0].walls[0].length = '-3 ft'), 'rooms[0].walls[0].length', /is -3 ft; it takes a length above 0/],
  ['a length of nothing', (d) => (d.rooms[0].walls[0].length = '0 in'), 'rooms[0].walls[0].length', /above 0/],
  ['a length without a unit', (d) => (d.rooms[0].walls[1].length = '12'), 'rooms[0].walls[1].length', /‘12’ has no unit/],
  ['a number for a length', (d) => (d.rooms[0].walls[1].length = 12), 'rooms[0].walls[1].length', /is 12; it takes a length with its unit, such as/],
  ['words for a length', (d) => (d.coverings[0].width = 'wide'), 'coverings[0].width', /wide/],
  ['a wall too long for a house', (d) => (d.rooms[0].walls[1].length = '376 m'), 'rooms[0].walls[1].length', /the most it takes is 100 m. Check the unit/],
  ["an opening past its wall's end", (d) => (d.rooms[0].walls[0].openings[0].from = '11 ft'), 'rooms[0].walls[0].openings[0].width', /would end at 13' 8", past the end of wall A at 12' 4"; from 11 ft it takes at most 1' 4"/],
  ['an opening above its wall', (d) => (d.rooms[0].walls[0].openings[0].height = '9 ft'), 'rooms[0].walls[0].openings[0].height', /would reach 9', above wall A, which is 8' high/],
  ['an opening over another', (d) => d.rooms[0].walls[0].openings.push({ id: 'w', kind: 'window', from: '4 ft', width: '2 ft', sill: '3 ft', height: '3 ft' }), 'rooms[0].walls[0].openings[1].from', /the window "w" would lie over the door "door"/],
  ['an unknown covering', (d) => (d.rooms[0].bands[0].covering = 'moss'), 'rooms[0].bands[0].covering', /is "moss", which is not a covering of this house; its coverings are fern, ivy, line, lake, chalk/],
  ['an unknown covering on a ceiling', (d) => (d.rooms[0].ceiling.covering = 'moss'), 'rooms[0].ceiling.covering', /moss/],
  ['an unknown key of the house', (d) => (d.colour = 'red'), 'colour', /is not a key of a house; its keys are format, version, name/],
  ['an unknown key of a wall', (d) => (d.rooms[0].walls[2].lenght = '3 m'), 'rooms[0].walls[2].lenght', /is not a key of a wall; its keys are id, length, height/],
  ['an unknown key of an opening', (d) => (d.rooms[0].walls[0].openings[0].swing = 'left'), 'rooms[0].walls[0].openings[0].swing', /is not a key of an opening/],
  ['an unknown key of a sale unit', (d) => (d.coverings[0].soldIn[1].cost = '1'), 'coverings[0].soldIn[1].cost', /is not a key of a sale unit/],
  ['a kind that is none', (d) => (d.coverings[0].kind = 'tapestry'), 'coverings[0].kind', /is "tapestry"; it takes "wallcovering" or "border"/],
  ['a covering without a kind', (d) => delete d.coverings[0].kind, 'coverings[0].kind', /is missing; it takes "wallcovering"/],
  ['a match that is none', (d) => (d.coverings[0].match = 'offset'), 'coverings[0].match', /it takes "free" or "straight" or "drop"/],
  ['a drop without its part', (d) => (d.coverings[0].match = 'drop'), 'coverings[0].dropBy', /is missing; a drop match takes the part of the repeat/],
  ['a part without a drop', (d) => (d.coverings[0].dropBy = '1/2'), 'coverings[0].dropBy', /without a drop match/],
  ['a part that is none', (d) => Object.assign(d.coverings[0], { match: 'drop', dropBy: '3/2' }), 'coverings[0].dropBy', /3\/2/],
  ['a match without a repeat', (d) => (d.coverings[0].repeat = '0 in'), 'coverings[0].repeat', /a straight match takes the height of the repeat/],
  ['seams that would not match', (d) => (d.coverings[0].horizontalRepeat = '7 in'), 'coverings[0].horizontalRepeat', /whole part or a whole multiple of the laid width/],
  ['selvedges wider than the roll', (d) => (d.coverings[0].selvedge = '11 in'), 'coverings[0].width', /leave nothing to hang/],
  ['a covering without a length of roll', (d) => delete d.coverings[0].rollLength, 'coverings[0].rollLength', /is missing/],
  ['a price with too many decimals', (d) => (d.coverings[0].soldIn[0].price = '84.001'), 'coverings[0].soldIn[0].price', /84\.001/],
  ['a price with decimals in yen', (d) => (d.currency = 'JPY'), 'coverings[0].soldIn[0].price', /JPY|decimals/],
  ['half a roll', (d) => (d.coverings[0].soldIn[0].rolls = 0.5), 'coverings[0].soldIn[0].rolls', /is 0.5; it takes a whole number from 1/],
  ['two rooms of one id', (d) => d.rooms.push({ id: 'bed1', name: 'Twin' }), 'rooms[1].id', /is "bed1", which another of the list has already/],
  ['two walls of one id', (d) => (d.rooms[0].walls[1].id = 'A'), 'rooms[0].walls[1].id', /already/],
  ['an id with spaces', (d) => (d.rooms[0].id = 'bed 1'), 'rooms[0].id', /it takes an id of 1 to 40 letters, digits/],
  ['a wall that is not there', (d) => (d.rooms[0].bands[0].walls = ['A', 'Z']), 'rooms[0].bands[0].walls[1]', /is "Z", which is not a wall of Front bedroom; its walls are A, B, C, D/],
  ['a band of no walls', (d) => (d.rooms[0].bands[0].walls = []), 'rooms[0].bands[0].walls', /names no wall/],
  ['a band above its wall', (d) => (d.rooms[0].bands[0].to = '9 ft'), 'rooms[0].bands[0].to', /above wall A, which is 8' high; "ceiling" goes up to it/],
  ['a band upside down', (d) => Object.assign(d.rooms[0].bands[0], { from: '5 ft', to: '4 ft' }), 'rooms[0].bands[0].to', /not above where the band starts/],
  ['a band over a band', (d) => d.rooms[0].bands.push({ id: 'more', covering: 'fern', walls: ['B'], from: '4 ft' }), 'rooms[0].bands[2]', /overlaps the band "main" of K-2041 on wall B; only a border may lie over another band/],
  ['a start on a wall it does not cover', (d) => Object.assign(d.rooms[0].bands[0], { walls: ['B', 'C'] }), 'rooms[0].bands[0].layout.start.wall', /is "A", a wall this band does not cover; it covers B, C/],
  ['a start past its wall', (d) => (d.rooms[0].bands[0].layout.start.at = '13 ft'), 'rooms[0].bands[0].layout.start.at', /wall A takes a place from 0 to 12' 4"/],
  ['both ways to the start', (d) => (d.rooms[0].bands[0].layout.direction = 'both'), 'rooms[0].bands[0].layout.kill', /when hanging goes both ways the ends meet elsewhere/],
  ['a focal wall that is none', (d) => (d.rooms[0].focalWall = 'Z'), 'rooms[0].focalWall', /not a wall/],
  ['a turn that is none', (d) => (d.rooms[0].walls[0].turn = 'left'), 'rooms[0].walls[0].turn', /"inside", "outside", "straight" or an interior angle/],
  ['an angle of no corner', (d) => (d.rooms[0].walls[0].turn = '5'), 'rooms[0].walls[0].turn', /from "10" to "350"/],
  ['three heights', (d) => (d.rooms[0].walls[0].height = ["8'", "8'", "8'"]), 'rooms[0].walls[0].height', /two of them/],
  ['a list that is none', (d) => (d.rooms = { bed1: {} }), 'rooms', /it takes a list of rooms/],
  ['a room that is none', (d) => (d.rooms[0] = null), 'rooms[0]', /is null; it takes a room/],
  ['another format', (d) => (d.format = 'house'), 'format', /it takes "struckline-house"/],
  ['a later version', (d) => (d.version = 2), 'version', /is 2; it takes 1/],
  ['a currency that is none', (d) => (d.currency = 'dollars'), 'currency', /3 capital letters/],
  ['stock of nothing', (d) => (d.stock = [{ covering: 'moss', run: '1', rolls: 3 }]), 'stock[0].covering', /moss/],
  ['rolls of paint', (d) => (d.stock = [{ covering: 'chalk', run: '1', rolls: 3 }]), 'stock[0].covering', /a paint/],
  ['more damaged than came', (d) => (d.deliveries = [{ covering: 'fern', patternNumber: 'K-2041', run: '1', rolls: 3, damaged: 4 }]), 'deliveries[0].damaged', /is 4, more than the 3 rolls delivered/],
  ['a day that is none', (d) => (d.deliveries = [{ covering: 'fern', patternNumber: 'K-2041', run: '1', rolls: 3, received: '2026-02-30' }]), 'deliveries[0].received', /a date such as/],
  ['a wrap below nothing', (d) => (d.rules.insideWrap = '-1 in'), 'rules.insideWrap', /0 or more/],
];

describe('a document that is wrong', () => {
  test.each(WRONG)('by %s is refused with its place and what would be accepted', (_what, change, path, words) => {
    const document = exampleDocument();
    change(document);
    const faults = faultsOf(document);
    expect(faults.map((fault) => fault.path)).toContain(path);
    expect(faults.find((fault) => fault.path === path)!.message).toMatch(words);
  });

  test('in many places is refused with all of them: what can not be read first, then what contradicts', () => {
    const unreadable = exampleDocument();
    unreadable.rooms[0].walls[0].length = 'long';
    unreadable.coverings[1].width = 'narrow';
    delete unreadable.name;
    expect(faultsOf(unreadable).map(({ path }) => path).toSorted()).toEqual(['coverings[1].width', 'name', 'rooms[0].walls[0].length']);
    const contradicting = exampleDocument();
    contradicting.rooms[0].walls[1].length = '-1 m';
    contradicting.coverings[1].width = '0 in';
    contradicting.rooms[0].ceiling.covering = 'moss';
    expect(faultsOf(contradicting).map(({ path }) => path).toSorted()).toEqual(['coverings[1].width', 'rooms[0].ceiling.covering', 'rooms[0].walls[1].length']);
  });

  test.each([[null], [true], [7], ['house'], [[]], [[{}]], [{}]])('because it is %j has a fault', (document) => {
    expect(faultsOf(document).length).toBeGreaterThan(0);
  });

  test('because it is not JSON says what a document begins with', () => {
    for (const text of ['', '{', '\u0089PNG\r\n', '<xml/>']) {
      const outcome = readDocument(text);
      expect(outcome.ok ? [] : outcome.faults).toEqual([{ path: '', message: expect.stringContaining('not JSON text; a house document is JSON that begins with {"format": "struckline-house"') as string }]);
    }
  });

  test('because it is far too large is not even read', () => {
    const outcome = readDocument('x'.repeat(LARGEST_DOCUMENT_CHARACTERS + 1));
    expect(outcome.ok ? '' : outcome.faults[0]!.message).toMatch(/larger than 21 million characters/);
  });

  test('because it is nested without end is refused, not run into', () => {
    const outcome = readDocument(`{"format":"struckline-house","version":1,"name":"x","rooms":${'['.repeat(50_000)}${']'.repeat(50_000)}}`);
    expect(outcome.ok ? '' : outcome.faults[0]!.message).toMatch(/nested more than 20 deep/);
  });

  test('by keys that objects have of themselves is refused by name', () => {
    const text = JSON.stringify(exampleDocument()).replace('"version":1', '"version":1,"__proto__":{"isAdmin":true},"constructor":1');
    const outcome = readDocument(text);
    expect(outcome.ok ? [] : outcome.faults.map(({ path }) => path).toSorted()).toEqual(['__proto__', 'constructor']);
  });
});

describe('a good document', () => {
  test('of the exchange format is read with what was typed beside what it means', () => {
    const { rooms, coverings } = exampleHouse();
    expect(rooms[0]!.walls[0]!.length).toEqual({ length: inches(148), typed: `12' 4"` });
    expect(coverings[2]).toMatchObject({ width: { length: millimetres(560), typed: '56 cm' } });
  });

  test('takes its stated defaults', () => {
    const house = houseOf({ format: 'struckline-house', version: 1, name: 'Bare', coverings: [{ id: 'p', kind: 'wallcovering', width: '53 cm', rollLength: '10.05 m' }], rooms: [{ id: 'r', name: 'R', walls: [{ id: 'A', length: '3 m', height: '2.4 m' }], bands: [{ id: 'b', covering: 'p', walls: ['A'] }] }] });
    expect(house).toMatchObject({ lengths: 'imperial', currency: 'USD', stock: [], offers: [], deliveries: [], pictures: [], rules: { spareRolls: 1, pooling: 'house', trim: { length: inches(2) }, insideWrap: { length: inches(0.125) }, minOutsideWrap: { length: inches(1) }, sliver: { length: inches(2) }, borderAllowance: { length: inches(1) } } });
    expect(house.coverings[0]).toMatchObject({ rollStart: 'anywhere', sequence: 'preferred', panels: 'roll-width', seam: 'butt', singlesPerRoll: 1, reverseAlternate: false, repeat: { length: 0 } });
    expect(house.rooms[0]!.walls[0]).toMatchObject({ turn: 'inside', base: { length: 0 }, openings: [] });
    expect(house.rooms[0]!.bands[0]).toMatchObject({ from: 'floor', to: 'ceiling', position: { length: 0 } });
  });

  test('written out and read in again is the same house, its lengths in its own style', () => {
    const house = exampleHouse();
    const text = writeDocument(house);
    expect(text).toContain('"length": "12\' 4\\""');
    expect(text).toContain('"rollLength": "10050 mm"');
    const again = readDocument(text);
    expect(again.ok && writeDocument(again.value)).toBe(text);
    expect(again.ok && withoutTyped(again.value)).toEqual(withoutTyped(house));
  });

  test('is told by a JSON schema that names every key', () => {
    const schema = documentSchema() as { readonly properties: Record<string, unknown>; readonly required: readonly string[] };
    expect(Object.keys(schema.properties).toSorted()).toEqual(['built', 'contractor', 'country', 'coverings', 'currency', 'customer', 'deliverBy', 'deliverTo', 'deliveries', 'expenses', 'format', 'leftovers', 'lengths', 'matching', 'materials', 'name', 'offers', 'orderNote', 'orders', 'photos', 'pictures', 'returns', 'rooms', 'rules', 'runChoices', 'stock', 'suppliers', 'tasks', 'tax', 'version', 'work']);
    expect(schema.required.toSorted()).toEqual(['format', 'name', 'version']);
  });
});

describe('whatever comes in', () => {
  test('nothing makes the reader throw', () => {
    fc.assert(fc.property(fc.jsonValue({ maxDepth: 6 }), (value) => {
      expect(typeof decodeHouse(value).ok).toBe('boolean');
    }), { numRuns: 300 });
  });

  test('a good document with one thing changed is a house, or has faults that say something', () => {
    const places = pathsOf(exampleDocument());
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.oneof(fc.jsonValue({ maxDepth: 2 }), fc.constantFrom('', '1/2', "8'", '0 in', '-1 m', '1e9 m', 'A', 'fern', 1e300, -1, 0.1)), (path, value) => {
        const document = exampleDocument();
        path.slice(0, -1).reduce((at, key) => at[key], document)[path.at(-1)!] = value;
        const outcome = decodeHouse(document);
        if (!outcome.ok) for (const { message } of outcome.faults) expect(message.length).toBeGreaterThan(8);
      }),
      { numRuns: 2_000 },
    );
  });
});

function pathsOf(value: Loose, at: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [at];
  const keys: (string | number)[] = Array.isArray(value) ? value.map((_, index) => index) : Object.keys(value);
  return [...(at.length > 0 ? [at] : []), ...keys.flatMap((key) => pathsOf(value[key], [...at, key]))];
}

function withoutTyped(value: Loose): Loose {
  return JSON.parse(JSON.stringify(value, (key, inner: unknown) => (key === 'typed' ? undefined : inner)));
}

import { describe, expect, test } from 'vitest';
import { type Loose } from '../builders.ts';
import { cautionOf, oneWall, prepared, taskOf } from './prepared.ts';

/** A wall of 60 square feet, so that 10 % of it is 6. */
const sixtySquareFeet = (surface: Loose, house: Loose = {}, covering = 'paint', wall: Loose = {}) => oneWall(surface, covering, { house: { lengths: 'imperial', ...house }, wall: { length: '10 ft', height: '6 ft', ...wall } });
const kindsOf = (...of: Parameters<typeof oneWall>) => prepared(oneWall(...of)).cautions.map(({ kind }) => kind);

describe('lead paint', () => {
  const scraped = (affected: number, house: Loose = {}, wall: Loose = {}) => cautionOf(prepared(sixtySquareFeet({ kind: 'painted-matt', states: ['flaking'], affected }, { built: 1931, ...house }, 'paint', wall)).cautions, 'lead-paint');

  test('falls under the law above 6 square feet in a room, under the federal rule above 2', () => {
    expect(scraped(10)).toMatchObject({ isReached: false, source: '40 CFR 745.83; 24 CFR 35.1350(d)' });
    expect(scraped(10)?.threshold).toBe('US law has rules for more than 6.0 sq ft of paint disturbed in a room (40 CFR 745.83), in housing with federal help for more than 2.0 sq ft (24 CFR 35.1350). Here it is 6.0 sq ft. The second alone is reached.');
    expect(scraped(11)).toMatchObject({ isReached: true });
    expect(scraped(11)?.threshold).toMatch(/Here it is 6\.6 sq ft\. Both are reached\.$/);
    // One unit longer, and 10 % of it is more than 6 square feet.
    expect(scraped(10, {}, { length: '120.0003 in' })).toMatchObject({ isReached: true });
    expect(scraped(3)?.threshold).toMatch(/Here it is 1\.8 sq ft\. Neither is reached; the caution holds all the same\.$/);
    expect(scraped(4)?.threshold).toMatch(/The second alone is reached\.$/);
  });

  test('holds for houses before 1978 and of an unknown year', () => {
    expect(scraped(10, { built: 1977 })?.words).toMatch(/^In a house of 1977 old paint may hold lead/);
    expect(scraped(10, { built: 1978 })).toBeUndefined();
    expect(scraped(10, { built: undefined })?.words).toMatch(/^It is not known when the house was built/);
  });

  test('names US law as such and leaves other countries to theirs, where the ban may be later', () => {
    expect(scraped(10, { country: 'DE' })?.threshold).toMatch(/^US law .* Outside the US, as here \(DE\), the law of the country holds instead\.$/);
    expect(scraped(10, { country: undefined })?.threshold).toMatch(/Outside the US the law of the country holds instead\.$/);
    expect([1992, 1993].map((built) => scraped(10, { country: 'GB', built })?.kind)).toEqual(['lead-paint', undefined]);
  });

  test('counts each surface once, by the most that is taken of it', () => {
    const gloss = cautionOf(prepared(sixtySquareFeet({ kind: 'painted-gloss', states: ['flaking'], affected: 50 }, { built: 1931 })).cautions, 'lead-paint');
    expect(gloss?.threshold).toMatch(/Here it is 60\.0 sq ft\./);
  });

  test('stands where paper comes off, and not where new plaster, board or tile is made ready', () => {
    expect(['paper-strippable', 'paper-overpainted', 'paper-vinyl', 'old-plaster', 'painted-matt', 'wood', 'new-plaster', 'gypsum-board', 'tile'].filter((kind) => kindsOf({ kind, states: ['holes'] }, 'paper', { house: { built: 1931 } }).includes('lead-paint'))).toEqual([
      'paper-strippable', 'paper-overpainted', 'paper-vinyl', 'old-plaster', 'painted-matt', 'wood',
    ]);
  });
});

describe('asbestos', () => {
  test('is expected in a textured coating unless it or the house is surely later', () => {
    const isExpected = (surface: Loose, house: Loose) => kindsOf({ kind: 'textured', ...surface }, 'paint', { house }).includes('asbestos-coating');
    expect([isExpected({}, { built: 1989 }), isExpected({}, { built: 1990 }), isExpected({}, { built: undefined }), isExpected({ year: 1990 }, { built: 1931 }), isExpected({ year: 1985 }, { built: 1931 })]).toEqual([true, false, true, false, true]);
    expect([isExpected({}, { built: 2000, country: 'GB' }), isExpected({}, { built: 2001, country: 'GB' }), isExpected({}, { built: 1995, country: undefined })]).toEqual([true, false, true]);
  });

  test('stands beside every task on the coating, whatever it is', () => {
    const { tasks } = prepared(oneWall({ kind: 'textured', states: ['mould', 'nicotine', 'flaking'] }, 'paper', { house: { built: undefined } }));
    expect(tasks.length).toBeGreaterThan(6);
    expect(tasks.filter(({ cautions }) => !cautions.includes('room:caution:asbestos-coating'))).toEqual([]);
  });

  test('is expected in old fillers where old plaster or paint is sanded, scraped or raked out', () => {
    const kinds = ['old-plaster', 'gypsum-board', 'painted-matt', 'new-plaster', 'tile', 'wood'];
    const isExpected = (house: Loose, surface: Loose = {}) => kinds.filter((kind) => kindsOf({ kind, states: ['cracked'], ...surface }, 'paint', { house }).includes('asbestos-filler'));
    expect(isExpected({ built: 1960 })).toEqual(['old-plaster', 'gypsum-board', 'painted-matt']);
    // The last coat of paint says nothing of what is under it.
    expect(isExpected({ built: 1960 }, { year: 2015 })).toEqual(['painted-matt']);
    expect(isExpected({ built: 1990 })).toEqual([]);
  });
});

describe('mould', () => {
  const mould = (affected: number, wall: Loose = {}) => cautionOf(prepared(sixtySquareFeet({ kind: 'painted-matt', states: ['mould'], affected }, {}, 'paint', { length: '20 ft', height: '5 ft', ...wall })).cautions, 'mould');

  test('is a professional’s above about 10 square feet', () => {
    expect(mould(10)).toMatchObject({ isReached: false, threshold: 'Up to about 10.0 sq ft a householder takes it on, more is a professional’s. Here it is 10.0 sq ft. That is not reached.' });
    expect(mould(11)).toMatchObject({ isReached: true });
    expect(mould(10, { length: '240.0003 in' })).toMatchObject({ isReached: true });
  });

  test('of a ceiling whose size is not known counts as more', () => {
    const { cautions } = prepared(oneWall(undefined, null, { room: { ceilingSurface: { kind: 'painted-matt', states: ['mould'] } } }));
    expect(cautionOf(cautions, 'mould')).toMatchObject({ isReached: true });
    expect(cautionOf(cautions, 'mould')?.threshold).toMatch(/How much it is here is not known, so it counts as more\. That is reached\.$/);
  });
});

describe('mains', () => {
  test('stand where a wall is wetted or steamed, and where plates come off', () => {
    const { tasks } = prepared(oneWall({ kind: 'paper-overpainted', states: ['holes'] }, 'paper'));
    expect(tasks.filter(({ cautions }) => cautions.includes('room:caution:mains')).map(({ rule }) => rule)).toEqual(['strip-overpainted', 'wash-paste', 'loosen-plates']);
  });

  test('name a foil that conducts', () => {
    const words = (covering: string) => cautionOf(prepared(oneWall({ kind: 'old-plaster' }, covering)).cautions, 'mains')?.words;
    expect(words('foil')).toMatch(/F-1 conducts: cut it back round every plate/);
    expect(words('paper')).toMatch(/Foil and metallic papers never go behind plates\.$/);
  });
});

describe('heights', () => {
  const high = (height: string, lengths = 'imperial') => cautionOf(prepared(oneWall({ kind: 'painted-matt' }, 'paint', { house: { lengths }, wall: { height } })).cautions, 'height');

  test('are above 8 ft', () => {
    expect(high('8 ft')).toBeUndefined();
    expect(high('96.01 in')?.threshold).toBe("Ceilings, and walls higher than 8': there are such here.");
    expect(high('2.5 m', 'metric')?.threshold).toMatch(/higher than 2\.43/);
  });

  test('are every ceiling’s, and the stairs’ whatever the walls are', () => {
    expect(kindsOf(undefined, null, { room: { ceiling: { covering: 'paint' }, ceilingSurface: { kind: 'painted-matt' } } })).toContain('height');
    expect(kindsOf({ kind: 'painted-matt' }, 'paint', { room: { stairs: true }, wall: { height: '2 m' } })).toEqual(['mains', 'stairs']);
    expect(kindsOf(undefined, null, { room: { stairs: true, woodwork: { covering: 'paint', surface: { kind: 'painted-gloss' } } } })).not.toContain('stairs');
  });
});

describe('dust, solvents and vapour', () => {
  test('stand where filler is sanded, where primers hold solvents, where vinyl comes on a damp or an outside wall', () => {
    expect(kindsOf({ kind: 'old-plaster', states: ['holes'] }, 'paint')).toContain('silica-dust');
    expect(cautionOf(prepared(oneWall({ kind: 'old-plaster', states: ['holes'] }, 'paint')).cautions, 'silica-dust')?.threshold).toMatch(/50 µg\/m³.*25/);
    expect(kindsOf({ kind: 'wood' }, 'paint')).toContain('solvents');
    const window = { openings: [{ id: 'w', kind: 'window', from: '1 m', width: '1 m', sill: '1 m', height: '1 m' }] };
    const vapour = (covering: string, surface: Loose, wall: Loose = {}) => kindsOf({ kind: 'old-plaster', ...surface }, covering, { wall }).includes('vapour-tight');
    expect([vapour('vinyl', {}), vapour('vinyl', {}, window), vapour('vinyl', { states: ['damp'] }), vapour('paper', { states: ['damp'] }), vapour('foil', { states: ['mould'] })]).toEqual([false, true, true, false, true]);
  });
});

test('a caution stays whatever is left to others', () => {
  const house = oneWall({ kind: 'textured', states: ['mould'] }, 'paper', { house: { built: 1931 } });
  const plan = prepared(house);
  const left = prepared({ ...house, tasks: plan.tasks.map(({ id }) => ({ task: id, isOthers: true })) });
  expect([left.tasks, left.cautions]).toEqual([plan.tasks, plan.cautions]);
  expect(taskOf(left.tasks, 'treat-mould').cautions).toEqual(['room:caution:asbestos-coating', 'room:caution:mould', 'room:caution:mains', 'room:caution:height']);
});

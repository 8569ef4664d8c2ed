import { afterAll, beforeAll, expect, test } from 'vitest';
import { ENGLISH, languageOf, speak } from '../../shared-core/words/index.ts';

// Some of its words are said when it is loaded, so that each test loads it once German is spoken.
const typedFacts = () => import('../../src-renderer/places/survey/typed-facts.ts');

beforeAll(() => speak(languageOf('de')));
afterAll(() => speak(ENGLISH));

test('walls are shown and typed in German, and typed in English too', async () => {
  const { readWallsTyped, wallsText } = await typedFacts();
  expect(wallsText(undefined)).toBe('alle');
  expect(['alle', 'ALL', 'A und c', 'A and C'].map((typed) => readWallsTyped(typed, ['A', 'B', 'C']))).toEqual([{ walls: null }, { walls: null }, { walls: ['A', 'C'] }, { walls: ['A', 'C'] }]);
  expect(readWallsTyped('Q', ['A', 'B'])).toEqual({ trouble: '„Q“ ist keine Wand dieses Raums. Möglich sind „alle“ oder einzelne von A, B. Es wurde nichts geändert.' });
});

test('what the fields of heights and floor lines give as an example is read by them', async () => {
  const { readFloorLineTyped, readHeightTyped } = await typedFacts();
  expect(readHeightTyped('2,4 m bis 2,9 m', 'metric')).toEqual({ height: ['2,4 m', '2,9 m'] });
  expect(['0 bis 2 cm', '0 cm bis 4 cm'].map((typed) => readFloorLineTyped(typed, 'metric'))).toEqual([{ base: ['0 m', '2 cm'] }, { base: ['0 cm', '4 cm'] }]);
  expect(readFloorLineTyped('0 bis 3/4 in', 'imperial')).toMatchObject({ base: [expect.any(String), expect.any(String)] });
});

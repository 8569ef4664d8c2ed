import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readSettings } from '../../src-main/loopback/settings.ts';

let homeFolder: string;
beforeAll(() => {
  homeFolder = mkdtempSync(join(tmpdir(), 'struckline-home-'));
});
afterAll(() => rmSync(homeFolder, { recursive: true }));

const read = (argv: string[], environment: Record<string, string> = {}) => readSettings(argv, { environment, homeFolder, currentFolder: '/houses' });

test('houses are kept in the documents folder where there is one, else at home, else where the user says', () => {
  expect(read([])).toEqual({ folder: join(homeFolder, 'Struckline'), firstFile: null });
  mkdirSync(join(homeFolder, 'Documents'));
  expect(read([])).toEqual({ folder: join(homeFolder, 'Documents', 'Struckline'), firstFile: null });
  expect(read([], { STRUCKLINE_HOUSES: '/elsewhere' })).toEqual({ folder: '/elsewhere', firstFile: null });
  expect(read(['--folder', 'mine'], { STRUCKLINE_HOUSES: '/elsewhere' })).toEqual({ folder: '/houses/mine', firstFile: null });
});

test('a house that is named is opened first, in the folder where it lies', () => {
  expect(read(['Home.struckline'])).toEqual({ folder: '/houses', firstFile: 'Home.struckline' });
  expect(read(['../other/Home.struckline'])).toEqual({ folder: '/other', firstFile: 'Home.struckline' });
  expect(read(['--folder', '/houses', 'Home.struckline'])).toEqual({ folder: '/houses', firstFile: 'Home.struckline' });
});

test.each([
  [['--nonsense'], /--nonsense/],
  [['--folder'], /--folder/],
  [['--folder='], /--folder takes the folder/],
  [['one.struckline', 'two.struckline'], /^2 files were named/],
  [['house.json'], /^"house.json" is not the name of a house file/],
  [['--folder', '/other', 'Home.struckline'], /^"Home.struckline" does not lie in \/other/],
])('%j is answered with a sentence', (argv, sentence) => {
  expect(read(argv)).toMatch(sentence);
});

import { expect, test } from 'vitest';
import { capital, isSaid, squeeze, wordsTyped } from '../../shared-core/base/index.ts';

test('a text is squeezed of capitals, accents, hyphens and spaces', () => {
  expect(squeeze('K-2041 Café')).toBe('k2041cafe');
  expect(squeeze('Straße Ærø, Łódź')).toBe('strasseaerolodz');
  expect(squeeze('12′ 4½″')).toBe('12412');
  expect(squeeze(' – & = ')).toBe('');
});

test('words are what has a letter or a figure', () => {
  expect(wordsTyped(' K-2041 & hall')).toEqual(['k2041', 'hall']);
  expect(wordsTyped('')).toEqual([]);
});

test('every word has to be said, wherever it stands', () => {
  const said = ['K-2041', 'Front bedroom'];
  expect(['k2041 bed', 'BED K 2041', 'frontbedroom', 'bédroom', '', '-', 'k-20'].map((typed) => isSaid(typed, said))).toEqual([true, true, true, true, true, true, true]);
  expect(['hall', 'bed hall', '2041front'].map((typed) => isSaid(typed, said))).toEqual([false, false, false]);
});

test('a text is begun as a sentence is', () => {
  expect(['wall A', 'élan', ''].map(capital)).toEqual(['Wall A', 'Élan', '']);
});

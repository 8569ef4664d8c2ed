import { expect, test } from 'vitest';
import { fromBase64, toBase64 } from '../../src-renderer/state/base64.ts';
import { kindOfFile, plainFileName } from '../../src-renderer/state/take-file.ts';

test('a file is what its ending says, capitals or not, or a document as it begins', () => {
  expect(['Mill.struckline', 'Mill.STRUCKLINE', 'mill.json', 'mill.JSON', 'mill.pdf', 'json', 'mill.struckline.bak'].map((name) => kindOfFile(name, '%PDF'))).toEqual(['house', 'house', 'document', 'document', null, null, null]);
  expect([' \n{"format"', '[{', ''].map((beginning) => kindOfFile('house (1)', beginning))).toEqual(['document', null, null]);
  expect(kindOfFile('Mill.struckline', '{')).toBe('house');
});

test('a name is made one that every disk takes', () => {
  expect(['.Mill: 3.STRUCKLINE', 'a/b\\c.struckline', '.struckline', `${'x'.repeat(300)}.struckline`].map(plainFileName)).toEqual(['Mill 3.struckline', 'a b c.struckline', 'House.struckline', `${'x'.repeat(150)}.struckline`]);
});

test('bytes are written in base64, however many there are', () => {
  const bytes = Uint8Array.from({ length: 200_001 }, (_, index) => (index * 31) % 256);
  expect(toBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
  expect(toBase64(new Uint8Array())).toBe('');
  expect(fromBase64(toBase64(bytes))).toEqual(bytes);
  expect([toBase64(Uint8Array.of(77, 97)), fromBase64('TWE=')]).toEqual(['TWE=', Uint8Array.of(77, 97)]);
});

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { sayKeys, SHORTCUTS } from '../../src-renderer/parts/shortcuts.ts';

const RENDERER = new URL('../../src-renderer', import.meta.url).pathname;
const TABLE = 'parts/shortcuts.ts';

test('no file but the table asks which key was pressed, so that none does anything that the sheet does not list', () => {
  const files = readdirSync(RENDERER, { recursive: true, encoding: 'utf8' }).filter((file) => /\.(ts|svelte)$/.test(file));
  const asking = files.filter((file) => /\bevent\.(key|code|keyCode|which)\b|\bkey ===? '(Enter|Escape|Arrow)/.test(readFileSync(join(RENDERER, file), 'utf8')));
  expect(asking).toEqual([TABLE]);
});

test.each(Object.values(SHORTCUTS))('$title: a combination does one thing', ({ shortcuts }) => {
  const all = Object.values(shortcuts).flatMap(({ keys }) => keys);
  expect(new Set(all).size).toBe(all.length);
});

test('combinations are written as they stand on a keyboard', () => {
  expect(sayKeys('Ctrl+Shift+Digit')).toEqual(['Ctrl', 'Shift', '1 to 9']);
  expect(sayKeys('Alt+PageUp')).toEqual(['Alt', 'Page up']);
  expect([sayKeys('+'), sayKeys(' '), sayKeys('Ctrl+]')]).toEqual([['+'], ['Space'], ['Ctrl', ']']]);
});

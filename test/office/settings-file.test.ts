import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Settings, USUAL_SETTINGS } from '../../shared-core/contract/index.ts';
import { ownFolder } from '../../src-main/office/own-folder.ts';
import { ENGLISH, languageOf, speak, spokenLanguage } from '../../shared-core/words/index.ts';
import { SettingsFile } from '../../src-main/office/settings-file.ts';
import { speakChosen } from '../../src-main/office/speak-chosen.ts';

const CHOSEN: Settings = { language: 'de', scheme: 'light', contrast: 'more', textSize: 200, paper: 'letter', motion: 'none' };

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-settings-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const path = () => join(folder, 'settings.json');

test('nothing is made before something is chosen, and what is chosen is read again', () => {
  const own = join(folder, 'not', 'there');
  const file = new SettingsFile(own);
  expect(file.read()).toEqual({ settings: USUAL_SETTINGS, trouble: null });
  expect(existsSync(own)).toBe(false);
  expect(file.save(CHOSEN)).toEqual({ settings: CHOSEN, trouble: null });
  expect(new SettingsFile(own).read()).toEqual({ settings: CHOSEN, trouble: null });
  expect(readdirSync(own)).toEqual(['settings.json']);
});

test.each([
  ['{"version":1,"language":"de"}', 'de'],
  ['{"version":1,"language":"xx"}', 'en'],
  ['{"version":1,"language":7}', 'en'],
  ['noise', 'en'],
])('a process speaks the language in %s, else one there is', (text, code) => {
  writeFileSync(path(), text);
  const was = Intl.DateTimeFormat().resolvedOptions().locale;
  speakChosen({ platform: 'linux', environment: { STRUCKLINE_OWN: folder }, homeFolder: '/home/ada' });
  const spoken = spokenLanguage().code;
  speak(ENGLISH);
  expect(spoken).toBe(text === 'noise' ? languageOf(was).code : code);
});

test('a key that the file lacks takes its usual value', () => {
  writeFileSync(path(), '{"version":1,"scheme":"dark"}');
  expect(new SettingsFile(folder).read()).toEqual({ settings: { ...USUAL_SETTINGS, scheme: 'dark' }, trouble: null });
});

test.each([
  ['', "can't be read"],
  ['noise', "can't be read"],
  ['null', 'are not settings of Struckline'],
  ['[1]', 'are not settings of Struckline'],
  ['{"version":2,"scheme":"dark"}', 'are of version 2; this Struckline reads version 1'],
  ['{"version":1,"scheme":"pink"}', 'scheme'],
  ['{"version":1,"textSize":101}', 'textSize'],
  ['{"version":1,"wallpaper":"yes"}', 'wallpaper'],
  [`{"version":1,"scheme":${'['.repeat(2_000)}${']'.repeat(2_000)}}`, 'nested'],
])('of %j the usual settings are made, and it is said and kept', (text, reason) => {
  writeFileSync(path(), text);
  const file = new SettingsFile(folder);
  const read = file.read();
  expect(read.settings).toEqual(USUAL_SETTINGS);
  expect(read.trouble).toContain(path());
  expect(read.trouble).toContain(reason);
  expect(readFileSync(path(), 'utf8')).toBe(text);
  expect(file.save(CHOSEN).trouble).toBeNull();
  expect(file.read()).toEqual({ settings: CHOSEN, trouble: null });
  expect(readFileSync(join(folder, 'settings-not-read.json'), 'utf8')).toBe(text);
});

test.each([
  ['linux', { XDG_DATA_HOME: '/data' }, '/data/struckline'],
  ['linux', {}, '/home/ada/.local/share/struckline'],
  ['darwin', {}, '/home/ada/Library/Application Support/Struckline'],
  ['linux', { STRUCKLINE_OWN: '/elsewhere', XDG_DATA_HOME: '/data' }, '/elsewhere'],
] as const)('on %s with %j the app keeps its own in %s', (platform, environment, expected) => {
  expect(ownFolder({ platform, environment, homeFolder: '/home/ada' })).toBe(expected);
});

import { execFile } from 'node:child_process';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Page } from '@playwright/test';
import { accessibleNameOfFocus } from './keyboard.ts';
import { expect, LONG, test } from './struckline.ts';

const run = promisify(execFile);
const ROOT = new URL('../..', import.meta.url).pathname;
const SHEET = 'test/e2e/eight-rooms.txt';
/** What may be typed beyond the sheet's characters and one key for each of its fields. */
const MOST_MORE_PERCENT = 5;

type Line = readonly [kind: string, ...fields: string[]];

test('a house of eight rooms is typed off its survey sheet with hardly a key more than it has characters and fields', LONG, async ({ page, running }) => {
  const lines = await readSheet();
  const fields = lines.flatMap(([, ...own]) => own);
  const allowed = fields.reduce((sum, field) => sum + field.length, 0) + fields.length;

  await page.goto(running.address);
  await page.getByLabel('Name', { exact: true }).fill('Chalk Row 8');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'No room yet' })).toBeVisible();
  const keys = new Keys(page);
  await typeSheet(keys, lines);
  const extra = (100 * (keys.pressed - allowed)) / allowed;
  console.log(`${keys.pressed} keys for ${fields.reduce((sum, field) => sum + field.length, 0)} characters in ${fields.length} fields: ${extra.toFixed(1)} % of one key a character and field`);
  expect(extra).toBeLessThanOrEqual(MOST_MORE_PERCENT);

  await expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();
  const [file] = (await readdir(running.folder)).filter((name) => name.endsWith('.struckline'));
  const written = join(running.folder, 'written.json');
  await writeFile(written, JSON.stringify(documentOf(lines)));
  expect(await roomsOf(join(running.folder, file!))).toEqual(await roomsOf(written));
  await page.keyboard.press('Control+Shift+Digit1');
  await expect(page.getByRole('heading', { level: 3 })).toHaveText(lines.flatMap(([kind, name]) => (kind === 'room' ? [name!] : [])));
  await expect(page.getByText('Surveyed: yes')).toHaveCount(8);
});

/** Presses keys and counts them, a chord as one. */
class Keys {
  readonly #page: Page;
  pressed = 0;

  constructor(page: Page) {
    this.#page = page;
  }

  async type(text: string): Promise<void> {
    for (const letter of text) await this.press(letter);
  }

  async press(key: string): Promise<void> {
    this.pressed += 1;
    await this.#page.keyboard.press(key);
  }

  /** Goes on to a field, each step a key like any other. */
  async reach(name: string, key: string): Promise<void> {
    for (let steps = 0; steps < 40; steps += 1) {
      if ((await accessibleNameOfFocus(this.#page)) === name) return;
      await this.press(key);
    }
    throw new Error(`${key} never reaches ${name}`);
  }
}

async function readSheet(): Promise<readonly Line[]> {
  const text = await readFile(join(ROOT, SHEET), 'utf8');
  return text
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split('|').map((field) => field.trim()) as unknown as Line);
}

async function typeSheet(keys: Keys, lines: readonly Line[]): Promise<void> {
  let before = '';
  for (const [kind, ...fields] of lines) {
    if (kind === 'room') {
      await keys.press('Control+Enter');
      await typeFields(keys, fields);
    } else if (kind === 'wall') await typeFields(keys, fields.map((field) => field.slice(0, 1) === 'o' ? 'o' : field));
    else {
      // An empty length ends the walls, and leads to their openings.
      if (before === 'wall') await keys.press('Enter');
      if (kind === 'opening') await typeOpening(keys, fields);
      else if (kind === 'rail') {
        await keys.reach('Name of the next rail', 'Enter');
        await typeFields(keys, fields);
      } else {
        await keys.reach('Name of the next piece', 'Enter');
        await typeFields(keys, fields);
      }
    }
    before = kind;
  }
}

/** A field that is empty on the sheet is passed over by its one key. */
async function typeFields(keys: Keys, fields: readonly string[]): Promise<void> {
  for (const field of fields) {
    await keys.type(field);
    await keys.press('Enter');
  }
}

/** What an opening is chosen from a list by its first letter. */
async function typeOpening(keys: Keys, [wall, what, ...rest]: readonly string[]): Promise<void> {
  await typeFields(keys, [wall!, what!.slice(0, 1), ...rest]);
}

/** The same house as a document, read off the sheet without the app. */
function documentOf(lines: readonly Line[]): object {
  const rooms: { id: string; name: string; storey: string; height: string; walls: { id: string; length: string; height: string; turn: string; openings: object[] }[]; rails: object[]; furniture: object[] }[] = [];
  for (const [kind, ...fields] of lines) {
    const room = rooms.at(-1)!;
    if (kind === 'room') {
      const [name, storey, height] = fields as [string, string, string];
      rooms.push({ id: `room${rooms.length + 1}`, name, storey: storey || room.storey, height, walls: [], rails: [], furniture: [] });
    } else if (kind === 'wall') {
      const [length, turn] = fields as [string, string];
      room.walls.push({ id: String.fromCharCode(65 + room.walls.length), length, height: room.height, turn: turn || 'inside', openings: [] });
    } else if (kind === 'opening') {
      const [wall, what, from, width, height, sill] = fields as [string, string, string, string, string, string];
      const openings = room.walls.find(({ id }) => id === wall)!.openings as { id: string }[];
      const isEntrance = what === 'door' && !room.walls.some((one) => one.openings.some((opening) => 'entrance' in opening));
      const number = openings.filter(({ id }) => id.startsWith(what)).length;
      openings.push({ id: number === 0 ? what : `${what}${number + 1}`, kind: what, from, width, height, sill: sill || '0 in', ...(isEntrance ? { entrance: true } : {}) } as { id: string });
    } else if (kind === 'rail') {
      const [name, at, width] = fields as [string, string, string];
      room.rails.push({ id: name.replaceAll(' ', '-'), name, at, width });
    } else {
      const [name, wall, from, width, height] = fields as [string, string, string, string, string];
      room.furniture.push({ id: name, name, wall, from, width, height });
    }
  }
  return { format: 'struckline-house', version: 1, name: 'Chalk Row 8', rooms: rooms.map(({ height: _height, ...room }) => room) };
}

/** The rooms of a house file or a document, written out alike. */
async function roomsOf(file: string): Promise<readonly unknown[]> {
  const { stdout } = await run(process.execPath, ['src-main/command-line/main.ts', 'export', file], { cwd: ROOT });
  return (JSON.parse(stdout) as { rooms: readonly unknown[] }).rooms;
}

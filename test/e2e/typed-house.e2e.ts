import { execFile } from 'node:child_process';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { goTo } from './demo.ts';
import { tabTo, typeLines } from './keyboard.ts';
import { expect, LONG, startStruckline, test } from './struckline.ts';

const run = promisify(execFile);
const ROOT = new URL('../..', import.meta.url).pathname;

test('a house of two rooms is typed in with the keyboard alone, and its order read', LONG, async ({ page, running }) => {
  await page.goto(running.address);
  await expect(page.getByRole('heading', { name: 'Struckline' })).toBeVisible();
  await tabTo(page, 'Name');
  await page.keyboard.type('Orchard End 5');
  await page.keyboard.press('Enter');

  await expect(page.getByRole('heading', { name: 'No room yet' })).toBeVisible();
  await tabTo(page, 'Add the first room');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Room', { exact: true })).toBeFocused();
  await typeLines(page, ['Front bedroom', 'Upper floor', '8', '']);
  await expect(page.getByLabel('Height of its walls')).toHaveValue('8');

  // A bare 8 is eight inches in a house of feet and inches: the sheet says so and the tape's own words mend it.
  await tabTo(page, 'Height of its walls', 'Shift+Tab');
  await page.keyboard.press('Control+A');
  await page.keyboard.type("8'");
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Length of the next wall')).toBeFocused();
  await typeLines(page, [`12' 4"`, '', '10 2', '', `12' 4"`, '', `10'2"`, '']);
  await expect(page.getByRole('row', { name: /^Wall D / })).toBeVisible();
  await expect(page.getByText('closes', { exact: true })).toBeVisible();

  await tabTo(page, 'Wall A', 'Shift+Tab');
  await page.keyboard.press('Enter');
  await tabTo(page, 'What the next opening is');
  await page.keyboard.press('Enter');
  await typeLines(page, ['2 ft', `2' 8"`, `6' 8"`, '']);
  await expect(page.getByLabel('door is the entrance')).toBeChecked();

  await tabTo(page, 'Add a room', 'Shift+Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Room', { exact: true })).toHaveValue('Room 2');
  await typeLines(page, ['Box room', '', '2.4 m', '2.75 m', '', '310 cm', '', '2,75 m', '', '3.1 m', '']);
  await expect(page.getByText('closes', { exact: true })).toBeVisible();

  await tabTo(page, /^Coverings/, 'Shift+Tab');
  await page.keyboard.press('Enter');
  await tabTo(page, 'Add the first wallcovering');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Pattern number')).toBeFocused();
  await typeLines(page, ['K-2041', 'Fern walk', '20.5', '33 ft', '21']);
  await tabTo(page, 'Add this wallcovering');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Where it hangs' })).toBeVisible();
  for (const [index, [rolls, price]] of [['2', '84.00'], ['1', '45']].entries()) {
    await tabTo(page, 'Add a sale unit');
    await page.keyboard.press('Enter');
    await tabTo(page, `rolls in sale unit ${index + 1}`, 'Shift+Tab');
    await typeLines(page, [rolls!, price!]);
  }
  await tabTo(page, 'Front bedroom');
  await page.keyboard.press('Enter');
  await tabTo(page, 'Box room');
  await page.keyboard.press('Enter');

  await tabTo(page, /^Order/, 'Shift+Tab');
  await page.keyboard.press('Enter');
  const order = page.getByRole('table', { name: /bulk order/ });
  await expect(order.getByRole('row', { name: /Front bedroom, Box room/ })).toBeVisible();

  await expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();
  const [file] = (await readdir(running.folder)).filter((name) => name.endsWith('.struckline'));
  expect(file).toBe('Orchard End 5.struckline');
  const typed = await planOf(join(running.folder, file!));
  const written = await planOf('test/e2e/typed-house.json');
  expect(typed).toEqual(written);

  const [line] = written.order;
  const row = order.getByRole('row', { name: /Front bedroom, Box room/ });
  await expect(row.getByRole('cell').nth(3)).toContainText(String(line.rollsNeeded));
  await expect(row.getByRole('cell').nth(6)).toContainText(String(line.toBuy));
  await expect(row.getByRole('cell').nth(8)).toContainText(line.price);
  expect(line.rooms).toEqual(['room1', 'room2']);
});

test('what was typed is there after the program was stopped and started, and undo still works', async ({ page, running }) => {
  await page.goto(running.address);
  await page.getByLabel('Name').fill('Lime Yard 2');
  await page.getByRole('button', { name: 'Start this house' }).click();
  await page.getByRole('button', { name: 'Add the first room' }).click();
  await typeLines(page, ['Kitchen', '', '2.4 m', '4 m', '', '3 m', '']);
  await expect(page.getByLabel('Length of wall B')).toHaveValue('3 m');
  await expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();
  await running.stop();

  const again = await startStruckline(running.folder);
  try {
    await page.goto(again.address);
    await page.getByRole('button', { name: /^Lime Yard 2/ }).click();
    await goTo(page, 'Survey');
    await expect(page.getByLabel('Length of wall B')).toHaveValue('3 m');
    await page.getByRole('button', { name: 'Undo: add wall B in Kitchen' }).click();
    await expect(page.getByLabel('Length of wall A')).toHaveValue('4 m');
    await expect(page.getByLabel('Length of wall B')).toHaveCount(0);
    await page.keyboard.press('Control+Shift+Z');
    await expect(page.getByLabel('Length of wall B')).toHaveValue('3 m');
  } finally {
    await again.stop();
  }
});

interface PlanDocument {
  readonly order: readonly [{ readonly rollsNeeded: number; readonly toBuy: number; readonly price: string; readonly rooms: readonly string[] }];
}

async function planOf(file: string): Promise<PlanDocument> {
  const { stdout } = await run(process.execPath, ['src-main/command-line/main.ts', 'plan', file, '--json'], { cwd: ROOT });
  return JSON.parse(stdout) as PlanDocument;
}

import { execFile } from 'node:child_process';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Page } from '@playwright/test';
import { openDemo } from './demo.ts';
import { tabTo, typeLines } from './keyboard.ts';
import { expect, LONG, startStruckline, test } from './struckline.ts';

const run = promisify(execFile);
const ROOT = new URL('../..', import.meta.url).pathname;

const bulk = (page: Page) => page.getByRole('table', { name: /^The bulk order/ });
const saved = (page: Page) => expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();

async function press(page: Page, name: string | RegExp, direction: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await tabTo(page, name, direction);
  await page.keyboard.press('Enter');
}

/** What the file says of its order by itself, without a window. */
async function lifeOf(folder: string): Promise<unknown> {
  const [file] = (await readdir(folder)).filter((name) => name.endsWith('.struckline'));
  const { stdout } = await run(process.execPath, ['src-main/command-line/main.ts', 'plan', join(folder, file!), '--json'], { cwd: ROOT }).catch((error: { readonly stdout: string }) => error);
  const { order, difference, returns, waysOut, readiness } = JSON.parse(stdout) as Record<string, unknown>;
  return { order, difference, returns, waysOut, readiness };
}

test('an order is placed, received with faults, its rooms set to other runs, the house changed, and all is found again, from the keyboard alone', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await press(page, 'Place it: the order with Northgate Papers');
  await expect(page.getByRole('table', { name: /^Order 1/ })).toContainText('K-3310');

  // 17 of run 2214 come, 2 of them damaged and 1 missing; then 9 of a run that nobody ordered.
  await press(page, /^Deliveries/, 'Shift+Tab');
  await tabTo(page, 'Code');
  const before = await bulkRuns(running.folder);
  expect(before).toContain('2214');
  await typeLines(page, ['', 'K-2041', '2214', '17', '2', '1', '']);
  await expect(page.getByText(/2 damaged, 1 missing: 3 still to come/)).toBeVisible();
  await typeLines(page, ['', 'K-2041', '2215', '9', '', '', '']);
  await expect(page.getByText('Run 2215 was not ordered: keep it or send it back.')).toBeVisible();
  await saved(page);
  // It is not accepted in silence: nothing hangs from it.
  await expect.poll(() => bulkRuns(running.folder)).not.toContain('2215');
  await press(page, 'Keep this run');
  await expect(page.getByText(/^Run 2215 of K-2041 is kept/)).toBeVisible();

  // The nursery is set to the run that came second.
  await press(page, /^Order/, 'Shift+Tab');
  await press(page, 'Runs and rooms');
  await tabTo(page, 'Run of Nursery');
  await page.keyboard.type('run 2215');
  await expect(page.getByLabel('Run of Nursery')).toHaveValue('2215');
  await expect(bulk(page).getByRole('row', { name: /^Run 2215 Nursery/ })).toContainText('Nursery');

  // A wall of the back bedroom turns out longer: more is wanted, to match its run.
  await press(page, /^Survey/, 'Shift+Tab');
  await press(page, 'Back bedroom');
  await tabTo(page, /^Length of wall A/);
  await page.keyboard.press('Control+a');
  await typeLines(page, ["19' 8\""]);
  await tabTo(page, /^Length of wall C/);
  await saved(page);
  await press(page, /^Order/, 'Shift+Tab');
  const changed = page.getByRole('region', { name: 'Placed orders' }).getByRole('listitem').filter({ hasText: /K-2041 more, to match run \d+, for .*Back bedroom/ });
  await expect(changed).toBeVisible();
  await expect(page.getByRole('table', { name: /^Order 1/ }).getByRole('row', { name: /K-2041.*2214/ })).toContainText('17');
  await saved(page);

  const life = await lifeOf(running.folder);
  expect(life).toMatchObject({ difference: [{ covering: 'fern' }], readiness: expect.arrayContaining([{ room: 'nursery', state: 'waits', waits: [expect.objectContaining({ covering: 'ivy' })] }]) });
  const words = await changed.innerText();
  await running.stop();

  const again = await startStruckline(running.folder);
  try {
    await expect.poll(() => lifeOf(running.folder)).toEqual(life);
    await page.goto(again.address);
    await page.getByRole('button', { name: /^Larkfield/ }).click();
    await press(page, /^Order/);
    await expect(bulk(page).getByRole('row', { name: /^Run 2215 Nursery/ })).toContainText('Nursery');
    await expect(page.getByRole('region', { name: 'Placed orders' }).getByRole('listitem').filter({ hasText: 'K-2041 more' })).toHaveText(words);
    await press(page, /^Deliveries/, 'Shift+Tab');
    await expect(page.getByRole('table', { name: /The packages as they came/ }).getByRole('row')).toHaveCount(3);
    await expect(page.getByText('Nothing waits for a decision.')).toBeVisible();
  } finally {
    await again.stop();
  }
});

async function bulkRuns(folder: string): Promise<readonly unknown[]> {
  const { order } = (await lifeOf(folder)) as { readonly order: readonly { readonly run: unknown }[] };
  return order.map((line) => line.run);
}

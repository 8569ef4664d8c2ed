import { readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import Database from 'better-sqlite3';
import type { Page } from '@playwright/test';
import { newHouse } from '../../shared-core/house/index.ts';
import { HouseStore } from '../../src-main/store/index.ts';
import { expect, test } from './struckline.ts';

const FILE = 'Elm Row.struckline';
const PAGE_BYTES = 4_096;
const HOUR_MILLISECONDS = 3_600_000;

/** A house that was worked on two hours ago and again now, so that it has a back-up. */
async function makeHouse(folder: string): Promise<string> {
  const path = join(folder, FILE);
  const twoHoursAgo = new Date(Date.now() - 2 * HOUR_MILLISECONDS);
  const made = await HouseStore.create(path, newHouse('Elm Row', 'metric', 'EUR'));
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  await made.value.edit({ kind: 'add-room', room: { id: 'hall', name: 'Hall', walls: ['A', 'B', 'C'].map((id) => ({ id, length: '3 m', height: '2.4 m', note: 'Uneven plaster. '.repeat(120) })) } }, 0);
  await made.value.close();
  utimesSync(path, twoHoursAgo, twoHoursAgo);
  const again = await HouseStore.open(path);
  if (!again.ok) throw new Error(JSON.stringify(again.faults));
  await again.value.edit({ kind: 'remove-room', room: 'hall' }, 1);
  await again.value.close();
  return path;
}

const sheetOf = (page: Page) => page.getByRole('dialog', { name: 'Back-ups of Elm Row' });
const nameField = (page: Page) => page.getByRole('textbox', { name: 'Name of the house' });

test('a back-up is restored from the open house, by the keyboard, and that can be taken back', async ({ page, running }) => {
  await makeHouse(running.folder);
  await page.goto(running.address);
  await page.getByRole('button', { name: /^Elm Row 0 rooms/ }).click();
  await page.getByRole('button', { name: 'Back-ups', exact: true }).press('Enter');
  const sheet = sheetOf(page);
  await expect(sheet.getByRole('listitem')).toHaveCount(1);
  await expect(sheet).toContainText('Elm Row · 1 room · last change: add room Hall');
  await expect(sheet).toContainText(join(running.folder, 'Struckline back-ups', 'Elm Row'));
  expect((await new AxeBuilder({ page }).include('dialog').analyze()).violations).toEqual([]);
  await page.screenshot({ path: test.info().outputPath('back-ups.png') });
  await sheet.getByRole('button', { name: /^Restore the back-up of/ }).press('Enter');
  await expect(page.getByRole('status').filter({ hasText: /^The back-up of .* is in place\. What stood there before is kept among the back-ups\.$/ })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo: add room Hall' })).toBeVisible();

  await page.getByRole('button', { name: 'Back-ups', exact: true }).click();
  await expect(sheet.getByRole('listitem')).toHaveCount(2);
  await sheet.getByRole('listitem').filter({ hasText: 'replaced by a back-up' }).getByRole('button').click();
  await expect(page.getByRole('button', { name: 'Undo: remove room Hall' })).toBeVisible();
  await nameField(page).fill('Elm Row again');
  await nameField(page).press('Enter');
  await expect(page.getByRole('button', { name: /^Undo: change name of the house/ })).toBeVisible();
});

test('a house that can be read no longer is restored from the list of houses', async ({ page, running }) => {
  const path = await makeHouse(running.folder);
  writeFileSync(path, readFileSync(path).subarray(0, 9_000));
  await page.goto(running.address);
  await expect(page.getByText(`${FILE} is damaged, or its disk does not read as it should: parts of it are not as Struckline wrote them. Nothing was changed. A back-up may still have the house.`)).toBeVisible();
  await page.getByRole('button', { name: `Back-ups of ${FILE}` }).click();
  await page.screenshot({ path: test.info().outputPath('damaged.png') });
  await page.getByRole('button', { name: /^Restore the back-up of/ }).click();
  await expect(nameField(page)).toHaveValue('Elm Row');
  await expect(page.getByRole('button', { name: 'Undo: add room Hall' })).toBeVisible();
});

test('a house that is damaged where only what can be undone stands is looked at, not changed', async ({ page, running }) => {
  const path = await makeHouse(running.folder);
  const database = new Database(path);
  const number = database.prepare("select pageno from dbstat where name = 'edit' and pagetype = 'overflow'").pluck().get() as number;
  database.close();
  const bytes = readFileSync(path);
  bytes.fill(0xff, (number - 1) * PAGE_BYTES, number * PAGE_BYTES);
  writeFileSync(path, bytes);
  await page.goto(running.address);
  await page.getByRole('button', { name: /^Elm Row 0 rooms/ }).click();
  const notice = page.getByRole('status').filter({ hasText: `${FILE} is damaged in places. What can still be read of the house is shown; it can't be changed.` });
  await expect(notice).toBeVisible();
  await nameField(page).fill('Elm Row again');
  await nameField(page).press('Enter');
  await expect(page.getByRole('main').getByRole('alert')).toHaveText('Nothing was changed: this house can only be looked at.');
  await expect(nameField(page)).toHaveValue('Elm Row again');
  await page.screenshot({ path: test.info().outputPath('look-only.png') });
  await notice.getByRole('button', { name: 'Save a copy' }).click();
  await expect(page.getByRole('status').filter({ hasText: /^This is the copy\./ })).toBeVisible();
  await nameField(page).fill('Elm Row again');
  await nameField(page).press('Enter');
  await expect(page.getByRole('button', { name: /^Undo: change name of the house/ })).toBeVisible();
  expect(readFileSync(path).equals(bytes)).toBe(true);
});

test('a copy of a house is opened under a name of its own', async ({ page, running }) => {
  await makeHouse(running.folder);
  await page.goto(running.address);
  await page.getByRole('button', { name: /^Elm Row 0 rooms/ }).click();
  await page.getByRole('button', { name: 'Back-ups', exact: true }).click();
  await page.getByRole('button', { name: 'Save a copy of the house as it is' }).click();
  await expect(page.getByRole('status').filter({ hasText: `This is the copy. It lies in ${running.folder}; the house it was made from stays as it was.` })).toBeVisible();
  await page.getByRole('button', { name: 'All houses' }).click();
  await expect(page.getByRole('button', { name: /^Elm Row 0 rooms/ })).toHaveCount(2);
  await page.screenshot({ path: test.info().outputPath('list.png') });
});

import { copyFile, readdir, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { BrowserContext, Page } from '@playwright/test';
import { goTo, openDemo } from './demo.ts';
import { accessibleNameOfFocus } from './keyboard.ts';
import { expect, LONG, startBeside, startStruckline, temporaryFolder, test } from './struckline.ts';

const DEMO = 'Larkfield, Mill Lane 3.struckline';
const field = (page: Page) => page.getByRole('combobox', { name: 'Find in this house' });
const options = (page: Page) => page.getByRole('listbox', { name: 'Find in this house' }).getByRole('option');
const wallLength = (page: Page, wall: string) => page.getByRole('textbox', { name: `Length of wall ${wall}`, exact: true });

async function find(page: Page, typed: string): Promise<void> {
  await page.keyboard.press('Control+k');
  await expect(field(page)).toBeFocused();
  await page.keyboard.type(typed);
}

test('anything is found from one field by the keyboard alone, and gone to', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await find(page, 'k2041');
  await expect(options(page).first()).toHaveText(/^K-2041\s+wallcovering, Fern walk, from Northgate Papers\s+Coverings$/);
  await expect(options(page).first()).toHaveAttribute('aria-selected', 'true');
  await expect(field(page)).toHaveAttribute('aria-activedescendant', /.+/);
  await expectNoViolations(page);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: 'Facts of K-2041' })).toBeVisible();
  await expect.poll(() => accessibleNameOfFocus(page)).toMatch(/^K-2041 Fern walk/);

  await page.keyboard.press('/');
  await page.keyboard.type('fireplace sitting');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: 'Survey sheet of Sitting room' })).toBeVisible();
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Wall D, 1 openings');
  await expect(page.getByRole('button', { name: 'Wall D, 1 openings' })).toHaveAttribute('aria-pressed', 'true');

  await find(page, 'batch 2214 offer');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: 'On offer' }).getByLabel('Run of entry 1', { exact: true })).toBeFocused();

  await find(page, 'bed drops');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await expect(options(page).nth(2)).toHaveAttribute('aria-selected', 'true');
  await expect(options(page).nth(2)).toHaveText(/^K-2041 in Back bedroom/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('application')).toHaveAttribute('aria-label', /Back bedroom/);
  await expect.poll(() => accessibleNameOfFocus(page)).toMatch(/^K-2041 \d+ strips/);
});

test('what is filtered away or looked at otherwise is shown all the same', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await page.getByLabel('Find', { exact: true }).fill('K-2099');
  await find(page, 'run 2207 on the order');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('table', { name: /bulk order/ }).getByRole('row', { name: /^Run 2207/ })).toBeVisible();
  await find(page, 'weir supplier');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('row', { name: 'Weir & Loom', exact: true })).toBeFocused();
});

test('where nothing is found it says what can be, and Escape gives the field back', async ({ page, running }) => {
  await openDemo(page, running.address);
  await find(page, 'zeppelin');
  await expect(page.getByText(/^Nothing here is called ‘zeppelin’\. A room or storey can be found, .* a pattern by number/)).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(field(page)).toHaveValue('zeppelin');
  await page.keyboard.press('Escape');
  await expect(page.getByText(/^Nothing here is called/)).toBeHidden();
  await page.keyboard.press('Escape');
  await expect(field(page)).toHaveValue('');
  await goTo(page, 'Survey');
  await wallLength(page, 'A').fill('12');
  await page.keyboard.type('/2');
  await expect(wallLength(page, 'A')).toHaveValue('12/2');
});

test('two windows of one house stay in step, and what is half typed in one stays there', LONG, async ({ page, running, context }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  const other = await inAnotherWindow(page, context);
  await expect(other).toHaveTitle('Larkfield, Mill Lane 3 – Struckline');
  await wallLength(page, 'D').fill("10' 3");
  await change(other, 'C', "12' 5");
  await expect(wallLength(page, 'C')).toHaveValue(`12' 5"`);
  await expect(wallLength(page, 'D')).toHaveValue("10' 3");
  await expect(page.getByRole('button', { name: 'Undo: change length of wall C in Front bedroom' })).toBeEnabled();
  await wallLength(page, 'D').press('Tab');
  await expect(wallLength(other, 'D')).toHaveValue(`10' 3"`);
  await expect(wallLength(page, 'C')).toHaveValue(`12' 5"`);

  await other.getByRole('button', { name: 'Undo: change length of wall D in Front bedroom' }).click();
  await expect(wallLength(page, 'D')).toHaveValue(`10' 2"`);
  await other.getByLabel('Name of the house').fill('Larkfield');
  await other.keyboard.press('Enter');
  await other.keyboard.press('Tab');
  await expect(page).toHaveTitle('Larkfield – Struckline');
});

test('an edit made on facts that somebody else has changed is not made, nor are those behind it', LONG, async ({ page, running, browser, context }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  // Another browser hears nothing of this one's windows.
  const elsewhere = await browser.newContext();
  await elsewhere.addCookies(await context.cookies());
  const other = await elsewhere.newPage();
  await other.goto(page.url());
  await wallLength(page, 'A').waitFor();
  await change(other, 'C', "12' 5");

  let release = () => {};
  const held = new Promise<void>((resolve) => (release = resolve));
  await page.route('**/edit-house', async (route) => {
    await held;
    await route.continue();
  });
  let sent = 0;
  page.on('request', (request) => (sent += request.url().endsWith('/edit-house') ? 1 : 0));
  for (const [wall, length] of [['D', "10' 3"], ['B', "10' 4"]] as const) {
    await wallLength(page, wall).fill(length);
    await page.keyboard.press('Tab');
  }
  await expect(page.getByRole('status').filter({ hasText: 'Saving' })).toBeVisible();
  release();
  await expect(page.getByText(/changed in another window meanwhile; this change was not made/).first()).toBeVisible();
  await expect(wallLength(page, 'C')).toHaveValue(`12' 5"`);
  expect(sent).toBe(1);
  for (const [wall, length] of [['D', "10' 3"], ['B', "10' 4"]] as const) await expect(wallLength(page, wall)).toHaveValue(length);
  await change(page, 'D', "10' 6");
  await expect(page.getByText(/changed in another window meanwhile/)).toHaveCount(1);
  await elsewhere.close();
});

test('a window asks before it closes over an edit on its way', async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  let release = () => {};
  const held = new Promise<void>((resolve) => (release = resolve));
  await page.route('**/edit-house', async (route) => {
    await held;
    await route.continue();
  });
  await wallLength(page, 'C').fill("12' 5");
  const asked = page.waitForEvent('dialog');
  await page.close({ runBeforeUnload: true });
  const dialog = await asked;
  expect(dialog.type()).toBe('beforeunload');
  await dialog.dismiss();
  await expect(page.getByRole('status').filter({ hasText: 'Saving' })).toBeVisible();
  release();
  await expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo: change length of wall C in Front bedroom' })).toBeEnabled();
});

test('what stands in a field is on the disk even where its window is closed all the same', LONG, async ({ page, running, context }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  const other = await inAnotherWindow(page, context);
  await wallLength(other, 'C').click();
  await wallLength(other, 'C').fill("12' 5");
  other.on('dialog', (dialog) => void dialog.accept());
  const closed = other.waitForEvent('close');
  await other.close({ runBeforeUnload: true });
  await closed;
  await page.reload();
  await expect(wallLength(page, 'C')).toHaveValue(`12' 5"`);
});

test('a house document and a house file are taken in where they are dropped', async ({ page, running }) => {
  await openDemo(page, running.address);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Write out' }).click();
  const document = await readFile(await (await download).path());
  const bytes = await readFile(join(running.folder, DEMO));

  await drag(page, 'dragover', [['Mill.struckline', bytes]]);
  await expect(page.getByText(/^Drop it here: a house file/)).toBeVisible();
  await drag(page, 'drop', [['Mill.struckline', bytes]]);
  await expect(page.getByText(/^Drop it here/)).toBeHidden();
  await expect(page.getByRole('status').filter({ hasText: 'Mill.struckline was taken in as a copy, Mill.struckline in ' })).toBeVisible();
  await expectNoViolations(page);
  await expect(page).toHaveURL(/Mill\.struckline/);
  await page.getByRole('button', { name: 'Close this message' }).click();
  await expect(page.getByText(/was taken in as a copy/)).toHaveCount(0);

  await drag(page, 'drop', [['notes.pdf', Buffer.from('%PDF')]]);
  await expect(page.getByRole('alert').filter({ hasText: 'notes.pdf was not taken. Struckline takes house files, which end in .struckline, and house documents, which end in .json.' })).toBeVisible();
  await drag(page, 'drop', [['Sent.struckline', bytes.subarray(0, 6_000)]]);
  await expect(page.getByRole('alert').filter({ hasText: 'Sent.struckline was not taken in; nothing was changed.' })).toBeVisible();
  await drag(page, 'drop', [['a.json', document], ['b.json', document]]);
  await expect(page.getByRole('alert').filter({ hasText: '2 files were dropped; one is taken at a time.' })).toBeVisible();
  await expect(page).toHaveURL(/Mill\.struckline/);

  await page.getByRole('button', { name: 'All houses' }).click();
  await drag(page, 'drop', [['house.json', document]]);
  await expect(page.getByRole('table', { name: /bulk order/ })).toBeVisible();
  await page.getByRole('button', { name: 'All houses' }).click();
  await page.getByLabel(/a house file \(\.struckline\)/).setInputFiles({ name: 'Mill.struckline', mimeType: 'application/octet-stream', buffer: bytes });
  await expect(page.getByRole('status').filter({ hasText: 'Mill.struckline was taken in as a copy, Mill 2.struckline' })).toBeVisible();
  expect((await readdir(running.folder)).sort()).toEqual(['Larkfield, Mill Lane 3 2.struckline', DEMO, 'Mill 2.struckline', 'Mill.struckline']);
});

test('a picture that is dropped on the picture of a repeat is its own', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Coverings');
  const place = page.getByRole('group', { name: 'Picture of one repeat' });
  const picture = await place.screenshot();
  await drag(page, 'dragover', [['fern.png', picture]], 'Picture of one repeat');
  await expect(page.getByText(/^Drop it here/)).toBeHidden();
  await drag(page, 'drop', [['fern.png', picture]], 'Picture of one repeat');
  await expect(place.getByRole('img', { name: 'One repeat of K-2041' })).toBeVisible();
  await expect(page.getByText(/was not taken/)).toHaveCount(0);
});

test('the start screen lists the last house worked on first, and a house elsewhere until it is taken off the list', async ({ page, running }) => {
  await openDemo(page, running.address);
  await page.getByRole('button', { name: 'All houses' }).click();
  const away = await temporaryFolder();
  await copyFile(join(running.folder, DEMO), join(away, 'Weir House.struckline'));
  await running.stop();
  const named = await startBeside(join(running.folder, 'own'), away, join(away, 'Weir House.struckline'));
  await page.goto(named.address);
  await page.getByLabel('Name of the house').fill('Weir House');
  await page.keyboard.press('Tab');
  await expect(page).toHaveTitle('Weir House – Struckline');
  await named.stop();

  const again = await startStruckline(running.folder);
  await page.goto(again.address);
  const houses = page.getByRole('region', { name: 'Houses' }).getByRole('listitem');
  await expect(houses).toHaveCount(2);
  await expect(houses.nth(0)).toHaveText(new RegExp(`^Weir House\\s+7 rooms · worked on .*\\d{4}, .*\\d:\\d\\d.*in ${away}`));
  await expect(houses.nth(1)).toHaveText(/^Larkfield, Mill Lane 3/);
  await expectNoViolations(page);
  await houses.nth(0).getByRole('button', { name: /^Weir House/ }).click();
  await expect(page.getByLabel('Name of the house', { exact: true })).toHaveValue('Weir House');
  await page.getByRole('button', { name: 'All houses' }).click();

  await rm(away, { recursive: true });
  await page.reload();
  await expect(houses.nth(1)).toContainText('Weir House.struckline is no longer there: it was moved, renamed or removed');
  await houses.nth(1).getByRole('button', { name: 'Take Weir House off the list' }).click();
  await expect(houses).toHaveCount(1);
  await again.stop();
});

async function inAnotherWindow(page: Page, context: BrowserContext): Promise<Page> {
  const opening = context.waitForEvent('page');
  await page.getByRole('button', { name: 'Open this house in another window' }).click();
  const other = await opening;
  await expect(wallLength(other, 'A')).toBeVisible();
  return other;
}

async function change(page: Page, wall: string, length: string): Promise<void> {
  await wallLength(page, wall).fill(length);
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: `Undo: change length of wall ${wall} in Front bedroom` })).toBeEnabled();
}

/** Drags files over the window or a group in it, or drops them there. */
async function drag(page: Page, event: 'dragover' | 'drop', files: readonly (readonly [string, Buffer])[], group?: string): Promise<void> {
  const held = await page.evaluateHandle((all) => {
    const transfer = new DataTransfer();
    for (const [name, base64] of all) transfer.items.add(new File([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))], name, { type: name.endsWith('.png') ? 'image/png' : '' }));
    return transfer;
  }, files.map(([name, bytes]) => [name, bytes.toString('base64')] as const));
  await (group === undefined ? page.locator('main') : page.getByRole('group', { name: group })).dispatchEvent(event, { dataTransfer: held });
}

async function expectNoViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
}

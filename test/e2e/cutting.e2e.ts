import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { encodeHouse } from '../../shared-core/house/index.ts';
import { benchHouse } from '../bench/houses.ts';
import { openDemo } from './demo.ts';
import { accessibleNameOfFocus, tabTo } from './keyboard.ts';
import { expect, LONG, test } from './struckline.ts';

/** A house that takes some seconds to set out and to cut. */
async function openLargeHouse(page: Page, address: string): Promise<void> {
  await page.goto(address);
  const document = { ...encodeHouse(benchHouse(120, 8, 3)), name: 'Large' };
  await page.getByLabel('Read in a house document (JSON)').setInputFiles({ name: 'large.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(document)) });
  await expect(page.getByRole('table', { name: /bulk order/ })).toBeVisible();
}

const looking = (page: Page) => page.getByRole('status').filter({ hasText: /^(Not yet proved: l|L)ooking (longer )?for fewer rolls/ });
const stopped = (page: Page) => page.getByRole('status').filter({ hasText: /^Stopped\. What is shown can be cut as it stands/ });

test('what is needed opens to what other rolls would take and to the textbooks, from the keyboard', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await expect(page.getByRole('status').filter({ hasText: /^(Proved: no way of cutting|Whether fewer rolls of )/ })).toBeVisible();
  await tabTo(page, /^rolls needed: \d+\. Show the working$/);
  await page.keyboard.press('Enter');
  const working = page.getByRole('region', { name: 'Working of rolls needed' });
  await expect(working).toContainText(/From rolls that all begin at a repeat (it takes \d+ rolls too|\d+ rolls would do, \d+ fewer)\./);
  await expect(working).toContainText(/From the smallest rolls that may be sold as this size, .+ by .+, it takes (at most )?\d+ rolls/);
  await expect(working).toContainText('EN 233');
  const table = working.getByRole('table', { name: /for comparison only, the textbooks' ways of counting/ });
  await expect(table.getByRole('columnheader')).toHaveText(['Room', 'Full strips', 'Whole repeats', 'One repeat more', 'By area', 'Ours']);
  await expect(table.getByRole('row').nth(1)).toContainText(/bedroom/);
  await page.keyboard.press('Escape');
  await expect(working).toHaveCount(0);
  await expect.poll(() => accessibleNameOfFocus(page)).toMatch(/^rolls needed/);
});

test('rooms that share a pattern are added up, each way with how often it falls short', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await expect(page.getByText(/^Proved: /)).toBeVisible();
  const line = page.getByRole('row', { name: /Sitting room, Hall/ });
  await line.getByRole('button', { name: /^rolls needed/ }).click();
  const table = page.getByRole('region', { name: 'Working of rolls needed' }).getByRole('table');
  const figures = async (name: string) => (await table.getByRole('row', { name: new RegExp(`^${name}`) }).getByRole('cell').allTextContents()).map((text) => Number(/^\d+/.exec(text)?.[0]));
  const [sitting, hall, all] = [await figures('Sitting room'), await figures('Hall'), await figures('In all')];
  expect(sitting.length).toBe(5);
  for (const column of [0, 1, 2]) expect(sitting[column]! + hall[column]!).toBe(all[column]);
  const needed = Number(/rolls needed: (\d+)/.exec((await line.getByRole('button', { name: /^rolls needed/ }).getAttribute('aria-label')) ?? '')?.[1]);
  expect(all[4]).toBe(needed);
  await expect(table.getByRole('row', { name: /^In all/ })).toContainText(/enough|short/);
});

for (const isShared of [true, false]) {
  test(`a look for fewer rolls is stopped and taken up again, what is shown staying, ${isShared ? 'by shared memory' : 'without shared memory'}`, LONG, async ({ page, running }) => {
    if (!isShared) await page.addInitScript(() => Object.defineProperty(window, 'crossOriginIsolated', { value: false }));
    await openLargeHouse(page, running.address);
    expect(await page.evaluate(() => crossOriginIsolated)).toBe(isShared);
    await expect(looking(page)).toBeVisible();
    await expect(page.getByText('not yet proved').first()).toBeVisible();
    await page.getByRole('button', { name: 'Stop' }).click();
    await expect(stopped(page)).toBeVisible();
    await expect(page.getByRole('table', { name: /bulk order/ }).getByRole('row')).not.toHaveCount(0);
    const needed = page.getByRole('button', { name: /^rolls needed/ });
    await expect(needed).toHaveCount(3);

    await tabTo(page, 'Look longer', 'Shift+Tab');
    await page.keyboard.press('Enter');
    await expect(looking(page)).toContainText('longer');
    await expect.poll(() => accessibleNameOfFocus(page)).toBe('Stop');
    await expect(needed).toHaveCount(3);
    await page.keyboard.press('Enter');
    await expect(stopped(page)).toBeVisible();
  });

  test(`an edit does not wait for the look that is under way, ${isShared ? 'by shared memory' : 'without shared memory'}`, LONG, async ({ page, running }) => {
    if (!isShared) await page.addInitScript(() => Object.defineProperty(window, 'crossOriginIsolated', { value: false }));
    await openLargeHouse(page, running.address);
    await expect(looking(page)).toBeVisible();
    const spare = page.getByLabel('Spare rolls, each pattern and run');
    await spare.fill('4');
    await page.keyboard.press('Tab');
    await expect(page.getByRole('table', { name: /bulk order/ }).locator('tbody').first().getByRole('row').nth(1).getByRole('cell').nth(4)).toHaveText('4');
    await expect(looking(page)).toBeVisible();
  });
}

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing in an open working nor beside a look under way, ${colorScheme}`, LONG, async ({ page, running }) => {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width: 900, height: 800 });
    await openDemo(page, running.address);
    await page.getByRole('button', { name: /^rolls needed/ }).first().click();
    await expect(page.getByText(/smallest rolls/)).toBeVisible();
    await expectNoViolations(page);
    await page.getByRole('button', { name: 'All houses' }).click();
    await openLargeHouse(page, page.url());
    await page.getByRole('button', { name: 'Stop' }).click();
    await expect(stopped(page)).toBeVisible();
    await expectNoViolations(page);
  });
}

async function expectNoViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
}

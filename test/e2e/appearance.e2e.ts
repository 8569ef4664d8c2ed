import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { SHORTCUTS } from '../../src-renderer/parts/shortcuts.ts';
import { goTo, openDemo } from './demo.ts';
import { accessibleNameOfFocus } from './keyboard.ts';
import { expect, LONG, startStruckline, test } from './struckline.ts';

const PLACES = ['Survey', 'Prep', 'Coverings', 'Set out', 'Order', 'Deliveries', 'Calendar', 'Paperwork'];

const look = (page: Page) =>
  page.evaluate(() => {
    const root = getComputedStyle(document.documentElement);
    const main = getComputedStyle(document.querySelector('main')!);
    return { paper: getComputedStyle(document.body).backgroundColor, ink: main.color, text: main.fontSize, motion: root.getPropertyValue('--motion') };
  });
const USUAL = { paper: 'rgb(248, 247, 244)', ink: 'rgb(34, 33, 31)', text: '16px', motion: '120ms' };
const choose = (page: Page, label: string, words: string) => page.getByRole('dialog').getByLabel(label).selectOption(words);

test('what is chosen shows at once, and again after a start; what can not be read is said and stops nothing', LONG, async ({ page, running }) => {
  await page.goto(running.address);
  await expect(page.getByRole('button', { name: 'Appearance' })).toBeVisible();
  await expect.poll(() => look(page)).toEqual(USUAL);
  await page.getByRole('button', { name: 'Appearance' }).press('Enter');
  await choose(page, 'Colours', 'dark');
  await expect.poll(() => look(page)).toEqual({ ...USUAL, paper: 'rgb(28, 33, 38)', ink: 'rgb(235, 233, 227)' });
  await choose(page, 'Contrast', 'more');
  await choose(page, 'Size of text', '150 %');
  await choose(page, 'Motion', 'none');
  const chosen = { paper: 'rgb(0, 0, 0)', ink: 'rgb(255, 255, 255)', text: '24px', motion: '0ms' };
  await expect.poll(() => look(page)).toEqual(chosen);
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Appearance');
  await running.stop();

  const again = await startStruckline(running.folder);
  await openDemo(page, again.address);
  await expect.poll(() => look(page)).toEqual(chosen);
  await page.getByRole('button', { name: 'Appearance' }).click();
  await choose(page, 'Size of text', '80 %');
  expect((await look(page)).text).toBe('12.8px');
  await again.stop();
  // What was not kept is shown all the same.
  await choose(page, 'Colours', 'light');
  await expect(page.getByRole('dialog').getByRole('alert')).toContainText('not kept for the next start');
  expect((await look(page)).paper).toBe('rgb(255, 255, 255)');

  await writeFile(join(running.folder, 'own', 'settings.json'), '{"version":7}');
  const newer = await startStruckline(running.folder);
  await page.goto(newer.address);
  await expect(page.getByRole('alert')).toContainText('version 7');
  await expect.poll(() => look(page)).toEqual(USUAL);
  await newer.stop();
});

test('what the system says holds until something is chosen', async ({ page, running }) => {
  await page.emulateMedia({ colorScheme: 'dark', contrast: 'more', reducedMotion: 'reduce' });
  await page.goto(running.address);
  await page.getByRole('button', { name: 'Appearance' }).click();
  await expect.poll(() => look(page)).toEqual({ paper: 'rgb(0, 0, 0)', ink: 'rgb(255, 255, 255)', text: '16px', motion: '0ms' });
  await choose(page, 'Colours', 'light');
  await expect.poll(() => look(page)).toEqual({ paper: 'rgb(255, 255, 255)', ink: 'rgb(0, 0, 0)', text: '16px', motion: '0ms' });
  await page.emulateMedia({ colorScheme: 'dark', contrast: 'no-preference', reducedMotion: 'no-preference' });
  await expect.poll(() => look(page)).toEqual(USUAL);
});

test('the sheet of keys lists them all; keys go to places and rooms and keep what was typed', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  const length = page.getByRole('textbox', { name: 'Length of wall A', exact: true });
  await length.fill("12' 6?");
  await page.keyboard.press('?');
  await expect(length).toHaveValue("12' 6??");
  await page.keyboard.press('F1');
  const sheet = page.getByRole('dialog', { name: 'Keys' });
  for (const { title, shortcuts } of Object.values(SHORTCUTS)) {
    await expect(sheet.getByRole('heading', { name: title, exact: true })).toBeVisible();
    for (const { does } of Object.values(shortcuts)) await expect(sheet.getByText(does, { exact: true })).toBeAttached();
  }
  // Behind it nothing is reached.
  await page.keyboard.press('Control+Shift+Digit2');
  await page.keyboard.press('Escape');
  await expect(length).toBeFocused();
  await length.fill("12' 6");
  await page.keyboard.press('Control+Shift+Digit5');
  await expect(page.getByRole('main', { name: 'Set out' })).toBeFocused();
  await expect(page.getByRole('button', { name: 'Undo: change length of wall A in Front bedroom' })).toBeEnabled();
  await page.keyboard.press('Alt+PageDown');
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Back bedroom');
  await page.keyboard.press('Alt+PageUp');
  await page.keyboard.press('Alt+PageUp');
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Front bedroom');
  await page.keyboard.press('?');
  await expect(sheet).toBeVisible();
  await sheet.getByRole('button', { name: 'Close' }).click();
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Front bedroom');
});

for (const [colorScheme, contrast] of [['light', 'no-preference'], ['dark', 'no-preference'], ['light', 'more']] as const) {
  test(`with text at 200 % axe finds nothing in any place and the window does not scroll across, ${colorScheme}, contrast ${contrast}`, LONG, async ({ page, running }) => {
    await page.emulateMedia({ colorScheme, contrast });
    await openDemo(page, running.address);
    await page.getByRole('button', { name: 'Appearance' }).click();
    await choose(page, 'Size of text', '200 %');
    await expectNoViolations(page);
    await page.keyboard.press('Escape');
    for (const place of PLACES) {
      await goTo(page, place);
      await expectNoViolations(page);
      expect(await page.evaluate(() => [document.documentElement, ...document.querySelectorAll('.window, main')].map((box) => box.scrollWidth - box.clientWidth))).toEqual([0, 0, 0]);
      const sizes = await page.locator('main [role=application] svg text, main [role=img] svg text').evaluateAll((texts) => texts.map((text) => Number(text.getAttribute('font-size'))));
      if (['Survey', 'Set out'].includes(place)) expect(Math.min(...sizes)).toBe(28);
    }
    await page.keyboard.press('F1');
    await expectNoViolations(page);
  });
}

test('the order is printed whole, with its house at the head and nothing to press', async ({ page, running }) => {
  await openDemo(page, running.address);
  const order = page.getByRole('table', { name: /bulk order/ });
  await order.getByRole('button', { name: 'Cut list' }).first().click();
  await expect(page.getByText(/kept for repairs/).first()).toBeAttached();
  const pages = countPages(await page.pdf({ preferCSSPageSize: true }));
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  // A page of A4 lying, within its margins.
  await page.setViewportSize({ width: 1032, height: 680 });
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  expect(height).toBeGreaterThan(2 * 680);
  expect(pages).toBeGreaterThanOrEqual(Math.floor(height / 680));
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--print-head'))).toBe('"Larkfield, Mill Lane 3 · Order"');
  expect((await look(page)).paper).toBe('rgb(255, 255, 255)');
  await expect(page.getByRole('navigation')).toBeHidden();
  await expect(page.getByRole('button', { name: 'Cut list' }).first()).toBeHidden();
  for (const row of await order.getByRole('row', { name: /^Run/ }).all()) await expect(row).toBeVisible();
  await expect(page.getByRole('region', { name: 'On offer' }).getByLabel('Rolls of entry 1')).toBeVisible();
});

/** Page objects are written uncompressed. */
function countPages(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

async function expectNoViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
}

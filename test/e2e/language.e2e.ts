import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { languageOf } from '../../shared-core/words/index.ts';
import { openDemo } from './demo.ts';
import { expect, LONG, startStruckline, test } from './struckline.ts';

const GERMAN = languageOf('de').words ?? {};
/** English texts as they would be read: gaps stand for anything. */
const ENGLISH_TEXTS = Object.entries(GERMAN)
  .filter(([english, german]) => english.trim() !== german.trim() && (english.replace(/\{\d+\}/g, '').match(/\p{L}{2,}/gu)?.length ?? 0) > (english.includes('{') ? 1 : 0))
  .map(([english]) => new RegExp(`^${english.trim().split(/\{\d+\}/).map((text) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('.+')}$`, 's'));

/** What can be read or heard in a window: texts, names, titles, hints. */
const textsIn = (page: Page) =>
  page.evaluate(() => {
    const texts: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) if (!['STYLE', 'SCRIPT'].includes(node.parentElement?.tagName ?? '')) texts.push(node.textContent ?? '');
    for (const element of document.querySelectorAll('*')) {
      for (const attribute of ['aria-label', 'title', 'placeholder', 'alt', 'aria-roledescription']) texts.push(element.getAttribute(attribute) ?? '');
    }
    return [document.title, ...texts].map((text) => text.replace(/\s+/g, ' ').trim()).filter((text) => /\p{L}/u.test(text));
  });

async function expectGerman(page: Page, where: string): Promise<void> {
  await expect.poll(async () => (await textsIn(page)).length, { message: where }).toBeGreaterThan(10);
  const texts = await textsIn(page);
  expect(texts.filter((text) => ENGLISH_TEXTS.some((english) => english.test(text))), where).toEqual([]);
}

/** The page may be loaded anew in that language before the field has answered. */
const chooseLanguage = (page: Page, field: string, language: string) => page.getByRole('dialog').getByLabel(field).evaluate((select: HTMLSelectElement, name) => {
  select.value = [...select.options].find(({ label }) => label === name)!.value;
  select.dispatchEvent(new Event('change', { bubbles: true }));
}, language);

const speakGerman = async (page: Page) => {
  await page.getByRole('button', { name: 'Appearance' }).click();
  await chooseLanguage(page, 'Language', 'Deutsch');
  await expect(page.locator('html')).toHaveAttribute('lang', 'de');
};

test('a language is chosen, shown at once where one was, and kept; the host follows at its next start', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await speakGerman(page);
  await expect(page.getByRole('heading', { name: 'Eine Bestellung für das Haus' })).toBeVisible();
  await page.getByRole('button', { name: 'Darstellung' }).click();
  await expect(page.getByRole('dialog')).toContainText('neu gestartet');
  await running.stop();

  const again = await startStruckline(running.folder);
  await page.goto(again.address);
  await page.getByRole('button', { name: /Larkfield.*Räume/ }).click();
  await page.getByRole('button', { name: 'Darstellung' }).click();
  await expect(page.getByRole('dialog')).not.toContainText('neu gestartet');
  await chooseLanguage(page, 'Sprache', 'English');
  await expect(page.getByRole('button', { name: 'Appearance' })).toBeVisible();
  await again.stop();
});

test('in German no English is left in any place, and lengths, days and prices are written its way', LONG, async ({ page, running }) => {
  await running.stop();
  await mkdir(join(running.folder, 'own'), { recursive: true });
  await writeFile(join(running.folder, 'own', 'settings.json'), '{"version":1,"language":"de"}');
  const german = await startStruckline(running.folder);
  await page.goto(german.address);
  await expect(page.locator('html')).toHaveAttribute('lang', 'de');
  const demo = page.getByRole('button', { name: 'Beispielhaus öffnen' });
  await expect(demo).toBeVisible();
  await expectGerman(page, 'start');
  await demo.click();
  await expect(page.getByRole('table', { name: /Gesamtbestellung/ })).toBeVisible();
  const places = page.getByRole('navigation').getByRole('button');
  expect((await places.allInnerTexts()).map((text) => text.split('\n')[0])).toEqual(['Haus', 'Aufmaß', 'Vorarbeiten', 'Beläge', 'Einteilung', 'Bestellung', 'Lieferungen', 'Kalender', 'Papiere']);
  await expect(page.getByRole('main')).toContainText('1180,00');
  for (const working of await page.locator('button.figure[aria-expanded], .figure button[aria-expanded]').all()) {
    await working.click();
    await expectGerman(page, 'working');
    await page.keyboard.press('Escape');
  }
  for (const button of ['Anfertigungen und Räume', 'Zuschnittliste']) {
    for (const each of await page.getByRole('button', { name: button }).all()) {
      await each.click();
      await expectGerman(page, button);
    }
  }
  await page.getByRole('combobox', { name: 'Längen in' }).selectOption({ label: 'Metern' });
  for (const place of await places.all()) {
    await place.click();
    await expect(place).toHaveAttribute('aria-current', 'page');
    await expectGerman(page, await place.innerText());
  }
  await expect(page.getByRole('main')).toContainText('Bestellung, noch nicht aufgegeben');
  await expectGerman(page, 'paper');
  for (const dialog of ['Darstellung', 'Tasten']) {
    await page.getByRole('button', { name: dialog, exact: true }).click();
    await expectGerman(page, dialog);
    await page.keyboard.press('Escape');
  }

  await page.getByRole('navigation').getByRole('button', { name: /^Aufmaß/ }).click();
  const length = page.getByRole('textbox', { name: 'Länge von Wand A', exact: true });
  await length.fill('3,76');
  await expect(page.getByText('= 3,76 m')).toBeVisible();
  await length.fill('3,76 x');
  await length.press('Enter');
  await expect(page.getByText(/keine Längeneinheit/)).toBeVisible();
  await expectGerman(page, 'refused');
  await length.fill('3,76');
  await length.press('Enter');
  await expect(page.getByRole('button', { name: /^Rückgängig: Länge von Wand A/ })).toBeVisible();
  await page.keyboard.press('Control+K');
  await page.keyboard.type('2214');
  await expect(page.getByRole('listbox').getByRole('option').first()).toBeVisible();
  await expectGerman(page, 'found');
  await german.stop();
});

import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { BROWSER_ARGUMENTS, findBrowser } from './browser.ts';
import { goTo, openDemo } from './demo.ts';
import { startStruckline, temporaryFolder } from './struckline.ts';

const SIZES = [
  { width: 900, height: 600 },
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
];
const SCHEMES = ['light', 'dark'] as const;

/** The screens of the demo house, each with the way there from the one before. */
const SCREENS: readonly (readonly [name: string, reach: (page: Page) => Promise<void>])[] = [
  ['house', (page) => goTo(page, 'House')],
  ['survey', (page) => goTo(page, 'Survey')],
  ['wall', (page) => page.getByRole('textbox', { name: 'Length of wall B', exact: true }).click()],
  ['coverings', (page) => goTo(page, 'Coverings')],
  ['set-out', (page) => goTo(page, 'Set out')],
  ['order', (page) => goTo(page, 'Order')],
  ['cut-list', (page) => page.getByRole('button', { name: 'Cut list' }).first().click()],
  ['deliveries', (page) => goTo(page, 'Deliveries')],
  ['paperwork', goToDrawings],
  ['appearance', (page) => page.getByRole('button', { name: 'Appearance' }).click()],
];

/** The page of a job sheet that has the room's plan on it. */
async function goToDrawings(page: Page): Promise<void> {
  await goTo(page, 'Paperwork');
  await page.getByRole('option', { name: 'Job sheet, Front bedroom' }).click();
  const sheet = page.getByRole('region', { name: /^Job sheet, Front bedroom, page \d+ of \d+$/ }).filter({ hasText: 'Drawings to scale' });
  await sheet.scrollIntoViewIfNeeded();
  await sheet.evaluate((one) => one.scrollIntoView({ block: 'start' }));
  await sheet.locator('canvas').waitFor();
}

const README_PICTURES = ['house-light-1280', 'survey-light-1280', 'set-out-dark-1280', 'order-light-1280', 'coverings-dark-1280', 'paperwork-light-1280'];

/** Pictures of every screen, light and dark, at three sizes, in the folder given; without one, the README's own. */
const [folderGiven] = process.argv.slice(2);
const target = folderGiven ?? 'build-resources/pictures';
const folder = await temporaryFolder();
const running = await startStruckline(folder);
const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGUMENTS });
await mkdir(target, { recursive: true });
const page = await (await browser.newContext({ viewport: SIZES[1]! })).newPage();
page.on('console', (message) => message.type() === 'error' && process.stderr.write(`${message.text()}\n`));
page.on('pageerror', (error) => process.stderr.write(`${error.stack}\n`));

async function take(screen: string): Promise<void> {
  for (const size of SIZES) {
    for (const colorScheme of SCHEMES) {
      const name = `${screen}-${colorScheme}-${size.width}`;
      if (folderGiven === undefined && !README_PICTURES.includes(name)) continue;
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme });
      await page.waitForTimeout(250);
      await page.screenshot({ path: join(target, `${name}.png`) });
    }
  }
  await page.setViewportSize(SIZES[1]!);
}

await page.goto(running.address);
await take('start');
await openDemo(page, page.url());
for (const [name, reach] of SCREENS) {
  await reach(page);
  await take(name);
}
await browser.close();
await running.stop();
await rm(folder, { recursive: true });

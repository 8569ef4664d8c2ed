import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { BROWSER_ARGUMENTS, findBrowser } from './browser.ts';
import { startStruckline, temporaryFolder } from './struckline.ts';

const PLACES = ['house', 'survey', 'coverings', 'set-out', 'order', 'deliveries'] as const;
const SIZES = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
];

const README_PICTURES = ['house-light-1280', 'survey-light-1280', 'set-out-dark-1280', 'order-light-1280', 'coverings-dark-1280'];

/** Pictures of every place of the demo house, light and dark, in the folder given; without one, the README's own. */
const [folderGiven] = process.argv.slice(2);
const target = folderGiven ?? 'build-resources/pictures';
const isWanted = (name: string) => folderGiven !== undefined || README_PICTURES.includes(name);
const folder = await temporaryFolder();
const running = await startStruckline(folder);
const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGUMENTS });
await mkdir(target, { recursive: true });
const context = await browser.newContext();
const page = await context.newPage();
page.on('console', (message) => message.type() === 'error' && process.stderr.write(`${message.text()}\n`));
page.on('pageerror', (error) => process.stderr.write(`${error.stack}\n`));
await page.goto(running.address);
for (const colorScheme of ['light', 'dark'] as const) {
  await page.emulateMedia({ colorScheme });
  await page.setViewportSize(SIZES[0]!);
  if (isWanted(`start-${colorScheme}`)) await page.screenshot({ path: join(target, `start-${colorScheme}.png`) });
}
await page.getByRole('button', { name: 'Open a demo house' }).click();
await page.getByRole('table', { name: /bulk order/ }).waitFor();
for (const place of PLACES) {
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button').nth(PLACES.indexOf(place)).click();
  for (const size of SIZES) {
    await page.setViewportSize(size);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await page.waitForTimeout(250);
      const name = `${place}-${colorScheme}-${size.width}`;
      if (isWanted(name)) await page.screenshot({ path: join(target, `${name}.png`) });
    }
  }
}
await browser.close();
await running.stop();
await rm(folder, { recursive: true });

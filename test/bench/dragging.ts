import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { encodeHouse } from '../../shared-core/house/index.ts';
import { runCommandLine } from '../../src-main/command-line/run.ts';
import { BROWSER_ARGUMENTS, findBrowser } from '../e2e/browser.ts';
import { startStruckline, temporaryFolder } from '../e2e/struckline.ts';
import { benchHouse } from './houses.ts';

const MOVES = 80;

declare global {
  interface Window {
    took: number[];
  }
}

/** From a pointer's move to when everything that follows it has been put on the page, in the real app. */
const folder = await temporaryFolder();
for (const walls of [4, 8, 12]) {
  const document = join(folder, 'house.json');
  await writeFile(document, JSON.stringify({ ...encodeHouse(benchHouse(1, walls, walls)), name: `Room of ${walls}` }));
  await runCommandLine(['new', join(folder, `${walls}.struckline`), '--from', document]);
}
const running = await startStruckline(folder);
const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGUMENTS });
const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
await page.goto(running.address);
console.log(`${''.padEnd(46)} ${'median ms'.padStart(9)} ${'95 % ms'.padStart(9)} ${'worst ms'.padStart(9)}`);
for (const walls of [4, 8, 12]) {
  await page.getByRole('button', { name: new RegExp(`Room of ${walls}\\b`) }).first().click();
  await page.getByRole('navigation').getByRole('button', { name: /Set out/ }).click();
  const bob = page.locator('.elevation g[data-subject="start start"] path').nth(1);
  await bob.waitFor();
  await page.waitForTimeout(1_000);
  const box = (await bob.boundingBox())!;
  await page.evaluate(() => {
    window.took = [];
    document.addEventListener(
      'pointermove',
      ({ buttons }) => {
        if (buttons === 0) return;
        const began = performance.now();
        const after = new MessageChannel();
        after.port1.onmessage = () => window.took.push(performance.now() - began);
        after.port2.postMessage(null);
      },
      true,
    );
  });
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  for (let move = 1; move <= MOVES; move += 1) await page.mouse.move(box.x + 4 * move, box.y + box.height / 2);
  await page.mouse.up();
  const took = (await page.evaluate(() => window.took)).toSorted((one, other) => one - other);
  const share = (part: number) => took[Math.floor((took.length - 1) * part)]!.toFixed(1).padStart(9);
  console.log(`${`a start dragged on ${walls} walls, in the window`.padEnd(46)} ${share(0.5)} ${share(0.95)} ${share(1)}`);
  await page.getByRole('button', { name: 'All houses' }).click();
}
await browser.close();
await running.stop();
await rm(folder, { recursive: true });

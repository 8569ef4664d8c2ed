import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium, type Locator } from '@playwright/test';
import { encodeHouse } from '../../shared-core/house/index.ts';
import { runCommandLine } from '../../src-main/command-line/run.ts';
import { BROWSER_ARGUMENTS, findBrowser } from '../e2e/browser.ts';
import { startStruckline, temporaryFolder } from '../e2e/struckline.ts';
import { benchHouse } from './houses.ts';

const MOVES = 80;
const ROOMS = [1, 40];

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
for (const rooms of ROOMS) {
  const document = join(folder, 'house.json');
  await writeFile(document, JSON.stringify({ ...encodeHouse(benchHouse(rooms, 4, rooms)), name: `House of ${rooms}` }));
  await runCommandLine(['new', join(folder, `rooms-${rooms}.struckline`), '--from', document]);
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
  await measure(`a start dragged on ${walls} walls, in the window`, bob);
  await page.getByRole('button', { name: 'All houses' }).click();
}
for (const rooms of ROOMS) {
  await page.getByRole('button', { name: new RegExp(`House of ${rooms}\\b`) }).first().click();
  await page.getByRole('navigation').getByRole('button', { name: /Survey/ }).click();
  await page.getByRole('button', { name: 'Wall W3, 1 openings' }).click();
  await page.waitForTimeout(1_000);
  await measure(`a window dragged in a house of ${rooms} rooms`, page.locator('.drawn g[data-subject="opening W3 window"] path').first(), 60);
  await page.getByRole('button', { name: 'All houses' }).click();
}
await browser.close();
await running.stop();
await rm(folder, { recursive: true });

/** Drags a thing to the right by so many pixels at most, back and right again, and prints how long each move took. */
async function measure(what: string, thing: Locator, far = 4 * MOVES): Promise<void> {
  const box = (await thing.boundingBox())!;
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
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let move = 1; move <= MOVES; move += 1) await page.mouse.move(x + far - Math.abs(((4 * move) % (2 * far)) - far), y);
  await page.mouse.up();
  const took = (await page.evaluate(() => window.took)).toSorted((one, other) => one - other);
  const share = (part: number) => took[Math.floor((took.length - 1) * part)]!.toFixed(1).padStart(9);
  console.log(`${what.padEnd(46)} ${share(0.5)} ${share(0.95)} ${share(1)}`);
}

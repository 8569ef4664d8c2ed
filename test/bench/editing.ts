import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium, type Locator, type Page } from '@playwright/test';
import { encodeHouse } from '../../shared-core/house/index.ts';
import { runCommandLine } from '../../src-main/command-line/run.ts';
import { BROWSER_ARGUMENTS, findBrowser } from '../e2e/browser.ts';
import { startStruckline, temporaryFolder } from '../e2e/struckline.ts';
import { benchHouse } from './houses.ts';

/** Of a small house it tells what of the time is not the plan's. */
const ROOMS = Number(process.argv[2] ?? 40);
const EDITS = 50;

interface Shown {
  readonly at: number;
  readonly isLast: boolean;
}

declare global {
  interface Window {
    asked: number;
    shown: Shown[];
  }
}

/** From a keystroke to when the order that follows it has been put on the page, in the real app. */
const folder = await temporaryFolder();
const exchanged = join(folder, 'house.json');
await writeFile(exchanged, JSON.stringify({ ...encodeHouse(benchHouse(ROOMS, 4, 7)), name: 'Forty rooms' }));
await runCommandLine(['new', join(folder, 'forty.struckline'), '--from', exchanged]);
const running = await startStruckline(folder);
const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGUMENTS });
const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
await page.addInitScript(() => {
  window.shown = [];
  const ByBrowser = window.Worker;
  window.Worker = class extends ByBrowser {
    constructor(...given: ConstructorParameters<typeof Worker>) {
      super(...given);
      this.addEventListener('message', ({ data }: MessageEvent<{ readonly kind?: string; readonly isLast?: boolean }>) => {
        if (data.kind !== 'plan') return;
        // A task of its own comes after all that the answer changes on the page.
        const after = new MessageChannel();
        after.port1.onmessage = () => window.shown.push({ at: performance.now(), isLast: data.isLast === true });
        after.port2.postMessage(null);
      });
    }
  };
  for (const event of ['input', 'keydown']) document.addEventListener(event, () => (window.asked = performance.now()), true);
});
await page.goto(running.address);
await page.getByRole('button', { name: /Forty rooms/ }).first().click();
await settled(page, 1);

console.log(`${`${ROOMS} rooms`.padEnd(46)} ${'median ms'.padStart(9)} ${'95 % ms'.padStart(9)} ${'worst ms'.padStart(9)} ${'last, median'.padStart(13)}`);
const go = (place: string) => page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: new RegExp(`^${place}`) }).click();
await go('Survey');
const height = page.getByRole('textbox', { name: /^Height of wall W0/ });
await measured('a wall of one room typed', (time) => typed(height, `${2_301 + time} mm`));
await go('Order');
await measured('an edit undone', () => page.keyboard.press('Control+z'));
const trim = page.getByRole('textbox', { name: /^Trim, top and bottom/ });
await measured('the trim of every strip in the house typed', (time) => typed(trim, `${51 + time} mm`));
await browser.close();
await running.stop();
await rm(folder, { recursive: true });

/** Types into a field and leaves it. */
async function typed(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await page.keyboard.press('Tab');
}

async function measured(what: string, edit: (time: number) => Promise<void>): Promise<void> {
  const first: number[] = [];
  const last: number[] = [];
  for (let time = 0; time < EDITS; time += 1) {
    await page.evaluate(() => (window.shown = []));
    await edit(time);
    await settled(page, 1);
    const [shown, asked] = await page.evaluate(() => [window.shown, window.asked] as const);
    first.push(shown[0]!.at - asked);
    last.push(shown.find(({ isLast }) => isLast)!.at - asked);
    await page.waitForTimeout(150);
  }
  const share = (of: readonly number[], part: number) => of.toSorted((one, other) => one - other)[Math.floor((of.length - 1) * part)]!.toFixed(1);
  console.log(`${what.padEnd(46)} ${share(first, 0.5).padStart(9)} ${share(first, 0.95).padStart(9)} ${share(first, 1).padStart(9)} ${share(last, 0.5).padStart(13)}`);
}

/** Waits for the last of so many plans. */
async function settled(of: Page, plans: number): Promise<void> {
  await of.waitForFunction((wanted) => window.shown.filter(({ isLast }) => isLast).length >= wanted, plans, { timeout: 120_000 });
}

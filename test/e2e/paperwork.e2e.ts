import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { goTo, openDemo } from './demo.ts';
import { tabTo } from './keyboard.ts';
import { expect, LONG, test } from './struckline.ts';

const list = (page: Page) => page.getByRole('listbox', { name: 'Papers' });
const paper = (page: Page, title: string | RegExp) => list(page).getByRole('option', { name: title });
const sheets = (page: Page, title: string) => page.getByRole('region', { name: new RegExp(`^${title}, page \\d+ of \\d+$`) });
const button = (page: Page, name: string) => page.locator('main').getByRole('button', { name, exact: true });

async function openPaperwork(page: Page, address: string): Promise<void> {
  await openDemo(page, address);
  await goTo(page, 'Paperwork');
  await expect(sheets(page, 'Order for Northgate Papers').first().locator('canvas')).toBeVisible();
}

/** How many of its dots are darker than a middle grey. */
const darkDots = (page: Page, title: string) =>
  sheets(page, title).first().locator('canvas').evaluate((canvas: HTMLCanvasElement) => {
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    let dark = 0;
    for (let place = 0; place < data.length; place += 4) if (data[place + 3]! > 0 && data[place]! + data[place + 1]! + data[place + 2]! < 384) dark += 1;
    return dark;
  });

async function saved(page: Page, name: string): Promise<{ readonly fileName: string; readonly bytes: Buffer }> {
  const [download] = await Promise.all([page.waitForEvent('download'), button(page, name).click()]);
  return { fileName: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

test('a paper is chosen by the keyboard, is drawn and can be read, and is saved as it is shown', async ({ page, running }) => {
  const made: string[] = [];
  page.on('response', async (response) => {
    if (response.url().endsWith('/call/write-paper')) made.push(((await response.json()) as { value: { bytes: string } }).value.bytes);
  });
  await openPaperwork(page, running.address);
  await expect(page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: /^Paperwork/ })).toContainText('2 orders to send');
  await tabTo(page, 'Order for Northgate Papers');
  await page.keyboard.press('End');
  await expect(paper(page, 'House record')).toHaveAttribute('aria-selected', 'true');
  await expect(paper(page, 'House record')).toBeFocused();
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowDown');
  const title = 'Order for Weir & Loom';
  await expect(paper(page, title)).toBeFocused();
  await expect(sheets(page, title).first().locator('canvas')).toBeVisible();
  expect(await darkDots(page, title)).toBeGreaterThan(1_000);
  await expect(sheets(page, title).first()).toContainText('Larkfield, Mill Lane 3');
  await expect(sheets(page, title).first()).toContainText('Pattern number T-118');
  await expect(sheets(page, title).first()).toContainText(/Page 1 of \d/);

  const pdf = await saved(page, 'Save PDF');
  expect(pdf.fileName).toMatch(/^Order for Weir & Loom, .*\.pdf$/);
  expect(pdf.bytes.subarray(0, 5).toString()).toBe('%PDF-');
  expect(pdf.bytes.toString('base64')).toBe(made.at(-1));
  await expect(page.getByText(`${pdf.fileName} was written out.`)).toBeVisible();
  const csv = await saved(page, 'Save CSV');
  expect([csv.fileName.slice(-4), csv.bytes.toString().split('\n')[0]]).toEqual(['.csv', expect.stringMatching(/pattern/i)]);
  await paper(page, 'Quote').click();
  await expect(button(page, 'Save CSV')).toHaveCount(0);
});

test('a paper is printed alone, each of its pages on a sheet of its own', async ({ page, running }) => {
  await page.addInitScript(() => {
    globalThis.print = () => document.documentElement.setAttribute('data-asked', 'print');
  });
  await openPaperwork(page, running.address);
  await paper(page, 'House record').click();
  await expect(sheets(page, 'House record').first().locator('canvas')).toBeVisible();
  const pages = await sheets(page, 'House record').count();
  expect(pages).toBeGreaterThan(1);
  await page.keyboard.press('Control+p');
  await expect(page.locator('[data-asked=print]')).toBeAttached();
  const pictures = page.locator('.sheets-to-print img');
  await expect(pictures).toHaveCount(pages);
  // 8 1/2 by 11 in at 200 dots an inch.
  expect(await pictures.evaluateAll((all) => all.map((picture) => [(picture as HTMLImageElement).naturalWidth, (picture as HTMLImageElement).naturalHeight]))).toEqual(Array.from({ length: pages }, () => [1700, 2200]));
  // A browser says that it has printed when it has made a PDF too.
  const printed = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(printed.match(/\/Type \/Page\b/g)).toHaveLength(pages);
  expect([...printed.matchAll(/\/MediaBox \[([^\]]*)\]/g)].map(([, box]) => box!.trim().split(/\s+/).map(Number))).toEqual(Array.from({ length: pages }, () => [0, 0, 612, 792]));
  // Pictures of pages and nothing that the window says.
  expect(printed).not.toContain('/Font');
  await expect(pictures).toHaveCount(0);
  await expect(button(page, 'Print')).toBeEnabled();
});

test('all papers are saved into a folder beside the house', async ({ page, running }) => {
  await openPaperwork(page, running.address);
  await button(page, 'Save all papers').click();
  await expect(page.getByRole('progressbar', { name: /^\d+ of \d+: / })).toBeVisible();
  const folder = join(running.folder, 'Larkfield, Mill Lane 3, papers');
  const said = page.getByText(/^\d+ files are beside the house file, in/);
  await expect(said).toBeVisible();
  const files = await readdir(folder);
  await expect(said).toHaveText(`${files.length} files are beside the house file, in${folder}`);
  const singles = (await list(page).getByRole('option').allTextContents()).filter((title) => !/all suppliers|all rooms/.test(title));
  for (const title of singles) expect(files.filter((file) => file.startsWith(`${title},`) && file.endsWith('.pdf'))).toHaveLength(1);
  expect(files.filter((file) => file.endsWith('.csv'))).toHaveLength(2);
});

test('saving all stops after what is there, which is kept', LONG, async ({ page, running }) => {
  await openPaperwork(page, running.address);
  await button(page, 'Save all papers').click();
  await expect(page.getByText(/^[3-9] of \d+: /)).toBeVisible();
  await button(page, 'Stop').click();
  const said = page.getByText(/^Stopped; \d+ of \d+ files are beside the house file, in/);
  await expect(said).toBeVisible();
  const [saves, of] = [...(await said.textContent())!.matchAll(/\d+/g)].map(Number);
  expect(saves).toBeGreaterThanOrEqual(2);
  expect(saves).toBeLessThan(of!);
  expect(await readdir(join(running.folder, 'Larkfield, Mill Lane 3, papers'))).toHaveLength(saves!);
  await expect(button(page, 'Save all papers')).toBeVisible();
  await paper(page, 'Quote').click();
  await expect(sheets(page, 'Quote').first().locator('canvas')).toBeVisible();
});

test('a paper that takes long can be given up, and what comes late for another is not shown', LONG, async ({ page, running }) => {
  await openPaperwork(page, running.address);
  const waiting: (() => void)[] = [];
  await page.route('**/call/write-paper', async (route) => {
    await new Promise<void>((go) => waiting.push(go));
    await route.continue();
  });
  await paper(page, 'Quote').click();
  await expect(page.getByText('Making the paper')).toBeVisible();
  await expect.poll(() => waiting.length).toBe(1);
  await button(page, 'Give up').click();
  await expect(page.getByText('It was given up before it was made.')).toBeVisible();
  await expect(button(page, 'Make it')).toBeVisible();
  waiting.shift()!();
  await paper(page, 'Cut list').click();
  await expect.poll(() => waiting.length).toBe(1);
  await paper(page, 'House record').click();
  waiting.shift()!();
  await expect.poll(() => waiting.length).toBe(1);
  await expect(page.locator('canvas')).toHaveCount(0);
  waiting.shift()!();
  await expect(sheets(page, 'House record').first().locator('canvas')).toBeVisible();
  await page.unroute('**/call/write-paper');
  await paper(page, 'Quote').click();
  await expect(sheets(page, 'Quote').first()).toContainText('Larkfield, Mill Lane 3');
});

test('a paper follows the house and the size that is chosen, and who it is from and to is typed beside it', LONG, async ({ page, running }) => {
  await openPaperwork(page, running.address);
  const title = 'Order for Northgate Papers';
  const first = sheets(page, title).first();
  const shape = () => first.locator('.sheet').evaluate((sheet) => sheet.clientHeight / sheet.clientWidth);
  expect(await shape()).toBeCloseTo(11 / 8.5, 2);
  await page.getByLabel('Size of paper').selectOption('A4');
  await expect.poll(shape).toBeCloseTo(297 / 210, 2);
  await page.reload();
  await expect(first.locator('canvas')).toBeVisible();
  expect(await shape()).toBeCloseTo(297 / 210, 2);

  await page.getByText('Names and addresses').click();
  await page.getByLabel('Who sends the papers').fill('Otterbourne & Daughters\nFell Street 9');
  await page.getByLabel('Goods are wanted by').fill('soon');
  await expect(first).toContainText('Otterbourne & Daughters');
  await page.getByLabel('Goods are wanted by').press('Enter');
  await expect(page.getByText(/‘soon’ is no day/)).toBeVisible();
  await page.getByLabel('Goods are wanted by').fill('2027-03-02');
  await page.getByLabel('Address of Northgate Papers').fill('Papermill Row 81');
  await page.getByLabel('Address of Northgate Papers').press('Tab');
  await expect(first).toContainText('2 Mar 2027');
  await expect(first).toContainText('Papermill Row 81');
  await page.getByRole('textbox', { name: 'Customer' }).fill('漢');
  await page.getByRole('textbox', { name: 'Customer' }).press('Tab');
  await paper(page, 'Quote').click();
  await expect(page.getByText('a mark stands for each: 漢')).toBeVisible();
});

test('the places lead to their papers, and back by the list', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await page.getByRole('button', { name: 'Weir & Loom: the order as a paper' }).click();
  await expect(sheets(page, 'Order for Weir & Loom').first().locator('canvas')).toBeVisible();
  await goTo(page, 'Prep');
  await page.getByRole('group', { name: 'Rooms' }).getByRole('button', { name: /Nursery/ }).click();
  await page.getByRole('button', { name: 'Job sheet of this room' }).click();
  await expect(sheets(page, 'Job sheet, Nursery').first()).toContainText('Nursery');
  await goTo(page, 'Calendar');
  await page.getByRole('button', { name: /^Begin on/ }).click();
  await page.getByRole('button', { name: 'The calendar as a paper, or for a calendar program' }).click();
  await expect(sheets(page, 'Calendar').first().locator('canvas')).toBeVisible();
  const calendar = await saved(page, 'Save calendar file');
  expect([calendar.fileName.slice(-4), calendar.bytes.toString().includes('SUMMARY:Front bedroom: ')]).toEqual(['.ics', true]);
});

test('the text of an order is copied for a mail', LONG, async ({ page, running, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openPaperwork(page, running.address);
  await button(page, 'Copy text for a mail').click();
  await expect(page.getByText('Copied, to paste into a mail.')).toBeVisible();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  expect(copied.trim()).toBe((await saved(page, 'Save text')).bytes.toString().trim());
  expect(copied).toMatch(/Pattern number K-2041/);
});

test('a house without rooms has no papers and says what comes first', LONG, async ({ page, running }) => {
  await page.goto(running.address);
  await page.getByLabel('Name').fill('Lime Yard 2');
  await page.getByRole('button', { name: 'Start this house' }).click();
  await expect(page.getByRole('main', { name: 'Survey' })).toBeVisible();
  await goTo(page, 'Paperwork');
  await expect(page.getByText('Nothing to write yet.')).toBeVisible();
  await button(page, 'Survey a room').click();
  await expect(page.getByRole('main', { name: 'Survey' })).toBeVisible();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing beside a paper, ${colorScheme}`, LONG, async ({ page, running }) => {
    await page.emulateMedia({ colorScheme });
    await openPaperwork(page, running.address);
    await page.getByText('Names and addresses').click();
    await expect(sheets(page, 'Order for Northgate Papers').last()).toContainText('Page');
    for (const viewport of [{ width: 1280, height: 800 }, { width: 900, height: 600 }, { width: 600, height: 700 }]) {
      await page.setViewportSize(viewport);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
      expect(await page.evaluate(() => [document.documentElement, ...document.querySelectorAll('.window, main')].map((box) => box.scrollWidth - box.clientWidth))).toEqual([0, 0, 0]);
    }
  });
}

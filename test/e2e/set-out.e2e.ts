import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { runCommandLine } from '../../src-main/command-line/run.ts';
import { documentOf, wallcovering } from '../builders.ts';
import { expect, LONG, test } from './struckline.ts';

const SIDES = ['148 in', '122 in', '148 in', '122 in'];

/** A room with a patterned filling, a border at the ceiling, a mural, a deep window and a papered ceiling. */
const HOUSE = documentOf({
  name: 'Elm Row 9',
  coverings: [
    wallcovering({ patternNumber: 'P-1', width: '20.5 in', rollLength: '33 ft', repeat: '21 in', soldIn: [{ rolls: 1, price: '40.00' }] }),
    { id: 'ivy', kind: 'border', patternNumber: 'B-1', width: '6 in', rollLength: '15 ft', repeat: '20 in' },
    { id: 'lake', kind: 'mural', patternNumber: 'M-1', panels: 4, panelWidth: '40 in', panelHeight: '9 ft' },
  ],
  rooms: [
    {
      id: 'room',
      name: 'Parlour',
      walls: SIDES.map((length, index) => ({
        id: 'ABCD'[index],
        length,
        height: index === 0 ? ['96 in', '94 in'] : '96 in',
        openings: index === 1 ? [{ id: 'win', kind: 'window', from: '40 in', width: '41 in', sill: '30 in', height: '46 in', reveal: { depth: '6 in', sides: ['left', 'right', 'head'] } }] : [],
      })),
      furniture: [{ id: 'bed', name: 'headboard', wall: 'A', from: '20 in', width: '60 in', height: '91 in' }],
      bands: [
        { id: 'main', covering: 'paper', walls: ['A', 'B', 'D'], layout: { start: { wall: 'B', at: '0 in' } } },
        { id: 'top', covering: 'ivy', walls: ['A', 'B'], from: '86 in' },
        { id: 'view', covering: 'lake', walls: ['C'] },
      ],
      ceiling: { covering: 'paper' },
    },
  ],
});

async function openRoom(page: Page, { address, folder }: { readonly address: string; readonly folder: string }): Promise<void> {
  const document = join(folder, 'house.json');
  await writeFile(document, JSON.stringify(HOUSE));
  expect(await runCommandLine(['new', join(folder, 'elm.struckline'), '--from', document])).toMatchObject({ status: 0, errors: '' });
  await page.goto(address);
  await page.getByRole('button', { name: /elm/i }).first().click();
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: /^Set out/ }).click();
  await expect(page.getByRole('group', { name: 'Bands of Parlour' })).toBeVisible();
}

const band = (page: Page, name: RegExp) => page.getByRole('group', { name: 'Bands of Parlour' }).getByRole('button', { name });
const comes = (page: Page, what: string) => page.getByRole('region', { name: 'What comes of it' }).locator('div', { hasText: what }).locator('dd');

test('a ceiling is set out along the window, or along the wall chosen, and its strips say where they come from', async ({ page, running }) => {
  await openRoom(page, running);
  await band(page, /^Ceiling, P-1/).click();
  // Along B, 122 in long, from the right: 148 in are 8 strips of 20 1/2 in, 122 + 4 in each.
  await expect(comes(page, 'Strips')).toHaveText('8');
  await expect(comes(page, 'First line, from wall B')).toHaveText(`1' 8 1/2"`);
  const along = page.getByLabel('Strips run along');
  await along.selectOption('wall A');
  await expect(page.getByText('As you chose.')).toBeVisible();
  await expect(comes(page, 'Strips')).toHaveText('6');
  await expect(comes(page, 'Two people for')).toHaveText('6 of 6');
  await page.getByRole('application').focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Strip 1' })).toBeVisible();
  await expect(page.getByText(/^12' 4" of wall \+ 2 × 2 in of trim = 12' 8"\./)).toBeVisible();
  await expect(page.getByText(/^It comes from roll \d+/)).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(along).toHaveValue('');

  // Taken down where it was hung.
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: /^Coverings/ }).click();
  const overhead = page.getByRole('button', { name: 'Ceiling of Parlour', exact: true });
  await expect(overhead).toHaveAttribute('aria-pressed', 'true');
  await overhead.click();
  await expect(overhead).toHaveAttribute('aria-pressed', 'false');
});

test('a mural is placed by its first panel and its level line, and says what is cut off it', async ({ page, running }) => {
  await openRoom(page, running);
  await band(page, /^M-1/).click();
  // Four panels of 40 in on 148 in, 108 in high on 96: 12 in off the foot.
  await expect(comes(page, 'Panels')).toHaveText('4');
  await expect(comes(page, 'Cut off at the foot')).toHaveText('1\'');
  await page.getByLabel('Across').selectOption('from a place');
  await expect(page.getByLabel('Its left edge on')).toHaveValue('C');
  await page.getByLabel('First panel').fill('9');
  await page.keyboard.press('Tab');
  await expect(page.getByText(/the mural M-1 has 4 panels/)).toBeVisible();
  await page.getByLabel('First panel').fill('2');
  await page.keyboard.press('Tab');
  await expect(comes(page, 'Too narrow by')).toHaveText(`2' 4"`);
  await expect(comes(page, 'Panels left out')).toHaveText('1');
  await page.getByLabel('Its level line, below its top').fill('50');
  await page.keyboard.press('Tab');
  await page.getByLabel('stands so far up').fill('4 ft 8');
  await page.keyboard.press('Tab');
  // Its top at 56 + 50 = 106 in, 10 in over the ceiling; its foot 2 in under the floor.
  await expect(comes(page, 'Cut off at the top')).toHaveText('10 in');
  await expect(comes(page, 'Cut off at the foot')).toHaveText('2 in');
  await page.getByLabel('Across').selectOption('centred');
  await expect(comes(page, 'Panels left out')).toHaveCount(0);
  await expect(comes(page, 'Panels')).toHaveText('4');
});

test('the pattern is moved at the top while it is typed, and a border is hung level with what that shows', async ({ page, running }) => {
  await openRoom(page, running);
  const position = page.getByLabel('Into the repeat by');
  const strokes = () => page.locator('.elevation path.pen-motif').first().getAttribute('d');
  const before = await strokes();
  await position.fill('5');
  await expect.poll(strokes).not.toBe(before);
  await page.keyboard.press('Escape');
  await expect.poll(strokes).toBe(before);
  await position.fill('five');
  await page.keyboard.press('Tab');
  await expect(page.getByText(/‘five’/)).toBeVisible();
  await position.fill('5 in');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: /^Undo: change position/ })).toBeEnabled();

  await band(page, /^B-1/).click();
  await expect(comes(page, 'Hidden by the headboard')).toBeVisible();
  await page.getByLabel('Level, not along the ceiling').check();
  await expect(comes(page, 'Wall over it, A')).toHaveText('up to 2 in');
});

test('a covered reveal has its pieces told by the strip beside it', async ({ page, running }) => {
  await openRoom(page, running);
  await expect(page.getByRole('application')).toHaveAttribute('aria-label', /Parlour/);
  await page.getByRole('application').focus();
  // Window from 40 in on B, strips of 20 1/2 in from its left: strip 1 reaches 1 in past its edge, too little to turn in.
  for (let presses = 0; presses < 30 && (await page.getByText(/^Strip 1 on wall B/).count()) === 0; presses += 1) await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Piece B2 win left' })).toBeVisible();
  await expect(page.getByText(/^Too little of the strip reaches past/)).toBeVisible();
});

test('a sheet is printed without what only a screen needs', async ({ page, running }) => {
  await openRoom(page, running);
  await page.emulateMedia({ media: 'print', colorScheme: 'light' });
  await expect(page.getByRole('navigation', { name: 'Places' })).toBeHidden();
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--print-head'))).toBe('"Elm Row 9 · Set out · Parlour"');
  await expect(page.locator('.elevation svg')).toBeVisible();
  expect((await page.pdf({ preferCSSPageSize: true })).length).toBeGreaterThan(5_000);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing in what is set out, ${colorScheme}`, LONG, async ({ page, running }) => {
    await page.emulateMedia({ colorScheme });
    await openRoom(page, running);
    for (const name of [/^P-1/, /^B-1/, /^M-1/, /^Ceiling/]) {
      await band(page, name).click();
      await page.waitForTimeout(200);
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    }
  });
}

import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { goTo, openDemo } from './demo.ts';
import { accessibleNameOfFocus, tabTo, typeLines } from './keyboard.ts';
import { expect, LONG, test } from './struckline.ts';

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const panel = (page: Page, name: string) => page.getByRole('region', { name, exact: true });
const tableText = (page: Page, name: string) => panel(page, name).getByRole('textbox');
const says = (page: Page, name: string) => panel(page, name).getByRole('status');
const undo = (page: Page, what: string) => page.getByRole('button', { name: `Undo: ${what}`, exact: true });

async function startHouse(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.getByLabel('Name').fill('Mill Lane 9');
  await page.getByRole('button', { name: 'Start this house' }).click();
  await expect(page.getByRole('heading', { name: 'No room yet' })).toBeVisible();
}

async function expectNoViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
}

test('rows pasted where the next wall is typed open the table, are mended with the keyboard and taken as one edit', async ({ page, running, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await startHouse(page, running.address);
  await page.getByRole('button', { name: 'Add the first room' }).click();
  await typeLines(page, ['Hall', '', `8'`]);
  await page.evaluate(() => navigator.clipboard.writeText(`12' 4"\tinside\r\n10 2\tinside\t8 to 9 ft\r\n12' 4" - 1"\tround\r\n10 fot\r\n`));
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Length of the next wall');
  await page.keyboard.press('Control+v');
  const text = tableText(page, 'Walls from a table');
  await expect(text).toBeFocused();
  await expect(text).toHaveValue(/^12' 4"\tinside\n10 2/);
  await expect(field(page, 'Length of the next wall')).toHaveValue('');
  await expect(says(page, 'Walls from a table')).toContainText('Nothing is taken until these 2 are mended, in the text above:');
  const rows = panel(page, 'Walls from a table').getByRole('row');
  await expect(rows.nth(3)).toContainText(`12' 4" - 1"`);
  await expect(rows.nth(4)).toHaveText(/Corner: ‘round’ is no corner\. A corner is inside, outside or straight on/);
  await expect(rows.nth(6)).toHaveText('Length: In ‘10 fot’, ‘fot’ is not a unit of length; the units are in, ft, yd, mm, cm and m.');
  await expect(panel(page, 'Walls from a table').getByRole('button', { name: /^Add/ })).toHaveCount(0);

  await page.keyboard.press('Control+A');
  await page.keyboard.insertText(`12' 4"\tinside\n10 2\tinside\t8 ft to 9 ft\n12' 4"\tin\n10 2\n`);
  await expect(says(page, 'Walls from a table')).toHaveText(`4 walls, 45' together.`);
  await expect(rows.nth(2)).toHaveText(/2\s*B\s*10' 2"\s*inside\s*8 ft to 9 ft/);
  // The plan shows them before they are taken.
  await expect(page.getByText(`45' round`)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Remove wall A' })).toHaveCount(0);
  await tabTo(page, 'Add these 4 walls');
  await page.keyboard.press('Enter');
  await expect(field(page, 'Length of wall D')).toHaveValue(`10' 2"`);
  await expect(field(page, 'Height of wall A')).toHaveValue(`8'`);
  await expect(field(page, 'Height of wall B')).toHaveValue('8 ft to 9 ft');
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Walls from a table');
  await expect(panel(page, 'Walls from a table')).toHaveCount(0);
  await undo(page, 'add 4 walls in Hall').click();
  await expect(field(page, 'Length of wall A')).toHaveCount(0);

  // A single length is typed as ever.
  await page.evaluate(() => navigator.clipboard.writeText('12 4'));
  await field(page, 'Length of the next wall').focus();
  await page.keyboard.press('Control+v');
  await expect(field(page, 'Length of the next wall')).toHaveValue('12 4');
  await expect(panel(page, 'Walls from a table')).toHaveCount(0);
});

test('walls are replaced by a table, which says what stays and what goes, and undo brings it back', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  await page.getByRole('button', { name: 'Walls from a table' }).click();
  const text = tableText(page, 'Walls from a table');
  await text.fill('Wall;Length;Height\nA;13 4;8 ft\nB;10 2;8 ft\nE;4 ft;8 ft');
  await expect(panel(page, 'Walls from a table')).toContainText('Wall: the room has a wall A already; leave its name out, or put these walls in their place.');
  await page.getByRole('button', { name: 'in their place' }).click();
  await expect(panel(page, 'Walls from a table')).toContainText('Wall C goes, and with it what hangs there.');
  await expect(panel(page, 'Walls from a table')).toContainText('Where a wall keeps its name its openings stay: door in wall A and window in wall B.');

  // An opening that no longer fits is named where its wall is.
  await text.fill('3 ft\n10 2\n12 4\n10 2');
  await expect(panel(page, 'Walls from a table')).toContainText(`the door "door" would end at 4' 8", past the end of wall A at 3 ft`);
  await text.fill('Wall;Length;Height\nA;13 4;8 ft\nB;10 2;8 ft\nE;4 ft;8 ft');

  // It waits in its room while another is looked at.
  await text.press('Escape');
  await expect(page.getByRole('button', { name: 'Walls from a table: not taken yet' })).toBeFocused();
  await page.getByRole('button', { name: 'Study', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Walls from a table', exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Front bedroom', exact: true }).click();
  await page.getByRole('button', { name: 'Walls from a table: not taken yet' }).click();
  await page.getByRole('button', { name: 'Replace the walls by these 3 walls' }).click();
  await expect(page.getByRole('button', { name: 'Wall A, 1 openings' })).toBeVisible();
  await expect(field(page, 'Length of wall A')).toHaveValue(`13' 4"`);
  await expect(field(page, 'Length of wall C')).toHaveCount(0);
  await undo(page, 'replace the walls of Front bedroom').click();
  await expect(field(page, 'Length of wall A')).toHaveValue(`12' 4"`);
  await expect(field(page, 'Length of wall D')).toHaveValue(`10' 2"`);
});

test('the rooms of a house are written out and read into a house that has none', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  const write = async () => {
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Write out all rooms (CSV)' }).click();
    return readFile(await (await download).path(), 'utf8');
  };
  const written = await write();
  expect(written).toMatch(/^Storey,Room,Wall,What,/);

  await page.getByRole('button', { name: 'All houses' }).click();
  await startHouse(page, running.address);
  await tabTo(page, 'Rooms from a table');
  await page.keyboard.press('Enter');
  await expect(tableText(page, 'Rooms from a table')).toBeFocused();
  const file = page.getByLabel('Read a file (CSV)');
  await file.setInputFiles({ name: 'picture.csv', mimeType: 'text/csv', buffer: Buffer.from([0x89, 0x50, 0x4e, 0x47, 0xff, 0xfe]) });
  await expect(page.getByRole('alert')).toContainText('picture.csv is not text in UTF-8; a table of rooms is CSV text.');

  // A faulty file changes nothing; it is mended in the text.
  const faulty = written.replace(',door,door,', ',dor,door,');
  await file.setInputFiles({ name: 'rooms.csv', mimeType: 'text/csv', buffer: Buffer.from(faulty) });
  await expect(says(page, 'Rooms from a table')).toContainText('Nothing is taken until this is mended');
  await expect(panel(page, 'Rooms from a table')).toContainText('What: ‘dor’ is nothing that a row is of; it takes room, wall, door,');
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
  await tableText(page, 'Rooms from a table').fill(written);
  await expect(says(page, 'Rooms from a table')).toHaveText('7 rooms with 36 walls and 18 openings.');
  await page.getByRole('button', { name: 'Add these 7 rooms' }).click();
  await expect(field(page, 'Room')).toHaveValue('Front bedroom');
  await expect(field(page, 'Room')).toBeFocused();
  await expect(field(page, 'Length of wall A')).toHaveValue(`12' 4"`);
  await expect(page.getByRole('button', { name: 'Bathroom', exact: true })).toBeVisible();
  await expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();
  expect(await write()).toBe(written);

  await page.getByRole('button', { name: 'Rooms from a table' }).click();
  await tableText(page, 'Rooms from a table').fill('Room,Length,Height\nHall,4 m,2.4 m');
  await expect(panel(page, 'Rooms from a table')).toContainText('The house has Hall already; there will be two of that name.');
  await page.getByRole('button', { name: 'Put this table away' }).click();
  await expect(tableText(page, 'Rooms from a table')).toHaveValue('');
  await undo(page, 'add 7 rooms').click();
  await expect(page.getByRole('heading', { name: 'No room yet' })).toBeVisible();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing in the tables, ${colorScheme}`, LONG, async ({ page, running }) => {
    await page.emulateMedia({ colorScheme });
    await openDemo(page, running.address);
    await goTo(page, 'Survey');
    await page.getByRole('button', { name: 'Walls from a table' }).click();
    await page.getByRole('button', { name: 'Rooms from a table' }).click();
    await tableText(page, 'Walls from a table').fill('12 4\tround\t8 ft\n9 ft\tin\t8 ft');
    await tableText(page, 'Rooms from a table').fill('Room,What,Length,Height\nHall,,4 m,2.4 m\nHall,hatch\nHall,,40 fot');
    await expectNoViolations(page);
    await page.getByRole('button', { name: 'in their place' }).click();
    await tableText(page, 'Walls from a table').fill('12 4\tin\t8 ft\n10 2\tin\t8 ft');
    await tableText(page, 'Rooms from a table').fill('Room,What,Length,Height\nHall,,4 m,2.4 m');
    await expect(page.getByRole('button', { name: 'Replace the walls by these 2 walls' })).toBeVisible();
    await expectNoViolations(page);
    // Both of them stay on the sheet in a narrow window.
    for (const width of [900, 700]) {
      await page.setViewportSize({ width, height: 800 });
      expect(await page.getByRole('main').evaluate((sheet) => sheet.scrollWidth - sheet.clientWidth)).toBe(0);
    }
  });
}

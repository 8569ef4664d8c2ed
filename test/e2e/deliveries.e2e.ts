import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { FERN_DOUBLE, openDelivered, orderedHouse } from './delivered-house.ts';
import { goTo } from './demo.ts';
import { accessibleNameOfFocus, tabTo, typeLines } from './keyboard.ts';
import { expect, LONG, test } from './struckline.ts';

const delivery = (covering: string, patternNumber: string, run: string, rolls: number, more = {}) => ({ covering, patternNumber, run, rolls, received: '2026-03-05', ...more });

/** All that was ordered of every covering but the border, and two rolls of a run that was not. */
const ALMOST_ALL = [
  delivery('fern', 'K-2041', '2214', 17),
  delivery('fern', 'K-2041', '2207', 6),
  delivery('reed', 'K-3310', '0412', 20),
  delivery('oat', 'T-118', '7', 12),
  delivery('fern', 'K-2041', '2215', 2),
];

const said = (page: Page) => page.getByRole('region', { name: 'Receive a package' }).getByRole('status').last();
const against = (page: Page) => page.getByRole('table', { name: /What was ordered and what came/ });
const runRow = (page: Page, name: string) => against(page).getByRole('row').filter({ has: page.getByRole('rowheader', { name, exact: true }) });
const cells = async (row: Locator) => (await row.getByRole('cell').allTextContents()).map((text) => text.trim());
const rail = (page: Page) => page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: /^Deliveries/ });

test('four packages are received from the keyboard alone, and what each means is said at once', LONG, async ({ page, running }) => {
  await openDelivered(page, running.address, orderedHouse());
  await expect(rail(page)).toContainText('61 rolls and spools to come');
  await tabTo(page, 'Code');

  await typeLines(page, ['', 'K-2041', '2214', '7', '', '', '2026-03-05']);
  await expect(said(page)).toHaveText(/7 rolls of K-2041, run 2214\. As ordered; 10 still to come\./);
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Code');
  // The day of the package before is likely that of the next one too.
  await expect(page.getByLabel('Date', { exact: true })).toHaveValue('2026-03-05');

  await typeLines(page, ['', 'k-2041', '2214', '10', '2', '1', '']);
  await expect(said(page)).toHaveText(/10 rolls of K-2041, run 2214\. 2 damaged, 1 missing: 3 still to come\./);
  await expect.poll(() => cells(runRow(page, 'run 2214'))).toEqual(['17', '14', '2', '1', '0', '3', '−33 still to come']);

  await typeLines(page, ['', 'K-2041', '2215', '3', '', '', '']);
  await expect(said(page)).toHaveText(/Run 2215 was not ordered: keep it or send it back\./);
  await expect(rail(page)).toContainText('1 package to decide');
  expect((await cells(runRow(page, 'run 2215'))).at(-1)).toBe('≠run 2215 was not ordered');

  // What was said of the package before goes when the next one is begun.
  await typeLines(page, ['', 'K-2014']);
  await expect(said(page)).toBeEmpty();
  await expect(page.getByText('No covering of this house has the number K-2014: for which pattern did it come?')).toBeVisible();
  await typeLines(page, ['0099', '2', '', '', '']);
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Came for');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert')).toHaveText('Say for which pattern K-2014 came.');
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Came for');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(said(page)).toHaveText(/Pattern K-2014 came for K-2041: it counts for no room\./);
  expect((await cells(runRow(page, 'K-2014, run 0099'))).at(-1)).toBe('≠pattern K-2014 came for K-2041');
  await expect(page.getByRole('button', { name: 'Undo: receive 2 of K-2014, run 0099' })).toBeEnabled();

  await tabTo(page, 'Keep this run');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Run 2215 of K-2041 is kept\. (No room hangs from it|.+ hangs? from it now)\.$/)).toBeVisible();
  await expect.poll(() => cells(runRow(page, 'run 2214'))).toEqual(['17', '14', '2', '1', '3', '0', '=as many as ordered, 3 of another run']);
  await page.keyboard.press('Control+z');
  await expect(page.getByText(/^Run 2215 of K-2041 is kept/)).toHaveCount(0);
  await tabTo(page, 'Keep this run');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Run 2215 of K-2041 is kept/)).toBeVisible();
  await expect(said(page)).toContainText('Pattern K-2014 came for K-2041');
  await tabTo(page, 'Send it back');
  await page.keyboard.press('Enter');
  await expect(said(page)).toBeEmpty();
  await expect(page.getByText('Nothing waits for a decision.')).toBeVisible();
  await expect(page.getByRole('table', { name: 'What can go back to the supplier' })).toContainText('K-2014, run 0099');

  await page.reload();
  await expect(page.getByRole('table', { name: /The packages as they came/ }).getByRole('row')).toHaveCount(5);
  await expect.poll(() => cells(runRow(page, 'run 2214'))).toEqual(['17', '14', '2', '1', '3', '0', '=as many as ordered, 3 of another run']);

  await goTo(page, 'Order');
  const inHand = page.getByRole('region', { name: 'In hand' });
  await expect(inHand.getByRole('row', { name: 'K-2041 2214 14 delivered' })).toBeVisible();
  await inHand.getByRole('button', { name: 'delivered' }).first().click();
  await expect(page.getByRole('heading', { name: 'What has come', level: 1 })).toBeVisible();
});

test('a figure opens to how it was added up', async ({ page, running }) => {
  await openDelivered(page, running.address, orderedHouse({ deliveries: [delivery('fern', 'K-2041', '2214', 10, { damaged: 2, short: 1 }), delivery('fern', 'K-2041', '2214', 4)] }));
  await page.getByRole('button', { name: /^rolls come sound of K-2041, run 2214: 11/ }).click();
  const working = page.getByRole('region', { name: /^Working of rolls come sound/ });
  await expect(working).toContainText('Package 1 of 5 Mar 2026: 10 on the label - 2 damaged - 1 missing = 7.');
  await expect(working).toContainText('7 + 4 = 11.');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: /^rolls still to come of K-2041, run 2214: 6/ }).click();
  await expect(page.getByRole('region', { name: /^Working of rolls still to come/ })).toContainText('17 ordered - 11 come sound - 0 of another run = 6.');
});

test('a code that is read fills the fields, goes to the first that is empty, and records where none is', LONG, async ({ page, running }) => {
  await openDelivered(page, running.address, orderedHouse());
  const code = page.getByLabel('Code', { exact: true });
  await code.focus();
  await typeLines(page, [`(01)${FERN_DOUBLE}`]);
  await expect(page.getByLabel('Pattern number', { exact: true })).toHaveValue('K-2041');
  await expect(page.getByLabel('Rolls', { exact: true })).toHaveValue('2');
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Run number');
  await typeLines(page, ['2214', '', '', '', '']);
  await expect(said(page)).toHaveText(/2 rolls of K-2041, run 2214\. As ordered; 15 still to come\./);

  // As a reader sends it: FNC1 as Ctrl and ], the run with no fixed length before the count.
  await page.keyboard.type(`]C1`);
  await page.keyboard.type(`01${FERN_DOUBLE}102214`);
  await page.keyboard.press('Control+]');
  await typeLines(page, ['374']);
  await expect(said(page)).toHaveText(/8 rolls of K-2041, run 2214\. As ordered; 7 still to come\./);
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Code');

  await typeLines(page, ['06291041500214']);
  await expect(page.getByRole('alert')).toContainText('the last digit should be 3');
  await expect(code).toHaveValue('06291041500214');
  await expect(code).toBeFocused();
  await typeLines(page, ['2000009999990']);
  await expect(page.getByText('No sale unit of this house has the GTIN 2000009999990. Type what the label says.')).toBeVisible();
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Pattern number');
  await typeLines(page, ['K-2041', `(01)${FERN_DOUBLE}(10)2207`]);
  await expect(said(page)).toHaveText(/2 rolls of K-2041, run 2207\. As ordered; 4 still to come\./);
});

test('what is typed of a package stays with what is wrong with it, also while another place is looked at', LONG, async ({ page, running }) => {
  await openDelivered(page, running.address, orderedHouse());
  await page.getByLabel('Code', { exact: true }).focus();
  await typeLines(page, ['', 'K-2041', '2214', 'ten', '', '', '']);
  await expect(page.getByRole('alert')).toHaveText('The rolls on the label are a whole number from 1.');
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Rolls');
  await typeLines(page, ['10', '11', '', '']);
  await expect(page.getByRole('alert')).toHaveText('Damaged are a whole number of the 10 on the label.');
  await typeLines(page, ['1', '', '30 February']);
  await expect(page.getByRole('alert')).toContainText('‘30 February’ is no day');
  await goTo(page, 'Survey');
  await goTo(page, 'Deliveries');
  await expect(page.getByLabel('Run number', { exact: true })).toHaveValue('2214');
  await expect(page.getByLabel('Damaged', { exact: true })).toHaveValue('1');
  await page.getByLabel('Date', { exact: true }).fill('2026-03-06');
  await page.keyboard.press('Enter');
  await expect(said(page)).toHaveText(/1 damaged: 8 still to come\./);
});

test('a pasted table is shown as it would be taken, and nothing of it is taken while something is wrong', async ({ page, running }) => {
  await openDelivered(page, running.address, orderedHouse());
  await page.getByRole('button', { name: 'Packages from a table' }).press('Enter');
  const rows = page.getByLabel(/^Rows from a spreadsheet/);
  await expect(rows).toBeFocused();
  await rows.fill('Pattern\tRun\tQty\tDamaged\nK-2041\t2214\t10\t1\nK-3310\t0412\ttwenty\t\n');
  await expect(page.getByText(/Line 3, rolls: ‘twenty’ is no count/)).toBeVisible();
  await expect(page.getByRole('button', { name: /^Take / })).toHaveCount(0);
  await rows.fill('Pattern\tRun\tQty\tDamaged\nK-2041\t2214\t10\t1\nK-3310\t0412\t20\t\nK-2014\t0099\t2\t\n');
  const preview = page.getByRole('table', { name: 'The pasted packages as they would be taken' });
  await expect(preview.getByRole('row')).toHaveCount(4);
  await expect(page.getByRole('button', { name: /^Take / })).toHaveCount(0);
  await page.getByLabel('K-2014 came for').selectOption('K-2041');
  await page.getByRole('button', { name: 'Take these 3 packages' }).press('Enter');
  await expect(said(page)).toHaveText(/3 packages recorded\. 1 of them waits for a decision\./);
  await expect(rows).toHaveValue('');
  await expect.poll(() => cells(runRow(page, 'run 0412'))).toEqual(['20', '20', '0', '0', '0', '0', '=as ordered']);
  expect((await cells(runRow(page, 'run 2214'))).slice(0, 6)).toEqual(['17', '9', '1', '0', '0', '8']);
});

test('packages are corrected in their cells, filtered, sorted, copied and removed', LONG, async ({ page, running, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openDelivered(page, running.address, orderedHouse({ deliveries: ALMOST_ALL }));
  const table = page.getByRole('table', { name: /The packages as they came/ });
  const runs = () => table.getByRole('textbox', { name: /^Run number of/ }).evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));
  await table.getByRole('button', { name: 'Rolls' }).click();
  await expect.poll(() => runs()).toEqual(['2215', '2207', '7', '2214', '0412']);
  await table.getByRole('button', { name: 'Rolls' }).click();
  await expect.poll(() => runs()).toEqual(['0412', '2214', '7', '2207', '2215']);
  await expect(table.getByRole('columnheader', { name: 'Rolls' })).toHaveAttribute('aria-sort', 'descending');
  await page.getByRole('region', { name: 'Packages', exact: true }).getByLabel('Find').fill('k-2041 22');
  await expect.poll(() => runs()).toEqual(['2214', '2207', '2215']);
  await page.getByRole('region', { name: 'Packages', exact: true }).getByRole('button', { name: 'Copy the table' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'Copied 3 rows' })).toBeVisible();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(
    'Pattern number\tRun number\tRolls\tDamaged\tMissing\tDate\nK-2041\t2214\t17\t0\t0\t2026-03-05\nK-2041\t2207\t6\t0\t0\t2026-03-05\nK-2041\t2215\t2\t0\t0\t2026-03-05\n',
  );

  const damaged = table.getByLabel('Damaged of package 1', { exact: true });
  await damaged.fill('18');
  await damaged.press('Tab');
  await expect(table.getByRole('alert')).toContainText('more than the 17 rolls delivered');
  await expect(damaged).toHaveValue('18');
  await damaged.fill('4');
  await damaged.press('Enter');
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Missing of package 1');
  await expect(table.getByText('4 damaged')).toBeVisible();
  await table.getByLabel('Run number of package 5').fill('2214');
  await page.keyboard.press('Tab');
  await expect(page.getByText('Nothing waits for a decision.')).toBeVisible();
  await table.getByRole('button', { name: 'Remove package 5' }).press('Enter');
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Remove package 2');
  expect((await cells(runRow(page, 'run 2214'))).slice(0, 6)).toEqual(['17', '13', '4', '0', '0', '4']);

  await goTo(page, 'Order');
  await goTo(page, 'Deliveries');
  await expect(page.getByRole('columnheader', { name: 'Rolls', exact: true })).toHaveAttribute('aria-sort', 'descending');
});

test('rooms say what they wait for and are hung; what is over goes back or is kept; a reload shows the same', LONG, async ({ page, running }) => {
  await openDelivered(page, running.address, orderedHouse({ deliveries: ALMOST_ALL }));
  const rooms = page.getByRole('table', { name: /Rooms, whether they can start/ });
  const cell = (room: string) => rooms.getByRole('row').filter({ has: page.getByRole('rowheader', { name: room, exact: true }) }).getByRole('cell').first();
  await expect(cell('Back bedroom')).toHaveText('can start now');
  await expect(cell('Bathroom')).toHaveText('waits for 2 spools of K-2099, run not known yet, which are on their way');
  await expect(rooms.getByLabel('Bathroom is hung')).toBeDisabled();
  await expect(rooms.getByLabel('Bathroom is hung')).toHaveAccessibleDescription('What it waits for has not come.');
  await rooms.getByLabel('Bathroom is hung').press('Space');
  await expect(rooms.getByLabel('Bathroom is hung')).not.toBeChecked();
  await expect(rooms.getByLabel('Back bedroom is hung')).toBeEnabled();
  await rooms.getByLabel('Back bedroom is hung').press('Space');
  await expect(cell('Back bedroom')).toHaveText('is hung');
  await expect(rooms.getByText(/^from run 22(07|14)$/)).toBeVisible();
  await expect(rooms.getByLabel('Study is hung')).toBeEnabled();
  await rooms.getByLabel('Study is hung').press('Space');
  await expect(cell('Study')).toHaveText('is hung');
  await rooms.getByLabel('Study is hung').press('Space');
  await expect(cell('Study')).toHaveText('can start now');

  const back = page.getByRole('region', { name: 'To go back' });
  await expect(back.getByRole('row', { name: /T-118, run 7/ })).toContainText('5 rolls');
  await back.getByRole('button', { name: 'Gone back: 5 rolls of T-118, run 7' }).press('Enter');
  await expect(back.getByRole('table', { name: 'What went back to the supplier' })).toContainText('T-118, run 7');
  await expect(back.getByRole('table', { name: 'What can go back to the supplier' }).getByRole('row', { name: /T-118/ })).toHaveCount(0);

  const kept = page.getByRole('region', { name: 'Kept for repairs' });
  await kept.getByRole('button', { name: 'Keep these in the file: T-118, run 7' }).press('Enter');
  await expect(kept.getByRole('row', { name: /^T-118, run 7.*in the file$/ })).toBeVisible();
  await kept.getByLabel('Place of leftover 1, T-118, run 7').fill('loft');
  await page.keyboard.press('Enter');
  await expect(kept.getByLabel('Length of leftover 1, T-118, run 7')).toHaveValue('10 m');
  await expect(page.getByRole('button', { name: 'Undo: change the leftovers' })).toBeEnabled();
  await expect(page.getByText('Saved', { exact: true })).toBeVisible();

  await page.reload();
  await expect(rooms.getByLabel('Back bedroom is hung')).toBeChecked();
  await expect(rooms.getByLabel('Study is hung')).not.toBeChecked();
  await expect(back.getByRole('table', { name: 'What went back to the supplier' })).toContainText('5 rolls');
  await expect(kept.getByLabel('Place of leftover 1, T-118, run 7')).toHaveValue('loft');
  await back.getByRole('button', { name: /^Remove what went back 1/ }).press('Enter');
  await expect(back.getByRole('row', { name: /T-118, run 7/ })).toContainText('5 rolls');
});

test('what belongs here is said before anything was ordered', async ({ page, running }) => {
  await openDelivered(page, running.address, orderedHouse({ orders: [] }));
  await expect(page.getByText('No order has been placed yet. What comes counts for its run all the same.')).toBeVisible();
  await page.getByRole('button', { name: 'Go to the order' }).click();
  await expect(page.getByRole('table', { name: /bulk order/ })).toBeVisible();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing where something waits, is wrong and stands open, ${colorScheme}`, LONG, async ({ page, running }) => {
    await page.emulateMedia({ colorScheme });
    await openDelivered(page, running.address, orderedHouse({ deliveries: [...ALMOST_ALL, delivery('fern', 'K-2014', '99', 2)], returns: [{ covering: 'oat', run: '7', rolls: 1, sent: '2026-03-09' }], leftovers: [{ covering: 'oat', run: '7', length: '10 m' }] }));
    await page.getByLabel('Code', { exact: true }).focus();
    await typeLines(page, ['12345678']);
    await page.getByRole('button', { name: 'Copy the table' }).first().click();
    await expect(page.locator('.said-at-foot')).toContainText(/^(Copied|Nothing was copied)/);
    await page.getByRole('button', { name: 'Packages from a table' }).click();
    await page.getByLabel(/^Rows from a spreadsheet/).fill('K-2041\t2214\tten\n');
    await page.getByRole('button', { name: /^rolls still to come of K-2041, run 2214/ }).click();
    for (const width of [1280, 800, 700]) {
      await page.setViewportSize({ width, height: 900 });
      await expectNoViolations(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
    }
    await page.getByLabel(/^Rows from a spreadsheet/).fill('K-2041\t2214\t10\nK-2014\t9\t1\n');
    await page.getByLabel('Pattern number', { exact: true }).fill('K-2014');
    await expectNoViolations(page);
  });
}

async function expectNoViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
}

import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { goTo, openDemo } from './demo.ts';
import { accessibleNameOfFocus, tabTo } from './keyboard.ts';
import { expect, LONG, test } from './struckline.ts';

const bulk = (page: Page) => page.getByRole('table', { name: /^The bulk order/ });

async function press(page: Page, name: string | RegExp, direction: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await tabTo(page, name, direction);
  await page.keyboard.press('Enter');
}

test('the order is looked at by pattern, by room and by supplier, and only what is asked for', async ({ page, running }) => {
  await openDemo(page, running.address);
  await expect(bulk(page).locator('tbody')).toHaveCount(4);
  await page.getByLabel('Find', { exact: true }).fill('batch 2214');
  await expect(bulk(page).locator('tbody')).toHaveCount(1);
  await expect(bulk(page)).toContainText('K-2041');
  await page.getByLabel('Find', { exact: true }).fill('nothing of this');
  await expect(bulk(page)).toContainText('Nothing here matches ‘nothing of this’.');
  await page.getByLabel('Find', { exact: true }).fill('');
  await page.getByLabel('Order by').selectOption('dearest first');
  await expect(bulk(page).locator('tbody').first()).toContainText('K-3310');

  await page.getByRole('button', { name: 'By room', exact: true }).click();
  await expect(bulk(page).getByRole('rowheader').first()).toHaveText(/Front bedroom/);
  await page.getByLabel('Find', { exact: true }).fill('hall');
  await expect(bulk(page).locator('tbody')).toHaveCount(1);
  await expect(bulk(page)).toContainText('Sitting room');
  await page.getByLabel('Find', { exact: true }).fill('');

  await page.getByRole('button', { name: 'By supplier' }).click();
  const northgate = bulk(page).locator('tbody').filter({ hasText: 'Northgate Papers' });
  await expect(northgate).toContainText('Tax of 6.5 %');
  const figures = (await northgate.getByRole('row').filter({ hasText: /Before tax|Tax of|To pay/ }).allInnerTexts()).map((row) => Number(/(\d+\.\d\d)/.exec(row)?.[1]));
  expect(figures[0]! + figures[1]!).toBeCloseTo(figures[2]!, 2);
});

test('every figure of a line opens to its working', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  const row = bulk(page).getByRole('row', { name: /Run 2207/ });
  for (const [name, says] of [['rolls room by room', 'Room by room'], ['rolls needed', 'Cut together'], ['spare', 'for each pattern and run'], ['rolls in hand', 'in stock before the order'], ['rolls to buy', 'in hand'], ['price', '84.00']] as const) {
    await row.getByRole('button', { name: new RegExp(`^${name}: `) }).click();
    await expect(page.getByRole('region', { name: `Working of ${name}` })).toContainText(says);
    await page.keyboard.press('Escape');
  }
});

test('a room is set to a run that has too few, and the ways out are taken, from the keyboard alone', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await press(page, 'Runs and rooms');
  await expect(page.getByText(/^Run 2214 covers Front bedroom and Nursery: 16 rolls of (the )?24\b/)).toBeVisible();
  await tabTo(page, 'Run of Nursery');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  const nursery = page.getByRole('row', { name: /^Nursery/ }).filter({ has: page.getByLabel('Run of Nursery') });
  await expect(nursery.getByRole('cell').first()).toHaveText(/2207|no run has it/);
  // Both bedrooms' 16 rolls with the nursery from run 2207 do not fit its 8: one room or the other is left.
  await page.getByLabel('Run of Back bedroom').selectOption('run 2207');
  await expect(page.getByRole('alert').filter({ hasText: /No run of K-2041 can hang/ })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'What would let every room hang' })).toBeVisible();
  await press(page, 'Choose anew', 'Shift+Tab');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(page.getByLabel('Run of Back bedroom')).toHaveValue('');
  // The button is gone; who pressed it stands at the words that say what has become of it, and sees that.
  const why = page.locator('.why:focus-visible');
  await expect(why).toContainText('Run 2207 covers Nursery');
  expect(await why.evaluate((words) => getComputedStyle(words).outlineStyle)).toBe('solid');
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('alert').filter({ hasText: /No run of K-2041 can hang/ })).toBeVisible();
});

test('rooms are tied together and let go again', async ({ page, running }) => {
  await openDemo(page, running.address);
  const tied = page.getByRole('region', { name: 'Rooms that must match' });
  await expect(tied).toContainText('Sitting room, Hall');
  await tied.getByRole('button', { name: 'Tie together' }).click();
  await expect(tied.getByRole('alert')).toHaveText('Tick two rooms or more that are seen together.');
  await tied.getByLabel('Front bedroom').check();
  await tied.getByLabel('Nursery').check();
  await tied.getByLabel('Pattern', { exact: true }).selectOption('K-2041');
  await tied.getByRole('button', { name: 'Tie together' }).click();
  await expect(tied.getByRole('listitem').nth(1)).toContainText('Front bedroom, Nursery, in K-2041');
  await tied.getByRole('button', { name: 'Let Sitting room, Hall differ' }).press('Enter');
  await expect(tied.getByRole('listitem')).toHaveCount(1);
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Let Front bedroom, Nursery differ');
  await page.keyboard.press('Enter');
  await expect(tied.getByRole('listitem')).toHaveText('No rooms are tied yet.');
  await expect(tied.getByRole('checkbox').first()).toBeFocused();
});

test('a spare by percent, a tax and a currency are rules of the house; nonsense stays with what was wrong', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  const spare = page.getByLabel('Spare rolls, each pattern and run');
  await spare.fill('some');
  await spare.press('Tab');
  await expect(page.getByText('The spare is a whole number of rolls, or a percentage of those needed such as 10%.')).toBeVisible();
  await expect(spare).toHaveValue('some');
  await spare.fill('10%');
  await spare.press('Tab');
  // 10 % of 16 rolls, rounded up.
  await expect(bulk(page).getByRole('row', { name: /Run 2214/ }).getByRole('cell').nth(4)).toHaveText('2');
  const tax = page.getByLabel('Tax on what is bought, %');
  await tax.fill('seven');
  await tax.press('Tab');
  await expect(page.getByText('A tax is from 0 to 100 %, such as 7.25. Nothing was changed.')).toBeVisible();
  await tax.fill('');
  await tax.press('Tab');
  await expect(bulk(page).getByRole('row', { name: /^Tax/ })).toHaveCount(0);
  const own = page.getByLabel('Tax of Northgate Papers in percent');
  await own.fill('101');
  await own.press('Tab');
  await expect(page.getByText('A tax is from 0 to 100 %, such as 7.25. Nothing was changed.')).toBeVisible();
  const currency = page.getByLabel('Currency');
  await currency.fill('dollars');
  await currency.press('Tab');
  await expect(page.getByText('The currency is its three letters, such as USD. Nothing was changed.')).toBeVisible();
  await expect(currency).toHaveValue('dollars');
});

test('an order is placed and stays as it was when the house changes', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await press(page, 'Place it: the order with Weir & Loom');
  await expect(page.getByRole('status').filter({ hasText: 'Order 1 is placed and stays as it is.' })).toBeVisible();
  await expect.poll(() => accessibleNameOfFocus(page)).not.toBe('');
  const placed = page.getByRole('table', { name: /^Order 1/ });
  await expect(placed.getByRole('row').nth(1)).toContainText(/T-118any oneStudy, Bathroom707/);
  await expect(bulk(page).getByRole('row', { name: /the run on its way/ }).getByRole('button', { name: 'rolls on order: 7. Show the working' })).toBeVisible();
  const spare = page.getByLabel('Spare rolls, each pattern and run');
  await spare.fill('3');
  await spare.press('Tab');
  await expect(page.getByRole('listitem').filter({ hasText: '2 rolls of T-118 more, to match the run on its way' })).toBeVisible();
  await expect(placed.getByRole('row').nth(1)).toContainText(/T-118any oneStudy, Bathroom707/);
  const expected = page.getByLabel('Order 1 is expected on');
  await expected.fill('2027-02-30');
  await expected.press('Tab');
  await expect(page.getByText('‘2027-02-30’ is no day; a date takes year, month and day, such as 2026-03-02.')).toBeVisible();
  await expected.fill('2027-02-28');
  await expected.press('Tab');
  await page.getByLabel('Nothing more comes of T-118 in order 1').check();
  await expect(placed.getByRole('row').nth(1)).toContainText(/Bathroom700/);
  await page.reload();
  await expect(page.getByLabel('Nothing more comes of T-118 in order 1')).toBeChecked();
  await expect(expected).toHaveValue('2027-02-28');
});

test('an order without all its prices says so before it is placed, and two patterns of one number are told apart', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Coverings');
  await page.getByRole('button', { name: /^T-118/ }).click();
  await page.getByRole('button', { name: /^Remove sale unit/ }).first().click();
  const number = page.getByRole('textbox', { name: 'Pattern number' });
  await page.getByRole('button', { name: /^K-3310/ }).click();
  await number.fill('K-2041');
  await number.press('Tab');
  await goTo(page, 'Order');
  await expect(page.getByText('Pattern number K-2041 stands for two coverings, Fern walk and Reed and ripple.')).toBeVisible();
  const weir = page.getByRole('table', { name: 'One order for each supplier' }).getByRole('row').filter({ hasText: 'Weir & Loom' });
  await expect(weir).toContainText('not known: 1 of 1 without a price');
  await weir.getByRole('button', { name: 'Place it without all prices: the order with Weir & Loom' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'Order 1 is placed and stays as it is.' })).toBeVisible();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing in the order's views, its runs and placed orders, ${colorScheme}`, LONG, async ({ page, running }) => {
    await page.emulateMedia({ colorScheme });
    await openDemo(page, running.address);
    await page.getByRole('button', { name: 'Place it: the order with Northgate Papers' }).click();
    await expect(page.getByRole('table', { name: /^Order 1/ })).toBeVisible();
    await page.getByRole('button', { name: 'Runs and rooms' }).first().click();
    for (const view of ['By pattern', 'By room', 'By supplier']) {
      await page.getByRole('button', { name: view, exact: true }).click();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
    }
  });
}

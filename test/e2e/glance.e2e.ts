import { goTo, openDemo } from './demo.ts';
import { expect, LONG, test } from './struckline.ts';

test('every room stands there with how far it has come, what it takes and what is open, and each leads on', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'House');
  const rooms = page.getByRole('main').getByRole('heading', { level: 3 });
  await expect(rooms).toHaveText(['Front bedroom', 'Back bedroom', 'Nursery', 'Bathroom', 'Sitting room', 'Hall', 'Study']);
  const hall = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'Hall' }) });
  await expect(hall.getByRole('list', { name: 'How far Hall has come' }).getByRole('listitem')).toHaveText(['Surveyed: yes', 'Prepared: not yet', 'Set out: yes', 'Ordered: not yet', 'In hand: not yet', 'Hung: not yet']);
  await expect(hall).toContainText(/\d+ rolls of K-3310, run 121/);

  await expect(page.getByText('Not yet proved.')).toHaveCount(0);
  // The parts of the rooms are the price of the whole.
  const costs = await page.getByRole('button', { name: /^cost of / }).allTextContents();
  expect(costs).toHaveLength(7);
  const cents = costs.reduce((sum, cost) => sum + Math.round(parseFloat(cost) * 100), 0);
  await goTo(page, 'Order');
  const prices = await page.getByRole('table', { name: /bulk order/ }).getByRole('button', { name: /^price: / }).allTextContents();
  expect(cents).toBe(prices.reduce((sum, price) => sum + Math.round(parseFloat(price) * 100), 0));

  await goTo(page, 'House');
  await page.getByRole('button', { name: /^cost of Hall/ }).click();
  await expect(page.getByRole('region', { name: 'Working of cost of Hall' })).toContainText(/K-3310, run 121, to buy: \d+\.\d\d USD × \d+ of \d+ rolls = \d+\.\d\d USD/);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: /^Study has \d+ slivers/ }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: /^Set out/ })).toHaveAttribute('aria-current', 'page');
  await expect(page.getByRole('button', { name: 'Study', exact: true })).toHaveAttribute('aria-pressed', 'true');
  await goTo(page, 'House');
  await hall.getByRole('button', { name: 'Hall', exact: true }).click();
  await expect(page.getByLabel('Room', { exact: true })).toHaveValue('Hall');
});

test('a house without a room says what comes first, and a room without walls what is missing', async ({ page, running }) => {
  await page.goto(running.address);
  await page.getByLabel('Name').fill('Test house');
  await page.keyboard.press('Enter');
  await goTo(page, 'House');
  await page.getByRole('button', { name: 'Survey the first room' }).press('Enter');
  await page.getByRole('button', { name: 'Add the first room' }).press('Enter');
  await page.getByLabel('Room', { exact: true }).fill('Loft');
  await page.keyboard.press('Enter');
  await goTo(page, 'House');
  const loft = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'Loft' }) });
  await expect(loft).toContainText('not measured yet');
  await expect(loft.getByRole('list', { name: 'How far Loft has come' }).getByRole('listitem').first()).toHaveText('Surveyed: not yet');
  await loft.getByRole('button', { name: 'Loft has no walls yet.' }).press('Enter');
  await expect(page.getByLabel('Room', { exact: true })).toHaveValue('Loft');
  await expect(page.getByRole('main', { name: 'Survey' })).toBeFocused();
});

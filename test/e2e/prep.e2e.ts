import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { goTo, openDemo } from './demo.ts';
import { tabTo } from './keyboard.ts';
import { expect, LONG, test } from './struckline.ts';

const openPrep = async (page: Page, address: string) => {
  await openDemo(page, address);
  await goTo(page, 'Prep');
  await expect(page.getByRole('heading', { name: 'What is to be done, in order' })).toBeVisible();
};
const known = (page: Page, surface: string) => page.getByRole('table', { name: 'What is known of each surface' }).getByRole('row', { name: new RegExp(`^${surface} `) });
const tasks = (page: Page) => page.getByRole('region', { name: 'What is to be done, in order' });

test('several surfaces are told at once with the keyboard alone, make tasks and cautions, and one undo takes all back', LONG, async ({ page, running }) => {
  await openPrep(page, running.address);
  await page.getByRole('button', { name: 'Bathroom', exact: true }).click();
  await tabTo(page, 'wall A');
  await page.keyboard.press('Space');
  await tabTo(page, 'ceiling');
  await page.keyboard.press('Space');
  await expect(page.getByRole('group', { name: 'Which surfaces this is said of' }).getByRole('button', { pressed: true })).toHaveText(['wall A', 'ceiling']);
  await tabTo(page, 'What it is');
  await page.keyboard.type('wood');
  await expect(known(page, 'wall A')).toContainText('wood');
  await expect(known(page, 'ceiling')).toContainText('wood');
  await expect(page.getByRole('button', { name: 'Undo: change the surface of wall A and ceiling in Bathroom' })).toBeEnabled();
  await tabTo(page, 'mould');
  await page.keyboard.press('Space');
  await expect(known(page, 'wall A')).toContainText('wood; mould');
  await expect(page.getByRole('region', { name: 'Before anybody begins' })).toContainText('US EPA');
  await tabTo(page, 'So much of it, %', 'Shift+Tab');
  await page.keyboard.type('0');
  await page.keyboard.press('Enter');
  await expect(page.getByText('it takes a share in percent from 1 to 100').or(page.getByText('from 1 to 100'))).toBeVisible();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('5');
  await page.keyboard.press('Enter');
  await expect(known(page, 'wall A')).toContainText('mould over 5 % of it');
  await expect(tasks(page)).toContainText('mould');
  for (const undone of [/^Undo: change the surface/, /^Undo: change the surface/, /^Undo: change the surface/]) await page.getByRole('button', { name: undone }).click();
  await expect(known(page, 'wall A')).not.toContainText('wood');
});

test('a task is done by others or takes the hours that one says, and its cautions stay', async ({ page, running }) => {
  await openPrep(page, running.address);
  await page.getByRole('button', { name: 'Hall', exact: true }).click();
  const task = tasks(page).getByRole('listitem').first();
  const cautions = await page.getByRole('region', { name: 'Before anybody begins' }).getByRole('listitem').count();
  expect(cautions).toBeGreaterThan(1);
  const hours = task.getByRole('textbox');
  await hours.fill('2.5');
  await hours.press('Enter');
  await expect(task).toContainText('hours, yours');
  await hours.fill('soon');
  await hours.press('Enter');
  await expect(task.getByRole('alert')).toContainText('This takes hours');
  await hours.fill('');
  await hours.press('Enter');
  await expect(task).toContainText('hours, as reckoned');
  await task.getByRole('checkbox', { name: 'done by others' }).check();
  await expect(page.getByRole('button', { name: 'Undo: change what is said of the tasks' })).toBeEnabled();
  await expect(page.getByRole('region', { name: 'Before anybody begins' }).getByRole('listitem')).toHaveCount(cautions);
});

test('a paint is typed in, put on a ceiling and on woodwork, and counted in tins; a material in packs', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Coverings');
  await page.getByRole('button', { name: 'Paint', exact: true }).click();
  const draft = page.getByRole('region', { name: 'A new paint' });
  await draft.getByLabel('Name').fill('Chalk');
  await draft.getByLabel('Spreading rate').fill('12 m2/L');
  await page.getByRole('button', { name: 'Add this paint' }).click();
  await page.getByRole('button', { name: 'Add a tin' }).click();
  await page.getByLabel('Litres in tin 1').fill('2.5');
  await page.getByLabel('Price of tin 1').fill('31');
  await page.keyboard.press('Tab');
  await page.getByRole('button', { name: 'Ceiling of Study' }).click();
  await page.getByRole('button', { name: 'Woodwork of Study' }).click();
  await goTo(page, 'Prep');
  const row = page.getByRole('table', { name: /^What is to be bought for the whole house/ }).getByRole('row', { name: /^Chalk/ });
  await expect(row).toContainText(/\d+ × 2\.5 L/);
  await expect(row).toContainText('.00');
  await row.getByRole('button', { name: /^Chalk needed/ }).click();
  await expect(row).toContainText('By the tin: 12 m2/L.');
  await page.keyboard.press('Escape');
  const shopping = page.getByRole('table', { name: /^What is to be bought for the whole house/ });
  await expect(shopping.getByRole('row', { name: /^K-2041, run 2214/ })).toContainText('17 rolls');
  await expect(shopping.getByRole('row', { name: /^All of it/ })).toContainText('not all priced');
  const packs = page.getByLabel('What filler is sold in');
  await packs.fill('much');
  await packs.press('Enter');
  await expect(page.getByRole('alert').filter({ hasText: 'This takes amounts and their prices' })).toBeVisible();
  await packs.fill('1000 at 9.50; 5000 at 38');
  await packs.press('Enter');
  await expect(page.getByRole('table', { name: /^What is to be bought for the whole house/ }).getByRole('row', { name: /^filler/ })).toContainText(/\d × 1 kg|\d × 5 kg/);
});

test('how openings are taken off what is painted is chosen, and the working says by which rule', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Coverings');
  await page.getByRole('button', { name: /^T-118/ }).click();
  await page.getByRole('button', { name: 'Take it down from Study' }).click();
  await page.getByRole('button', { name: 'Paint', exact: true }).click();
  await page.getByRole('region', { name: 'A new paint' }).getByLabel('Name').fill('Chalk');
  await page.getByRole('region', { name: 'A new paint' }).getByLabel('Spreading rate').fill('12 m2/L');
  await page.getByRole('button', { name: 'Add this paint' }).click();
  await page.getByRole('button', { name: 'Study', exact: true }).click();
  await goTo(page, 'Prep');
  const needed = page.getByRole('table', { name: /^What is to be bought/ }).getByRole('button', { name: /^Chalk needed/ });
  const before = await needed.textContent();
  await goTo(page, 'Order');
  const rule = page.getByLabel('Openings in what is painted');
  await rule.selectOption('by NRM2, as SMM7: 0.5 m²');
  await expect(page.getByText('openings up to 0.5 m² are not taken off, larger ones are, and their covered reveals added')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Undo: / }).first()).toBeEnabled();
  await goTo(page, 'Prep');
  await expect(needed).not.toHaveText(before!);
});

test('what is done is ticked off, and the house says how far the room is', LONG, async ({ page, running }) => {
  await openPrep(page, running.address);
  const steps = page.getByRole('list', { name: 'How far Front bedroom has come' }).getByRole('listitem');
  const ticks = tasks(page).getByRole('checkbox', { name: 'done', exact: true });
  await ticks.first().press('Space');
  await expect(page.getByRole('button', { name: 'Undo: change what is said of the tasks' })).toBeEnabled();
  await goTo(page, 'House');
  await expect(steps.nth(1)).toHaveText('Prepared in part');
  await goTo(page, 'Prep');
  for (const tick of await ticks.all()) await tick.check();
  await goTo(page, 'House');
  await expect(steps.nth(1)).toHaveText('Prepared: yes');
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing where surfaces are told, ${colorScheme}`, LONG, async ({ page, running }) => {
    await page.emulateMedia({ colorScheme });
    await openPrep(page, running.address);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.target}`)).toEqual([]);
  });
}

import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { goTo, openDemo } from './demo.ts';
import { expect, LONG, test } from './struckline.ts';

const chart = (page: Page) => page.getByRole('group', { name: /^Calendar of the work/ });

async function openCalendar(page: Page, address: string): Promise<void> {
  await openDemo(page, address);
  await goTo(page, 'Calendar');
  const begins = page.getByLabel('Begins on');
  await begins.fill('2027-03-01');
  await begins.press('Enter');
  await expect(page.getByText(/^\d+ working days, until .* 2027/)).toBeVisible();
}

test('the work is put into days from the day it begins on; shorter days take more of them, and nonsense stays with what was wrong', LONG, async ({ page, running }) => {
  await openCalendar(page, running.address);
  const days = async () => Number(/^(\d+) working days/.exec((await page.getByText(/^\d+ working days/).textContent()) ?? '')?.[1]);
  const alone = await days();
  const hours = page.getByLabel('Hours of a day', { exact: true });
  await hours.fill('none');
  await hours.press('Enter');
  await expect(hours).toHaveAttribute('aria-invalid', 'true');
  await hours.fill('2');
  await hours.press('Enter');
  await expect.poll(days).toBeGreaterThan(alone);
  await page.getByRole('button', { name: /^Undo: change work/ }).click();
  await expect.poll(days).toBe(alone);
});

test('the house’s own figures stand in place of ours, and nonsense stays with what was wrong', LONG, async ({ page, running }) => {
  await openCalendar(page, running.address);
  await page.getByRole('button', { name: 'Our figures and yours' }).press('Enter');
  const strip = page.getByLabel('Your minutes: A strip', { exact: true });
  await strip.fill('quick');
  await strip.press('Tab');
  await expect(page.getByText('This takes minutes, such as 12 or 1:30. Nothing was changed.')).toBeVisible();
  const days = page.getByText(/^\d+ working days/);
  const before = (await days.textContent())!;
  await strip.fill('2:00');
  await strip.press('Tab');
  await expect(strip).toHaveValue('120');
  await expect(days).not.toHaveText(before);
  await strip.fill('');
  await strip.press('Tab');
  await expect(days).toHaveText(before);
});

test('a bar is moved by the keyboard, stays where it was put, and is given back to the plan', LONG, async ({ page, running }) => {
  await openCalendar(page, running.address);
  const job = await chart(page).getByRole('button').first().getAttribute('data-job');
  const bar = chart(page).locator(`[data-job="${job}"]`);
  const before = (await bar.getAttribute('aria-label')) ?? '';
  await bar.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Undo: change what is said of the tasks' })).toBeEnabled();
  await expect(bar).not.toHaveAttribute('aria-label', before);
  await bar.focus();
  await page.keyboard.press('Delete');
  await expect(bar).toHaveAttribute('aria-label', before);
});

test('a bar is dragged to another day, and Escape leaves it where it was', LONG, async ({ page, running }) => {
  await openCalendar(page, running.address);
  const job = await chart(page).getByRole('button').first().getAttribute('data-job');
  const bar = chart(page).locator(`[data-job="${job}"]`);
  await bar.scrollIntoViewIfNeeded();
  const before = (await bar.getAttribute('aria-label')) ?? '';
  const drag = async (days: number) => {
    const box = (await bar.boundingBox())!;
    const day = await chart(page).evaluate((element) => parseFloat(getComputedStyle(element).getPropertyValue('--day-wide')) * parseFloat(getComputedStyle(document.documentElement).fontSize));
    const [x, y] = [box.x + Math.min(8, box.width / 2), box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let step = 1; step <= 4; step += 1) await page.mouse.move(x + (days * day * step) / 4, y);
  };
  await drag(2);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(bar).toHaveAttribute('aria-label', before);
  await expect(page.getByRole('button', { name: 'Undo: change work' })).toBeEnabled();
  await drag(2);
  await page.mouse.up();
  await expect(page.getByRole('button', { name: 'Undo: change what is said of the tasks' })).toBeEnabled();
  await expect(bar).not.toHaveAttribute('aria-label', before);
  await page.keyboard.press('Control+z');
  await expect(bar).toHaveAttribute('aria-label', before);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing in the calendar and its money, ${colorScheme}`, LONG, async ({ page, running }) => {
    await page.emulateMedia({ colorScheme });
    await openCalendar(page, running.address);
    await page.getByRole('button', { name: 'Our figures and yours' }).click();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.target}`)).toEqual([]);
  });
}

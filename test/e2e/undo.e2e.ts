import { goTo, openDemo } from './demo.ts';
import { accessibleNameOfFocus, tabTo, typeLines } from './keyboard.ts';
import { expect, LONG, test } from './struckline.ts';

test('one press undoes what Enter has just added, and says what that was', async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  await tabTo(page, 'Next on wall');
  await typeLines(page, ['C', 'w', '2 ft', '3 ft', '4 ft', '2 ft']);
  await expect(page.getByRole('button', { name: 'Undo: add window on wall C in Front bedroom' })).toBeEnabled();
  await expect(page.getByLabel('What window is')).toBeVisible();
  await page.keyboard.press('Control+Z');
  await expect(page.getByLabel('What window is')).toHaveCount(0);
  await expect(page.getByRole('status').filter({ hasText: 'Undone: add window on wall C in Front bedroom.' })).toBeVisible();
  await page.keyboard.press('Control+Y');
  await expect(page.getByLabel('What window is')).toBeVisible();
  await expect(page.getByRole('status').filter({ hasText: 'Done again: add window on wall C' })).toBeVisible();
});

test('what is being typed is undone before what was taken', async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  const length = page.getByRole('textbox', { name: 'Length of wall A', exact: true });
  // A click into a field takes all of it, to be typed over.
  await length.click();
  await page.keyboard.type('13');
  await expect(length).toHaveValue('13');
  await page.keyboard.press('Control+Z');
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
  await length.fill("12' 6");
  await page.keyboard.press('Enter');
  await page.keyboard.press('Control+Z');
  await expect(length).toHaveValue(`12' 4"`);
});

test('Enter goes on from the openings to the rails, and from the last fact of a new pattern to the button that adds it', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  await tabTo(page, 'Length of the next wall');
  await page.keyboard.press('Enter');
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Next on wall');
  await page.keyboard.press('Control+A');
  await page.keyboard.press('Delete');
  await page.keyboard.press('Enter');
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Name of the next rail');
  await expect(page.getByLabel('Next on wall')).toHaveValue('A');

  await goTo(page, 'Coverings');
  await page.getByRole('button', { name: 'Wallcovering', exact: true }).click();
  await typeLines(page, ['R-510', 'Reed', '20.5', '33 ft', '21']);
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Add this wallcovering');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /^R-510/ })).toBeVisible();
});

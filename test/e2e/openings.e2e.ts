import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { goTo, openDemo } from './demo.ts';
import { tabTo, typeLines } from './keyboard.ts';
import { expect, LONG, test } from './struckline.ts';

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const elevation = (page: Page) => page.getByRole('application', { name: /from inside the room/ });
const undo = (page: Page, name: string) => page.getByRole('button', { name: `Undo: ${name}`, exact: true });
const nothingToUndo = (page: Page) => page.getByRole('button', { name: 'Undo', exact: true });

/** Wall B of the demo's front bedroom: 10' 2" long, 8' high, a window of 4' by 4' 2" at 3' 1", its sill at 2' 8". */
async function openWall(page: Page, address: string): Promise<void> {
  await openDemo(page, address);
  await goTo(page, 'Survey');
  await page.getByRole('button', { name: 'Wall B, 1 openings' }).click();
  await expect(elevation(page)).toHaveAttribute('aria-label', /wall B from inside the room, 10' 2" long, 8' high\. Window on wall B, 3' 1" from its left end/);
}

/** A place on the wall, in inches from its left end and above its floor, on the page. */
async function onWall(page: Page, along: number, up: number): Promise<readonly [number, number]> {
  const box = await boxOf(elevation(page).locator('path.fill-wall').first());
  return [box.x + (box.width * along) / 122, box.y + box.height * (1 - up / 96)];
}

async function boxOf(mark: Locator) {
  const box = await mark.boundingBox();
  if (!box) throw new Error('it is drawn');
  return box;
}

async function press(page: Page, from: readonly [number, number], to: readonly [number, number]): Promise<void> {
  await page.mouse.move(...(await onWall(page, ...from)));
  await page.mouse.down();
  await page.mouse.move(...(await onWall(page, ...to)), { steps: 8 });
}

async function drag(page: Page, from: readonly [number, number], to: readonly [number, number]): Promise<void> {
  await press(page, from, to);
  await page.mouse.up();
}

test('a window is dragged along its wall and up, the numbers go with it, and it is one edit', LONG, async ({ page, running }) => {
  await openWall(page, running.address);
  const from = field(page, 'Distance from the left of window');
  await press(page, [61, 57], [71, 57.3]);
  await expect(from).toHaveValue(`3' 11"`);
  await expect(elevation(page)).toHaveAttribute('aria-label', /Window on wall B, 3' 11" from its left end/);
  await expect(nothingToUndo(page)).toBeDisabled();
  await page.mouse.up();
  await expect(undo(page, 'move window in Front bedroom')).toBeEnabled();
  await expect(field(page, 'sill of window')).toHaveValue(`2' 8"`);

  await drag(page, [71, 57], [71, 63.2]);
  await expect(field(page, 'sill of window')).toHaveValue(`3' 2"`);
  await expect(from).toHaveValue(`3' 11"`);
  await undo(page, 'change sill of window on wall B in Front bedroom').click();
  await expect(field(page, 'sill of window')).toHaveValue(`2' 8"`);
  await undo(page, 'move window in Front bedroom').click();
  await expect(from).toHaveValue(`3' 1"`);
  await expect(nothingToUndo(page)).toBeDisabled();
  await page.keyboard.press('Control+Shift+Z');
  await expect(from).toHaveValue(`3' 11"`);
});

test('an edge and a corner are dragged, and a door stays on the floor', LONG, async ({ page, running }) => {
  await openWall(page, running.address);
  await drag(page, [85, 57], [99, 57]);
  await expect(field(page, 'width of window')).toHaveValue(`5' 2"`);
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`3' 1"`);
  await expect(undo(page, 'change width of window on wall B in Front bedroom')).toBeEnabled();
  await drag(page, [37, 32], [47, 26]);
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`3' 11"`);
  await expect(field(page, 'width of window')).toHaveValue(`4' 4"`);
  await expect(field(page, 'sill of window')).toHaveValue(`2' 2"`);
  await expect(field(page, 'height of window')).toHaveValue(`4' 8"`);
  await expect(undo(page, 'change place and width and sill and height of window on wall B in Front bedroom')).toBeEnabled();

  await page.getByRole('button', { name: 'Wall A, 1 openings' }).click();
  const door = await boxOf(elevation(page).locator('g[data-subject="opening A door"] path').first());
  await page.mouse.move(door.x + door.width / 2, door.y + door.height / 2);
  await page.mouse.down();
  await page.mouse.move(door.x + door.width / 2 + 40, door.y, { steps: 5 });
  await page.mouse.up();
  await expect(undo(page, 'move door in Front bedroom')).toBeEnabled();
  await expect(field(page, 'sill of door')).toHaveValue('0 in');
  await expect(field(page, 'Distance from the left of door')).not.toHaveValue('2 ft');
});

test('what is dragged catches on what it can be in line with, and past it with Ctrl', async ({ page, running }) => {
  await openWall(page, running.address);
  await press(page, [61, 57], [97.6, 57]);
  await expect(page.getByText(`In line with the wall's right end.`)).toBeVisible();
  await expect(elevation(page).locator('path.pen-guide')).toHaveCount(1);
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`6' 2"`);
  await page.keyboard.down('Control');
  await page.mouse.move(...(await onWall(page, 96, 57)));
  await expect(page.getByText(/^In line with/)).toHaveCount(0);
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`6'`);
  await page.keyboard.up('Control');
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`3' 1"`);
});

test('Escape while dragging leaves everything as it was', async ({ page, running }) => {
  await openWall(page, running.address);
  await press(page, [61, 57], [80, 57]);
  await expect(field(page, 'Distance from the left of window')).not.toHaveValue(`3' 1"`);
  await page.keyboard.press('Escape');
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`3' 1"`);
  await page.mouse.move(...(await onWall(page, 90, 57)));
  await page.mouse.up();
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`3' 1"`);
  await expect(nothingToUndo(page)).toBeDisabled();
});

test('openings are drawn on bare wall: a door from the floor up, else a window, and what would overlap is refused', LONG, async ({ page, running }) => {
  await openWall(page, running.address);
  await drag(page, [3, 80.7], [30, 1]);
  await expect(undo(page, 'add door on wall B in Front bedroom')).toBeEnabled();
  for (const [name, value] of [['Distance from the left of door', '3 in'], ['width of door', `2' 3"`], ['height of door', `6' 10"`], ['sill of door', '0 in']] as const) await expect(field(page, name)).toHaveValue(value);

  // The door as it is moved over the window is shown where it would stand, and goes back.
  await press(page, [16, 20], [45, 20]);
  const refusal = page.getByRole('alert').filter({ hasText: /the door "door" would lie over the window "window"; openings of a wall may touch, not overlap\./ });
  await expect(refusal).toBeVisible();
  await expect(elevation(page).locator('path.pen-stop')).toHaveCount(1);
  await expect(field(page, 'Distance from the left of door')).toHaveValue(`2' 8"`);
  await page.mouse.up();
  await expect(refusal).toContainText('Nothing was changed.');
  await expect(field(page, 'Distance from the left of door')).toHaveValue('3 in');
  await expect(undo(page, 'add door on wall B in Front bedroom')).toBeEnabled();

  // Up to it is good: they touch.
  await drag(page, [16, 20], [23.4, 20]);
  await expect(field(page, 'Distance from the left of door')).toHaveValue('10 in');

  await drag(page, [95, 40], [115, 70]);
  await expect(undo(page, 'add window on wall B in Front bedroom')).toBeEnabled();
  await field(page, 'What window2 is').selectOption('archway');
  await expect(field(page, 'What window2 is')).toHaveValue('archway');
  await page.keyboard.press('Control+z');
  await expect(field(page, 'What window2 is')).toHaveValue('window');

  // A slip of the hand draws nothing, and what is chosen in the row is what is drawn.
  await drag(page, [95, 10], [97, 12]);
  await expect(field(page, 'What window3 is')).toHaveCount(0);
  await field(page, 'What the next opening is').selectOption('fireplace');
  await drag(page, [92, 1], [118, 30]);
  await expect(undo(page, 'add fireplace on wall B in Front bedroom')).toBeEnabled();
});

test('an opening is moved and sized with the keyboard alone, several steps in one edit', LONG, async ({ page, running }) => {
  await openWall(page, running.address);
  await tabTo(page, /wall B from inside the room/);
  await page.keyboard.press('ArrowRight');
  await expect(page.getByText(/^Window on wall B, 3' 1" from its left end/)).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Arrows move window by 1\/4 in, with Shift by 6 in, with Alt they size it\. Enter puts it down/)).toBeVisible();
  for (const key of ['ArrowRight', 'ArrowRight', 'Shift+ArrowRight', 'ArrowUp', 'Alt+ArrowRight', 'Alt+ArrowUp']) await page.keyboard.press(key);
  await expect(page.getByText(/^Window on wall B, 3' 6" from its left end, 4' 0 1\/4" wide, from 2' 8 1\/4" to 6' 10 1\/2" high/)).toBeVisible();
  await expect(nothingToUndo(page)).toBeDisabled();
  await page.keyboard.press('Enter');
  await expect(undo(page, 'change place and width and sill and height of window on wall B in Front bedroom')).toBeEnabled();
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`3' 6"`);
  await page.keyboard.press('Control+z');
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`3' 1"`);
  await expect(nothingToUndo(page)).toBeDisabled();

  // Escape leaves it; going elsewhere puts it down.
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowLeft');
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`3' 0 3/4"`);
  await page.keyboard.press('Escape');
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`3' 1"`);
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Tab');
  await expect(undo(page, 'move window in Front bedroom')).toBeEnabled();
  await expect(field(page, 'Distance from the left of window')).toHaveValue(`3' 0 3/4"`);
});

test('in a metric house what is dragged is written in metres and centimetres', LONG, async ({ page, running }) => {
  await openWall(page, running.address);
  await page.getByRole('combobox', { name: /^Lengths in/ }).selectOption('metric');
  await expect(page.getByText(/to 5 mm, to 1 cm with Shift/)).toBeVisible();
  await page.keyboard.down('Shift');
  await drag(page, [61, 57], [71, 57]);
  await page.keyboard.up('Shift');
  await expect(field(page, 'Distance from the left of window')).toHaveValue(/^1\.\d{1,2} m$/);
  await expect(undo(page, 'move window in Front bedroom')).toBeEnabled();
  await tabTo(page, /wall B from inside the room/);
  for (const key of ['Enter', 'Shift+ArrowLeft', 'Enter']) await page.keyboard.press(key);
  await expect(field(page, 'Distance from the left of window')).toHaveValue(/^(1\.1 m|1 m|1\.2 m)$/);
});

test('the next opening is the same as another: only its place is typed', LONG, async ({ page, running }) => {
  await openWall(page, running.address);
  await tabTo(page, 'What the next opening is');
  const kind = field(page, 'What the next opening is');
  await kind.selectOption({ label: `same as door of wall A, Front bedroom: 2' 8" × 6' 8"` });
  await expect(field(page, 'width of the next opening')).toHaveValue(`2' 8"`);
  await page.keyboard.press('Enter');
  await expect(field(page, 'Distance from the left of the next opening')).toBeFocused();
  await typeLines(page, ['4 in']);
  await expect(undo(page, 'add door on wall B in Front bedroom')).toBeEnabled();
  await expect(field(page, 'height of door')).toHaveValue(`6' 8"`);
  await expect(field(page, 'Next on wall')).toBeFocused();
  await expect(kind).toHaveValue('door');
});

test('a wall or an opening pointed at on the plan is the one that stands beside it', async ({ page, running }) => {
  await openWall(page, running.address);
  const door = await boxOf(page.locator('figure .plan g[data-subject="opening A door"] path').first());
  await page.mouse.click(door.x + door.width / 2, door.y + door.height / 2);
  await expect(page.getByRole('application', { name: /wall A from inside the room/ })).toBeVisible();
  await expect(page.locator('.drawn g.pointed').first()).toHaveAttribute('data-subject', 'opening A door');
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing while an opening is held, ${colorScheme}`, LONG, async ({ page, running }) => {
    await page.emulateMedia({ colorScheme });
    await openWall(page, running.address);
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await drag(page, [3, 80.7], [30, 1]);
    await press(page, [16, 20], [45, 20]);
    await expect(page.getByRole('alert').filter({ hasText: 'would lie over' })).toBeVisible();
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await page.mouse.up();
  });
}

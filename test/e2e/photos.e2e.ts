import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { goTo, openDemo } from './demo.ts';
import { accessibleNameOfFocus, tabTo } from './keyboard.ts';
import { noise, png } from './png.ts';
import { expect, LONG, startStruckline, test } from './struckline.ts';

interface PictureFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

const NO_PICTURE: PictureFile = { name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('damp at the left') };
const DAMAGED: PictureFile = { name: 'damaged.png', mimeType: 'image/png', buffer: png(400, 300).subarray(0, 40) };
const pngFile = (name: string, width: number, height: number): PictureFile => ({ name, mimeType: 'image/png', buffer: png(width, height) });

async function openSurvey(page: Page, address: string): Promise<void> {
  await openDemo(page, address);
  await goTo(page, 'Survey');
}

const area = (page: Page, wall = 'A') => page.getByRole('group', { name: `Photos of wall ${wall}` });
const viewer = (page: Page) => page.getByRole('dialog', { name: /^Photos of wall/ });
const undo = (page: Page, words: string) => page.getByRole('button', { name: `Undo: ${words}`, exact: true });
const saved = (page: Page) => expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();

async function choose(page: Page, ...files: readonly PictureFile[]): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await area(page).getByRole('button', { name: 'Add photos' }).click();
  await (await chooser).setFiles([...files]);
}

async function drop(page: Page, ...files: readonly PictureFile[]): Promise<void> {
  const plain = files.map(({ name, mimeType, buffer }) => ({ name, mimeType, base64: buffer.toString('base64') }));
  const dataTransfer = await page.evaluateHandle((given) => {
    const transfer = new DataTransfer();
    for (const { name, mimeType, base64 } of given) transfer.items.add(new File([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))], name, { type: mimeType }));
    return transfer;
  }, plain);
  await area(page).dispatchEvent('dragover', { dataTransfer });
  await expect(area(page)).toHaveClass(/over/);
  await area(page).dispatchEvent('drop', { dataTransfer });
  await expect(area(page)).not.toHaveClass(/over/);
}

/** A photo as a camera writes it: lying on its side, with the words that turn it upright and that say where it was taken. */
async function photoLyingDown(page: Page): Promise<PictureFile> {
  const bytes = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(2000, 1000);
    const context = canvas.getContext('2d')!;
    context.fillStyle = 'red';
    context.fillRect(0, 0, 1000, 1000);
    context.fillStyle = 'blue';
    context.fillRect(1000, 0, 1000, 1000);
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer())];
  });
  const place = Buffer.from('Behind the mill\0', 'latin1');
  const tiff = Buffer.alloc(8 + 2 + 2 * 12 + 4);
  tiff.write('MM\0*\0\0\0\x08\0\x02', 'latin1');
  const entry = (at: number, tag: number, type: number, count: number) => {
    tiff.writeUInt16BE(tag, at);
    tiff.writeUInt16BE(type, at + 2);
    tiff.writeUInt32BE(count, at + 4);
  };
  entry(10, 0x010e, 2, place.length);
  tiff.writeUInt32BE(tiff.length, 18);
  entry(22, 0x0112, 3, 1);
  tiff.writeUInt16BE(6, 30);
  const content = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff, place]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(content.length + 2, 2);
  return { name: 'lying.jpg', mimeType: 'image/jpeg', buffer: Buffer.concat([Buffer.from(bytes.slice(0, 2)), head, content, Buffer.from(bytes.slice(2))]) };
}

async function expectNoViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
}

test('photos come by file, drop and paste, each as one edit, and are there after the app was started again', LONG, async ({ page, running, context }) => {
  await openSurvey(page, running.address);
  await expect(area(page)).toContainText('Each is kept at most 1,280 pixels long and 120 kB, without the place it was taken at; 12 of a wall, 80 of a house.');
  await choose(page, pngFile('left.png', 1600, 1200), pngFile('right.png', 300, 200));
  await expect(area(page).getByRole('img')).toHaveCount(2);
  await expect(area(page).getByRole('status')).toHaveText('2 photos added.');
  await expect(area(page).getByRole('img', { name: 'Photo 2 of wall A, Front bedroom' })).toBeVisible();
  await expect(undo(page, 'add 2 photos of wall A in Front bedroom')).toBeEnabled();
  const sizes = await area(page).getByRole('img').evaluateAll((images) => images.map((image) => [(image as HTMLImageElement).naturalWidth, (image as HTMLImageElement).naturalHeight]));
  expect(sizes).toEqual([[1280, 960], [300, 200]]);

  await drop(page, pngFile('third.png', 400, 300));
  await expect(area(page).getByRole('img')).toHaveCount(3);
  await expect(undo(page, 'add a photo of wall A in Front bedroom')).toBeEnabled();

  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.evaluate(async (base64) => {
    const picture = new Blob([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))], { type: 'image/png' });
    await navigator.clipboard.write([new ClipboardItem({ 'image/png': picture })]);
  }, png(500, 400).toString('base64'));
  await page.keyboard.press('Control+V');
  await expect(area(page).getByRole('img')).toHaveCount(4);
  await page.evaluate(() => navigator.clipboard.writeText('12 ft'));
  await page.getByRole('textbox', { name: 'Length of wall B' }).focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.press('Control+V');
  await expect(page.getByRole('textbox', { name: 'Length of wall B' })).toHaveValue('12 ft');
  await page.keyboard.press('Escape');
  await expect(area(page).getByRole('img')).toHaveCount(4);
  await saved(page);

  const before = await area(page).getByRole('img').evaluateAll((images) => images.map((image) => (image as HTMLImageElement).src));
  await running.stop();
  const again = await startStruckline(running.folder);
  await page.goto(again.address);
  await page.getByRole('button', { name: /Larkfield/ }).first().click();
  await goTo(page, 'Survey');
  await expect(area(page).getByRole('img')).toHaveCount(4);
  expect(await area(page).getByRole('img').evaluateAll((images) => images.map((image) => (image as HTMLImageElement).src))).toEqual(before);
  for (const left of [3, 2, 0]) {
    await page.keyboard.press('Control+z');
    await expect(area(page).getByRole('img')).toHaveCount(left);
  }
  await page.keyboard.press('Control+Shift+z');
  await expect(area(page).getByRole('img')).toHaveCount(2);

  await page.getByRole('button', { name: 'Copy Front bedroom' }).click();
  await expect(page.getByLabel('Room', { exact: true })).toHaveValue('Front bedroom 2');
  await expect(area(page).getByRole('img')).toHaveCount(0);
  await again.stop();
});

test('a photo is turned upright, and nothing of where it was taken goes into the house file', async ({ page, running }) => {
  await openSurvey(page, running.address);
  const lying = await photoLyingDown(page);
  expect(lying.buffer.includes('Behind the mill')).toBe(true);
  await choose(page, lying);
  const photo = area(page).getByRole('img');
  await expect(photo).toHaveCount(1);
  const seen = await photo.evaluate((image: HTMLImageElement) => {
    const canvas = new OffscreenCanvas(image.naturalWidth, image.naturalHeight);
    const context = canvas.getContext('2d')!;
    context.drawImage(image, 0, 0);
    const top = context.getImageData(canvas.width / 2, 100, 1, 1).data;
    return { width: canvas.width, height: canvas.height, isRedAtTop: top[0]! > 200 && top[2]! < 60, bytes: atob(image.src.slice(image.src.indexOf(',') + 1)) };
  });
  expect(seen).toMatchObject({ width: 640, height: 1280, isRedAtTop: true });
  expect(seen.bytes).not.toMatch(/Exif|Behind the mill/);
  await saved(page);
  for (const file of readdirSync(running.folder)) expect(readFileSync(join(running.folder, file)).includes('Behind the mill')).toBe(false);
});

test('of many files the good ones are kept, and each other one is named with what is accepted', LONG, async ({ page, running }) => {
  await openSurvey(page, running.address);
  await drop(page, NO_PICTURE, pngFile('good.png', 200, 100), DAMAGED, { ...NO_PICTURE, name: 'empty.jpg', mimeType: 'image/jpeg', buffer: Buffer.alloc(0) });
  await expect(area(page).getByRole('img')).toHaveCount(1);
  await expect(area(page).getByRole('alert').locator('p')).toHaveText([
    'notes.txt is no picture that can be shown.',
    'damaged.png is no picture that can be shown.',
    'empty.jpg is no picture that can be shown.',
    'Photos are JPEG, PNG or WebP files of at most 60 MB.',
  ]);
  await drop(page, NO_PICTURE);
  await expect(area(page).getByRole('status')).toHaveText('No photo was added.');
  await expect(area(page).getByRole('img')).toHaveCount(1);

  // Noise is what a picture is hardest to make small of.
  await choose(page, { name: 'noise.png', mimeType: 'image/png', buffer: png(1400, 1050, noise()) });
  await expect(area(page).getByRole('img')).toHaveCount(2);
  await expect(area(page).getByRole('alert')).toHaveCount(0);
  expect((await area(page).getByRole('img').nth(1).getAttribute('src'))!.length).toBeLessThanOrEqual(160_000);

  await choose(page, ...Array.from({ length: 12 }, (_, index) => pngFile(`more ${index + 1}.png`, 60, 40)));
  await expect(area(page).getByRole('status')).toHaveText('10 photos added.');
  await expect(area(page).getByRole('alert')).toHaveText('more 11.png and 1 more were left out: a wall takes 12 photos.');
  await expect(area(page).getByRole('img')).toHaveCount(12);
  await expect(undo(page, 'add 10 photos of wall A in Front bedroom')).toBeEnabled();
});

test('while several are made small it says how far it is, and can be stopped', LONG, async ({ page, running }) => {
  await openSurvey(page, running.address);
  const large = pngFile('large.png', 3000, 2000);
  await choose(page, ...Array.from({ length: 10 }, () => large));
  await expect(area(page).getByRole('status')).toHaveText(/^Making photo \d+ of 10 small$/);
  await area(page).getByRole('button', { name: 'Stop' }).click();
  await expect(area(page).getByRole('status')).toHaveText('Stopped. No photo was added.');
  await expect(area(page).getByRole('img')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
});

test('a photo is opened large, captioned, moved and taken away by the keyboard', LONG, async ({ page, running }) => {
  await openSurvey(page, running.address);
  await choose(page, pngFile('one.png', 300, 200), pngFile('two.png', 200, 300), pngFile('three.png', 200, 200));
  await expect(area(page).getByRole('img')).toHaveCount(3);
  await tabTo(page, 'Add photos', 'Shift+Tab');
  for (let presses = 0; presses < 2; presses += 1) await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Enter');
  await expect(viewer(page).getByRole('status')).toHaveText('Wall A, photo 2 of 3');
  await expect(viewer(page).getByRole('img', { name: 'Photo 2 of wall A, Front bedroom' })).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(viewer(page).getByRole('status')).toHaveText('Wall A, photo 1 of 3');
  await page.keyboard.press('ArrowLeft');
  await expect(viewer(page).getByRole('status')).toHaveText('Wall A, photo 3 of 3');

  await tabTo(page, 'Caption');
  await page.keyboard.type('Damp behind the door');
  await page.keyboard.press('ArrowLeft');
  await expect(viewer(page).getByRole('status')).toHaveText('Wall A, photo 3 of 3');
  await page.keyboard.press('Escape');
  await expect(viewer(page).getByLabel('Caption')).toHaveValue('');
  await page.keyboard.type('Damp behind the door');
  await page.keyboard.press('Enter');
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Wall');
  await expect(viewer(page).getByRole('img', { name: 'Damp behind the door' })).toBeVisible();
  await expect(page.locator('button[aria-label^="Undo: change caption of a photo of wall A"]')).toBeEnabled();
  await page.keyboard.press('C');
  await expect(viewer(page).getByRole('status')).toHaveText('Wall A, photo 2 of 2');
  await page.keyboard.press('Escape');
  await expect(viewer(page)).toHaveCount(0);
  await expect(area(page).getByRole('img')).toHaveCount(2);
  await expect(undo(page, 'move a photo of wall A in Front bedroom to wall C')).toBeEnabled();

  await page.getByRole('button', { name: 'Wall C', exact: true }).click();
  await area(page, 'C').getByRole('button', { name: 'Damp behind the door' }).press('Enter');
  await tabTo(page, 'Take it away');
  await page.keyboard.press('Enter');
  await expect(viewer(page)).toHaveCount(0);
  await expect(area(page, 'C').getByRole('img')).toHaveCount(0);
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Add photos');
  await page.keyboard.press('Control+z');
  await expect(area(page, 'C').getByRole('img', { name: 'Damp behind the door' })).toBeVisible();
  await page.getByRole('button', { name: 'Remove wall C' }).click();
  await expect(undo(page, 'remove wall C in Front bedroom')).toBeEnabled();
  await page.keyboard.press('Control+z');
  await page.getByRole('button', { name: 'Wall C', exact: true }).click();
  await expect(area(page, 'C').getByRole('img', { name: 'Damp behind the door' })).toBeVisible();
});

test('notes of a room and of a wall are kept as they were typed, and a word says which wall has one', LONG, async ({ page, running }) => {
  await openSurvey(page, running.address);
  const wallNote = page.getByLabel('Note on wall A');
  await wallNote.focus();
  await page.keyboard.type('Damp at the left.');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await page.keyboard.type('  Old lining ');
  await expect(wallNote).toBeFocused();
  await page.keyboard.press('Control+z');
  await expect(wallNote).toBeFocused();
  await wallNote.fill('Damp at the left.\n\n  Old lining ');
  await page.keyboard.press('Tab');
  await expect(undo(page, 'change note of wall A in Front bedroom')).toBeEnabled();
  await expect(page.getByRole('button', { name: 'Wall A, 1 openings, note' })).toBeVisible();
  await page.getByLabel('Note on Front bedroom').fill('x'.repeat(4_001));
  await page.keyboard.press('Tab');
  await expect(page.getByText(/^Note is "x+\.\.\.; it takes a note of at most 4000 characters\.$/)).toBeVisible();
  await expect(page.getByLabel('Note on Front bedroom')).toHaveValue('x'.repeat(4_001));
  await page.getByLabel('Note on Front bedroom').fill('Keys with the neighbour');
  await page.keyboard.press('Tab');
  await saved(page);
  await page.reload();
  await goTo(page, 'Survey');
  await expect(wallNote).toHaveValue('Damp at the left.\n\n  Old lining ');
  await expect(page.getByLabel('Note on Front bedroom')).toHaveValue('Keys with the neighbour');
  await page.getByRole('button', { name: 'Copy Front bedroom' }).click();
  await expect(page.getByLabel('Note on Front bedroom 2')).toHaveValue('');
  await expect(wallNote).toHaveValue('');
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing in notes and photos, ${colorScheme}`, LONG, async ({ page, running }) => {
    await page.emulateMedia({ colorScheme });
    await openSurvey(page, running.address);
    await page.getByLabel('Note on wall A').fill('Damp');
    await drop(page, NO_PICTURE, pngFile('good.png', 200, 100), pngFile('other.png', 200, 100));
    await expect(area(page).getByRole('img')).toHaveCount(2);
    await expectNoViolations(page);
    await area(page).getByRole('button', { name: 'Photo 1 of wall A, Front bedroom' }).click();
    await expect(viewer(page)).toBeVisible();
    await expectNoViolations(page);
    for (const size of [{ width: 900, height: 600 }, { width: 700, height: 1000 }]) {
      await page.setViewportSize(size);
      const { x, y, width, height } = (await viewer(page).boundingBox())!;
      expect([x >= 0, y >= 0, x + width <= size.width, y + height <= size.height]).toEqual([true, true, true, true]);
      expect(await viewer(page).evaluate((dialog) => [dialog.scrollWidth - dialog.clientWidth, dialog.scrollHeight - dialog.clientHeight])).toEqual([0, 0]);
    }
  });
}

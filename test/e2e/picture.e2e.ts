import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { goTo, openDemo } from './demo.ts';
import { noise, png } from './png.ts';
import { expect, LONG, test } from './struckline.ts';

async function chooseFile(page: Page, file: { readonly name: string; readonly mimeType: string; readonly buffer: Buffer }): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('group', { name: 'Picture of one repeat' }).getByRole('button', { name: /^Load/ }).click();
  await (await chooser).setFiles(file);
}

test('a picture of one repeat is loaded, hangs in the elevation, and is there after a reload', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Set out');
  const elevation = page.getByRole('application');
  const motifs = elevation.locator('path.pen-motif');
  // Our motif on the strips, and on each of the four lengths of the border over them.
  await expect(motifs).toHaveCount(5);
  await goTo(page, 'Coverings');
  const group = page.getByRole('group', { name: 'Picture of one repeat' });
  await expect(group).toContainText('It shows one repeat, cropped at its edges: 1\' 8 1/2" wide, 1\' 9" high.');
  await chooseFile(page, { name: 'fern.png', mimeType: 'image/png', buffer: png(820, 840) });
  await expect(group.getByRole('img', { name: 'One repeat of K-2041' })).toBeVisible();
  await expect(group.getByText(/squeezed/)).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Undo: hang the picture of K-2041' })).toBeEnabled();
  await expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();

  await goTo(page, 'Set out');
  await expect(elevation.locator('pattern image')).toHaveAttribute('href', /^data:image\/jpeg;base64,/);
  expect(await elevation.locator('path.picture').count()).toBeGreaterThanOrEqual(27);
  await expect(motifs).toHaveCount(4);
  // One tile is as wide as one strip: the seams of strips that lie whole on wall A stand a tile apart.
  const tileWidth = Number(await elevation.locator('pattern').first().getAttribute('width'));
  const seams = await elevation.locator('[data-subject^="seam "] path').evaluateAll((paths) => paths.map((path) => path.getBoundingClientRect().left));
  expect(seams[1]! - seams[0]!).toBeCloseTo(tileWidth, 0);

  // What lies under the picture can still be pointed at.
  const strip = await elevation.locator('[data-subject="strip 4"] path').first().boundingBox();
  await page.mouse.move(strip!.x + strip!.width / 2, strip!.y + strip!.height * 0.85);
  await expect(page.getByText(/^Strip 4 on wall A/)).toBeVisible();

  await page.reload();
  await expect(elevation.locator('pattern image')).toHaveAttribute('href', /^data:image\/jpeg;base64,/);

  await goTo(page, 'Coverings');
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await group.getByRole('button', { name: 'Take it away' }).click();
  await expect(group.getByRole('img')).toHaveCount(0);
  await goTo(page, 'Set out');
  await expect(motifs).toHaveCount(5);
  await expect(elevation.locator('pattern')).toHaveCount(0);
});

test('a file that is no picture is refused in words, and the picture that was there stays', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Coverings');
  const group = page.getByRole('group', { name: 'Picture of one repeat' });
  await chooseFile(page, { name: 'fern.png', mimeType: 'image/png', buffer: png(400, 200) });
  await expect(group.getByText('This one is too wide for that shape and is squeezed to it; crop it to one repeat.')).toBeVisible();
  for (const buffer of [Buffer.from('K-2041, one repeat'), Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), Buffer.alloc(0)]) {
    await chooseFile(page, { name: 'notes.txt', mimeType: 'text/plain', buffer });
    await expect(group.getByRole('alert')).toHaveText('notes.txt is no picture that can be shown. Nothing was changed. Choose a photograph or a scan saved as JPEG, PNG or WebP.');
  }
  await expect(group.getByRole('img')).toBeVisible();
  // Noise is what a picture is hardest to make small of.
  await chooseFile(page, { name: 'noise.png', mimeType: 'image/png', buffer: png(1025, 1050, noise()) });
  await expect(group.getByRole('alert')).toHaveCount(0);
  await expect(group.getByText(/squeezed/)).toHaveCount(0);
  const image = await group.getByRole('img').getAttribute('src');
  expect(image!.length).toBeLessThanOrEqual(400_000);
});

import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { goTo, openDemo } from './demo.ts';
import { accessibleNameOfFocus, typeLines } from './keyboard.ts';
import { expect, LONG, test } from './struckline.ts';

const PLACES = ['House', 'Survey', 'Prep', 'Coverings', 'Set out', 'Order', 'Deliveries', 'Calendar', 'Paperwork'];

test('the demo house has its order one click away, and every figure opens to its working', async ({ page, running }) => {
  await openDemo(page, running.address);
  const order = page.getByRole('table', { name: /bulk order/ });
  await expect(order.getByRole('row', { name: /^Run 2214/ })).toContainText('Front bedroom, Nursery');
  await expect(page.getByText(/^Cut together the house takes \d+ rolls and \d+ spools; room by room it would take \d+ rolls and \d+ spools\. That saves \d+ rolls?\b.*\.$/)).toBeVisible();
  await order.getByRole('row', { name: /^Run 2214/ }).getByRole('button', { name: /^rolls to buy/ }).click();
  const working = page.getByRole('region', { name: 'Working of rolls to buy' });
  const [sum, needed, spare, inHand, wanted] = /(\d+) needed \+ (\d+) spare - (\d+) in hand = (\d+)\./.exec((await working.textContent()) ?? '') ?? [];
  expect(sum).toBeDefined();
  expect(Number(needed) + Number(spare) - Number(inHand)).toBe(Number(wanted));
  await page.keyboard.press('Escape');
  await expect(working).toHaveCount(0);
});

test('a strip pointed at says what it is, from the keyboard too', async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Set out');
  const elevation = page.getByRole('application');
  await expect(elevation).toHaveAttribute('aria-label', /Front bedroom.*27 strips/);
  await elevation.focus();
  for (let presses = 0; presses < 40; presses += 1) {
    await page.keyboard.press('ArrowRight');
    if ((await page.getByText(/^Strip 5 on wall A/).count()) > 0) break;
  }
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Strip 5' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Piece A6' })).toBeVisible();
  await expect(page.getByText(/8' of wall \+ 2 × 2 in of trim = 8' 4"/)).toBeVisible();
  await expect(page.getByText(/It comes from roll \d+/)).toBeVisible();
});

test('a length being typed shows its effect, and what is not a length stays with what was wrong', async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  const length = page.getByRole('textbox', { name: 'Length of wall A' });
  await length.fill('13 4');
  await expect(page.getByText(`= 13' 4"`)).toBeVisible();
  await expect(page.getByText(/misses by/)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(length).toHaveValue(`12' 4"`);
  await expect(page.getByText('closes', { exact: true })).toBeVisible();

  await length.fill('twelve foot four');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('alert').filter({ hasText: 'twelve' }).or(page.getByText(/twelve.*Nothing was changed/))).toBeVisible();
  await expect(length).toHaveValue('twelve foot four');
  await expect(length).toHaveAttribute('aria-invalid', 'true');

  await length.fill(`3'`);
  await page.keyboard.press('Tab');
  await expect(page.getByText(/door "door" would end at 4' 8", past the end of wall A at 3'/)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();

  await length.fill('13 4');
  await page.keyboard.press('Tab');
  await expect(length).toHaveValue(`13' 4"`);
  await expect(page.getByRole('button', { name: 'Undo: change length of wall A in Front bedroom' })).toBeEnabled();
});

test('rolls of a run in hand change the order at once', async ({ page, running }) => {
  await openDemo(page, running.address);
  const order = page.getByRole('table', { name: /bulk order/ });
  await expect(order.getByRole('row', { name: /Study, Bathroom/ })).toContainText('run not known yet');
  const had = page.getByRole('region', { name: 'On offer' });
  await had.getByLabel('Pattern', { exact: true }).selectOption('T-118');
  await had.getByLabel('Run number', { exact: true }).fill('0412');
  await had.getByLabel('Rolls', { exact: true }).fill('4');
  await page.keyboard.press('Enter');
  await expect(had.getByLabel('Run number', { exact: true })).toBeFocused();
  await expect(order.getByRole('row', { name: /^Run 0412/ })).toBeVisible();
  await expect(order.getByRole('row', { name: /no run has it/ })).toBeVisible();
  await expect(page.getByRole('alert').filter({ hasText: 'No run of T-118 can hang' })).toBeVisible();
  await had.getByLabel('Rolls of entry 5').fill('40');
  await page.keyboard.press('Tab');
  await expect(order.getByRole('row', { name: /^Run 0412/ })).toContainText('Study, Bathroom');
  await expect(order.getByRole('row', { name: /no run has it/ })).toHaveCount(0);
});

test('runs are typed on one after the other, and the focus stays where they are taken away', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  const inHand = page.getByRole('region', { name: 'In hand' });
  // What is said of a run stays while those before it are still on their way to a slow disk.
  let answered = 0;
  await page.route('**/edit-house', async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 400));
    answered += 1;
    await route.continue();
  });
  await inHand.getByLabel('Run number', { exact: true }).focus();
  await typeLines(page, ['31', '4', '32', '5', '', '6']);
  await expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();
  expect(answered).toBe(2);
  await expect(inHand.getByRole('alert')).toHaveText('The run wants its number, as it stands on the label.');
  await expect(inHand.getByLabel('Run number', { exact: true })).toBeFocused();
  await expect(inHand.getByLabel('Rolls', { exact: true })).toHaveValue('6');
  await typeLines(page, ['33', '']);
  await expect(inHand.getByRole('alert')).toHaveCount(0);
  const entries = () => inHand.getByRole('textbox', { name: /of entry/ }).evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));
  await expect.poll(() => entries()).toEqual(['2207', '2', '31', '4', '32', '5', '33', '6']);
  await inHand.getByRole('button', { name: 'Remove entry 3, run 32' }).press('Enter');
  await expect.poll(() => entries()).toEqual(['2207', '2', '31', '4', '33', '6']);
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Remove entry 3, run 33');
  await page.keyboard.press('Enter');
  await expect.poll(() => entries()).toEqual(['2207', '2', '31', '4']);
  await expect(inHand.getByLabel('Pattern', { exact: true })).toBeFocused();
});

test('the order is read whole in a narrow window', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  const order = page.getByRole('table', { name: /bulk order/ });
  for (const width of [899, 770, 700]) {
    await page.setViewportSize({ width, height: 800 });
    await expect(order.getByRole('columnheader', { name: 'As sold' })).toHaveCount(0);
    await expect(order.getByRole('columnheader', { name: 'Room by room' })).toHaveCount(0);
    await expect(order.getByRole('row', { name: /^Run 2214/ }).getByRole('cell').filter({ has: page.getByRole('button', { name: /^rolls to buy/ }) })).toContainText('8 packs of 2 + 1 roll');
    expect(await page.getByRole('main').evaluate((sheet) => sheet.scrollWidth - sheet.clientWidth)).toBe(0);
  }
});

test('a document that is no house is refused with every fault, and nothing is made of it', async ({ page, running }) => {
  await page.goto(running.address);
  const document = { format: 'struckline-house', version: 1, name: 'Bad', rooms: [{ id: 'a', name: 'A', walls: [{ id: 'A', length: '-3 m', height: '2.4 m', colour: 'red' }] }] };
  const file = page.getByLabel('Read in a house document (JSON)');
  await file.setInputFiles({ name: 'bad.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(document)) });
  await expect(page.getByRole('alert')).toContainText('rooms[0].walls[0].colour is not a key of a wall');
  await file.setInputFiles({ name: 'noise.png', mimeType: 'image/png', buffer: Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]) });
  await expect(page.getByRole('alert')).toContainText('noise.png was not taken. Struckline takes house files');
  await file.setInputFiles({ name: 'noise.json', mimeType: 'application/json', buffer: Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]) });
  await expect(page.getByRole('alert')).toContainText('not JSON text');
  await expect(page.getByText('No house here yet')).toBeVisible();
});

test('a document read in and written out again gives the same house', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Write out' }).click();
  const written = await (await download).path();
  await page.getByRole('button', { name: 'All houses' }).click();
  await page.getByLabel('Read in a house document (JSON)').setInputFiles(written);
  await expect(page.getByRole('row', { name: /^Run 2214/ })).toContainText('Front bedroom, Nursery');
  await expect(page.getByLabel('Name of the house')).toHaveValue('Larkfield, Mill Lane 3');
});

test('lining and a mural are typed in, hung, drawn and ordered', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Coverings');
  await page.getByRole('button', { name: 'Lining', exact: true }).click();
  const draft = page.getByRole('region', { name: 'A new lining' });
  await draft.getByLabel('Name').fill('Plain lining');
  await draft.getByLabel('Width').fill('56 cm');
  await draft.getByLabel('Length of a roll').fill('10.05 m');
  await page.getByRole('button', { name: 'Add this lining' }).click();
  await page.getByRole('button', { name: 'Study', exact: true }).click();
  await expect(page.getByRole('group', { name: 'Study, band lining' })).toContainText(/\d+ lengths, \d+ rolls if cut alone/);

  await page.getByRole('button', { name: 'Mural', exact: true }).click();
  await page.getByRole('button', { name: 'Add this mural' }).click();
  await expect(page.getByRole('alert')).toContainText('The mural wants the number of its panels');
  const mural = page.getByRole('region', { name: 'A new mural' });
  await mural.getByLabel('Name').fill('Still lake');
  await mural.getByLabel('Panels', { exact: true }).fill('4');
  await mural.getByLabel('Width of a panel').fill('1 m');
  await mural.getByLabel('Height of the panels').fill('2.5 m');
  await page.getByRole('button', { name: 'Add this mural' }).click();
  await page.getByRole('button', { name: 'Bathroom', exact: true }).click();
  await expect(page.getByText(/Bathroom: Band overlaps the band "upper" of T-118 on wall A/)).toBeVisible();

  await goTo(page, 'Set out');
  await page.getByRole('button', { name: 'Study', exact: true }).click();
  await page.getByRole('group', { name: 'Bands of Study' }).getByRole('button', { name: /Plain lining/ }).click();
  await expect(page.getByRole('application')).toHaveAttribute('aria-label', /Plain lining in \d+ lengths/);
  await expect(page.getByRole('heading', { name: 'Hung across' })).toBeVisible();
  await goTo(page, 'Order');
  await expect(page.getByRole('row', { name: /run not known yet Study .*rolls needed: \d+/ })).toBeVisible();
});

test('goods sold by the length, and strips in the sequence of the roll, are ordered and cut so', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Coverings');
  await page.getByRole('button', { name: /^T-118/ }).click();
  await page.getByLabel('Sold', { exact: true }).selectOption('by the length');
  await page.getByLabel("Supplier's longest piece").fill('30 yd');
  await page.keyboard.press('Tab');
  await page.getByLabel('Price of one, USD').fill('twelve');
  await page.keyboard.press('Tab');
  await expect(page.getByText(/"twelve"/)).toBeVisible();
  await page.getByLabel('Price of one, USD').fill('12.00');
  await page.keyboard.press('Tab');
  await goTo(page, 'Order');
  const line = page.getByRole('table', { name: /bulk order/ }).locator('tbody').filter({ hasText: 'T-118' });
  await expect(line).toContainText(/\d+ × 1 yd/);
  const [, yards] = /(\d+) × 1 yd/.exec((await line.textContent()) ?? '') ?? [];
  expect(Number(yards)).toBeGreaterThan(0);
  await expect(line.getByRole('button', { name: `price: ${(Number(yards) * 12).toFixed(2)}. Show the working` })).toBeVisible();
  await line.getByRole('button', { name: /^length to buy/ }).click();
  await expect(page.getByRole('region', { name: 'Working of length to buy' })).toContainText(`Sold by 1 yd: ${yards} × 1 yd`);
  await page.keyboard.press('Escape');

  await goTo(page, 'Coverings');
  await page.getByRole('button', { name: /^T-118/ }).click();
  await page.getByLabel('Sold', { exact: true }).selectOption('in rolls');
  await expect(page.getByLabel('Length of a roll')).toHaveValue('30 yd');
  await page.getByLabel('Cut', { exact: true }).selectOption('in the roll’s own sequence');
  await expect(page.getByText(/^T-118 is cut in the sequence of its rolls/)).toBeVisible();
});

test('where the program behind the window is gone, nothing is shown as if it had been saved', async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Survey');
  await running.stop();
  const length = page.getByRole('textbox', { name: 'Length of wall A' });
  await length.fill("12' 6");
  await page.keyboard.press('Tab');
  await expect(page.getByText(/does not answer\. What was saved is in the house file/).first()).toBeVisible();
  await expect(length).toHaveValue("12' 6");
  await expect(page.getByText('closes', { exact: true })).toBeVisible();
  await expect(page.getByRole('status').filter({ hasText: 'Not saved' })).toBeVisible();
});

test('a way to hang a room is taken from those on offer, its line dragged, and left to the plan again', LONG, async ({ page, running }) => {
  await openDemo(page, running.address);
  await goTo(page, 'Set out');
  await page.getByRole('button', { name: 'Hall', exact: true }).click();
  const start = page.getByRole('region', { name: 'Start and kill point' });
  const at = start.getByLabel('From its left end').first();
  const offers = page.getByRole('region', { name: 'Other ways to hang it' }).getByRole('button');
  await expect(offers.first()).toContainText(/\d+ rolls\. The ends meet .*slivers?\./);
  const best = await at.inputValue();
  await offers.nth(2).click();
  await expect(page.getByRole('button', { name: 'Undo: change layout of band main in Hall' })).toBeEnabled();
  await expect(at).not.toHaveValue(best);
  const taken = await at.inputValue();

  const line = await page.locator('[data-subject="start start"]').first().boundingBox();
  await page.mouse.move(line!.x + line!.width / 2, line!.y + line!.height / 2);
  await page.mouse.down();
  await page.mouse.move(line!.x + 60, line!.y + line!.height / 2, { steps: 6 });
  await expect(at).toHaveValue(taken);
  await page.mouse.up();
  await expect(at).not.toHaveValue(taken);
  await expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();

  await page.getByRole('button', { name: 'Leave it to the plan again' }).click();
  await expect(at).toHaveValue(best);
});

for (const colorScheme of ['light', 'dark'] as const) {
  for (const contrast of ['no-preference', 'more'] as const) {
    test(`axe finds nothing in any place, ${colorScheme}, contrast ${contrast}`, LONG, async ({ page, running }) => {
      await page.emulateMedia({ colorScheme, contrast });
      await page.goto(running.address);
      await expect(page.getByRole('heading', { name: 'Struckline' })).toBeVisible();
      await expectNoViolations(page);
      await page.getByRole('button', { name: 'Open a demo house' }).click();
      await expect(page.getByRole('table', { name: /bulk order/ })).toBeVisible();
      for (const place of PLACES) {
        await goTo(page, place);
        await page.waitForTimeout(200);
        await expectNoViolations(page);
      }
    });
  }
}

async function expectNoViolations(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
}

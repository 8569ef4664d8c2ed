import type { Page } from '@playwright/test';
import { accessibleNameOfFocus, tabTo, typeLines } from './keyboard.ts';
import { expect, LONG, test } from './struckline.ts';

async function openSurvey(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.getByRole('button', { name: 'Open a demo house' }).click();
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: /^Survey/ }).click();
}

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });

test('reveals, floor lines, leaning corners, rails and furniture are typed with the keyboard and found again', LONG, async ({ page, running }) => {
  await openSurvey(page, running.address);
  await tabTo(page, 'Wall B, 1 openings');
  await page.keyboard.press('Enter');
  const depth = field(page, 'Depth of the reveal of window');
  const sides = page.getByRole('group', { name: 'Covered in the reveal of window' });
  await expect(depth).toHaveValue('');
  await expect(sides).toHaveCount(0);

  await tabTo(page, 'Depth of the reveal of window');
  await typeLines(page, ['deep']);
  await expect(page.getByText(/‘deep’ is not a unit of length.*Nothing was changed/)).toBeVisible();
  await expect(depth).toHaveValue('deep');
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
  await tabTo(page, 'Depth of the reveal of window', 'Shift+Tab');
  await page.keyboard.type('5 1/2');
  await page.keyboard.press('Tab');
  await expect(depth).toHaveValue('5 1/2"');
  await expect(sides.getByRole('button', { pressed: true })).toHaveText(['left', 'right', 'head']);
  await expect(page.getByRole('button', { name: 'Undo: change reveal of window on wall B in Front bedroom' })).toBeEnabled();
  await tabTo(page, 'sill');
  await page.keyboard.press('Space');
  await expect(sides.getByRole('button', { pressed: true })).toHaveText(['left', 'right', 'head', 'sill']);

  await tabTo(page, 'Floor line');
  await typeLines(page, ['1 to 2 to 3']);
  // What is refused keeps the focus.
  await expect(page.getByText('A floor line is one length, or two for the left and the right end')).toBeVisible();
  await expect.poll(() => accessibleNameOfFocus(page)).toBe('Floor line');
  await page.keyboard.press('Control+A');
  await typeLines(page, ['0 to 1/2 in', '3/8']);
  await expect(field(page, 'Floor line')).toHaveValue('0" to 1/2 in');
  await expect(field(page, 'Lean of its right corner')).toHaveValue('3/8"');
  await expect(page.getByText(/The corner at the right of wall B in Front bedroom leans by 3\/8"/)).toBeVisible();
  await tabTo(page, 'Looked at most', 'Shift+Tab');
  await page.keyboard.press('Space');
  await expect(page.getByRole('button', { name: 'Undo: change wall looked at most of Front bedroom' })).toBeEnabled();

  await tabTo(page, 'Name of the next rail');
  await typeLines(page, ['picture rail', '80', '2 1/2', '']);
  await expect(field(page, 'Floor to picture rail')).toHaveValue('80"');
  await expect(field(page, 'Walls of picture rail')).toHaveValue('all');
  await expect(field(page, 'Name of the next rail')).toBeFocused();
  await typeLines(page, ['dado rail', '95', '3']);
  await page.keyboard.type('b, q');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert').filter({ hasText: '‘q’ is no wall of this room. This takes ‘all’, or some of A, B, C, D.' })).toBeVisible();
  await expect(field(page, 'Walls of the next rail')).toHaveValue('b, q');
  await page.keyboard.press('Control+A');
  await typeLines(page, ['d b']);
  await expect(page.getByRole('alert').filter({ hasText: `Height above the floor is 95": the rail "dado-rail" would stand above wall B, which is 8' high` })).toBeVisible();
  await expect(field(page, 'Floor to the next rail')).toBeFocused();
  await typeLines(page, ['32', '', '']);
  await expect(field(page, 'Walls of dado rail')).toHaveValue('B, D');

  await tabTo(page, 'Name of the next piece');
  await typeLines(page, ['headboard', '', '2 ft', '', '']);
  await expect(page.getByRole('alert').filter({ hasText: 'The piece wants its width.' })).toBeVisible();
  await expect(field(page, 'width of the next piece')).toBeFocused();
  await typeLines(page, [`9'`, '4 ft']);
  await expect(page.getByRole('alert').filter({ hasText: `would end at 11', past the end of wall B at 10' 2"` })).toBeVisible();
  await tabTo(page, 'width of the next piece');
  await typeLines(page, [`5'`, '']);
  await expect(field(page, 'Wall of headboard')).toHaveValue('B');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();

  await page.reload();
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: /^Survey/ }).click();
  await page.getByRole('button', { name: 'Wall B, 1 openings' }).click();
  for (const [name, value] of [
    ['Depth of the reveal of window', '5 1/2"'],
    ['Floor line', '0" to 1/2 in'],
    ['Lean of its right corner', '3/8"'],
    ['Height of picture rail', '2 1/2"'],
    ['Floor to dado rail', '32"'],
    ['Walls of dado rail', 'B, D'],
    ['Distance from the left of headboard', '2 ft'],
    ['width of headboard', `5'`],
  ] as const) {
    await expect(field(page, name)).toHaveValue(value);
  }
  await expect(sides.getByRole('button', { pressed: true })).toHaveText(['left', 'right', 'head', 'sill']);
  await expect(field(page, 'Looked at most')).toBeChecked();

  await page.getByRole('button', { name: 'Undo: change furniture of Front bedroom' }).click();
  await expect(field(page, 'width of headboard')).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo: change rails of Front bedroom' }).click();
  await expect(field(page, 'Name of dado rail')).toHaveCount(0);
  await expect(field(page, 'Name of picture rail')).toHaveValue('picture rail');
});

test('what is emptied goes again, and what is needed stays', LONG, async ({ page, running }) => {
  await openSurvey(page, running.address);
  await page.getByRole('button', { name: 'Wall B, 1 openings' }).click();
  const sides = page.getByRole('group', { name: 'Covered in the reveal of window' });
  const depth = field(page, 'Depth of the reveal of window');
  await depth.fill('10 cm');
  await page.keyboard.press('Enter');
  for (const side of ['left', 'right', 'head']) await sides.getByRole('button', { name: side }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'A reveal is covered on one side at least' })).toBeVisible();
  await expect(sides.getByRole('button', { pressed: true })).toHaveText(['head']);
  await depth.fill('');
  await page.keyboard.press('Enter');
  await expect(sides).toHaveCount(0);

  // Left by a click on another wall, what was typed is taken for the wall beside which it was typed.
  await field(page, 'Floor line').fill('2 cm');
  await page.getByRole('textbox', { name: 'Length of wall C' }).click();
  await expect(page.getByRole('group', { name: 'More of wall C' })).toBeVisible();
  await expect(field(page, 'Floor line')).toHaveValue('');
  await expect(page.getByRole('button', { name: 'Undo: change floor line of wall B in Front bedroom' })).toBeEnabled();
  await page.getByRole('button', { name: /^Wall B/ }).first().click();
  await expect(field(page, 'Floor line')).toHaveValue('2 cm');
  await field(page, 'Floor line').fill('');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();
  await expect(field(page, 'Floor line')).toHaveValue('');

  await page.getByRole('button', { name: 'Study', exact: true }).click();
  await page.getByRole('button', { name: 'Wall D, 1 openings' }).click();
  await expect(field(page, 'What shelves is')).toHaveValue('furniture');
  await expect(page.getByLabel(/^Depth of the reveal/)).toHaveCount(0);

  // Half a rail waits in its room while another is looked at.
  await field(page, 'Name of the next rail').fill('chair rail');
  await page.getByRole('button', { name: 'Hall', exact: true }).click();
  await expect(field(page, 'Name of the next rail')).toHaveValue('');
  await page.getByRole('button', { name: 'Study', exact: true }).click();
  await expect(field(page, 'Name of the next rail')).toHaveValue('chair rail');
  await field(page, 'Floor to the next rail').fill('90 cm');
  await field(page, 'Height of the next rail').fill('wide');
  await page.getByRole('button', { name: 'Add the next rail' }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'The rail wants how high it is itself.' })).toBeVisible();
  await expect(field(page, 'Height of the next rail')).toHaveValue('wide');
  await field(page, 'Height of the next rail').fill('6 cm');
  await page.getByRole('button', { name: 'Add the next rail' }).click();
  await expect(field(page, 'Height of chair rail')).toHaveValue('6 cm');
  await page.getByRole('button', { name: 'Remove chair rail' }).click();
  await expect(field(page, 'Height of chair rail')).toHaveCount(0);
});

test('a rail on which a covering begins is not taken away under it', LONG, async ({ page, running }) => {
  await openSurvey(page, running.address);
  const places = page.getByRole('navigation', { name: 'Places' });
  await field(page, 'Name of the next rail').fill('dado rail');
  await typeLines(page, ['']);
  await typeLines(page, ['32', '3', '']);
  await expect(field(page, 'Floor to dado rail')).toHaveValue('32"');
  await places.getByRole('button', { name: /^Coverings/ }).click();
  const hung = page.getByRole('group', { name: /^Front bedroom, band/ });
  await hung.getByLabel('From', { exact: true }).fill('dado rail');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: /^Undo: change lower edge of band/ })).toBeEnabled();
  await places.getByRole('button', { name: /^Survey/ }).click();
  await page.getByRole('button', { name: 'Remove dado rail' }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'begins or ends at this rail; give it another edge in Coverings first. Nothing was changed.' })).toBeVisible();
  await expect(field(page, 'Floor to dado rail')).toHaveValue('32"');
});

test('a length is typed as a sum, is told while it is typed, and stays as it was typed', async ({ page, running }) => {
  await page.goto(running.address);
  await page.getByLabel('Name').fill('Mill Lane 9');
  await page.getByRole('button', { name: 'Start this house' }).click();
  await page.getByRole('button', { name: 'Add the first room' }).click();
  await typeLines(page, ['Hall', '', `8'`, `12' 4" - 3 1/2"`, '']);
  const wall = field(page, 'Length of wall A');
  await expect(wall).toHaveValue(`12' 4" - 3 1/2"`);
  await expect(page.getByText(`12' 0 1/2" round`)).toBeVisible();

  await wall.fill(`12' 4 - 3`);
  await expect(page.getByText(`= 12' 1"`)).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(wall).toHaveValue(`12' 4" - 3"`);
  await expect(page.getByRole('status').filter({ hasText: 'Saved' })).toBeVisible();
  await page.reload();
  await expect(wall).toHaveValue(`12' 4" - 3"`);

  await wall.fill(`12' - 4"`);
  await page.keyboard.press('Enter');
  await expect(page.getByText(`can be read in two ways; write 12' 4" for one length, or 12' minus 4" to take away. Nothing was changed.`)).toBeVisible();
  await expect(wall).toHaveValue(`12' - 4"`);
});

test('a room is copied, and copied mirrored, with the keyboard', LONG, async ({ page, running }) => {
  await page.goto(running.address);
  await page.getByLabel('Name').fill('Mill Lane 11');
  await page.getByRole('button', { name: 'Start this house' }).click();
  await page.getByRole('button', { name: 'Add the first room' }).click();
  await typeLines(page, ['Bed 1', 'Upper floor', '2.4 m', '4 m', '', '3 m', '', '4 m', '', '2.9 m', '']);
  await tabTo(page, 'Copy Bed 1');
  await page.keyboard.press('Enter');
  await expect(field(page, 'Room')).toBeFocused();
  await expect(field(page, 'Room')).toHaveValue('Bed 2');
  await expect(field(page, 'Length of wall D')).toHaveValue('2.9 m');

  await tabTo(page, 'Copy it mirrored');
  await page.keyboard.press('Enter');
  await expect(field(page, 'Room')).toHaveValue('Bed 3');
  await expect(field(page, 'Storey')).toHaveValue('Upper floor');
  await expect(field(page, 'Length of wall B')).toHaveValue('2.9 m');
  await expect(field(page, 'Length of wall D')).toHaveValue('3 m');
  await page.getByRole('button', { name: 'Undo: add room Bed 3' }).click();
  await expect(field(page, 'Room')).toHaveValue('Bed 1');
});

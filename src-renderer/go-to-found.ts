import { tick } from 'svelte';
import { sheetOf } from './places/deliveries/deliveries.svelte.ts';
import { lookingAt } from './places/order/looking-at.svelte.ts';
import type { AppState } from './state/app.svelte.ts';
import type { Found } from './state/find-in-house.ts';
import type { HouseState } from './state/house.svelte.ts';

/** What is not planned yet may take that long until it is drawn. */
const AWAITED_MILLISECONDS = 10_000;

/** Goes to what was found: its place, its room, its row or button, which is shown and focused. */
export async function goToFound(app: AppState, house: HouseState, { place, room, mark }: Found): Promise<void> {
  if (room !== undefined) house.roomId = room;
  if (place === 'order') {
    // Nothing is filtered away that was asked for by name.
    lookingAt.words = '';
    lookingAt.view = mark?.startsWith('supplier ') ? 'supplier' : mark?.startsWith('line ') ? 'pattern' : lookingAt.view;
  }
  if (place === 'deliveries') sheetOf(house).packageFilter = '';
  app.goTo(place);
  await tick();
  const sheet = document.getElementById('place')!;
  if (mark === null) sheet.focus();
  else showWhenThere(sheet, mark);
}

/** Shows what bears a mark as soon as it is drawn, unless the user does something else meanwhile. */
function showWhenThere(sheet: HTMLElement, mark: string): void {
  const found = () => [...sheet.querySelectorAll<HTMLElement>('[data-find]')].find((element) => element.dataset['find'] === mark);
  const there = found();
  if (there) return show(there);
  sheet.focus();
  const controller = new AbortController();
  const drawn = new MutationObserver(() => {
    const element = found();
    if (!element) return;
    controller.abort();
    show(element);
  });
  drawn.observe(sheet, { childList: true, subtree: true });
  const tooLate = setTimeout(() => controller.abort(), AWAITED_MILLISECONDS);
  controller.signal.addEventListener('abort', () => {
    drawn.disconnect();
    clearTimeout(tooLate);
  });
  for (const event of ['pointerdown', 'keydown'] as const) addEventListener(event, () => controller.abort(), { signal: controller.signal, capture: true });
}

/** A button is what chooses the thing and is pressed for it; in a row the first of its controls has the focus, but none that a key would tick. */
function show(element: HTMLElement): void {
  const control = element.matches('button') ? element : element.querySelector<HTMLElement>('input:not(:disabled, [type=checkbox]), select:not(:disabled), button:not(:disabled)');
  if (!control) element.tabIndex = -1;
  (control ?? element).focus({ preventScroll: true });
  element.scrollIntoView({ block: 'center', inline: 'nearest' });
  if (element instanceof HTMLButtonElement) element.click();
  else if (control instanceof HTMLInputElement) control.select();
}

import type { Page } from '@playwright/test';

/** Goes by Tab to the control of that accessible name, as somebody without a pointer does. */
export async function tabTo(page: Page, name: string | RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  const seen: string[] = [];
  for (let presses = 0; presses < 250; presses += 1) {
    await page.keyboard.press(key);
    const reached = await accessibleNameOfFocus(page);
    if (typeof name === 'string' ? reached === name : name.test(reached)) return;
    seen.push(reached);
  }
  throw new Error(`Tab never reaches ${String(name)}; it went through ${[...new Set(seen)].join(' | ')}`);
}

/** Types lines into a sheet, Enter after each, without a pause. */
export async function typeLines(page: Page, lines: readonly string[]): Promise<void> {
  for (const line of lines) {
    await page.keyboard.type(line);
    await page.keyboard.press('Enter');
  }
}

export async function accessibleNameOfFocus(page: Page): Promise<string> {
  return page.evaluate(() => {
    const element = document.activeElement;
    if (!(element instanceof HTMLElement) || element === document.body) return '';
    const label = element.getAttribute('aria-label');
    if (label) return label;
    if (element instanceof HTMLInputElement || element instanceof HTMLSelectElement) {
      return [...(element.labels ?? [])].map((one) => one.firstChild?.textContent ?? '').join(' ').trim();
    }
    return (element.textContent ?? '').replace(/\s+/g, ' ').trim();
  });
}

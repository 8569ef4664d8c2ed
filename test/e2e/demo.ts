import type { Page } from '@playwright/test';
import { expect } from './struckline.ts';

export async function openDemo(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.getByRole('button', { name: 'Open a demo house' }).click();
  await expect(page.getByRole('table', { name: /bulk order/ })).toBeVisible();
}

export async function goTo(page: Page, place: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: new RegExp(`^${place}`) }).click();
}

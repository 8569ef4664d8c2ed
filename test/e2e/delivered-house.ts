import type { Page } from '@playwright/test';
import { encodeHouse } from '../../shared-core/house/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { goTo } from './demo.ts';
import { expect } from './struckline.ts';

/** A loose part of a house document. */
type Facts = Readonly<Record<string, unknown>>;

/** The GTIN of a double roll of K-2041 in the house below; invented, with a right check digit. */
export const FERN_DOUBLE = '06291041500213';

/** The demo house with its order placed: two runs of K-2041 and of the others any one run. */
export function orderedHouse(more: Facts = {}): Facts {
  const house = encodeHouse(demoHouse());
  const coverings = house.coverings!.map((covering) =>
    covering.id === 'fern' && covering.kind === 'wallcovering' ? { ...covering, soldIn: covering.soldIn!.map((unit) => (unit.rolls === 2 ? { ...unit, gtin: FERN_DOUBLE } : unit)) } : covering,
  );
  const line = (covering: string, rolls: number, run?: string) => ({ covering, rolls, ...(run === undefined ? {} : { run }) });
  const order = {
    id: 'N-1',
    placed: '2026-03-02',
    lines: [line('fern', 17, '2214'), line('fern', 6, '2207'), line('reed', 20), line('oat', 7), line('ivy', 11)],
  };
  return { ...house, name: 'Ordered', coverings, offers: [], orders: [order], ...more };
}

/** Reads a house document in and goes to its deliveries. */
export async function openDelivered(page: Page, address: string, document: Facts): Promise<void> {
  await page.goto(address);
  await page.getByLabel('Read in a house document (JSON)').setInputFiles({ name: 'house.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(document)) });
  await expect(page.getByRole('table', { name: /bulk order/ })).toBeVisible();
  await goTo(page, 'Deliveries');
  await expect(page.getByRole('heading', { name: 'What has come' })).toBeVisible();
}

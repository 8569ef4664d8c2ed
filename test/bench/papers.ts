import { PaperDesk } from '../../src-main/office/paper-desk.ts';
import { benchHouse } from './houses.ts';

/**
 * Measures the whole paperwork of houses: every paper by itself in each of its forms, as a folder of them is written.
 *
 * Times are those of one run of one machine; what they are compared by is their ratio.
 */
const ROOMS = [10, 20, 40];
const WALLS = 6;

const rows = [];
for (const [place, rooms] of [ROOMS[0]!, ...ROOMS].entries()) {
  const desk = new PaperDesk({ house: benchHouse(rooms, WALLS, place), revision: 1, changed: '2026-03-02T12:00:00.000Z' });
  const plan = await timed(async () => desk.plan.order.length);
  let [pages, bytes] = [0, 0];
  const papers = await timed(async () => {
    for (const paper of desk.list().filter(({ isTogether }) => !isTogether)) {
      for (const form of paper.forms) {
        const made = await desk.make(paper, form, 'a4');
        pages += made?.pages ?? 0;
        bytes += made?.bytes.length ?? 0;
      }
    }
  });
  rows.push({ rooms, pages, 'plan ms': Math.round(plan), 'papers ms': Math.round(papers), 'papers / plan': Math.round((papers / plan) * 10) / 10, 'ms a page': Math.round((papers / pages) * 10) / 10, KiB: Math.round(bytes / 1024) });
}
// The first one also paid for loading everything.
console.table(rows.slice(1));

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

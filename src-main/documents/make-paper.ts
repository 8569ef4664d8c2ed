import { type PaperForm, type PaperListing, type PaperSize, roomsAtWork, toBePlaced } from '../../shared-core/plan/index.ts';
import { calendarFile } from './calendar-file.ts';
import { calendarSheet } from './calendar-sheet.ts';
import { cutListSheets } from './cut-list.ts';
import { goodsInSheets } from './goods-in.ts';
import { jobSheet } from './job-sheet.ts';
import { orderOf } from './orders.ts';
import { orderPaperCsv, orderMail, orderSheet } from './order-sheet.ts';
import type { PaperFacts } from './paper-facts.ts';
import type { Sheet } from './pdf/sheet.ts';
import { writePdf } from './pdf/write-pdf.ts';
import { quoteSheet } from './quote-sheet.ts';
import { recordSheets } from './record.ts';
import { shoppingList } from './shopping-list.ts';

export interface MadePaper {
  readonly title: string;
  readonly ending: string;
  /** Its media type. */
  readonly type: string;
  readonly bytes: Uint8Array;
  /** Of a PDF. */
  readonly pages: number | null;
  /** Letters that the fonts of the papers don't have, each once. */
  readonly unset: readonly string[];
}

const FILES: Readonly<Record<PaperForm, { readonly ending: string; readonly type: string }>> = {
  pdf: { ending: '.pdf', type: 'application/pdf' },
  csv: { ending: '.csv', type: 'text/csv' },
  text: { ending: '.txt', type: 'text/plain' },
  ics: { ending: '.ics', type: 'text/calendar' },
};

/** A paper that a house has, in one of its forms. */
export async function makePaper(facts: PaperFacts, listing: PaperListing, form: PaperForm, size: PaperSize): Promise<MadePaper> {
  const { title } = listing;
  if (form === 'pdf') return { title, ...FILES.pdf, ...(await writePdf(sheetsOf(facts, listing, size), { title, house: facts.house.name, size, stamp: facts.stamp })) };
  return { title, ...FILES[form], bytes: new TextEncoder().encode(textOf(facts, listing, form)), pages: null, unset: [] };
}

function sheetsOf(facts: PaperFacts, { kind, of }: PaperListing, size: PaperSize): readonly Sheet[] {
  switch (kind) {
    case 'order':
    case 'placed-order':
      return [orderSheet(facts, orderOf(facts, { kind, of }))];
    case 'orders':
      return toBePlaced(facts.house, facts.plan.order).map(({ supplier }) => orderSheet(facts, orderOf(facts, { kind: 'order', of: supplier })));
    case 'goods-in':
      return goodsInSheets(facts);
    case 'job-sheet':
      return [jobSheet(facts, of!, size)];
    case 'job-sheets':
      return roomsAtWork(facts.house, facts.plan).map((room) => jobSheet(facts, room, size));
    case 'cut-list':
      return cutListSheets(facts);
    case 'shopping-list':
      return [shoppingList(facts)];
    case 'quote':
      return [quoteSheet(facts)];
    case 'calendar':
      return [calendarSheet(facts)];
    case 'record':
      return recordSheets(facts);
  }
}

function textOf(facts: PaperFacts, { kind, of }: PaperListing, form: Exclude<PaperForm, 'pdf'>): string {
  if (form === 'ics') return calendarFile(facts.house, facts.plan, new Date(facts.stamp.changed ?? 0))!;
  const order = orderOf(facts, { kind, of });
  return form === 'csv' ? orderPaperCsv(facts, order) : orderMail(facts, order);
}

import { getDocument, VerbosityLevel } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { TextItem } from 'pdfjs-dist/types/src/display/api.js';

/** A PDF as a reader that did not write it finds it: the words of each page in the order in which they stand, and what is said of the file. */
export interface ReadPdf {
  readonly pages: readonly string[];
  readonly info: Readonly<Record<string, unknown>>;
  /** In points. */
  readonly size: readonly [number, number];
  readonly language: string | null;
  /** How far to the right any word stands, in points from the left edge. */
  readonly rightmost: number;
}

/** Spaces of any number are one, as lines are broken where they will; a font has one letter for micro and the Greek mu. */
export function inOneLine(text: string): string {
  return text.replaceAll(/\s+/g, ' ').replaceAll('\u00B5', '\u03BC').trim();
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: VerbosityLevel.ERRORS });
  const document = await task.promise;
  try {
    const pages = [];
    let rightmost = 0;
    for (let number = 1; number <= document.numPages; number += 1) {
      const { items } = await (await document.getPage(number)).getTextContent();
      const words = items.filter((item): item is TextItem => 'str' in item);
      rightmost = words.reduce((most, { str, transform, width }) => (str.trim() === '' ? most : Math.max(most, Number(transform[4]) + width)), rightmost);
      pages.push(inOneLine(words.map(({ str, hasEOL }) => `${str}${hasEOL ? ' ' : ''}`).join('')));
    }
    const { info } = await document.getMetadata();
    const { width, height } = (await document.getPage(1)).getViewport({ scale: 1 });
    return { pages, info: info as Readonly<Record<string, unknown>>, size: [width, height], language: (info as { Language?: string }).Language ?? null, rightmost };
  } finally {
    await task.destroy();
  }
}

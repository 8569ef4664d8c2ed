import { getDocument, VerbosityLevel } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { TextItem } from 'pdfjs-dist/types/src/display/api.js';

/** A PDF as a reader that did not write it finds it: the words of each page in the order in which they stand, and what is said of the file. */
export interface ReadPdf {
  readonly pages: readonly string[];
  readonly info: Readonly<Record<string, unknown>>;
  /** In points. */
  readonly size: readonly [number, number];
  readonly language: string | null;
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
    for (let number = 1; number <= document.numPages; number += 1) {
      const { items } = await (await document.getPage(number)).getTextContent();
      pages.push(inOneLine(items.filter((item): item is TextItem => 'str' in item).map(({ str, hasEOL }) => `${str}${hasEOL ? ' ' : ''}`).join('')));
    }
    const { info } = await document.getMetadata();
    const { width, height } = (await document.getPage(1)).getViewport({ scale: 1 });
    return { pages, info: info as Readonly<Record<string, unknown>>, size: [width, height], language: (info as { Language?: string }).Language ?? null };
  } finally {
    await task.destroy();
  }
}

import { say } from '../../../shared-core/words/index.ts';
import type { PdfPages } from '../../parts/pdf-pages.ts';
import { printPages } from './print-pages.ts';

/** Makes the pages of a paper ready and prints them. */
export class PaperPrinting {
  /** Which page is being made ready, counted from 1; null when none is. */
  progress = $state.raw<{ readonly number: number; readonly of: number } | null>(null);
  trouble = $state<string | null>(null);
  #controller: AbortController | null = null;

  async run(pages: PdfPages): Promise<void> {
    if (this.#controller) return;
    const { signal } = (this.#controller = new AbortController());
    this.trouble = null;
    try {
      await printPages(pages, signal, (number) => (this.progress = { number, of: pages.sizes.length }), () => (this.progress = null));
    } catch {
      if (!signal.aborted) this.trouble = say`The pages could not be made ready for the printer. Save the PDF and print it from another program.`;
    } finally {
      this.progress = null;
      this.#controller = null;
    }
  }

  stop(): void {
    this.#controller?.abort();
  }
}

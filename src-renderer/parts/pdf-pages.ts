// The build for browsers that are older than the newest: the loopback window is opened in whichever is installed.
import { getDocument, type PDFDocumentLoadingTask, type PDFPageProxy, PDFWorker, TextLayer } from 'pdfjs-dist/legacy/build/pdf.mjs';
import ReadingWorker from 'pdfjs-dist/legacy/build/pdf.worker.mjs?worker';

/** In points. */
export interface PageSize {
  readonly width: number;
  readonly height: number;
}

let worker: PDFWorker | undefined;

/** The pages of a PDF, read in a worker; nothing is fetched for them, as their fonts lie in the PDF. */
export class PdfPages {
  readonly sizes: readonly PageSize[];
  readonly #task: PDFDocumentLoadingTask;
  readonly #pages: readonly PDFPageProxy[];

  private constructor(task: PDFDocumentLoadingTask, pages: readonly PDFPageProxy[]) {
    this.#task = task;
    this.#pages = pages;
    this.sizes = pages.map((page) => {
      const { width, height } = page.getViewport({ scale: 1 });
      return { width, height };
    });
  }

  static async open(bytes: Uint8Array): Promise<PdfPages> {
    worker ??= PDFWorker.create({ port: new ReadingWorker() });
    // What is given to the worker is gone from here.
    const task = getDocument({ data: bytes.slice(), worker, useSystemFonts: false, useWasm: false, useWorkerFetch: false, enableXfa: false });
    const document = await task.promise;
    return new PdfPages(task, await Promise.all(Array.from({ length: document.numPages }, (_, index) => document.getPage(index + 1))));
  }

  /** Draws a page so many pixels wide; null where that was given up. Pages count from 1. */
  async draw(number: number, width: number, signal: AbortSignal, intent: 'display' | 'print' = 'display'): Promise<HTMLCanvasElement | null> {
    const page = this.#pages[number - 1]!;
    const viewport = page.getViewport({ scale: width / this.sizes[number - 1]!.width });
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(viewport.width);
    canvas.height = Math.round(viewport.height);
    if (signal.aborted) return null;
    const drawing = page.render({ canvas, viewport, intent });
    const giveUp = () => drawing.cancel();
    signal.addEventListener('abort', giveUp);
    try {
      await drawing.promise;
      return canvas;
    } catch (error) {
      if (signal.aborted) return null;
      throw error;
    } finally {
      signal.removeEventListener('abort', giveUp);
    }
  }

  /** A page's text, each piece of it where it is drawn, in the measure of `--total-scale-factor`: pixels for a point. */
  async text(number: number): Promise<HTMLElement> {
    const page = this.#pages[number - 1]!;
    const container = document.createElement('div');
    await new TextLayer({ textContentSource: page.streamTextContent(), container, viewport: page.getViewport({ scale: 1 }) }).render();
    return container;
  }

  close(): void {
    void this.#task.destroy();
  }
}

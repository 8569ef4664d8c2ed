import type { PageSize, PdfPages } from '../../parts/pdf-pages.ts';

const DOTS_PER_INCH = 200;
const POINTS_PER_INCH = 72;

/** Everything else is hidden; each page stands on a sheet of its own size, without the margins of printed screens. */
function printStyle(sizes: readonly PageSize[]): string {
  const named = sizes.map(({ width, height }, index) => `@page sheet-${index} { size: ${width}pt ${height}pt; margin: 0; @top-left { content: none } @bottom-right { content: none } } .sheet-${index} { page: sheet-${index}; width: ${width}pt; height: ${height}pt }`);
  return `${named.join('\n')}
@media not print { .sheets-to-print { display: none } }
@media print {
  html, body { height: auto !important; margin: 0; background: #ffffff }
  body > :not(.sheets-to-print) { display: none !important }
  .sheets-to-print img { display: block; break-inside: avoid }
  .sheets-to-print img:not(:last-child) { break-after: page }
}`;
}

/** Prints pages alone, as they are; `onpage` is told of each before it is made ready, `onready` when all are. Settles when the browser is done with them or `signal` gave it up. */
export async function printPages(pages: PdfPages, signal: AbortSignal, onpage: (number: number) => void, onready: () => void): Promise<void> {
  const sheets = document.createElement('div');
  sheets.className = 'sheets-to-print';
  const addresses: string[] = [];
  const style = new CSSStyleSheet();
  const sizes = distinct(pages.sizes);
  style.replaceSync(printStyle(sizes));
  try {
    for (const [index, size] of pages.sizes.entries()) {
      onpage(index + 1);
      const canvas = await pages.draw(index + 1, (size.width / POINTS_PER_INCH) * DOTS_PER_INCH, signal, 'print');
      if (!canvas) return;
      const address = URL.createObjectURL(await toPicture(canvas));
      addresses.push(address);
      const picture = new Image();
      picture.src = address;
      picture.alt = '';
      picture.className = `sheet-${sizes.findIndex((one) => isSame(one, size))}`;
      await picture.decode();
      sheets.append(picture);
      if (signal.aborted) return;
    }
    document.body.append(sheets);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, style];
    onready();
    await printed();
  } finally {
    sheets.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== style);
    for (const address of addresses) URL.revokeObjectURL(address);
  }
}

/** Some browsers come back from `print` before the pages are taken. */
function printed(): Promise<void> {
  return new Promise((resolve) => {
    addEventListener('afterprint', () => resolve(), { once: true });
    print();
  });
}

async function toPicture(canvas: HTMLCanvasElement): Promise<Blob> {
  const picture = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  // A canvas keeps its memory until it is collected.
  canvas.width = 0;
  if (!picture) throw new Error('the page is too large to be drawn');
  return picture;
}

function distinct(sizes: readonly PageSize[]): readonly PageSize[] {
  return sizes.filter((size, index) => sizes.findIndex((one) => isSame(one, size)) === index);
}

function isSame(one: PageSize, other: PageSize): boolean {
  return one.width === other.width && one.height === other.height;
}

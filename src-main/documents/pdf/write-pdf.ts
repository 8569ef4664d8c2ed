import pdfmake from 'pdfmake';
import type { Content, DynamicContent, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import type { PaperSize } from '../../../shared-core/plan/index.ts';
import { say, spokenLanguage } from '../../../shared-core/words/index.ts';
import { FIRST_FONT, FONT_FILES, lettersWithoutFont } from './fonts.ts';
import { sayStamp } from '../say-stamp.ts';
import { blocksOf, RULED, titled } from './set-blocks.ts';
import { INK, set, shortened, SMALL, SOFT, TEXT_SIZE } from './set-text.ts';
import { MARGINS, PAPER_SIZES, type Sheet, type Stamp, textArea } from './sheet.ts';
import { wordsOf } from './svg.ts';

/** Letters of each half of the running head: two lines at most. */
const MOST_IN_HEAD = 48;

export interface WrittenPdf {
  readonly bytes: Uint8Array;
  readonly pages: number;
  /** Letters that no font of the papers has, each once. */
  readonly unset: readonly string[];
}

/** What stands on a paper beside its sheets. */
export interface Frame {
  readonly title: string;
  readonly house: string;
  readonly size: PaperSize;
  readonly stamp: Stamp;
}

/**
 * A PDF of sheets, each from a new page on: running head with house and title, foot with state and page of how many.
 *
 * The same sheets give the same bytes: the file's date is that of the last edit. Letters that no font has stand as the
 * font's own mark for them, and the last page says so. Text can be searched and copied. There is no structure tree: the
 * library that sets the pages has none.
 */
export async function writePdf(sheets: readonly Sheet[], frame: Frame): Promise<WrittenPdf> {
  const unset = lettersWithoutFont(JSON.stringify([frame.house, frame.title, sheets.map((sheet) => ({ ...sheet, blocks: sheet.blocks.map((block) => (block.kind === 'drawing' ? { ...block, svg: wordsOf(block.svg) } : block)) }))]));
  let pages = 0;
  const foot: DynamicContent = (page, count) => {
    pages = count;
    return {
      margin: [MARGINS.left, 14, MARGINS.right, 0],
      columns: [
        { ...set(sayStamp(frame.stamp)), fontSize: SMALL, color: SOFT, width: '*' },
        { ...set(say`Page ${page} of ${count}`), fontSize: SMALL, color: SOFT, width: 'auto', alignment: 'right' },
      ],
    };
  };
  const definition: TDocumentDefinitions = {
    info: { title: `${frame.title}, ${frame.house}`, creator: 'Struckline', producer: 'Struckline', creationDate: new Date(frame.stamp.changed ?? 0) },
    language: spokenLanguage().code,
    displayTitle: true,
    version: '1.7',
    pageSize: { ...PAPER_SIZES[frame.size] },
    pageMargins: [MARGINS.left, MARGINS.top, MARGINS.right, MARGINS.bottom],
    defaultStyle: { font: FIRST_FONT, fontSize: TEXT_SIZE, lineHeight: 1.15, color: INK },
    content: sheets.map((sheet, index) => ({
      section: [...titled(sheet), ...blocksOf(sheet.blocks, textArea(frame.size).width), ...(index === sheets.length - 1 ? unsetNote(unset) : [])],
      header: headOf(sheet, frame),
      footer: foot,
    })) as unknown as Content,
  };
  const bytes = await pdfmake.createPdf(definition).getBuffer();
  return { bytes, pages, unset };
}

pdfmake.setFonts(structuredClone(FONT_FILES) as never);
pdfmake.setUrlAccessPolicy(() => false);
pdfmake.setLocalAccessPolicy((path) => Object.values(FONT_FILES).some((files) => Object.values(files).includes(path)));

function unsetNote(unset: readonly string[]): readonly Content[] {
  if (unset.length === 0) return [];
  const codes = unset.slice(0, 40).map((letter) => [...letter].map((sign) => `U+${sign.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`).join(' '));
  const all = codes.length < unset.length ? `${codes.join(', ')} …` : codes.join(', ');
  return [{ ...set(say`Letters that the fonts at hand don't have are shown as a mark for a missing letter: ${all}.`), fontSize: SMALL, margin: [0, 14, 0, 0] }];
}

function headOf({ title, about }: Sheet, { house }: Frame): DynamicContent {
  return () => ({
    margin: [MARGINS.left, 24, MARGINS.right, 0],
    layout: RULED,
    table: {
      widths: ['*', '*'],
      body: [[{ ...set(shortened(house, MOST_IN_HEAD)), fontSize: SMALL, color: SOFT }, { ...set(shortened(about === null ? title : `${title}: ${about}`, MOST_IN_HEAD)), fontSize: SMALL, color: SOFT, alignment: 'right' }]],
    },
  });
}

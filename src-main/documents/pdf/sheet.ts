import type { PaperSize } from '../../../shared-core/plan/index.ts';

/** In points: 210 by 297 mm, and 8 1/2 by 11 in. */
export const PAPER_SIZES: Readonly<Record<PaperSize, { readonly width: number; readonly height: number }>> = { a4: { width: 595.28, height: 841.89 }, letter: { width: 612, height: 792 } };

/** In points. */
export const MARGINS = { left: 45, top: 62, right: 45, bottom: 54 } as const;

/** What of a page of that size its text may fill, in points. */
export function textArea(size: PaperSize): { readonly width: number; readonly height: number } {
  const { width, height } = PAPER_SIZES[size];
  return { width: width - MARGINS.left - MARGINS.right, height: height - MARGINS.top - MARGINS.bottom };
}

/** A cell of a table: its text, a picture, or a box to tick. */
export type Cell = string | { readonly text: string; readonly isStrong?: boolean; readonly isSmall?: boolean } | { readonly svg: string; readonly width: number; readonly height: number } | typeof TICK_BOX;
export const TICK_BOX = Symbol();

export interface Column {
  readonly head: string;
  /** `figure` stands at the right; `tick` is as narrow as a box. */
  readonly as?: 'text' | 'figure' | 'tick';
  /** It takes what the others leave, with other wide ones in equal parts; else it is as wide as its texts. */
  readonly isWide?: true;
  /** In points, where tables below each other are to stand in line. */
  readonly width?: number;
}

/** What a sheet is made of, from top to bottom. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string; readonly as?: 'plain' | 'soft' | 'strong' }
  /** What must not be missed, with what belongs to it. */
  | { readonly kind: 'caution'; readonly text: string; readonly notes: readonly string[] }
  /** Names and addresses side by side. */
  | { readonly kind: 'addresses'; readonly of: readonly { readonly head: string; readonly text: string }[] }
  | { readonly kind: 'facts'; readonly of: readonly { readonly head: string; readonly text: string }[] }
  | { readonly kind: 'ticks'; readonly of: readonly { readonly text: string; readonly notes?: readonly string[] }[] }
  /** Its head stands on every page that it runs over; no row is broken. `rowHeight`, in points, leaves room to write. */
  | { readonly kind: 'table'; readonly heading?: string; readonly columns: readonly Column[]; readonly rows: readonly (readonly Cell[])[]; readonly rowHeight?: number }
  | { readonly kind: 'totals'; readonly of: readonly { readonly head: string; readonly text: string; readonly isStrong?: boolean }[] }
  /** As `paintDrawing` gives it, in points. */
  | { readonly kind: 'drawing'; readonly title: string; readonly scale: string; readonly svg: string; readonly width: number; readonly height: number }
  /** What is cut from each roll; `heads` over the columns. */
  | { readonly kind: 'rolls'; readonly heading: string; readonly note: string; readonly heads: Readonly<Record<'roll' | 'piece' | 'goesTo' | 'length' | 'at' | 'top', string>>; readonly rolls: readonly RollOnPaper[] };

/** A roll on paper: its length and places on it in units, everything else in words. */
export interface RollOnPaper {
  readonly number: number;
  readonly rollLength: number;
  readonly cuts: readonly {
    readonly label: string;
    /** Short enough for a piece of tape: its number. */
    readonly tapeLabel: string;
    readonly goesTo: string;
    readonly length: string;
    readonly at: string;
    readonly top: string;
    readonly from: number;
    readonly to: number;
    readonly isOffcut: boolean;
    /** It goes to a room that the sheet is not about. */
    readonly isOther: boolean;
  }[];
  readonly left: string;
}

/** What begins on a page of its own: of one room, of one supplier, or the whole of a paper. */
export interface Sheet {
  readonly title: string;
  /** What stands beside the title on every page: the room, the supplier. */
  readonly about: string | null;
  readonly blocks: readonly Block[];
}

/** What everything printed of a house carries: from which state of its facts it is. */
export interface Stamp {
  /** Of the last edit, an ISO date and time in UTC; null where it is not known. */
  readonly changed: string | null;
  /** How often the house file was changed; null of a document. */
  readonly revision: number | null;
  /** The same for the same facts, and hardly ever for others. */
  readonly mark: string;
}

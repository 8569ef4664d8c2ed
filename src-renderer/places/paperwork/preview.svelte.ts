import type { PaperName, PaperSize } from '../../../shared-core/plan/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import type { PdfPages } from '../../parts/pdf-pages.ts';
import type { HouseState, PaperBytes } from '../../state/house.svelte.ts';
import { keyOf } from './paper-groups.ts';

/** Who types goes on typing: the paper is made again once that rests. */
const CHANGED_MILLISECONDS = 400;

interface Wanted {
  readonly paper: PaperName;
  readonly size: PaperSize;
  readonly revision: number;
}

interface Shown extends Wanted {
  readonly written: PaperBytes;
  readonly pages: PdfPages;
}

/** The paper that is looked at: made when it is asked for, and again when the house has changed. */
export class PaperPreview {
  /** Stays while it is made again; gone at once when another is asked for. */
  shown = $state.raw<Shown | null>(null);
  isMaking = $state(false);
  isGivenUp = $state(false);
  trouble = $state<string | null>(null);
  readonly #house: HouseState;
  /** What was asked for last; null once it was given up. */
  #wanted: Wanted | null = null;
  #isUnderWay = false;
  #beginning: ReturnType<typeof setTimeout> | undefined;

  constructor(house: HouseState) {
    this.#house = house;
  }

  /** Asks for a paper, if it is not there or on its way as it is asked for. */
  want(paper: PaperName, size: PaperSize, revision: number): void {
    const before = this.#wanted;
    const isSamePaper = before !== null && keyOf(before.paper) === keyOf(paper) && before.size === size;
    if (isSamePaper && before.revision === revision) return;
    if (this.shown && keyOf(this.shown.paper) !== keyOf(paper)) this.#show(null);
    this.#begin({ paper, size, revision }, isSamePaper ? CHANGED_MILLISECONDS : 0);
  }

  giveUp(): void {
    this.#wanted = null;
    clearTimeout(this.#beginning);
    this.isMaking = false;
    this.isGivenUp = true;
    void this.#house.stopPapers();
  }

  close(): void {
    this.#wanted = null;
    clearTimeout(this.#beginning);
    this.#show(null);
  }

  #begin(wanted: Wanted, delay: number): void {
    this.#wanted = wanted;
    this.isMaking = true;
    this.isGivenUp = false;
    this.trouble = null;
    clearTimeout(this.#beginning);
    this.#beginning = setTimeout(() => void this.#make(), delay);
  }

  /** One after the other: of those that are asked for meanwhile only the last is made. */
  async #make(): Promise<void> {
    if (this.#isUnderWay) return;
    this.#isUnderWay = true;
    for (let made: Wanted | null = null; this.#wanted !== null && this.#wanted !== made; ) {
      made = this.#wanted;
      await this.#makeOne(made);
    }
    this.#isUnderWay = false;
  }

  async #makeOne(wanted: Wanted): Promise<void> {
    const reply = await this.#house.makePaper(wanted.paper, 'pdf', wanted.size);
    if (wanted !== this.#wanted) return;
    if (!reply.ok) {
      this.isMaking = false;
      // Somebody else gave up what was theirs, and this with it.
      if (reply.error.code === 'stopped') return this.#begin({ ...wanted }, 0);
      this.trouble = [reply.error.message, ...reply.error.details.map(({ message }) => message)].join(' ');
      this.#show(null);
      return;
    }
    const pages = await openPages(reply.value.bytes);
    if (wanted !== this.#wanted) {
      pages?.close();
      return;
    }
    this.isMaking = false;
    if (pages) this.#show({ ...wanted, written: reply.value, pages });
    else this.trouble = say`The paper was made, but it can't be shown here. Save it and look at it in another program.`;
  }

  #show(shown: Shown | null): void {
    const before = this.shown;
    this.shown = shown;
    before?.pages.close();
  }
}

/** What shows a PDF is loaded when the first is looked at. */
async function openPages(bytes: Uint8Array): Promise<PdfPages | null> {
  try {
    const { PdfPages } = await import('../../parts/pdf-pages.ts');
    return await PdfPages.open(bytes);
  } catch {
    return null;
  }
}

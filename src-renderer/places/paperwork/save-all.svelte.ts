import type { PaperForm, PaperListing, PaperSize } from '../../../shared-core/plan/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import type { HouseState } from '../../state/house.svelte.ts';

interface Step {
  readonly paper: PaperListing;
  readonly form: PaperForm;
}

/** Puts every paper of a house in each of its forms into the folder beside the house file, one after the other. */
export class SaveAll {
  /** Which is being made, counted from 1; null when none is. */
  progress = $state.raw<{ readonly number: number; readonly of: number; readonly title: string } | null>(null);
  isStopping = $state(false);
  /** What came of it, and where it is. */
  said = $state<string | null>(null);
  folder = $state<string | null>(null);
  troubles = $state.raw<readonly string[]>([]);
  readonly #house: HouseState;

  constructor(house: HouseState) {
    this.#house = house;
  }

  /** Papers that hold others in one are left out: each is there by itself. */
  async run(papers: readonly PaperListing[], size: PaperSize): Promise<void> {
    if (this.progress) return;
    const steps = papers.filter(({ isTogether }) => !isTogether).flatMap((paper) => paper.forms.map((form): Step => ({ paper, form })));
    this.isStopping = false;
    this.said = null;
    this.troubles = [];
    this.folder = null;
    let folder: string | null = null;
    let saved = 0;
    for (const [index, { paper, form }] of steps.entries()) {
      this.progress = { number: index + 1, of: steps.length, title: paper.title };
      const reply = await this.#save({ paper, form }, size);
      if (reply?.ok) {
        folder = reply.value.folder;
        saved += 1;
      } else if (reply) this.troubles = [...this.troubles, `${paper.title}: ${reply.error.message}`];
      if (this.isStopping) break;
    }
    this.progress = null;
    this.folder = folder;
    this.said = sayOutcome(saved, steps.length, this.isStopping);
    this.isStopping = false;
  }

  /** The one that is being made is given up, but where others are being made too: they would be lost with it. */
  stop(areOthersMade: boolean): void {
    this.isStopping = true;
    if (!areOthersMade) void this.#house.stopPapers();
  }

  /** Null where it was stopped before it was made. */
  async #save({ paper, form }: Step, size: PaperSize) {
    for (;;) {
      const reply = await this.#house.savePaper(paper, form, size);
      if (reply.ok || reply.error.code !== 'stopped') return reply;
      if (this.isStopping) return null;
    }
  }
}

function sayOutcome(saved: number, of: number, isStopped: boolean): string {
  if (saved === 0) return isStopped ? say`Stopped; no file was written.` : say`No file was written.`;
  if (isStopped) return say`Stopped; ${saved} of ${of} files are beside the house file, in`;
  return saved === 1 ? say`${saved} file is beside the house file, in` : say`${saved} files are beside the house file, in`;
}

const running = new WeakMap<HouseState, SaveAll>();

/** That of a house that is open: it goes on while another place is looked at. */
export function saveAllOf(house: HouseState): SaveAll {
  const there = running.get(house);
  if (there) return there;
  const made = new SaveAll(house);
  running.set(house, made);
  return made;
}

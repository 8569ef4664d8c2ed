import { createHash } from 'node:crypto';
import { writeDocument } from '../../shared-core/house/index.ts';
import { type HousePlan, type PaperForm, type PaperListing, type PaperName, papersOf, type PaperSize, planHouse, usualPaperSize } from '../../shared-core/plan/index.ts';
import { makePaper, type MadePaper, type Stamp } from '../documents/index.ts';
import { fileNameOf } from './file-names.ts';
import type { StampedHouse } from './house-files.ts';

/** A paper with the name that its file gets. */
export interface PaperFile extends MadePaper {
  readonly fileName: string;
}

const MARK_LENGTH = 8;

/** The papers of one state of a house; it is planned when the first of them is asked for. */
export class PaperDesk {
  readonly #saved: StampedHouse;
  readonly #stamp: Stamp;
  #plan: HousePlan | null = null;
  #papers: readonly PaperListing[] | null = null;

  constructor(saved: StampedHouse) {
    this.#saved = saved;
    // A file keeps what photos show apart from the facts.
    const hash = createHash('sha256').update(writeDocument({ ...saved.house, photos: [] })).digest('hex').slice(0, MARK_LENGTH).toUpperCase();
    this.#stamp = { changed: saved.changed, revision: saved.revision, mark: `${hash.slice(0, MARK_LENGTH / 2)}-${hash.slice(MARK_LENGTH / 2)}` };
  }

  get plan(): HousePlan {
    return (this.#plan ??= planHouse(this.#saved.house));
  }

  /** The paper that is usual where the house is. */
  get usualSize(): PaperSize {
    return usualPaperSize(this.#saved.house);
  }

  /** The papers that there is something to write on. */
  list(): readonly PaperListing[] {
    return (this.#papers ??= papersOf(this.#saved.house, this.plan));
  }

  /** Null where there is nothing to write on it, or it has no such form. */
  async make({ kind, of }: PaperName, form: PaperForm, size: PaperSize): Promise<PaperFile | null> {
    const paper = this.list().find((one) => one.kind === kind && one.of === of);
    if (!paper?.forms.includes(form)) return null;
    const made = await makePaper({ house: this.#saved.house, plan: this.plan, stamp: this.#stamp }, paper, form, size);
    return { ...made, fileName: this.#fileNameOf(paper, made.ending) };
  }

  /** Of two papers whose files would have one name the second is told apart by its place among them. */
  #fileNameOf(paper: PaperListing, ending: string): string {
    const nameOf = ({ title }: PaperListing, rest: string) => fileNameOf(`${title}, ${this.#saved.house.name}`, rest);
    const name = nameOf(paper, ending);
    // Some disks take capitals for small letters.
    const place = this.list().filter((one) => nameOf(one, ending).toLowerCase() === name.toLowerCase()).indexOf(paper);
    return place === 0 ? name : nameOf(paper, ` ${place + 1}${ending}`);
  }
}

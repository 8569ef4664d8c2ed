import { type House, nameCovering } from '../../../shared-core/house/index.ts';
import { type PackageRow, readPackageTable } from '../../../shared-core/ordering/index.ts';
import { today } from '../../parts/today.ts';
import { coveringsWithNumber } from './labels.ts';
import type { ReadPackage } from './next-package.svelte.ts';

/** Rows pasted from a spreadsheet: as they would be taken, and what is wrong with them. */
export class PastedPackages {
  readonly #house: () => House;
  text = $state('');
  isOpen = $state(false);
  /** What the house's facts have against the rows; nothing was taken then. */
  refused = $state<string | null>(null);
  /** The covering for which a number that none has came, by that number. */
  #cameFor = $state.raw<Readonly<Record<string, string>>>({});

  readonly #read = $derived.by(() => (this.text.trim() === '' ? null : readPackageTable(this.text)));
  readonly faults: readonly string[] = $derived.by(() => (this.#read && !this.#read.ok ? this.#read.faults.map(({ message }) => `${message}.`) : []));
  readonly rows: readonly PackageRow[] = $derived.by(() => (this.#read?.ok ? this.#read.value : []));
  /** The pattern numbers of which it has to be said for which pattern they came. */
  readonly unknown: readonly string[] = $derived.by(() => [...new Set(this.rows.map(({ patternNumber }) => patternNumber).filter((label) => coveringsWithNumber(this.#house(), label).length !== 1))]);
  readonly unanswered: readonly string[] = $derived.by(() => this.unknown.filter((label) => this.cameFor(label) === ''));

  constructor(house: () => House) {
    this.#house = house;
  }

  type(text: string): void {
    this.text = text;
    this.refused = null;
  }

  /** The covering for which a label's number came; empty while nobody has said. */
  cameFor(label: string): string {
    return this.#cameFor[label] ?? '';
  }

  answer(label: string, covering: string): void {
    this.#cameFor = { ...this.#cameFor, [label]: covering };
  }

  /** The packages as they would be recorded; without a covering while nobody has said for which an unknown number came. */
  get packages(): readonly ReadPackage[] {
    const house = this.#house();
    return this.rows.map((row): ReadPackage => {
      const known = coveringsWithNumber(house, row.patternNumber);
      const covering = known.length === 1 ? known[0]!.id : this.cameFor(row.patternNumber);
      const label = known.length === 1 ? nameCovering(house, covering) : row.patternNumber;
      return { ...row, covering, patternNumber: label, received: row.received ?? today() };
    });
  }

  clear(): void {
    this.text = '';
    this.refused = null;
  }
}

import { type House, nameCovering } from '../../../shared-core/house/index.ts';
import { findByGtin, type PackageRow, readScan, type Scan } from '../../../shared-core/ordering/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import { today } from '../../parts/today.ts';
import { coveringsWithNumber, received } from './labels.ts';

/** What is typed of a package, in the order in which it is typed; what only some labels ask for stands last, so that it is never in the way. */
export const PACKAGE_FIELDS = ['code', 'patternNumber', 'run', 'rolls', 'damaged', 'short', 'received', 'cameFor'] as const;
export type PackageField = (typeof PACKAGE_FIELDS)[number];

/** A package as it is to be recorded. */
export type ReadPackage = PackageRow & { readonly covering: string };

interface Trouble {
  readonly field: PackageField;
  readonly words: string;
}

const EMPTY: Readonly<Record<Exclude<PackageField, 'received'>, string>> = { code: '', patternNumber: '', cameFor: '', run: '', rolls: '', damaged: '0', short: '0' };

/** The package that is being typed or scanned: what stands in its fields, and what is wrong with one of them. */
export class NextPackage {
  readonly #house: () => House;
  #typed = $state.raw({ ...EMPTY });
  /** Null while nobody has typed another day than the clock's. */
  #day = $state<string | null>(null);
  /** One thing at a time: that of the field which is to be mended next. */
  trouble = $state.raw<Trouble | null>(null);
  /** What is worth knowing of the code, though nothing is wrong with it. */
  codeNote = $state<string | null>(null);

  /** Whether the label's number is of no covering, or of more than one, so that it has to be said for which it came. */
  readonly asksCameFor: boolean = $derived.by(() => this.#typed.patternNumber.trim() !== '' && coveringsWithNumber(this.#house(), this.#typed.patternNumber).length !== 1);
  readonly isBegun: boolean = $derived.by(() => Object.entries(EMPTY).some(([field, empty]) => this.#typed[field as keyof typeof EMPTY] !== empty));

  constructor(house: () => House) {
    this.#house = house;
  }

  at(field: PackageField): string {
    return field === 'received' ? (this.#day ?? today()) : this.#typed[field];
  }

  type(field: PackageField, text: string): void {
    if (field === 'received') this.#day = text === today() ? null : text;
    else this.#typed = { ...this.#typed, [field]: text };
    if (this.trouble?.field === field) this.trouble = null;
    if (field === 'code') this.codeNote = null;
  }

  troubleAt(field: PackageField): string | null {
    return this.trouble?.field === field ? this.trouble.words : null;
  }

  /** The fields that are typed, without the question that has an answer. */
  get fields(): readonly PackageField[] {
    return PACKAGE_FIELDS.filter((field) => field !== 'cameFor' || this.asksCameFor);
  }

  /** The first field in which nothing stands; null where the package can be recorded. */
  get firstEmpty(): PackageField | null {
    return this.fields.find((field) => field !== 'code' && this.at(field).trim() === '') ?? null;
  }

  /**
   * Takes what a code says into the fields. Gives the field to go to, which is the code's own where it can't be taken,
   * or null where nothing is missing any more.
   */
  takeCode(): PackageField | null {
    this.trouble = null;
    this.codeNote = null;
    if (this.at('code').trim() === '') return 'patternNumber';
    const read = readScan(this.at('code'));
    if (!read.ok) return this.#refuse('code', `${read.faults.map(({ message }) => message).join('. ')}.`);
    const says = this.#saidBy(read.value);
    const clash = (['patternNumber', 'run', 'rolls'] as const).find((field) => says[field] !== undefined && this.at(field).trim() !== '' && this.at(field).trim() !== says[field]);
    if (clash) return this.#refuse('code', say`This code says ${FIELD_WORDS[clash]} ${says[clash]!}, and ${this.at(clash)} stands in its field. Empty that field, or this one.`);
    this.#typed = { ...this.#typed, ...says };
    const { gtin } = read.value;
    if (gtin !== null && says.patternNumber === undefined) this.codeNote = say`No sale unit of this house has the GTIN ${gtin}. Type what the label says.`;
    return this.firstEmpty;
  }

  /** A code that was read into another field than its own is put where it belongs. */
  isCodeElsewhere(field: PackageField): boolean {
    const text = this.at(field);
    if (!(field === 'patternNumber' || field === 'run' || field === 'rolls') || !/^[\](]/.test(text.trim()) || !readScan(text).ok) return false;
    this.#typed = { ...this.#typed, [field]: '', code: text };
    return true;
  }

  /** What stands in the fields as a package; null where something is wrong, which then stands beside its field. */
  read(): ReadPackage | null {
    const house = this.#house();
    const patternNumber = this.at('patternNumber').trim();
    const run = this.at('run').trim();
    if (patternNumber === '') return this.#fault('patternNumber', say`The package wants its pattern number, as it stands on the label.`);
    if (run === '') return this.#fault('run', say`The run wants its number, as it stands on the label.`);
    const rolls = countOf(this.at('rolls'));
    if (rolls === null || rolls === 0) return this.#fault('rolls', say`The rolls on the label are a whole number from 1.`);
    const damaged = countOf(this.at('damaged') || '0');
    if (damaged === null || damaged > rolls) return this.#fault('damaged', say`Damaged are a whole number of the ${rolls} on the label.`);
    const short = countOf(this.at('short') || '0');
    if (short === null || short > rolls - damaged) return this.#fault('short', say`Missing are a whole number of the ${rolls - damaged} that are not damaged.`);
    const day = received(this.at('received'));
    if ('trouble' in day) return this.#fault('received', day.trouble);
    const known = coveringsWithNumber(house, patternNumber);
    const cameFor = known.length === 1 ? known[0]!.id : this.at('cameFor');
    if (cameFor === '') return this.#fault('cameFor', say`Say for which pattern ${patternNumber} came.`);
    const label = known.length === 1 ? nameCovering(house, cameFor) : patternNumber;
    return { covering: cameFor, patternNumber: label, run, rolls, damaged, short, ...day };
  }

  refuse(words: string): void {
    this.trouble = { field: 'code', words };
  }

  /** Makes the fields ready for the next package; another day than today's is likely that of the next one too. */
  clear(): void {
    this.#typed = { ...EMPTY };
    this.trouble = null;
    this.codeNote = null;
  }

  #saidBy({ gtin, run, rolls }: Scan): Partial<Record<'patternNumber' | 'run' | 'rolls', string>> {
    const house = this.#house();
    const found = gtin === null ? null : findByGtin(house, gtin);
    return {
      ...(found ? { patternNumber: nameCovering(house, found.covering), rolls: String(found.rolls * (rolls ?? 1)) } : {}),
      ...(run === null ? {} : { run }),
    };
  }

  #refuse(field: PackageField, words: string): PackageField {
    this.trouble = { field, words };
    return field;
  }

  #fault(field: PackageField, words: string): null {
    this.trouble = { field, words };
    return null;
  }
}

const FIELD_WORDS = { patternNumber: say`pattern number`, run: say`run`, rolls: say`rolls` } as const;

function countOf(typed: string): number | null {
  return /^\d{1,6}$/.test(typed.trim()) ? Number(typed) : null;
}

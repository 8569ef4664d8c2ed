import { z } from 'zod';
import { editSchema, type HouseDocument, houseFacts, keptImage } from '../house/index.ts';
import type { PaperForm, PaperKind } from '../plan/index.ts';
import { paperSize, type SettingsRead, settingsSchema } from './settings.ts';
import { say } from '../words/index.ts';

const NAME = String.raw`[^/\\:*?"<>|\p{Cc}]+\.struckline`;
const ELSEWHERE = 'elsewhere:[0-9a-f]{16}';
const houseFile = (spelling: string) =>
  z
    .string()
    .max(200)
    .regex(new RegExp(`^(?:${spelling})$`, 'u'), { error: say`is not the name of a house file; it takes a name that ends in .struckline` })
    .refine((name) => !name.startsWith('.'), { error: say`is a hidden name; it takes a name that does not begin with a dot` });

/** A house file's name in the folder of houses, never a path. */
const fileName = houseFile(NAME);
/** A house file outside of the folder, by the word that the host gave for it; a file's name holds no colon. */
const elsewhere = houseFile(ELSEWHERE);
const file = houseFile(`${NAME}|${ELSEWHERE}`);

const revision = z.int().nonnegative();

const BACK_UP = /^[\dT-]{19}Z (?:work|form|replaced)\.struckline$/;

const PAPER_KINDS: Readonly<Record<PaperKind, PaperKind>> = {
  order: 'order',
  orders: 'orders',
  'placed-order': 'placed-order',
  'goods-in': 'goods-in',
  'job-sheet': 'job-sheet',
  'job-sheets': 'job-sheets',
  'cut-list': 'cut-list',
  'shopping-list': 'shopping-list',
  quote: 'quote',
  calendar: 'calendar',
  record: 'record',
};
const PAPER_FORMS: Readonly<Record<PaperForm, PaperForm>> = { pdf: 'pdf', csv: 'csv', text: 'text', ics: 'ics' };
const paper = z.strictObject({ kind: z.enum(PAPER_KINDS), of: z.string().max(120).nullable() });

export interface WrittenText {
  readonly fileName: string;
  readonly text: string;
}

/** A paper as it was made of the house as it is on the disk. */
export interface WrittenPaper {
  readonly fileName: string;
  /** Its media type, such as 'application/pdf'. */
  readonly type: string;
  /** In base64: exactly what is printed, saved or sent. */
  readonly bytes: string;
  readonly revision: number;
  /** Letters that the fonts of the papers don't have, each once. */
  readonly unset: readonly string[];
}

/** Where papers were put, beside the house file. */
export interface SavedPaper {
  readonly folder: string;
  readonly fileName: string;
}

/** A house file in the folder, or one elsewhere that was opened by its path, as the start screen lists it. */
export interface HouseListing {
  readonly file: string;
  /** Null where the file could not be read; `trouble` says why. */
  readonly name: string | null;
  readonly rooms: number;
  readonly trouble: string | null;
  /** When it was last worked on, as an ISO date and time in UTC; null where the file is gone. */
  readonly changed: string | null;
  /** Where it lies; null in the folder of houses. */
  readonly folder: string | null;
}

export interface OpenedHouse {
  readonly file: string;
  /** Counts up with every change on disk; an edit is refused where somebody else was faster. */
  readonly revision: number;
  readonly house: HouseDocument;
  /** What undo and redo would do, in words. */
  readonly undo: string | null;
  readonly redo: string | null;
  /** Why it can be looked at but not changed, in words; null where it can be changed. */
  readonly lookOnly: string | null;
}

/** A back-up of a house file, as the list of them shows it. */
export interface BackUpListing {
  readonly name: string;
  /** When it was made, as an ISO date and time in UTC. */
  readonly made: string;
  /** From time to time at work, before the file got the form of a newer program, or in the place of what was restored. */
  readonly reason: 'work' | 'form' | 'replaced';
  /** What stands in it, in few words to tell one from the other; null where it can't be read. */
  readonly holds: { readonly house: string; readonly rooms: number; readonly last: string | null } | null;
}

export interface BackUps {
  /** The last one first. */
  readonly backUps: readonly BackUpListing[];
  readonly folder: string;
  /** Why the last one could not be made, in words. */
  readonly trouble: string | null;
}

export interface HostFacts {
  readonly shell: 'desktop' | 'loopback';
  readonly folder: string;
  readonly version: string;
  /** In which the host says what it says, by its code; it keeps to it until it ends. */
  readonly language: string;
  /** The house to open first, where the app was started with one. */
  readonly firstFile: string | null;
}

/** Every call between the window and its host: the shape of its argument; the replies are in `Replies`. */
export const argumentSchemas = {
  'describe-host': z.strictObject({}),
  'list-houses': z.strictObject({}),
  'create-house': z.strictObject({ name: houseFacts.name, lengths: z.enum(['imperial', 'metric']), currency: z.string().regex(/^[A-Z]{3}$/) }),
  'create-demo': z.strictObject({}),
  'import-document': z.strictObject({ text: z.string() }),
  'take-house-file': z.strictObject({ name: fileName, bytes: z.string().regex(/^[A-Za-z0-9+/]*={0,2}$/, { error: say`is not base64` }) }),
  'forget-house': z.strictObject({ file: elsewhere }),
  'open-house': z.strictObject({ file }),
  'house-since': z.strictObject({ file, revision }),
  'edit-house': z.strictObject({ file, revision, edit: editSchema }),
  'undo': z.strictObject({ file, revision }),
  'redo': z.strictObject({ file, revision }),
  'copy-house': z.strictObject({ file }),
  'list-back-ups': z.strictObject({ file }),
  'restore-back-up': z.strictObject({ file, backUp: z.string().regex(BACK_UP, { error: say`is not the name of a back-up` }) }),
  'export-document': z.strictObject({ file }),
  'write-paper': z.strictObject({ file, paper, form: z.enum(PAPER_FORMS), size: paperSize }),
  'save-paper': z.strictObject({ file, paper, form: z.enum(PAPER_FORMS), size: paperSize }),
  'stop-papers': z.strictObject({ file }),
  'read-photo': z.strictObject({ file, image: keptImage }),
  'read-settings': z.strictObject({}),
  'save-settings': z.strictObject({ settings: settingsSchema }),
} as const;

export type Method = keyof typeof argumentSchemas;
export const METHODS = Object.keys(argumentSchemas) as readonly Method[];
export type Argument<Name extends Method> = z.input<(typeof argumentSchemas)[Name]>;

export interface Replies {
  readonly 'describe-host': HostFacts;
  readonly 'list-houses': readonly HouseListing[];
  readonly 'create-house': OpenedHouse;
  readonly 'create-demo': OpenedHouse;
  readonly 'import-document': OpenedHouse;
  readonly 'take-house-file': OpenedHouse;
  /** The houses that are left. */
  readonly 'forget-house': readonly HouseListing[];
  readonly 'open-house': OpenedHouse;
  /** Null where nothing has changed since that revision. */
  readonly 'house-since': OpenedHouse | null;
  readonly 'edit-house': OpenedHouse;
  readonly 'undo': OpenedHouse;
  readonly 'redo': OpenedHouse;
  /** The copy, which lies in the folder of houses. */
  readonly 'copy-house': OpenedHouse;
  readonly 'list-back-ups': BackUps;
  readonly 'restore-back-up': OpenedHouse;
  readonly 'export-document': WrittenText;
  readonly 'write-paper': WrittenPaper;
  /** Writes it into a folder beside the house file; one of the same name there is replaced. */
  readonly 'save-paper': SavedPaper;
  /** Gives up what is being made of the house; whoever waits for it is told so. */
  readonly 'stop-papers': null;
  /** The photo that the house's facts only point at, as a data URL. */
  readonly 'read-photo': { readonly image: string };
  readonly 'read-settings': SettingsRead;
  readonly 'save-settings': SettingsRead;
}

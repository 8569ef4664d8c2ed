import { z } from 'zod';
import { editSchema, type HouseDocument } from '../house/index.ts';
import { say } from '../words/index.ts';

/** A house file's name in the folder of houses, never a path. */
const file = z
  .string()
  .max(200)
  .regex(/^[^/\\:*?"<>|\p{Cc}]+\.struckline$/u, { error: say`is not the name of a house file; it takes a name that ends in .struckline` })
  .refine((name) => !name.startsWith('.'), { error: say`is a hidden name; it takes a name that does not begin with a dot` });

const revision = z.int().nonnegative();

/** A house file in the folder, as the start screen lists it. */
export interface HouseListing {
  readonly file: string;
  /** Null where the file could not be read; `trouble` says why. */
  readonly name: string | null;
  readonly rooms: number;
  readonly trouble: string | null;
}

export interface OpenedHouse {
  readonly file: string;
  /** Counts up with every change on disk; an edit is refused where somebody else was faster. */
  readonly revision: number;
  readonly house: HouseDocument;
  /** What undo and redo would do, in words. */
  readonly undo: string | null;
  readonly redo: string | null;
}

export interface HostFacts {
  readonly shell: 'desktop' | 'loopback';
  readonly folder: string;
  readonly version: string;
  /** The house to open first, where the app was started with one. */
  readonly firstFile: string | null;
}

/** Every call between the window and its host: the shape of its argument; the replies are in `Replies`. */
export const argumentSchemas = {
  'describe-host': z.strictObject({}),
  'list-houses': z.strictObject({}),
  'create-house': z.strictObject({ name: z.string().trim().min(1).max(200), lengths: z.enum(['imperial', 'metric']), currency: z.string().regex(/^[A-Z]{3}$/) }),
  'create-demo': z.strictObject({}),
  'import-document': z.strictObject({ text: z.string() }),
  'open-house': z.strictObject({ file }),
  'edit-house': z.strictObject({ file, revision, edit: editSchema }),
  'undo': z.strictObject({ file, revision }),
  'redo': z.strictObject({ file, revision }),
  'export-document': z.strictObject({ file }),
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
  readonly 'open-house': OpenedHouse;
  readonly 'edit-house': OpenedHouse;
  readonly 'undo': OpenedHouse;
  readonly 'redo': OpenedHouse;
  readonly 'export-document': { readonly fileName: string; readonly text: string };
}

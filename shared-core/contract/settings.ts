import { z } from 'zod';
import type { PaperSize } from '../plan/index.ts';
import { LANGUAGES } from '../words/index.ts';

/** How large text is set, in hundredths of the browser's own size. */
export const TEXT_SIZES = [80, 90, 100, 110, 125, 150, 175, 200] as const;

const PAPER_SIZES: Readonly<Record<PaperSize, PaperSize>> = { a4: 'a4', letter: 'letter' };
export const paperSize = z.enum(PAPER_SIZES);

/** What a user chose for every house's window; `system` does as the machine says. A key that a file lacks takes its usual value. */
export const settingsSchema = z.strictObject({
  language: z.enum(['system', ...LANGUAGES.map(({ code }) => code)]).default('system'),
  scheme: z.enum(['system', 'light', 'dark']).default('system'),
  contrast: z.enum(['system', 'more']).default('system'),
  textSize: z.literal(TEXT_SIZES).default(100),
  /** `usual` is what is usual where the house is. */
  paper: z.enum({ usual: 'usual', ...PAPER_SIZES }).default('usual'),
  motion: z.enum(['system', 'none']).default('system'),
});

export type Settings = z.output<typeof settingsSchema>;
export const USUAL_SETTINGS: Settings = settingsSchema.parse({});

/** The settings that hold, and why they are not those in the file, where they are not. */
export interface SettingsRead {
  readonly settings: Settings;
  readonly trouble: string | null;
}

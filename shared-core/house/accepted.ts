import { z } from 'zod';
import { type Fraction, type Measure, parseFraction, parseMeasure, printFraction } from '../units/index.ts';
import { say } from '../words/index.ts';

/** A value as it stands in a message: short, and in one line. */
export function quoteValue(value: unknown): string {
  const text = JSON.stringify(value) ?? say`nothing`;
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

/** A schema's error in words: the value, and what would be accepted instead. */
export function takes(accepted: string): (issue: { readonly input?: unknown }) => string {
  return ({ input }) =>
    input === undefined ? say`is missing; it takes ${accepted}` : say`is ${quoteValue(input)}; it takes ${accepted}`;
}

/** An object whose unknown keys are refused by name. */
export function facts<Shape extends z.ZodRawShape>(what: string, shape: Shape) {
  const keys = Object.keys(shape).join(', ');
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys'
        ? say`is not a key of ${what}; its keys are ${keys}`
        : takes(say`${what}, an object with the keys ${keys}`)(issue),
  });
}

export function listOf<Item extends z.ZodType>(item: Item, what: string, most: number) {
  return z.array(item, { error: takes(say`a list of ${what}`) }).max(most, { error: say`holds more than ${most} ${what}` });
}

export function oneOf<const Words extends readonly [string, ...string[]]>(words: Words) {
  return z.enum(words, { error: takes(words.map((word) => `"${word}"`).join(say` or `)) });
}

export function text(what: string, longest = 200) {
  return z
    .string({ error: takes(what) })
    .trim()
    .min(1, { error: say`is empty; it takes ${what}` })
    .max(longest, { error: ({ input }) => say`is ${String(input).length} characters long; it takes ${what} of at most ${longest}` })
    .refine(isReadable, { error: UNREADABLE });
}

/** Who somebody is and where, as it stands on paper: a name and an address, of several lines. */
export function nameAndAddress() {
  return text(say`a name and an address`, 500);
}

const UNREADABLE = say`holds a character that no text has: a zero, or half of a letter. Write it again`;

/** A zero ends a text for many a program, and half of a pair of code units is no letter for any. */
function isReadable(written: string): boolean {
  return written.isWellFormed() && !written.includes('\0');
}

/** What somebody wrote down, of any number of lines, kept as it was typed. */
export function note(longest = 4000) {
  const error = takes(say`a note of at most ${longest} characters`);
  return z.string({ error }).max(longest, { error }).refine((written) => written.trim() !== '', { error }).refine(isReadable, { error: UNREADABLE });
}

export function wholeNumber(least: number, most: number, what = say`a whole number`) {
  const error = takes(say`${what} from ${least} to ${most}`);
  return z.int({ error }).min(least, { error }).max(most, { error });
}

export function yesOrNo() {
  return z.boolean({ error: takes(say`true or false`) });
}

export const ID_PATTERN = /^[\p{L}\p{N}][\p{L}\p{N}._-]{0,39}$/u;

/** A short name by which another fact points at this one. */
export function id() {
  const error = takes(say`an id of 1 to 40 letters, digits, dots, dashes and underscores, such as "bed1"`);
  return z.string({ error }).regex(ID_PATTERN, { error });
}

export const LENGTH_EXAMPLES = say`a length with its unit, such as "12' 4 1/2\\"", "148.5 in", "3.76 m" or "10 mm"`;

/** A length as somebody wrote it, kept beside the exact length it stands for. */
export const measure = z.codec(z.string({ error: takes(LENGTH_EXAMPLES) }), z.custom<Measure>(), {
  decode: (written, context) => {
    const outcome = parseMeasure(written);
    if (outcome.ok) return outcome.value;
    context.issues.push({
      code: 'custom',
      input: written,
      message: say`is ${quoteValue(written)}: ${outcome.faults.map(({ message }) => message).join(' ')}`,
    });
    return z.NEVER;
  },
  encode: ({ typed }) => typed,
});

/** A proper fraction of a repeat, written "1/2". */
export const fraction = z.codec(z.string({ error: takes(say`a fraction such as "1/2"`) }), z.custom<Fraction>(), {
  decode: (written, context) => {
    const outcome = parseFraction(written);
    if (outcome.ok) return outcome.value;
    context.issues.push({
      code: 'custom',
      input: written,
      message: say`is ${quoteValue(written)}: ${outcome.faults.map(({ message }) => message).join(' ')}`,
    });
    return z.NEVER;
  },
  encode: (value) => printFraction(value),
});

const PERCENT_PATTERN = /^\d{1,3}([.,]\d{1,3})?$/;

/** A rate in percent as a decimal text: exact, because money is reckoned with it. */
export const percent = z
  .string({ error: takes(say`a rate in percent as a decimal text, such as "7.25"`) })
  .refine((written) => PERCENT_PATTERN.test(written) && Number(written.replace(',', '.')) <= 100, { error: takes(say`a rate in percent from "0" to "100", such as "7.25"`) });

const spareTaken = takes(say`a whole number of rolls from 0 to 1000, or a percentage from "0%" to "100%", such as "10%"`);

/** Spare rolls: so many, or so much of what is needed. */
export const spare = z.union([z.int({ error: spareTaken }).min(0, { error: spareTaken }).max(1000, { error: spareTaken }), z.string({ error: spareTaken }).regex(/^(?:100|\d{1,2}(?:[.,]\d)?)\s?%$/, { error: spareTaken })], { error: spareTaken });

/** Money as a decimal text; how many decimals it may have depends on the house's currency, so `findFaults` judges it. */
export const price = z
  .string({ error: takes(say`a price as a decimal text, such as "84.00"`) })
  .max(20, { error: takes(say`a price of at most 20 characters`) });

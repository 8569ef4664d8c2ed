import { bad, fault, good, type Outcome } from '../base/index.ts';
import { type Length, type LengthStyle, lengthOf, MAX_LENGTH } from './length.ts';
import { MAX_LENGTH_TEXT, type Measure, readLength, TOO_LONG, tooLongText } from './read-length.ts';
import { VULGAR_FRACTIONS } from './vulgar-fractions.ts';
import { say } from '../words/index.ts';

/** What stands between the terms of a sum; a hyphen takes away only with space around it, as in a length it joins. */
const OPERATOR = /(\s*\+\s*|\s+(?:plus|minus|[-−‐‑–])\s+)/iu;
const HYPHEN = /^\s+[-−‐‑–]\s+$/u;
const TIMES = /^(\d{1,3}\s*[x×*]\s*)(.+)$/iu;
const ENDS_WHOLE = /(?:^|[\s'’′])\d+$/u;
const BEGINS_WITH_FRACTION = new RegExp(`^(?:\\d+\\s*[/⁄∕]|[${[...VULGAR_FRACTIONS.keys()].join('')}])`, 'u');

/**
 * The length that somebody wrote, together with how they wrote it.
 *
 * Reads feet and inches (`12' 4 1/2"`, `12'-4½"`, `12 ft 4 1/2 in`), inches (`148.5 in`), yards and metric (`3.76 m`,
 * `3,76 m`, `3 m 76 cm`, `376 cm`, `10 mm`), in words, short forms or marks, with either decimal mark; a minus sign in
 * front counts for the whole. Units go from large to small; only the last number may have decimals or a fraction.
 * Exact until one rounding, half away from zero, to the unit of 1/320 mm.
 *
 * Reads sums too, from left to right: `12' 4" - 3 1/2"`, `3.76 m + 12 cm`, `12' minus 4"`, and so many of a length, as
 * in `3 x 20.5"`; each term is a length of its own, rounded by itself.
 *
 * Where the text has no unit, `bare` says how to read it: imperial reads one number as inches and two as feet and
 * inches (and, after feet, a last number as inches); metric reads one number as metres. `typed` then has the marks
 * added, so that it reads the same without `bare`.
 *
 * Fails, with a message that quotes the text and says what would be accepted, on anything else, on more than 100
 * characters and on more than 1000 m either way. With `bare`, where somebody has just typed it, `12' - 4"` fails as well,
 * because it might be 12' 4" or 4" less than 12'; without it, as in a document, it is 12' 4".
 *
 * `parseMeasure('12 4 1/2', 'imperial')` is 1207008 units, typed `12' 4 1/2"`; `parseMeasure("12' 4\" - 3 1/2\"")` is
 * 144 1/2 inches.
 */
export function parseMeasure(text: string, bare?: LengthStyle): Outcome<Measure> {
  const trimmed = text.trim();
  if (trimmed.length > MAX_LENGTH_TEXT) return tooLongText(trimmed);
  const pieces = trimmed.split(OPERATOR);
  const isSum = pieces.length > 1 || TIMES.test(trimmed);
  const single = readLength(trimmed, bare);
  if (!isSum || (single.ok && bare === undefined)) return single;

  let total = 0;
  let typed = '';
  let before = '';
  for (let index = 0; index < pieces.length; index += 2) {
    const [operator, written] = [pieces[index - 1] ?? '', pieces[index]!];
    if (written === '') return index === 0 ? fault('', say`In ‘${trimmed}’, there is no length before ‘${pieces[1]!.trim()}’`) : fault('', say`In ‘${trimmed}’, there is no length after ‘${operator.trim()}’`);
    const term = readTerm(written, bare);
    if (!term.ok) return pieces.length === 1 ? term : bad(term.faults.map(({ path, message }) => ({ path, message: say`In ‘${trimmed}’: ${message}` })));
    const after = term.value.typed;
    const joined = HYPHEN.test(operator) ? joinedBy(operator, [pieces[index - 2]!, written, bare], [before, after]) : null;
    if (joined) return fault('', say`‘${trimmed}’ can be read in two ways; write ${joined} for one length, or ${before} minus ${after} to take away`);
    total += operator === '' || /[+p]/i.test(operator) ? term.value.length : -term.value.length;
    typed += operator + after;
    before = after;
  }
  if (Math.abs(total) > MAX_LENGTH) return fault('', say`‘${trimmed}’ ${TOO_LONG}`);
  if (typed.length > MAX_LENGTH_TEXT) return tooLongText(trimmed);
  return good({ length: lengthOf(total), typed });
}

/**
 * The length that somebody wrote; `parseMeasure` says what is read and what is refused.
 *
 * `parseLength('7/8"')` is 7112 units.
 */
export function parseLength(text: string, bare?: LengthStyle): Outcome<Length> {
  const measure = parseMeasure(text, bare);
  return measure.ok ? good(measure.value.length) : measure;
}

/** A length, or so many of one. */
function readTerm(text: string, bare: LengthStyle | undefined): Outcome<Measure> {
  const [, times, each] = TIMES.exec(text) ?? [];
  const read = readLength(each ?? text, bare);
  if (!read.ok || times === undefined) return read;
  const total = Number.parseInt(times, 10) * read.value.length;
  return Math.abs(total) > MAX_LENGTH ? fault('', say`‘${text}’ ${TOO_LONG}`) : good({ length: lengthOf(total), typed: times + read.value.typed });
}

/** The one length that two terms are if the hyphen between them joins, as they were written or with their units; null where it can't. */
function joinedBy(hyphen: string, ...ways: readonly (readonly [before: string, after: string, bare?: LengthStyle | undefined])[]): string | null {
  const way = ways.find(([before, after, bare]) => {
    const isSplitNumber = ENDS_WHOLE.test(before) && BEGINS_WITH_FRACTION.test(after) && readLength(`${before} ${after}`, bare).ok;
    return isSplitNumber || readLength(before + hyphen + after, bare).ok;
  });
  return way ? `${way[0]} ${way[1]}` : null;
}

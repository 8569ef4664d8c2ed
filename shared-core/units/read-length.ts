import { assert, bad, fault, good, type Outcome } from '../base/index.ts';
import { type Length, type LengthStyle, lengthOf, MAX_LENGTH } from './length.ts';
import { type Complaint, LENGTH_EXAMPLES, type LengthToken, lengthTokens, type UnitToken } from './length-tokens.ts';
import { FOOT, INCH, type LengthUnit, METRE } from './length-unit.ts';
import { addRatios, type Ratio, ratio, roundRatio } from './ratio.ts';
import { say } from '../words/index.ts';

/** A length, and how somebody wrote it. */
export interface Measure {
  readonly length: Length;
  /** What was typed, without the space around it, with the unit marks that were left out. */
  readonly typed: string;
}

export const TOO_LONG = say`is more than 1000 m; that is the longest length accepted`;

/** The longest text that is read as a length, in UTF-16 code units. */
export const MAX_LENGTH_TEXT = 100;

/** A number with its fraction, and the unit written after it. */
interface Part {
  readonly value: Ratio;
  readonly isWhole: boolean;
  readonly isDecimal: boolean;
  readonly hasFraction: boolean;
  readonly start: number;
  readonly end: number;
  readonly unit: UnitToken | undefined;
}

interface Reading {
  readonly isNegative: boolean;
  readonly parts: readonly Part[];
}

interface Valued {
  readonly value: Ratio;
  readonly unit: LengthUnit;
}

/**
 * One length as somebody wrote it, without a sum; `parseMeasure` says what is read and what is refused.
 *
 * `readLength('12 4 1/2', 'imperial')` is 1207008 units, typed `12' 4 1/2"`.
 */
export function readLength(text: string, bare?: LengthStyle): Outcome<Measure> {
  const trimmed = text.trim();
  if (trimmed === '') return fault('', say`There is no length here; ${LENGTH_EXAMPLES}`);
  if (trimmed.length > MAX_LENGTH_TEXT) return tooLongText(trimmed);
  const tokens = lengthTokens(trimmed);
  if (!tokens.ok) return refused(trimmed, tokens.faults);
  const reading = readParts(tokens.value);
  if (!reading.ok) return refused(trimmed, reading.faults);

  const { isNegative, parts } = reading.value;
  const marked = withUnits(trimmed, parts, bare);
  if (!marked.ok) return refused(trimmed, marked.faults);
  const { valued, typed } = marked.value;
  if (typed.length > MAX_LENGTH_TEXT) return tooLongText(trimmed);

  const total = valued
    .map(({ value, unit }) => ratio(value.numerator * unit.units, value.denominator))
    .reduce(addRatios);
  const units = roundRatio(total);
  if (units > BigInt(MAX_LENGTH)) return refused(trimmed, whole(trimmed, TOO_LONG));
  return good({ length: lengthOf(Number(isNegative ? -units : units)), typed });
}

function readParts(tokens: readonly LengthToken[]): Outcome<Reading, Complaint> {
  const isNegative = tokens[0]?.kind === 'hyphen';
  const parts: Part[] = [];
  let next = isNegative ? 1 : 0;
  do {
    const part = readPart(tokens, next);
    if (!part.ok) return part;
    parts.push(part.value.part);
    next = part.value.next;
    const join = tokens[next];
    if (join === undefined) break;
    if (join.kind === 'comma' || join.kind === 'hyphen') {
      const isJoining = parts.at(-1)?.unit !== undefined && (join.kind === 'comma' || isEvenlySpaced(tokens, next));
      if (!isJoining) return complain(join, say`is not understood there; ${LENGTH_EXAMPLES}`);
      next += 1;
    }
  } while (true);
  return good({ isNegative, parts });
}

function readPart(tokens: readonly LengthToken[], first: number): Outcome<{ part: Part; next: number }, Complaint> {
  const head = tokens[first];
  if (head === undefined) {
    const last = tokens[first - 1];
    assert(last !== undefined, 'a text that is not empty has a token');
    return complain(last, say`has no number after it; ${LENGTH_EXAMPLES}`);
  }
  if (head.kind !== 'number' && head.kind !== 'fraction') {
    const missing = head.kind === 'unit' ? say`has no number before it` : say`is not understood there`;
    return complain(head, `${missing}; ${LENGTH_EXAMPLES}`);
  }
  let { value, end } = head;
  let next = first + 1;
  let hasFraction = head.kind === 'fraction';
  const isDecimal = head.kind === 'number' && !head.isWhole;
  if (head.kind === 'number') {
    const fractionAt = tokens[next]?.kind === 'hyphen' && isTight(tokens, next) ? next + 1 : next;
    const fraction = tokens[fractionAt];
    if (fraction?.kind === 'fraction') {
      if (isDecimal) {
        return complain(
          { start: head.start, end: fraction.end },
          say`has decimals and a fraction together; write one of them, for example 4.5 or 4 1/2`,
        );
      }
      value = addRatios(value, fraction.value);
      end = fraction.end;
      next = fractionAt + 1;
      hasFraction = true;
    }
  }
  // ‘a 12-foot wall’
  const afterHyphen = tokens[next + 1];
  const isHyphenated =
    tokens[next]?.kind === 'hyphen' && isTight(tokens, next) && afterHyphen?.kind === 'unit' && afterHyphen.isWord;
  if (isHyphenated) next += 1;
  const unit = tokens[next];
  const part = { value, isWhole: !isDecimal && !hasFraction, isDecimal, hasFraction, start: head.start, end };
  return unit?.kind === 'unit'
    ? good({ part: { ...part, unit }, next: next + 1 })
    : good({ part: { ...part, unit: undefined }, next });
}

/** Each part with its unit, and the text with the marks that it left out. */
function withUnits(
  text: string,
  parts: readonly Part[],
  bare: LengthStyle | undefined,
): Outcome<{ readonly valued: readonly Valued[]; readonly typed: string }, Complaint> {
  if (parts.every((part) => part.unit === undefined)) return withBareUnits(text, parts, bare);

  const valued: Valued[] = [];
  let typed = text;
  let previous: UnitToken | undefined;
  for (const [index, part] of parts.entries()) {
    const isLast = index === parts.length - 1;
    if (part.unit === undefined) {
      const isInches = isLast && bare === 'imperial' && previous?.unit === FOOT;
      if (!isInches) return complain(part, say`has no unit; ${LENGTH_EXAMPLES}`);
      valued.push({ value: part.value, unit: INCH });
      typed = `${text}"`;
      continue;
    }
    const { unit } = part.unit;
    if (previous !== undefined) {
      const before = text.slice(previous.start, previous.end);
      if (previous.unit.style !== unit.style) {
        return complain(
          part.unit,
          say`does not go with ‘${before}’; write all of it in feet and inches, or all of it in metric`,
        );
      }
      if (previous.unit.units <= unit.units) {
        return complain(
          part.unit,
          say`cannot come after ‘${before}’; write the larger unit first and each unit once, for example 12 ft 4 in`,
        );
      }
    }
    if (!isLast && !part.isWhole) {
      return complain(
        part,
        say`has to be a whole number, as more follows it; only the last number may have decimals or a fraction`,
      );
    }
    valued.push({ value: part.value, unit });
    previous = part.unit;
  }
  return good({ valued, typed });
}

function withBareUnits(
  text: string,
  parts: readonly Part[],
  bare: LengthStyle | undefined,
): Outcome<{ readonly valued: readonly Valued[]; readonly typed: string }, Complaint> {
  const [first, second] = parts;
  assert(first !== undefined, 'a reading has a part');
  if (bare === 'metric') {
    if (second !== undefined || first.hasFraction) {
      return bad(whole(text, say`has no unit; write metres as one number, for example 3.76, or write 3 m 76 cm`));
    }
    return good({ valued: [{ value: first.value, unit: METRE }], typed: `${text} m` });
  }
  if (bare === 'imperial') {
    if (second === undefined) return good({ valued: [{ value: first.value, unit: INCH }], typed: `${text}"` });
    const isFeetAndInches = parts.length === 2 && first.isWhole && !second.isDecimal;
    if (!isFeetAndInches) {
      return bad(whole(text, say`has no unit; write feet and inches as 12 4 1/2, 12' 4 1/2" or 12 ft 4 1/2 in`));
    }
    return good({
      valued: [
        { value: first.value, unit: FOOT },
        { value: second.value, unit: INCH },
      ],
      typed: `${text.slice(0, first.end)}'${text.slice(first.end)}"`,
    });
  }
  return bad(whole(text, say`has no unit; ${LENGTH_EXAMPLES}`));
}

function isTight(tokens: readonly LengthToken[], at: number): boolean {
  return spaceBefore(tokens, at) === 0 && spaceBefore(tokens, at + 1) === 0;
}

// 12'-4" and 12' - 4" are how drawings join feet to inches; in 12' -4" the sign would belong to the inches.
function isEvenlySpaced(tokens: readonly LengthToken[], at: number): boolean {
  return spaceBefore(tokens, at) > 0 === spaceBefore(tokens, at + 1) > 0;
}

function spaceBefore(tokens: readonly LengthToken[], at: number): number {
  const token = tokens[at];
  const before = tokens[at - 1];
  return token === undefined || before === undefined ? 0 : token.start - before.end;
}

function complain(place: { readonly start: number; readonly end: number }, problem: string) {
  return bad<Complaint>({ start: place.start, end: place.end, problem });
}

function whole(text: string, problem: string): Complaint {
  return { start: 0, end: text.length, problem };
}

function refused(text: string, { start, end, problem }: Complaint) {
  const part = text.slice(start, end);
  return fault('', part === text ? say`‘${text}’ ${problem}` : say`In ‘${text}’, ‘${part}’ ${problem}`);
}

export function tooLongText(text: string) {
  const opening = text.slice(0, 30);
  return fault('', say`‘${opening}…’ is more than ${MAX_LENGTH_TEXT} characters; ${LENGTH_EXAMPLES}`);
}

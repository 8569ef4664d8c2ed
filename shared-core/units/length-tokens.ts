import { bad, good, type Outcome } from '../base/index.ts';
import { FOOT, INCH, type LengthUnit, unitNamed } from './length-unit.ts';
import { decimalRatio, type Ratio, ratio } from './ratio.ts';
import { VULGAR_FRACTIONS } from './vulgar-fractions.ts';
import { say } from '../words/index.ts';

/** What people are shown when a length is refused. */
export const LENGTH_EXAMPLES = say`write for example 12 in, 12' 4 1/2" or 3.76 m`;

/** The part of a text that was not understood, and the rest of a sentence that starts with it. */
export interface Complaint {
  readonly start: number;
  readonly end: number;
  readonly problem: string;
}

interface Place {
  readonly start: number;
  readonly end: number;
}

export interface NumberToken extends Place {
  readonly kind: 'number';
  readonly value: Ratio;
  readonly isWhole: boolean;
}

export interface FractionToken extends Place {
  readonly kind: 'fraction';
  readonly value: Ratio;
}

export interface UnitToken extends Place {
  readonly kind: 'unit';
  readonly unit: LengthUnit;
  readonly isWord: boolean;
}

/** A hyphen or a comma: what it joins is for the reader to judge. */
export interface JoinToken extends Place {
  readonly kind: 'hyphen' | 'comma';
}

export type LengthToken = NumberToken | FractionToken | UnitToken | JoinToken;

const VULGAR = [...VULGAR_FRACTIONS.keys()].join('');

// In the order they are tried. Two single marks are an inch mark, so they come before one. A comma with space after it
// stands between two parts; any other belongs to a number.
const PIECE = new RegExp(
  [
    String.raw`(?<space>\s+)`,
    String.raw`(?<numerator>\d+)\s*[/⁄∕]\s*(?<denominator>\d+)`,
    String.raw`(?<vulgar>[${VULGAR}])`,
    String.raw`(?<comma>,(?=\s))`,
    String.raw`(?<digits>[\d.,]+)`,
    String.raw`(?<inchMark>["″”“]|['′’‘]{2})`,
    String.raw`(?<footMark>['′’‘])`,
    String.raw`(?<hyphen>[-−‐‑–])`,
    String.raw`(?<word>\p{L}+)`,
    String.raw`(?<unknown>.)`,
  ].join('|'),
  'suy',
);

/**
 * The numbers, fractions, units and joins of a written length, in their order, with where each stands in the text.
 *
 * Fails on the first piece that is none of them. Space is dropped; the places still tell where it was.
 */
export function lengthTokens(text: string): Outcome<readonly LengthToken[], Complaint> {
  const tokens: LengthToken[] = [];
  let start = 0;
  while (start < text.length) {
    PIECE.lastIndex = start;
    const groups = PIECE.exec(text)?.groups ?? {};
    let end = PIECE.lastIndex;
    const { numerator, denominator, vulgar, digits, word } = groups;
    if (numerator !== undefined && denominator !== undefined) {
      const problem = fractionProblem(BigInt(numerator), BigInt(denominator));
      if (problem !== undefined) return bad({ start, end, problem });
      tokens.push({ kind: 'fraction', value: ratio(BigInt(numerator), BigInt(denominator)), start, end });
    } else if (vulgar !== undefined) {
      const [over, under] = VULGAR_FRACTIONS.get(vulgar) ?? [0, 1];
      tokens.push({ kind: 'fraction', value: ratio(BigInt(over), BigInt(under)), start, end });
    } else if (digits !== undefined) {
      if (!/^(?:\d+(?:[.,]\d+)?|\.\d+)$/.test(digits)) {
        return bad({
          start,
          end,
          problem: say`is not a number; write for example 12, 3.76 or 3,76, with no mark between thousands`,
        });
      }
      tokens.push({ kind: 'number', value: decimalRatio(digits), isWhole: /^\d+$/.test(digits), start, end });
    } else if (word !== undefined) {
      const unit = unitNamed(word);
      if (unit === undefined) {
        return bad({ start, end, problem: say`is not a unit of length; the units are in, ft, yd, mm, cm and m` });
      }
      if (text[end] === '.') {
        // ‘12 ft.5 in’: a full stop after ft, or half an inch? Nobody but the writer knows.
        if (/\d/.test(text[end + 1] ?? '')) {
          return bad({ start: end, end: end + 2, problem: say`can be read in two ways after ${word}; put a space there` });
        }
        end += 1;
      }
      tokens.push({ kind: 'unit', unit, isWord: true, start, end });
    } else if (groups['inchMark'] !== undefined) {
      tokens.push({ kind: 'unit', unit: INCH, isWord: false, start, end });
    } else if (groups['footMark'] !== undefined) {
      tokens.push({ kind: 'unit', unit: FOOT, isWord: false, start, end });
    } else if (groups['hyphen'] !== undefined) {
      tokens.push({ kind: 'hyphen', start, end });
    } else if (groups['comma'] !== undefined) {
      tokens.push({ kind: 'comma', start, end });
    } else if (groups['space'] === undefined) {
      return bad({ start, end, problem: say`is not understood; ${LENGTH_EXAMPLES}` });
    }
    start = end;
  }
  return good(tokens);
}

// 41/2 is far more often 4 1/2 with its space lost than twenty and a half.
function fractionProblem(numerator: bigint, denominator: bigint): string | undefined {
  if (denominator === 0n) return say`has a zero under the line; write for example 7/8`;
  if (numerator >= denominator) return say`is not less than one; write the whole number first, for example 4 1/2`;
  return undefined;
}

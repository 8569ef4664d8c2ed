import { type Border, type HungBand, type Lining, matchOf, type Mural, type Rules, type Wallcovering } from '../house/index.ts';
import { dropOf, type Piece, type Strip } from '../setting-out/index.ts';
import { type Length, lengthOf, type LengthStyle, modulo, printFraction, showLength } from '../units/index.ts';
import type { WorkingLine } from './explain-order.ts';
import type { PieceRoll } from './roll-of-piece.ts';
import { say } from '../words/index.ts';

export interface PieceFacts {
  readonly piece: Piece;
  readonly covering: Wallcovering | Border | Lining | Mural;
  readonly band: Pick<HungBand, 'position' | 'datum'>;
  readonly rules: Rules;
  /** The height that the pattern is counted from; of strips. */
  readonly datum: Length | null;
  readonly roll: PieceRoll | undefined;
  readonly style: LengthStyle;
}

/**
 * How a strip's width came about, and which rule made each of its parts.
 *
 * Example: the last strip of the worked room is '7 3/8" of wall + 1/8" to lap in the corner = 7 1/2" to cut.'
 */
export function explainStrip(strip: Strip, laidWidth: Length, style: LengthStyle): readonly WorkingLine[] {
  const show = (length: number) => showLength(lengthOf(length), style);
  const own = strip.to - strip.from;
  const lap = strip.cutWidth - own;
  const turns = strip.parts.filter(({ wrap, lean }) => wrap > lean);
  const leaning = strip.parts.filter(({ wrap, lean }) => wrap > 0 && wrap === lean);
  return [
    own === laidWidth ? { text: say`${show(own)} wide: a whole strip.` } : { text: say`${show(own)} wide: cut from a whole strip of ${show(laidWidth)} where the wall ends.` },
    ...(lap > 0 ? [{ text: say`${show(own)} + ${show(lap)} to lap in the corner = ${show(strip.cutWidth)} to cut.`, rule: say`the last strip laps the first in an inside corner by the wrap there` }] : []),
    ...turns.map(({ wall, from, to, wrap, lean }): WorkingLine => {
      const upTo = show(to - from + wrap);
      const width = lean > 0 ? say`${show(to - from + wrap - lean)} to ${upTo}, as the corner leans` : `${show(to - from)} + ${show(wrap)} = ${upTo}`;
      return { text: say`Round the corner at the right of wall ${wall}: ${width}; the rest hangs from a new plumb line, over the wrap.`, rule: say`a strip is split at an inside corner; cut to the widest of three measurements; common practice, no source` };
    }),
    ...leaning.map(({ wall, lean }): WorkingLine => ({ text: say`The outside corner at the right of wall ${wall} leans: cut the strip after it has gone round, hang the rest plumb over it, lapped by ${show(lean)}.`, rule: say`where an outside corner leans by more than the wrap; the lap counts in the width; common practice, no source` })),
    ...(turns.length === 0 && leaning.length === 0 && strip.parts.length > 1 ? [{ text: say`It wraps round the corner of walls ${strip.parts.map(({ wall }) => wall).join(say` and `)}; strike a new plumb line after it.`, rule: say`at an outside corner at least an inch goes round; common practice, no source` }] : []),
  ];
}

/**
 * How a piece's length and its place in the pattern came about, which rule made it, and which roll it comes from.
 *
 * Example: `8' + 2 × 2" of trim = 8' 4".` and `Its top edge stands 2" above the datum: 0 in - 2" = 19" into the repeat of 21".`
 */
export function explainPiece(facts: PieceFacts): readonly WorkingLine[] {
  const { piece, covering, rules, roll, style } = facts;
  const show = (length: number) => showLength(lengthOf(length), style);
  if (covering.kind === 'mural') return [{ text: say`Panel ${piece.strip} is ${show(piece.length)} high; the wall takes ${show(piece.top - piece.bottom)} of it.` }];
  const isAlong = piece.part === 'length' || piece.part === 'joined';
  return [
    isAlong ? explainRun(piece, rules, show) : explainLength(piece, rules, show),
    ...explainPhase(facts, isAlong, show),
    ...(WHY[piece.part] ? [{ text: WHY[piece.part]! }] : []),
    ...(piece.width === undefined ? [] : [{ text: say`It is ${show(piece.width)} wide.` }]),
    ...(piece.isTurned ? [{ text: say`It hangs upside down.`, rule: say`every other strip is turned, as the covering asks` }] : []),
    ...(roll ? [{ text: say`It comes from roll ${roll.number}${roll.run === null ? '' : say` of run ${roll.run}`}, ${show(roll.from)} along${roll.isOffcut ? say`, an offcut` : ''}.` }] : []),
  ];
}

const WHY: Readonly<Partial<Record<Piece['part'], string>>> = {
  above: say`The opening takes the whole width of the strip, so what is over it is a piece of its own.`,
  between: say`Openings over and under it take the whole width of the strip.`,
  below: say`The opening takes the whole width of the strip, so what is under it is a piece of its own.`,
  side: say`Too little of the strip reaches past the opening’s edge to turn in, so the side takes a matched piece of its own.`,
  patch: say`The strip beside it turns into the reveal and leaves this bare; a matched patch covers it.`,
  joined: say`One spool does not surely give the whole length, so it is joined with the pattern matched.`,
};

type Show = (length: number) => string;

function explainLength(piece: Piece, { trim }: Rules, show: Show): WorkingLine {
  const wall = piece.top - piece.bottom;
  const into = piece.length - wall - 2 * trim.length;
  const terms = [...(wall > 0 ? [say`${show(wall)} of wall`] : []), ...(into > 0 ? [say`${show(into)} into the reveal`] : []), say`2 × ${trim.typed} of trim`];
  return { text: `${terms.join(' + ')} = ${show(piece.length)}.`, rule: say`a trim at top and bottom; common practice, no source` };
}

function explainRun(piece: Piece, { borderAllowance }: Rules, show: Show): WorkingLine {
  return { text: `${show(piece.length - 2 * borderAllowance.length)} + 2 × ${borderAllowance.typed} = ${show(piece.length)}.`, rule: say`an allowance at each end, trimmed in place; common practice, no source` };
}

function explainPhase({ piece, covering, band, datum }: PieceFacts, isAlong: boolean, show: Show): readonly WorkingLine[] {
  if (!('repeat' in covering) || covering.repeat.length === 0 || (covering.kind === 'wallcovering' && matchOf(covering) === 'free')) return [];
  const repeat = covering.repeat.length;
  if (isAlong || datum === null) return [{ text: say`Its left end lies ${show(piece.phase)} into the repeat of ${covering.repeat.typed}.`, rule: isAlong ? say`the pattern runs on from the length before it` : say`all strips of a ceiling are matched from its leftmost place` }];
  const below = datum - piece.upperEdge;
  const drop = covering.kind === 'wallcovering' && matchOf(covering) === 'drop' && covering.dropBy ? dropOf(repeat, covering.dropBy, piece.strip) : 0;
  const terms = [show(band.position.length), `${below < 0 ? '−' : '+'} ${show(Math.abs(below))}`, ...(drop > 0 ? [say`+ ${show(drop)} of drop`] : [])];
  const whole = band.position.length + below + drop;
  const sum = modulo(whole, repeat) === whole ? `${terms.join(' ')} = ${show(piece.phase)}` : say`${terms.join(' ')}, less whole repeats, = ${show(piece.phase)}`;
  return [
    {
      text: sayTopEdge(below, show(datum), say`${sum} into the repeat of ${covering.repeat.typed}`, show),
      rule: covering.kind === 'wallcovering' && drop > 0 && covering.dropBy ? say`strip ${piece.strip} of a drop match by ${printFraction(covering.dropBy)}` : say`all strips of a stretch are matched to one datum`,
    },
  ];
}

function sayTopEdge(below: number, datum: string, place: string, show: Show): string {
  if (below === 0) return say`Its top edge stands at the datum of ${datum}: ${place}.`;
  return below < 0 ? say`Its top edge stands ${show(-below)} above the datum of ${datum}: ${place}.` : say`Its top edge stands ${show(below)} below the datum of ${datum}: ${place}.`;
}

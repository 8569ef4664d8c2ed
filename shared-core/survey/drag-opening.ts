import { highestOf, type Opening, type Wall } from '../house/index.ts';
import { ceilDivide, floorDivide, type Length, type LengthStyle, roundedDivide } from '../units/index.ts';
import { edgesOf, FINEST, type Grip, type OpeningEdge, type OpeningEdges, type WallSpot } from './opening-edges.ts';
import { say } from '../words/index.ts';

/** A line that a moved edge has caught on. */
export interface Guide {
  readonly kind: 'along' | 'up';
  /** In units, from the wall's left end or above its floor line. */
  readonly at: number;
  /** What it is the line of, such as 'the head of window2'. */
  readonly of: string;
}

export interface DraggedOpening {
  readonly edges: OpeningEdges;
  readonly guides: readonly Guide[];
}

/** How a hand is rounded, and from how far its edges catch on lines; all in units. */
export interface Hand {
  readonly grain: Length;
  /** 0 where nothing is to be caught on but what is met exactly. */
  readonly reach: number;
  readonly style: LengthStyle;
}

type WallLines = Pick<Wall, 'length' | 'height' | 'openings'>;
type Line = Pick<Guide, 'at' | 'of'>;

interface Side {
  readonly kind: Guide['kind'];
  /** How long the wall is that way. */
  readonly most: number;
  readonly lines: readonly Line[];
  readonly middle: Line | null;
}

/**
 * An opening's edges after those of a grip were moved by so much along the wall and up it.
 *
 * Each moved edge is rounded to the hand's grain, or catches on a line within its reach: the wall's ends, middle, floor
 * and top, and the edges of the other openings, so that heads come to one height. Nothing leaves the wall, no edge
 * passes the one opposite. A hand that goes one way keeps the other as it was while it wavers within its reach. What
 * results is whole in 1/64 in or 0.1 mm, rounded inwards, so that what touches never overlaps.
 * Example: a window from 36 in to 84 in on a wall of 120 in, moved 5 1/3 in to the right with a grain of 1/4 in, stands
 * from 41 1/4 in; with a reach of 2 in it is moved to the middle only from 5 in of it or nearer.
 */
export function dragEdges(opening: OpeningEdges, grip: Grip, by: WallSpot, wall: WallLines, others: readonly Opening[], hand: Hand): DraggedOpening {
  const [along, up] = sidesOf(wall, others);
  const isBothWays = grip.some((edge) => edge === 'left' || edge === 'right') && grip.some((edge) => edge === 'sill' || edge === 'head');
  const wavers = (own: number, other: number) => isBothWays && Math.abs(own) < Math.abs(other) && Math.abs(own) <= hand.reach;
  const across = moveSpan({ low: opening.left, high: opening.right }, partOf(grip, 'left', 'right'), wavers(by.along, by.up) ? 0 : by.along, along, hand);
  const upright = moveSpan({ low: opening.sill, high: opening.head }, partOf(grip, 'sill', 'head'), wavers(by.up, by.along) ? 0 : by.up, up, hand);
  return {
    edges: { left: across.low, right: across.high, sill: upright.low, head: upright.high },
    guides: [...across.guides, ...upright.guides],
  };
}

/**
 * The edges of a new opening drawn from one corner to the other, each rounded and caught as `dragEdges` does.
 *
 * Example: from (20 in, 1 in) to (50 in, 80 in) with a reach of 2 in gives one that stands on the floor.
 */
export function drawEdges(from: WallSpot, to: WallSpot, wall: WallLines, hand: Hand): DraggedOpening {
  const [along, up] = sidesOf(wall, wall.openings);
  const across = spanBetween(from.along, to.along, along, hand);
  const upright = spanBetween(from.up, to.up, up, hand);
  return {
    edges: { left: across.low, right: across.high, sill: upright.low, head: upright.high },
    guides: [...across.guides, ...upright.guides],
  };
}

/**
 * How far an arrow key moves an edge that stands somewhere: to the next whole step in its direction.
 *
 * Example: from 10 1/8 in a step of 1/4 in to the right is 1/8 in, to the left -1/8 in; from 10 in it is 1/4 in.
 */
export function stepFrom(at: number, step: Length, isForward: boolean): number {
  return (isForward ? floorDivide(at, step) + 1 : ceilDivide(at, step) - 1) * step - at;
}

const EDGE_OF: Readonly<Record<OpeningEdge, (opening: string) => string>> = {
  left: (opening) => say`the left side of ${opening}`,
  right: (opening) => say`the right side of ${opening}`,
  head: (opening) => say`the head of ${opening}`,
  sill: (opening) => say`the sill of ${opening}`,
};

function sidesOf(wall: WallLines, others: readonly Opening[]): readonly [along: Side, up: Side] {
  const edges = others.map((opening) => ({ name: opening.id, ...edgesOf(opening) }));
  const linesOf = (...names: readonly OpeningEdge[]) => edges.flatMap((opening) => names.map((name) => ({ at: opening[name], of: EDGE_OF[name](opening.name) })));
  const [length, top] = [wall.length.length, highestOf(wall)];
  return [
    {
      kind: 'along',
      most: length,
      lines: [{ at: 0, of: say`the wall's left end` }, { at: length, of: say`the wall's right end` }, ...linesOf('left', 'right')],
      middle: { at: length / 2, of: say`the middle of the wall` },
    },
    { kind: 'up', most: top, lines: [...linesOf('head', 'sill'), { at: 0, of: say`the floor` }, { at: top, of: say`the top of the wall` }], middle: null },
  ];
}

interface Span {
  readonly low: number;
  readonly high: number;
}

interface MovedSpan extends Span {
  readonly guides: readonly Guide[];
}

type Part = 'none' | 'low' | 'high' | 'both';

function partOf(grip: Grip, low: OpeningEdge, high: OpeningEdge): Part {
  const [hasLow, hasHigh] = [grip.includes(low), grip.includes(high)];
  return hasLow && hasHigh ? 'both' : hasLow ? 'low' : hasHigh ? 'high' : 'none';
}

function moveSpan(span: Span, part: Part, by: number, side: Side, hand: Hand): MovedSpan {
  if (part === 'none' || by === 0) return { ...span, guides: [] };
  if (part === 'both') return moveWhole(span, by, side, hand);
  const finest = FINEST[hand.style];
  const { at, guides } = edgeAt((part === 'low' ? span.low : span.high) + by, side, hand);
  if (part === 'high') {
    const high = Math.min(side.most, Math.max(at, span.low + hand.grain));
    return { low: span.low, high: span.low + floorDivide(high - span.low, finest) * finest, guides };
  }
  const low = ceilDivide(Math.max(0, Math.min(at, span.high - hand.grain)), finest) * finest;
  return { low, high: low + floorDivide(span.high - low, finest) * finest, guides };
}

/** Both edges move alike, so that the one that is nearest to a line catches, or the middle on the wall's. */
function moveWhole({ low, high }: Span, by: number, { kind, most, lines, middle }: Side, hand: Hand): MovedSpan {
  const size = high - low;
  const ways = [
    ...lines.flatMap((line) => [{ line, at: line.at, isInwards: true }, { line, at: line.at - size, isInwards: false }]),
    ...(middle ? [{ line: middle, at: middle.at - size / 2, isInwards: false }] : []),
  ];
  const caught = nearest(ways.filter(({ at }) => at >= 0 && at <= most - size), low + by, hand.reach);
  const finest = FINEST[hand.style];
  const wanted = caught ? (caught.isInwards ? ceilDivide(Math.ceil(caught.at), finest) : floorDivide(Math.floor(caught.at), finest)) * finest : rounded(low + by, hand);
  const moved = Math.max(0, Math.min(wanted, floorDivide(most - size, finest) * finest));
  return { low: moved, high: moved + size, guides: caught && moved === wanted ? [{ kind, ...caught.line }] : [] };
}

/** One edge that moves alone: on the nearest line within reach, else rounded. */
function edgeAt(wanted: number, { kind, lines, middle }: Side, hand: Hand): { readonly at: number; readonly guides: readonly Guide[] } {
  const caught = nearest(middle ? [...lines, middle] : lines, wanted, hand.reach);
  return caught ? { at: Math.round(caught.at), guides: [{ kind, at: caught.at, of: caught.of }] } : { at: rounded(wanted, hand), guides: [] };
}

function spanBetween(from: number, to: number, side: Side, hand: Hand): MovedSpan {
  const finest = FINEST[hand.style];
  const within = (at: number) => Math.max(0, Math.min(at, side.most));
  const [start, end] = [edgeAt(within(from), side, hand), edgeAt(within(to), side, hand)];
  const [low, high] = [within(Math.min(start.at, end.at)), within(Math.max(start.at, end.at))];
  const first = ceilDivide(low, finest) * finest;
  return { low: first, high: first + Math.max(0, floorDivide(high - first, finest)) * finest, guides: end.guides };
}

function rounded(at: number, { grain }: Hand): number {
  return roundedDivide(Math.round(at), grain) * grain;
}

function nearest<Way extends { readonly at: number }>(ways: readonly Way[], wanted: number, reach: number): Way | null {
  const distance = ({ at }: Way) => Math.abs(at - wanted);
  const best = ways.reduce<Way | null>((found, way) => (found === null || distance(way) < distance(found) ? way : found), null);
  return best && distance(best) <= reach ? best : null;
}

import type { LayoutOption } from '../setting-out/index.ts';
import { type LengthStyle, showLength } from '../units/index.ts';
import { say } from '../words/index.ts';
import { sayRolls } from './say-units.ts';

/**
 * A layout on offer in the words of the trade: what it takes, where its ends meet, why it starts where it does.
 *
 * Example: '9 rolls. The ends meet in the corner by the entrance, 7 3/8 in over. No slivers. Struck there and hung round to
 * the right.'
 */
export function sayLayout(option: LayoutOption, style: LengthStyle): readonly string[] {
  return [
    `${sayRolls(option.rolls)}.`,
    ...(option.killKind ? [sayEnds(sayKill(option), option.mismatch, style)] : []),
    option.slivers === 0 ? say`No slivers.` : `${saySlivers(option.slivers)}${option.outsideSeams > 0 ? say`, ${option.outsideSeams} at an outside corner` : ''}.`,
    sayStart(option, style),
  ];
}

function sayKill({ killKind, layout }: LayoutOption): string {
  const wall = layout.kill === 'start' ? layout.start.wall : layout.kill.wall;
  if (killKind === 'entrance-corner') return say`in the corner by the entrance`;
  return killKind === 'over-opening' ? say`at the side of an opening on wall ${wall}` : say`in the corner at the left of wall ${wall}`;
}

function sayEnds(where: string, mismatch: LayoutOption['mismatch'], style: LengthStyle): string {
  const height = mismatch && mismatch.vertical > 0 ? showLength(mismatch.vertical, style) : null;
  if (!mismatch || mismatch.side === 'none') return height === null ? say`The ends meet ${where}, with no mismatch.` : say`The ends meet ${where}, ${height} apart in height.`;
  const across = showLength(mismatch.amount, style);
  if (mismatch.side === 'over') return height === null ? say`The ends meet ${where}, ${across} over.` : say`The ends meet ${where}, ${across} over and ${height} apart in height.`;
  return height === null ? say`The ends meet ${where}, ${across} short.` : say`The ends meet ${where}, ${across} short and ${height} apart in height.`;
}

function saySlivers(count: number): string {
  return count === 1 ? say`${count} sliver` : say`${count} slivers`;
}

function sayStart({ startKind, layout }: LayoutOption, style: LengthStyle): string {
  const { wall } = layout.start;
  switch (startKind) {
    case 'kill':
      return layout.direction === 'right' ? say`Struck there and hung round to the right.` : say`Struck there and hung round to the left.`;
    case 'strip-centred':
      return say`A strip is centred on wall ${wall}.`;
    case 'seam-centred':
      return say`A seam is centred on wall ${wall}.`;
    case 'corner':
      return say`Struck at a corner of wall ${wall}.`;
    case 'clear':
      return say`Struck ${showLength(layout.start.at, style)} from the left of wall ${wall}, which keeps seams clear of corners and openings.`;
    case 'opening':
      return say`Struck at the side of an opening on wall ${wall}.`;
  }
}

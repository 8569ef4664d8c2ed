import type { LayoutOption } from '../setting-out/index.ts';
import { type LengthStyle, showLength } from '../units/index.ts';
import { say } from '../words/index.ts';

/**
 * A layout on offer in the words of the trade: what it takes, where its ends meet, why it starts where it does.
 *
 * Example: '9 rolls. The ends meet in the corner by the entrance, 7 3/8 in over. No slivers. Struck there and hung round to
 * the right.'
 */
export function sayLayout(option: LayoutOption, style: LengthStyle): readonly string[] {
  return [
    `${option.rolls} ${option.rolls === 1 ? 'roll' : 'rolls'}.`,
    ...(option.killKind ? [say`The ends meet ${sayKill(option)}${sayMismatch(option, style)}.`] : []),
    option.slivers === 0 ? say`No slivers.` : `${option.slivers} ${option.slivers === 1 ? 'sliver' : 'slivers'}${option.outsideSeams > 0 ? say`, ${option.outsideSeams} at an outside corner` : ''}.`,
    sayStart(option, style),
  ];
}

function sayKill({ killKind, layout }: LayoutOption): string {
  const wall = layout.kill === 'start' ? layout.start.wall : layout.kill.wall;
  if (killKind === 'entrance-corner') return say`in the corner by the entrance`;
  return killKind === 'over-opening' ? say`at the side of an opening on wall ${wall}` : say`in the corner at the left of wall ${wall}`;
}

function sayMismatch({ mismatch }: LayoutOption, style: LengthStyle): string {
  if (!mismatch || mismatch.side === 'none') return mismatch && mismatch.vertical > 0 ? say`, ${showLength(mismatch.vertical, style)} apart in height` : say`, with no mismatch`;
  return `, ${showLength(mismatch.amount, style)} ${mismatch.side}${mismatch.vertical > 0 ? say` and ${showLength(mismatch.vertical, style)} apart in height` : ''}`;
}

function sayStart({ startKind, layout }: LayoutOption, style: LengthStyle): string {
  const { wall } = layout.start;
  switch (startKind) {
    case 'kill':
      return say`Struck there and hung round to the ${layout.direction}.`;
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

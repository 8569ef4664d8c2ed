import type { StretchLayout } from '../setting-out/index.ts';
import { type LengthStyle, lengthOf } from '../units/index.ts';
import { say } from '../words/index.ts';
import { areaBetween, ceilingAt, type Edge, partOfSpan, type WallSpan } from './spans.ts';
import type { Shape, Subject } from './shapes.ts';
import { placeNamed, sized } from './words.ts';

/** Each sliver outlined over the height of the band, its width over the ceiling line. */
export function sliverShapes(spans: readonly WallSpan[], { slivers }: Pick<StretchLayout, 'slivers'>, { top, bottom }: { readonly top: Edge; readonly bottom: Edge }, style: LengthStyle): readonly Shape[] {
  const end = spans.at(-1)?.to ?? 0;
  return slivers.flatMap(({ seam, from, to }): readonly Shape[] => {
    const parts = spans.flatMap((span) => partOfSpan(span, from, to) ?? []);
    const holder = spans.find((span) => span.from <= seam && seam <= span.to);
    const first = parts[0];
    if (!first || !holder) return [];
    const width = sized(to - from, style);
    const place = placeNamed({ wall: holder.wall.id, at: lengthOf(seam - holder.shift) }, style);
    const subject: Subject = { kind: 'mark', id: `sliver ${seam}`, says: say`A sliver: the seam ${place} leaves ${width} to the corner or the opening's edge. So narrow a part is hard to hold plumb and soon lifts; another start may avoid it.` };
    const isAtEnd = to > end - (end - spans[0]!.from) / 10;
    return [
      ...parts.map((part): Shape => ({ kind: 'polygon', points: areaBetween(part, top, bottom), pen: 'warn', fill: 'none', subject })),
      { kind: 'text', at: { x: first.from, y: -ceilingAt(first, first.from), down: -1.1, right: isAtEnd ? 0.2 : -0.2 }, anchor: isAtEnd ? 'end' : 'start', height: 'mark', text: say`sliver ${width}`, pen: 'warn', mayMove: -2, subject },
    ];
  });
}

import type { Opening } from '../house/index.ts';
import { type LengthStyle, lengthOf } from '../units/index.ts';
import type { WallFace } from './plan-walls.ts';
import type { Shape, Subject } from './shapes.ts';
import { openingSaid } from './words.ts';

/** Fitted furniture is drawn so many wall thicknesses deep, as its own depth is not known. */
const FURNITURE_DEPTH = 4;

/** An opening as a gap in its wall: a leaf, two lines of glass, a hearth, or nothing but its edges. */
export function openingOnPlan(face: WallFace, opening: Opening, style: LengthStyle, isThumb: boolean): readonly Shape[] {
  const { wall, depth, at } = face;
  const [from, to] = [opening.from.length, opening.from.length + opening.width.length];
  const subject: Subject = {
    kind: 'opening',
    id: `${wall.id} ${opening.id}`,
    says: openingSaid({ kind: opening.kind, from: opening.from.length, to: lengthOf(to), sill: opening.sill.length, head: lengthOf(opening.sill.length + opening.height.length) }, wall.id, style, opening.entrance),
  };
  const across = (outwards: number): Shape => ({ kind: 'line', from: at(from, outwards), to: at(to, outwards), pen: 'thin', subject });
  const jambs: readonly Shape[] = [from, to].map((edge) => ({ kind: 'line', from: at(edge), to: at(edge, depth), pen: 'visible', subject }));
  const area: Shape = { kind: 'polygon', points: [at(from, depth), at(to, depth), at(to), at(from)], pen: 'none', fill: 'opening', subject };
  switch (opening.kind) {
    case 'door':
      return [area, ...jambs, { kind: 'line', from: at(from, depth / 2), to: at(to, depth / 2), pen: 'visible', subject }, ...(opening.entrance && !isThumb ? [entrance(face, (from + to) / 2, subject)] : [])];
    case 'window':
      return [area, ...jambs, ...(isThumb ? [across(depth / 2)] : [across(depth * 0.3), across(depth * 0.7)])];
    case 'archway':
      return [area, ...jambs, { ...across(0), pen: 'hidden' } as Shape, { ...across(depth), pen: 'hidden' } as Shape, ...(opening.entrance && !isThumb ? [entrance(face, (from + to) / 2, subject)] : [])];
    case 'fireplace':
      return [area, ...jambs, { kind: 'line', from: at(from, depth), to: at(to, depth), pen: 'cut', subject }];
    case 'furniture':
      return [{ kind: 'polygon', points: [at(from), at(to), at(to, -FURNITURE_DEPTH * depth), at(from, -FURNITURE_DEPTH * depth)], pen: 'hidden', fill: 'wall', subject }];
  }
}

function entrance(face: WallFace, along: number, subject: Subject): Shape {
  return { kind: 'sign', sign: 'entrance', at: face.inward(face.at(along, face.depth), -0.5), turn: face.turn, pen: 'visible', subject };
}

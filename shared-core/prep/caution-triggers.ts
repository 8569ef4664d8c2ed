import { type Covering, highestOf, type House, type Room, type Surface } from '../house/index.ts';
import type { Area } from '../units/index.ts';
import { CAUTION_KINDS, type CautionKind } from './caution-kinds.ts';
import { isAsbestosExpected, isLeadExpected, REACHED_FROM_FLOOR } from './caution-limits.ts';
import type { MetSurface } from './met-surface.ts';
import type { Rule } from './rule.ts';

/** Work by one rule on surfaces of a room, with what it takes of each. */
export interface RoomWork {
  readonly rule: Rule;
  readonly parts: readonly { readonly met: MetSurface; readonly area: Area }[];
}

/** Bare of paint, so that none is disturbed unless it flakes. */
const BARE: readonly Surface['kind'][] = ['new-plaster', 'gypsum-board', 'tile'];
/** Never filled with the fillers of old. */
const UNFILLED: readonly Surface['kind'][] = ['new-plaster', 'tile', 'wood', 'textured'];

type Trigger = (met: MetSurface, house: House, room: Room, rule: Rule) => boolean;

const isNamed = (kind: CautionKind): Trigger => (_met, _house, _room, rule) => rule.cautions.includes(kind);

/** What on a surface sets off each caution, where work is done to it. */
const TRIGGERS: Readonly<Record<CautionKind, Trigger>> = {
  'lead-paint': ({ surface }, house, _room, rule) => rule.cautions.includes('lead-paint') && isLeadExpected(house) && mayBearPaint(surface),
  'asbestos-coating': ({ surface }, house) => isCoatingSuspected(surface, house),
  'asbestos-filler': ({ surface }, house, _room, rule) => rule.cautions.includes('asbestos-filler') && isFillerSuspected(surface, house),
  mould: isNamed('mould'),
  mains: isNamed('mains'),
  height: ({ of, wall }) => of.kind === 'ceiling' || (wall !== null && highestOf(wall) > REACHED_FROM_FLOOR),
  stairs: ({ of }, _house, room) => room.stairs === true && of.kind !== 'woodwork',
  'silica-dust': isNamed('silica-dust'),
  solvents: isNamed('solvents'),
  'vapour-tight': ({ coverings, surface, wall }, _house, _room, rule) =>
    rule.cautions.includes('vapour-tight') && coverings.some(isVapourTight) && (surface.states.includes('damp') || surface.states.includes('mould') || isOutside(wall)),
};

/** The cautions of work that is done by one rule, in the order of their kinds. */
export function cautionsOf({ rule, parts }: RoomWork, house: House, room: Room): readonly CautionKind[] {
  return CAUTION_KINDS.filter((kind) => parts.some(({ met }) => TRIGGERS[kind](met, house, room, rule)));
}

/** Whether this caution stands for what is done to this surface. */
export function isSetOff(kind: CautionKind, met: MetSurface, rule: Rule, house: House, room: Room): boolean {
  return TRIGGERS[kind](met, house, room, rule);
}

/**
 * Whether asbestos has to be expected in a textured coating: unless the coating or the house is surely later.
 *
 * Example: a textured coating of 2003 is not suspected, one of which no year is known is in a house of 1931.
 */
export function isCoatingSuspected({ kind, year }: Surface, { built, country }: House): boolean {
  return kind === 'textured' && isAsbestosExpected(country, [built, year]);
}

/** What stands on a wall of another year may be older than its last paint or paper, but bare plaster and board are as old as they are. */
function isFillerSuspected({ kind, year }: Surface, { built, country }: House): boolean {
  const isBare = kind === 'old-plaster' || kind === 'gypsum-board';
  return !UNFILLED.includes(kind) && isAsbestosExpected(country, isBare ? [built, year] : [built]);
}

function mayBearPaint({ kind, states }: Surface): boolean {
  return !BARE.includes(kind) || states.includes('flaking');
}

/** Vinyl, foil and metal let no vapour through. */
export function isVapourTight({ material }: Covering): boolean {
  return /vinyl|foil|metal/i.test(material ?? '');
}

/** Foil and metallic papers conduct. */
export function conducts({ material }: Covering): boolean {
  return /foil|metal/i.test(material ?? '');
}

/** A window is in an outside wall; whether a wall without one is inside, nothing says. */
function isOutside(wall: MetSurface['wall']): boolean {
  return wall?.openings.some(({ kind }) => kind === 'window') ?? false;
}

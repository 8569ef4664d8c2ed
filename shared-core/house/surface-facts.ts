import { facts, id, listOf, measure, oneOf, wholeNumber, yesOrNo } from './accepted.ts';
import { say } from '../words/index.ts';

/** What is on a wall, a ceiling or the woodwork before anything is done to it. */
export const SURFACE_KINDS = [
  'new-plaster',
  'old-plaster',
  'gypsum-board',
  'painted-matt',
  'painted-gloss',
  'paper-strippable',
  'paper-overpainted',
  'paper-vinyl',
  'wood',
  'tile',
  'textured',
] as const;

/** What is the matter with it; where nothing is, it is sound. */
export const SURFACE_STATES = ['cracked', 'flaking', 'damp', 'mould', 'nicotine', 'grease', 'holes'] as const;

export const surface = facts(say`a surface`, {
  kind: oneOf(SURFACE_KINDS),
  states: listOf(oneOf(SURFACE_STATES), say`states of a surface`, SURFACE_STATES.length).prefault([]),
  /** How much of it, in percent of its area, its states hold for. */
  affected: wholeNumber(1, 100, say`a share in percent`).prefault(100),
  /** When it was plastered, coated or papered last. */
  year: wholeNumber(1000, 2200, say`a year`).optional(),
});

/** Skirtings and doors that are painted: the faces of the doors in the room, and along every wall the skirting but for what goes down to the floor. */
export const woodwork = facts(say`the woodwork`, {
  covering: id(),
  skirting: measure.prefault('4 in'),
  doors: yesOrNo().prefault(true),
  surface: surface.optional(),
});

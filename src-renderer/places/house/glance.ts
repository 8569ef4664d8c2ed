import { capital } from '../../../shared-core/base/index.ts';
import type { Drawing } from '../../../shared-core/drawing/index.ts';
import { type House, nameCovering, type Room } from '../../../shared-core/house/index.ts';
import { ROOM_STEPS, type RoomGlance, type RoomStep, type RoomTake, type StepState, sayUnits } from '../../../shared-core/plan/index.ts';
import { isBought, type OrderLine } from '../../../shared-core/ordering/index.ts';
import { lengthOf, showLength } from '../../../shared-core/units/index.ts';
import { say, sayList } from '../../../shared-core/words/index.ts';
import type { Place } from '../../state/places.ts';

/** Said with small letters: ‘Set out’ is a place, and ‘Hung’ a direction. */
export const STEP_WORDS: Readonly<Record<RoomStep, string>> = {
  surveyed: capital(say`surveyed`),
  prepared: capital(say`prepared`),
  'set-out': capital(say`set out`),
  ordered: capital(say`ordered`),
  'in-hand': capital(say`in hand`),
  hung: capital(say`hung`),
};
export const STATE_WORDS: Readonly<Record<StepState, string>> = { done: say`yes`, part: say`in part`, open: say`not yet` };

const NEXT: Readonly<Record<RoomStep, { readonly words: string; readonly place: Place }>> = {
  surveyed: { words: say`Type its walls`, place: 'survey' },
  prepared: { words: say`Prepare it, and tick it off`, place: 'prep' },
  'set-out': { words: say`Choose what hangs in it`, place: 'coverings' },
  ordered: { words: say`Order what it takes`, place: 'order' },
  'in-hand': { words: say`Take in what comes`, place: 'deliveries' },
  hung: { words: say`Hang it, and tick it off`, place: 'deliveries' },
};

/** A room is prepared while its order is on the way. */
const NEXT_IN_ORDER: readonly RoomStep[] = ['surveyed', 'set-out', 'ordered', 'prepared', 'in-hand', 'hung'];

/** What is to be done next in a room, and where; null where nothing is. Walls that do not close are a question, no hindrance. */
export function nextStep({ steps }: Pick<RoomGlance, 'steps'>): (typeof NEXT)[RoomStep] | null {
  const isToDo = ({ step, state }: (typeof steps)[number]) => state === 'open' || (state === 'part' && step !== 'surveyed');
  const next = NEXT_IN_ORDER.find((step) => steps.some((one) => one.step === step && isToDo(one)));
  if (next === undefined) return null;
  const isHanging = steps.some(({ step, state }) => step === 'set-out' && state !== 'open');
  return next === 'set-out' && isHanging ? { words: say`See what can’t be met`, place: 'coverings' } : NEXT[next];
}

/** How many rooms have come how far: of each step those that are through with it. */
export function countSteps(rooms: readonly RoomGlance[]): readonly { readonly step: RoomStep; readonly rooms: number }[] {
  return ROOM_STEPS.map((step) => ({ step, rooms: rooms.filter(({ steps }) => steps.some((one) => one.step === step && one.state === 'done')).length }));
}

/** '9 rolls of K-2041, run 2214' */
export function sayTake(house: House, { covering, runs, rolls }: RoomTake): string {
  const known = runs.flatMap((run) => run ?? []);
  const units = sayUnits(house, covering, rolls);
  const name = nameCovering(house, covering);
  if (known.length === 0) return say`${units} of ${name}`;
  return known.length === 1 ? say`${units} of ${name}, run ${known[0]!}` : say`${units} of ${name}, runs ${sayList(known)}`;
}

/** '14 rolls and 2 spools' of what is still to be bought; null where nothing is. */
export function sayToBuy(house: House, order: readonly OrderLine[]): string | null {
  const lines = order.filter(isBought);
  const byLength = lines.flatMap(({ running }) => running?.toBuy ?? []).reduce((sum, length) => sum + length, 0);
  const counted = Map.groupBy(lines.filter(({ running }) => !running), ({ covering }) => sayUnits(house, covering, 2));
  const parts = [
    ...[...counted.values()].map((own) => sayUnits(house, own[0]!.covering, own.reduce((sum, { toBuy }) => sum + toBuy, 0))),
    ...(byLength > 0 ? [say`${showLength(lengthOf(byLength), house.lengths)} by the length`] : []),
  ];
  return parts.length === 0 ? null : sayList(parts);
}

/** The rooms by storey, in the order of the house; those of which none is said together. */
export function byStorey(rooms: readonly Room[]): readonly { readonly storey: string | null; readonly rooms: readonly Room[] }[] {
  return [...Map.groupBy(rooms, ({ storey }) => storey ?? null)].map(([storey, own]) => ({ storey, rooms: own }));
}

/** Drawings in frames of one size, each at its upper left, so that all of them come out to one scale. */
export function toOneScale(drawings: readonly Drawing[]): readonly Drawing[] {
  const most = (size: (drawing: Drawing) => number) => drawings.reduce((largest, drawing) => Math.max(largest, size(drawing)), 0);
  const width = most(({ bounds }) => bounds.right - bounds.left);
  const height = most(({ bounds }) => bounds.bottom - bounds.top);
  return drawings.map((drawing) => ({ ...drawing, bounds: { ...drawing.bounds, right: drawing.bounds.left + width, bottom: drawing.bounds.top + height } }));
}

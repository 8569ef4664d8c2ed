import { type House, nameCovering } from '../../../shared-core/house/index.ts';
import type { OrderLine, RoomReadiness, Wait } from '../../../shared-core/ordering/index.ts';
import { type HousePlan, sayUnits } from '../../../shared-core/plan/index.ts';
import { say } from '../../../shared-core/words/index.ts';

/** What a room waits for: '1 roll of K-2041, run 2214, which is on its way'. */
export function sayWait(house: House, order: readonly OrderLine[], { covering, run, rolls, isOnOrder }: Wait): string {
  const onOrder = order.find((line) => line.covering === covering && line.run === run)?.onOrder ?? 0;
  const units = say`${sayUnits(house, covering, rolls)} of ${nameCovering(house, covering)}`;
  return `${units}, ${run === null ? say`run not known yet` : say`run ${run}`}, ${isOnOrder ? sayOnItsWay(rolls) : sayNotOrdered(rolls, onOrder)}`;
}

function sayOnItsWay(rolls: number): string {
  return rolls === 1 ? say`which is on its way` : say`which are on their way`;
}

function sayNotOrdered(rolls: number, onOrder: number): string {
  if (onOrder > 0) return onOrder === 1 ? say`of which ${onOrder} is on the way` : say`of which ${onOrder} are on the way`;
  return rolls === 1 ? say`which is not ordered yet` : say`which are not ordered yet`;
}

/**
 * Whether a room can be hung, as it stands beside the room's name.
 *
 * Example: 'waits for 1 roll of K-2041, run 2214, which is on its way'
 */
export function sayReadiness(house: House, order: readonly OrderLine[], { state, waits }: RoomReadiness): string {
  if (state === 'hung') return say`is hung`;
  if (state === 'ready') return say`can start now`;
  return say`waits for ${waits.map((wait) => sayWait(house, order, wait)).join(say`; and for `)}`;
}

/** The run of each covering that hangs in a room, or why it can't be said. */
export type RunsOfRoom = { readonly runs: readonly { readonly covering: string; readonly run: string }[] } | { readonly trouble: string };

/** What a room is planned to hang from, of each covering one run. */
export function runsOfRoom(house: House, plan: HousePlan, room: string): RunsOfRoom {
  const lines = plan.order.filter(({ rooms }) => rooms.includes(room));
  const unknown = lines.find(({ run }) => run === null);
  if (unknown) return { trouble: say`The run of ${nameCovering(house, unknown.covering)} is not known yet.` };
  const parted = lines.find((line) => lines.some((other) => other !== line && other.covering === line.covering));
  if (parted) return { trouble: say`Its parts hang from different runs of ${nameCovering(house, parted.covering)}; a room is recorded with one.` };
  return { runs: lines.map(({ covering, run }) => ({ covering, run: run! })) };
}

/** The choices of run with a room hung from what it is planned from, on that day. */
export function withHung(house: House, room: string, runs: readonly { readonly covering: string; readonly run: string }[], day: string): House['runChoices'] {
  const others = house.runChoices.filter((choice) => choice.room !== room || !runs.some(({ covering }) => covering === choice.covering));
  return [...others, ...runs.map(({ covering, run }) => ({ covering, room, run, hung: true, day }))];
}

/** The choices of run without what hangs in a room; a run that somebody had chosen for it before stays chosen. */
export function withoutHung(house: House, room: string, chosenBefore: House['runChoices']): House['runChoices'] {
  return [...house.runChoices.filter((choice) => choice.room !== room || !choice.hung), ...chosenBefore.filter((choice) => choice.room === room && !choice.hung)];
}

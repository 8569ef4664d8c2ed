import type { House } from '../../../shared-core/house/index.ts';
import { type CheckedDelivery, keepLedger, type Ledger } from '../../../shared-core/ordering/index.ts';
import { sayUnits } from '../../../shared-core/plan/index.ts';
import { say, sayList } from '../../../shared-core/words/index.ts';

export type Decision = 'keep' | 'send-back';

/** The deliveries with one of them decided; null takes a decision back. */
export function withDecision(house: House, index: number, decision: Decision | null): House['deliveries'] {
  return house.deliveries.map((delivery, place) => {
    if (place !== index) return delivery;
    const { decision: _before, ...rest } = delivery;
    return decision === null ? rest : { ...rest, decision };
  });
}

/**
 * What it would mean to keep a run that was not ordered.
 *
 * Example: 4 of run 2214 are still to come and 3 of run 2215 came: 'Its 3 rolls count as in hand in place of 3 still to
 * come of run 2214, and the rooms are planned anew, each from one run.'
 */
export function sayKeeping(house: House, ledger: Ledger, { index, delivery: { covering }, sound }: CheckedDelivery): string {
  const kept = keepLedger({ ...house, deliveries: withDecision(house, index, 'keep') }, covering);
  const replaced = kept.lines
    .map((line, place) => ({ run: line.run, rolls: ledger.lines[place]!.outstanding - line.outstanding }))
    .filter(({ rolls }) => rolls > 0)
    .map(({ run, rolls }) => (run === null ? say`${rolls} still to come` : say`${rolls} still to come of run ${run}`));
  const units = sayUnits(house, covering, sound);
  if (replaced.length === 0)
    return sound === 1
      ? say`Its ${units} counts as in hand beyond what was ordered, and the rooms are planned anew, each from one run.`
      : say`Its ${units} count as in hand beyond what was ordered, and the rooms are planned anew, each from one run.`;
  return sound === 1
    ? say`Its ${units} counts as in hand in place of ${sayList(replaced)}, and the rooms are planned anew, each from one run.`
    : say`Its ${units} count as in hand in place of ${sayList(replaced)}, and the rooms are planned anew, each from one run.`;
}

/** What it would mean to send it back: 'Its 3 rolls go back and hang nowhere; 4 rolls stay still to come.' */
export function saySendingBack(house: House, ledger: Ledger, { delivery: { covering }, sound, gone }: CheckedDelivery): string {
  const toCome = ledger.lines.reduce((sum, { outstanding }) => sum + outstanding, 0);
  const units = sayUnits(house, covering, sound - gone);
  const goes = sound - gone === 1 ? say`Its ${units} goes back and hangs nowhere` : say`Its ${units} go back and hang nowhere`;
  if (toCome === 0) return `${goes}.`;
  const rest = sayUnits(house, covering, toCome);
  return `${goes}; ${toCome === 1 ? say`${rest} stays still to come` : say`${rest} stay still to come`}.`;
}

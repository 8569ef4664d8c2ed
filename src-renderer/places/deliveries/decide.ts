import type { House } from '../../../shared-core/house/index.ts';
import { type CheckedDelivery, keepLedger, type Ledger } from '../../../shared-core/ordering/index.ts';
import { sayUnits } from '../../../shared-core/plan/index.ts';

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
    .map(({ run, rolls }) => `${rolls} still to come${run === null ? '' : ` of run ${run}`}`);
  const place = replaced.length > 0 ? `in place of ${replaced.join(' and ')}` : 'beyond what was ordered';
  return `Its ${sayUnits(house, covering, sound)} ${sound === 1 ? 'counts' : 'count'} as in hand ${place}, and the rooms are planned anew, each from one run.`;
}

/** What it would mean to send it back: 'Its 3 rolls go back and hang nowhere; 4 rolls stay still to come.' */
export function saySendingBack(house: House, ledger: Ledger, { delivery: { covering }, sound, gone }: CheckedDelivery): string {
  const toCome = ledger.lines.reduce((sum, { outstanding }) => sum + outstanding, 0);
  const stays = toCome > 0 ? `; ${sayUnits(house, covering, toCome)} ${toCome === 1 ? 'stays' : 'stay'} still to come` : '';
  return `Its ${sayUnits(house, covering, sound - gone)} ${sound - gone === 1 ? 'goes' : 'go'} back and ${sound - gone === 1 ? 'hangs' : 'hang'} nowhere${stays}.`;
}

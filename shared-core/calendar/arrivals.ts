import type { House } from '../house/index.ts';
import { keepLedger, type LineProgress, type RoomReadiness, type Wait } from '../ordering/index.ts';

/**
 * The day on which what a room waits for of a covering has come, by room and covering.
 *
 * Shapes: days such as "2026-03-02"; null where nothing is waited for, and where no day is known: not all of it is
 * ordered, or an order that it takes has no day. Rooms are served in the order of the house, each beyond those before it;
 * orders in the order of their days.
 * Example: 6 rolls are to come on 9 March and 4 on 16 March; a room that lacks 5 can be hung from the 9th, the next that
 * lacks 3 from the 16th.
 */
export function findArrivals(house: House, readiness: readonly RoomReadiness[]): (room: string, covering: string) => string | null {
  const expected = new Map(house.orders.map((order) => [order.id, order.expected ?? null]));
  const ledgers = new Map<string, readonly LineProgress[]>();
  const promised = new Map<string, number>();
  const linesOf = (covering: string) => {
    const lines = ledgers.get(covering) ?? keepLedger(house, covering).lines;
    ledgers.set(covering, lines);
    return lines;
  };
  const dayOf = ({ covering, run, rolls, isOnOrder }: Wait): string | null => {
    if (!isOnOrder) return null;
    const coming = linesOf(covering)
      .filter((line) => line.run === run && line.outstanding > 0)
      .map(({ order, outstanding }) => ({ outstanding, day: expected.get(order) ?? null }))
      .toSorted((one, other) => compareDays(one.day, other.day));
    const key = JSON.stringify([covering, run]);
    // What rooms lack one by one may be more than what they lack together, and all of that is on order.
    const wanted = Math.min((promised.get(key) ?? 0) + rolls, coming.reduce((sum, { outstanding }) => sum + outstanding, 0));
    promised.set(key, wanted);
    let come = 0;
    return coming.find(({ outstanding }) => (come += outstanding) >= wanted)?.day ?? null;
  };
  const days = new Map(
    readiness.flatMap(({ room, waits }) =>
      [...Map.groupBy(waits, ({ covering }) => covering)].map(([covering, own]) => {
        const each = own.map(dayOf);
        return [JSON.stringify([room, covering]), each.includes(null) ? null : each.toSorted(compareDays).at(-1)!] as const;
      }),
    ),
  );
  return (room, covering) => days.get(JSON.stringify([room, covering])) ?? null;
}

/** No day comes after every day. */
function compareDays(one: string | null, other: string | null): number {
  if (one === other) return 0;
  if (one === null || other === null) return one === null ? 1 : -1;
  return one < other ? -1 : 1;
}

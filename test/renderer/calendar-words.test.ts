import { expect, test } from 'vitest';
import { moneyOf } from '../../shared-core/units/index.ts';
import type { CostLine } from '../../shared-core/costing/index.ts';
import { groupCost } from '../../src-renderer/places/calendar/cost-groups.ts';
import { sayLength, sayMoment, sayPeople, sayWhen } from '../../shared-core/calendar/index.ts';

const PLAN = { jobs: [], bookings: [], first: '2026-03-02', last: '2026-03-20', inseparable: [], lackingHands: [] };

test('how long it takes stands beside what no calendar can do better', () => {
  expect(sayLength({ ...PLAN, workingDays: 12, lowerBound: 11, isShortest: false })).toBe('12 working days, until 20 Mar 2026; fewer than 11 will not do.');
  expect(sayLength({ ...PLAN, workingDays: 12, lowerBound: 12, isShortest: true })).toBe('12 working days, until 20 Mar 2026; no calendar takes fewer.');
  expect(sayLength({ ...PLAN, workingDays: 3, lowerBound: 1, isShortest: false })).toBe('3 working days, until 20 Mar 2026.');
  expect(sayLength({ ...PLAN, workingDays: 1, lowerBound: 1, isShortest: true })).toBe('1 working day, on 20 Mar 2026.');
});

test('a working day begins at eight', () => {
  expect(sayMoment({ day: '2026-03-02', minute: 95 })).toBe('2 Mar 2026, 09:35');
  expect(sayWhen({ job: 'a', from: { day: '2026-03-02', minute: 0 }, to: { day: '2026-03-03', minute: 9 }, days: [], crew: [], moved: null })).toBe('2 Mar 2026 to 3 Mar 2026');
  const job = { id: 'a', room: null, words: 'a', minutes: 1, waitMinutes: 0, after: [], earliest: null, chosen: null };
  expect(([0, 1, 2] as const).map((people) => sayPeople({ ...job, people }))).toEqual(['done by others', 'one person', 'two people']);
});

test('cost stands by kind, labour together for each room; what has no price makes no sum', () => {
  const labour = (room: string | null, minutes: number, cost: number | null): CostLine => ({ kind: 'labour', of: `${room} ${minutes}`, words: 'work', room, minutes, spentMinutes: null, cost: cost === null ? null : moneyOf(cost) });
  const paint: CostLine = { kind: 'paint', of: 'white', words: 'White', room: null, minutes: null, spentMinutes: null, cost: null };
  const groups = groupCost({ lines: [labour('hall', 90, 6300), paint, labour('attic', 60, null), labour('hall', 30, 2100)] });
  expect(groups.map(({ kind }) => kind)).toEqual(['paint', 'labour']);
  expect(groups[1]).toMatchObject({ rooms: [{ room: 'hall', minutes: 120, cost: 8400 }, { room: 'attic', minutes: 60, cost: null }] });
  expect(groupCost({ lines: [] })).toEqual([]);
});

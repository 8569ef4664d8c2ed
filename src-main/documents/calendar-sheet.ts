import { assert } from '../../shared-core/base/index.ts';
import { type Booking, dayNumberOf, sayLength, sayMoment, sayPeople, sayWhen, type WorkTime } from '../../shared-core/calendar/index.ts';
import { nameSupplier } from '../../shared-core/house/index.ts';
import { nameRoom } from '../../shared-core/plan/index.ts';
import { say, sayDay } from '../../shared-core/words/index.ts';
import type { PaperFacts } from './paper-facts.ts';
import type { Block, Cell, Sheet } from './pdf/sheet.ts';
import { svgOf, svgPath } from './pdf/svg.ts';

/** In points, of a room's days beside its name. */
const BAR = { width: 230, height: 10 } as const;

/** When which room is worked in, what is done on which day and by how many, and what comes when. */
export function calendarSheet({ house, plan }: PaperFacts): Sheet {
  const { calendar } = plan;
  assert(calendar !== null && calendar.first !== null && calendar.last !== null, 'a calendar that is listed has days');
  const jobs = new Map(plan.jobs.map((job) => [job.id, job]));
  const rooms = [...Map.groupBy(calendar.bookings, ({ job }) => jobs.get(job)!.room)].map(([room, own]) => ({ room, own }));
  const expected = house.orders.filter((order) => order.expected !== undefined && plan.runs.some(({ ledger }) => ledger.lines.some((line) => line.order === order.id && line.outstanding > 0)));
  const nameOf = (room: string | null) => (room === null ? say`The whole house` : nameRoom(house, room));
  const span = { from: dayNumberOf(calendar.first), to: dayNumberOf(calendar.last) + 1 };
  return {
    title: say`Calendar`,
    about: null,
    blocks: [
      { kind: 'text', as: 'strong', text: sayLength(calendar) },
      { kind: 'text', as: 'soft', text: say`Drying takes the time that it takes: the days move when a wall is found wet.` },
      {
        kind: 'table',
        heading: say`Room by room`,
        columns: [{ head: say`Room` }, { head: say`From and to` }, { head: `${sayDay(calendar.first)} – ${sayDay(calendar.last)}`, isWide: true }],
        rows: rooms.map(({ room, own }): readonly Cell[] => [{ text: nameOf(room), isStrong: true }, sayWhen(spanOf(own)), { svg: barOf(own, span), ...BAR }]),
      },
      ...(expected.length === 0 ? [] : [{ kind: 'table', heading: say`Deliveries`, columns: [{ head: say`Expected on` }, { head: say`Order` }, { head: say`Supplier`, isWide: true }], rows: expected.map(({ id, expected: day, supplier }) => [sayDay(day!), id, supplier === undefined ? '' : nameSupplier(house, supplier)]) } satisfies Block]),
      {
        kind: 'table',
        heading: say`Job by job`,
        columns: [{ head: say`From`, width: 90 }, { head: say`To`, width: 90 }, { head: say`Room`, width: 76 }, { head: say`Job`, isWide: true }, { head: say`People`, width: 56 }],
        rows: calendar.bookings.map(({ job: id, from, to }) => {
          const job = jobs.get(id)!;
          return [sayMoment(from), sayMoment(to), nameOf(job.room), job.words, sayPeople(job)].map((text): Cell => ({ text, isSmall: true }));
        }),
      },
    ],
  };
}

/** From the first beginning to the last end. */
function spanOf(bookings: readonly Booking[]): Booking {
  const isBefore = (one: WorkTime, other: WorkTime) => one.day < other.day || (one.day === other.day && one.minute < other.minute);
  const from = bookings.map((booking) => booking.from).reduce((first, one) => (isBefore(one, first) ? one : first));
  const to = bookings.map((booking) => booking.to).reduce((last, one) => (isBefore(last, one) ? one : last));
  return { ...bookings[0]!, from, to };
}

/** The days that are worked on, in a strip of all days from the first to the last. */
function barOf(bookings: readonly Booking[], { from, to }: { readonly from: number; readonly to: number }): string {
  const { width, height } = BAR;
  const at = (day: number) => Math.round(((day - from) / (to - from)) * width * 100) / 100;
  const days = [...new Set(bookings.flatMap((booking) => (booking.days.length > 0 ? booking.days : [booking.from.day])))].map(dayNumberOf);
  const blocks = days.map((day) => svgPath(`M${at(day)} 1L${at(day + 1) - 0.3} 1L${at(day + 1) - 0.3} ${height - 1}L${at(day)} ${height - 1}Z`, { fill: '#000000' }));
  return svgOf(width, height, [svgPath(`M0 ${height / 2}L${width} ${height / 2}`, { stroke: '#999999', width: 0.5 }), ...blocks]);
}

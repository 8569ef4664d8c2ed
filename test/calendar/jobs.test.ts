import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { HouseJob } from '../../shared-core/calendar/house-job.ts';
import type { Loose } from '../builders.ts';
import { metricHouse, metricPaper, paintNeed, task, workOf } from './house-to-work.ts';

const wall = (id: string, length: string, facts: Loose = {}): Loose => ({ id, length, height: '2.5 m', ...facts });
const oneWall = (facts: Loose = {}, wallFacts: Loose = {}): Loose => ({ id: 'room', name: 'Stube', walls: [wall('A', '5 m', wallFacts)], bands: [{ id: 'main', covering: 'paper', walls: ['A'] }], ...facts });
const fourWalls = (facts: Loose = {}): Loose => ({ id: 'room', name: 'Stube', walls: ['A', 'B', 'C', 'D'].map((id) => wall(id, '4 m')), ...facts });
const byId = (jobs: readonly HouseJob[]) => new Map(jobs.map((job) => [job.id, job]));
const texts = (job: HouseJob | undefined) => job?.working.map(({ text }) => text);

describe('hanging', () => {
  test('ten whole strips of 15 min with the lines in 20 min are 170 min of one person', () => {
    const job = byId(workOf(metricHouse({ rooms: [oneWall()] }))).get('room:hang:main')!;
    expect(job).toMatchObject({ kind: 'hanging', words: 'Hang P-1 on wall A', minutes: 170, people: 1, waitMinutes: 0, after: [], earliest: null, chosen: null, isOthers: false });
    expect(job.working).toEqual([
      { text: 'Striking lines: 20 min.', rule: 'common practice, no source' },
      { text: 'Whole pieces: 10 × 15 min = 150 min.', rule: 'common practice, no source' },
      { text: 'Together 170 min.' },
    ]);
  });

  test('a strip over and under openings is short pieces; the booking is waited for once', () => {
    // A window 1 m wide takes two whole strips: six left on 4 m, two pieces above it and two below.
    const window = { id: 'w', kind: 'window', from: '1 m', width: '1 m', sill: '90 cm', height: '1 m' };
    const house = metricHouse({ coverings: [metricPaper({ bookingMinutes: 7 })], rooms: [{ ...oneWall({}, { length: '4 m', openings: [window] }) }] });
    const job = byId(workOf(house)).get('room:hang:main')!;
    expect(texts(job)).toEqual(['Striking lines: 20 min.', 'Whole pieces: 6 × 15 min = 90 min.', 'Short pieces: 4 × 8 min = 32 min.', 'Booking the first piece: 7 min.', 'Together 149 min.']);
    expect(job.minutes).toBe(149);
  });

  test('a dado under 1.2 m is short pieces', () => {
    const house = metricHouse({ rooms: [oneWall({ bands: [{ id: 'main', covering: 'paper', walls: ['A'], to: '1.1 m' }] })] });
    expect(texts(byId(workOf(house)).get('room:hang:main'))).toContain('Short pieces: 10 × 8 min = 80 min.');
  });

  test('strips longer than one person hangs take two, who share the rest', () => {
    // The wall on the left is 2.5 m high and its five strips hang alone; the other is 4 m: its strips are over 12 ft.
    const house = metricHouse({ rooms: [oneWall({ walls: [wall('A', '2.5 m'), wall('B', '4 m', { height: '4 m' })], bands: [{ id: 'main', covering: 'paper', walls: ['A', 'B'] }] })] });
    const job = byId(workOf(house)).get('room:hang:main')!;
    expect(job.people).toBe(2);
    const long = 9 * 15;
    // Five strips fill the lower wall; the wrap in the corner moves the others on, so that they are nine.
    expect(texts(job)).toEqual([
      'Striking lines: 20 min.',
      'Whole pieces: 5 × 15 min = 75 min.',
      `Pieces too long for one person: 9 × 15 min = ${long} min.`,
      'What one could do, 95 min, shared by two: 48 min.',
      `Together ${long + 48} min of each of two people.`,
    ]);
    expect(job.minutes).toBe(long + 48);
  });

  test('a ceiling takes two people; a border goes by the metre, after the paper is dry', () => {
    const border = { id: 'edge', kind: 'border', name: 'Edge', width: '10 cm', rollLength: '5 m', bookingMinutes: 3 };
    const bands = [{ id: 'main', covering: 'paper', walls: ['A', 'B', 'C', 'D'] }, { id: 'top', covering: 'edge', walls: ['A', 'B'], from: '2.4 m' }];
    const jobs = byId(workOf(metricHouse({ coverings: [metricPaper(), border], rooms: [fourWalls({ bands, ceiling: { covering: 'paper' } })] })));
    // A ceiling of 4 m by 4 m: eight strips of 50 cm, each for two, and the lines shared.
    expect(jobs.get('room:hang-ceiling')).toMatchObject({ words: 'Hang P-1 on the ceiling', minutes: 170, people: 2, waitMinutes: 0, after: [] });
    expect(jobs.get('room:hang:main')).toMatchObject({ words: 'Hang P-1 on all walls', waitMinutes: 1440, after: ['room:hang-ceiling'] });
    // Two lengths of 4 m, over 12 ft: 8 m × 4 min for two, half of the lines, and the booking.
    expect(jobs.get('room:hang:top')).toMatchObject({ words: 'Hang the border Edge on walls A and B', minutes: 32 + 10 + 3, people: 2, waitMinutes: 0, after: ['room:hang:main'] });
    expect(jobs.get('room:clear-up')).toMatchObject({ kind: 'clearing-up', room: 'room', minutes: 30, after: ['room:hang:top'] });
  });

  test('a mural goes by the panel, lining across by the metre and up and down by the piece', () => {
    const coverings = [
      { id: 'view', kind: 'mural', name: 'View', panels: 4, panelWidth: '1 m', panelHeight: '2.6 m' },
      { id: 'across', kind: 'lining', name: 'Liner', width: '50 cm', rollLength: '10 m' },
      { id: 'up', kind: 'lining', name: 'Liner', width: '50 cm', rollLength: '10 m', direction: 'up-and-down' },
    ];
    const bands = [{ id: 'm', covering: 'view', walls: ['A'] }, { id: 'a', covering: 'across', walls: ['A'] }, { id: 'u', covering: 'up', walls: ['B'] }];
    const jobs = byId(workOf(metricHouse({ coverings, rooms: [{ id: 'room', name: 'Stube', walls: [wall('A', '3.4 m'), wall('B', '2 m')], bands }] })));
    expect(texts(jobs.get('room:hang:m'))).toContain('Whole pieces: 4 × 20 min = 80 min.');
    // Five courses of 3.40 m.
    expect(texts(jobs.get('room:line:a'))).toContain('Lengths for one person: 17 m at 3 min a metre = 51 min, rounded up.');
    expect(jobs.get('room:line:a')).toMatchObject({ kind: 'lining', words: 'Line wall A with Liner', waitMinutes: 1440, after: [] });
    expect(texts(jobs.get('room:line:u'))).toContain('Whole pieces: 4 × 10 min = 40 min.');
    expect(jobs.get('room:hang:m')!.after).toEqual(['room:line:a', 'room:line:u']);
  });
});

describe('painting', () => {
  const needs = [
    paintNeed('wash', [[{ kind: 'wall', wall: 'A' }, 1640], [{ kind: 'wall', wall: 'B' }, 1640], [{ kind: 'ceiling' }, 1200]]),
    paintNeed('gloss', [[{ kind: 'woodwork' }, 501]], 1),
  ];
  const coverings = [metricPaper(), { id: 'wash', kind: 'paint', name: 'Lime' }, { id: 'gloss', kind: 'paint', name: 'Gloss' }];
  const house = metricHouse({ coverings, rooms: [fourWalls({ bands: [{ id: 'main', covering: 'paper', walls: ['C', 'D'] }] })] });
  const jobs = workOf(house, { paints: needs });

  test('goes overhead, on walls, on woodwork, coat by coat, and before the paper', () => {
    expect(jobs.map(({ id, words, after, minutes, waitMinutes }) => [id, words, after, minutes, waitMinutes])).toEqual([
      // 12 m² at 5 min; 32.80 m² at 4 min are 131.2; 5.01 m² at 15 min are 75.15.
      ['room:paint:ceiling:wash:1', 'Paint the ceiling with Lime, coat 1 of 2', [], 60, 240],
      ['room:paint:ceiling:wash:2', 'Paint the ceiling with Lime, coat 2 of 2', ['room:paint:ceiling:wash:1'], 60, 240],
      ['room:paint:wall:wash:1', 'Paint walls A and B with Lime, coat 1 of 2', ['room:paint:ceiling:wash:2'], 132, 240],
      ['room:paint:wall:wash:2', 'Paint walls A and B with Lime, coat 2 of 2', ['room:paint:wall:wash:1'], 132, 240],
      ['room:paint:woodwork:gloss:1', 'Paint the woodwork with Gloss', ['room:paint:wall:wash:2'], 76, 960],
      // 8 m and the wrap in the corner are 17 strips.
      ['room:hang:main', 'Hang P-1 on walls C and D', ['room:paint:woodwork:gloss:1'], 275, 0],
      ['room:clear-up', 'Clear up', ['room:hang:main'], 30, 0],
    ]);
  });

  test('stands between lining and paper, overhead too', () => {
    const liner = { id: 'liner', kind: 'lining', name: 'Liner', width: '50 cm', rollLength: '10 m' };
    const hung = [{ id: 'under', covering: 'liner', walls: ['C'] }, { id: 'main', covering: 'paper', walls: ['C'] }];
    const of = (covering: string) => metricHouse({ coverings: [...coverings, liner], rooms: [fourWalls({ bands: hung, ceiling: { covering } })] });
    const order = (covering: string) => workOf(of(covering), { paints: [needs[1]!], tasks: [task('wash')] }).map(({ id, after, waitMinutes }) => [id, after, waitMinutes]);
    expect(order('paper')).toEqual([
      ['wash', [], 0],
      ['room:line:under', ['wash'], 1440],
      ['room:paint:woodwork:gloss:1', ['room:line:under'], 960],
      ['room:hang-ceiling', ['room:paint:woodwork:gloss:1'], 0],
      ['room:hang:main', ['room:hang-ceiling'], 0],
      ['room:clear-up', ['room:hang:main'], 0],
    ]);
    expect(order('liner').slice(1, 4)).toEqual([
      ['room:line-ceiling', ['wash'], 1440],
      ['room:line:under', ['wash'], 1440],
      ['room:paint:woodwork:gloss:1', ['room:line-ceiling', 'room:line:under'], 960],
    ]);
  });

  test('shows its minutes by the square metre', () => {
    expect(byId(jobs).get('room:paint:wall:wash:1')!.working).toEqual([{ text: '32.80 m² at 4 min a square metre = 132 min, rounded up.', rule: 'common practice, no source' }]);
  });

  test('of a surface whose coats are fewer stops before the others', () => {
    const [first] = needs;
    const mixed = { ...first!, surfaces: [first!.surfaces[0]!, { ...first!.surfaces[1]!, coats: 3 }] };
    expect(workOf(house, { paints: [mixed] }).filter(({ kind }) => kind === 'painting').map(({ words, minutes }) => [words, minutes])).toEqual([
      ['Paint walls A and B with Lime, coat 1 of 3', 132],
      ['Paint walls A and B with Lime, coat 2 of 3', 132],
      ['Paint wall B with Lime, coat 3 of 3', 66],
    ]);
  });
});

describe('preparation', () => {
  const tasks = [task('strip', { waitMinutes: 30 }), task('fill', { after: ['strip'], minutes: 90, people: 2 }), task('wash'), task('far', { room: 'gone', words: 'Far' })];

  test('comes first: what follows waits for its last tasks', () => {
    const jobs = workOf(metricHouse({ rooms: [oneWall()] }), { tasks });
    expect(jobs.map(({ id }) => id)).toEqual(['far', 'strip', 'fill', 'wash', 'room:hang:main', 'room:clear-up']);
    expect(byId(jobs).get('fill')).toMatchObject({ kind: 'preparation', minutes: 90, people: 2, after: ['strip'], working: [{ text: 'By the rule of the task: 90 min.', rule: 'somewhere' }] });
    expect(byId(jobs).get('room:hang:main')!.after).toEqual(['fill', 'wash']);
  });

  test('of a room that a task elsewhere waits for still comes before its paper', () => {
    const elsewhere = [task('strip'), task('carry', { room: 'hall', after: ['strip'] })];
    const house = metricHouse({ rooms: [oneWall(), oneWall({ id: 'hall', name: 'Flur', bands: [] })] });
    expect(byId(workOf(house, { tasks: elsewhere })).get('room:hang:main')!.after).toEqual(['strip']);
  });

  test('is the user’s own where they said so: their minutes, their day, somebody else', () => {
    const choices = [{ task: 'strip', isOthers: true, minutes: 45 }, { task: 'fill', minutes: 40, day: '2026-03-04' }, { task: 'room:hang:main', day: '2026-03-09' }];
    const jobs = byId(workOf(metricHouse({ rooms: [oneWall()], tasks: choices }), { tasks }));
    expect(jobs.get('strip')).toMatchObject({ minutes: 0, people: 1, waitMinutes: 30, isOthers: true, chosen: null, working: [{ text: 'Somebody else does it: it takes no time of the crew.' }] });
    expect(jobs.get('fill')).toMatchObject({ minutes: 40, people: 2, after: ['strip'], chosen: '2026-03-04', isOthers: false });
    expect(texts(jobs.get('fill'))).toEqual(['By the rule of the task: 90 min.', 'Reckoned with 40 min instead.']);
    expect(jobs.get('room:hang:main')).toMatchObject({ minutes: 170, chosen: '2026-03-09' });
  });

  test('of a room in which nothing hangs ends with clearing up; a room without work has none', () => {
    const house = metricHouse({ rooms: [oneWall({ bands: [] }), oneWall({ id: 'other', name: 'Flur', bands: [] })] });
    expect(workOf(house, { tasks: [task('wash')] }).map(({ id, after }) => [id, after])).toEqual([['wash', []], ['room:clear-up', ['wash']]]);
  });
});

describe('what has to come first', () => {
  // Ten strips of 2.6 m, three to a roll: 4 rolls a room.
  const rooms = [oneWall(), oneWall({ id: 'hall', name: 'Flur' }), oneWall({ id: 'bath', name: 'Bad' })];
  const order = (id: string, rolls: number, facts: Loose = {}): Loose => ({ id, placed: '2026-03-02', ...facts, lines: [{ covering: 'paper', run: '7', rolls, rooms: ['room', 'hall', 'bath'] }] });
  const earliest = (facts: Loose) => workOf(metricHouse({ rules: { spareRolls: 0 }, rooms, ...facts })).filter(({ kind }) => kind === 'hanging').map((job) => job.earliest);
  const stock = (rolls: number) => [{ covering: 'paper', run: '7', rolls }];

  test('is nothing where all is in hand', () => {
    expect(earliest({ stock: stock(12) })).toEqual([null, null, null]);
  });

  test('is the day of the order that each room takes, in the order of the rooms', () => {
    expect(earliest({ stock: stock(4), orders: [order('1', 3, { expected: '2026-03-16' }), order('2', 4, { expected: '2026-03-09' })] })).toEqual([null, '2026-03-09', '2026-03-16']);
  });

  test('has no day where the order has none, or where not all is ordered', () => {
    expect(earliest({ stock: stock(4), orders: [order('1', 8)] })).toEqual([null, null, null]);
    expect(earliest({ stock: stock(4), orders: [order('1', 4, { expected: '2026-03-09' })] })).toEqual([null, '2026-03-09', null]);
    // An order with a day and one without: the second room takes the latter.
    expect(earliest({ stock: stock(4), orders: [order('1', 4), order('2', 4, { expected: '2026-03-09' })] })).toEqual([null, '2026-03-09', null]);
  });
});

test('ids are unlike any other, whatever a house calls its things', () => {
  const id = fc.constantFrom('a', 'b', 'a.hang', 'a.hang.b', 'hang.b', 'paint.wall', '1', 'a-1', 'wall', 'clear-up');
  fc.assert(
    fc.property(fc.uniqueArray(id, { minLength: 2, maxLength: 4 }), fc.uniqueArray(id, { minLength: 2, maxLength: 3 }), (rooms, bands) => {
      const made = rooms.map((room) => ({ id: room, name: room, walls: bands.map((band) => wall(band, '1 m')), bands: bands.map((band) => ({ id: band, covering: 'paper', walls: [band] })) }));
      const house = metricHouse({ rooms: made, coverings: [metricPaper(), ...['x', 'x.1'].map((covering) => ({ id: covering, kind: 'paint', name: covering }))] });
      const paints = ['x', 'x.1'].map((covering) => ({ ...paintNeed(covering, [[{ kind: 'ceiling' }, 100]]) })).map((need) => ({ ...need, surfaces: rooms.flatMap((room) => need.surfaces.map((one) => ({ ...one, room }))) }));
      const jobs = workOf(house, { paints });
      expect(new Set(jobs.map((job) => job.id)).size).toBe(jobs.length);
      expect(jobs.length).toBe(rooms.length * (bands.length + 4 + 1));
      const known = new Set<string>();
      for (const job of jobs) {
        for (const before of job.after) expect(known.has(before)).toBe(true);
        known.add(job.id);
      }
    }),
    { numRuns: 60 },
  );
});

import { describe, expect, test } from 'vitest';
import { findArrivals } from '../../shared-core/calendar/arrivals.ts';
import { timeOfCoat, timeOfLengths, timeOfStrips } from '../../shared-core/calendar/hanging-time.ts';
import { WORK_RATES } from '../../shared-core/calendar/work-rates.ts';
import type { RoomReadiness } from '../../shared-core/ordering/index.ts';
import type { BorderLength, Piece, Strip } from '../../shared-core/setting-out/index.ts';
import { areaOf, lengthOf, millimetres } from '../../shared-core/units/index.ts';
import { hundredths, metricHouse } from './house-to-work.ts';

const RULES = { onePersonLength: { length: millimetres(3600), typed: '3.6 m' } };
const RATES = { whole: WORK_RATES.strip, short: WORK_RATES.shortPiece, lines: WORK_RATES.strikingLines };
const BORDER = { metre: WORK_RATES.borderPerMetre, lines: WORK_RATES.strikingLines };

/** So many strips of a whole piece that covers so many millimetres. */
function strips(count: number, height: number, part: Piece['part'] = 'full'): readonly Strip[] {
  const none = lengthOf(0);
  return Array.from({ length: count }, (_, number): Strip => ({ number, from: 0, to: 0, cutWidth: none, parts: [], pieces: [{ label: 'A1', strip: number, part, length: millimetres(height + 100), phase: none, top: millimetres(height), bottom: none, upperEdge: none }] }));
}

const length = (metres: number, needsTwo = false): BorderLength => ({ number: 0, from: 0, to: millimetres(1000 * metres), pieces: [], needsTwo });

describe('strips', () => {
  test('20 of 15 min with the lines are 320 min; with 4 too long for one 190 min of each of two', () => {
    expect(timeOfStrips([{ strips: strips(20, 2500) }], RULES, RATES)).toMatchObject({ minutes: 320, people: 1 });
    expect(timeOfStrips([{ strips: strips(16, 2500) }, { strips: strips(4, 3601) }], RULES, RATES)).toMatchObject({ minutes: 190, people: 2 });
  });

  test('are too long from above what one person hangs, and short from under 1.2 m', () => {
    expect(timeOfStrips([{ strips: strips(1, 3600) }], RULES, RATES).people).toBe(1);
    expect(timeOfStrips([{ strips: strips(1, 1200) }], RULES, RATES).minutes).toBe(35);
    expect(timeOfStrips([{ strips: strips(1, 1199) }], RULES, RATES).minutes).toBe(28);
    expect(timeOfStrips([{ strips: strips(1, 5000, 'side') }], RULES, RATES)).toMatchObject({ minutes: 28, people: 1 });
  });

  test('shared by two take the half rounded up, the booking whole', () => {
    // One strip for two, and 35 min of one: 15 + 18 + 5.
    expect(timeOfStrips([{ strips: [...strips(1, 4000), ...strips(1, 2500)] }], RULES, RATES, 5)).toMatchObject({ minutes: 38, people: 2 });
  });
});

test('12.34 m of border at 4 min a metre are 50 min, with the lines 70 min', () => {
  expect(timeOfLengths([{ lengths: [length(12), length(0.34)] }], BORDER)).toMatchObject({ minutes: 70, people: 1 });
  expect(timeOfLengths([{ lengths: [length(12, true), length(0.34)] }], BORDER)).toMatchObject({ minutes: 48 + 11, people: 2 });
});

test('a coat is rounded up once over all its surfaces, exactly', () => {
  expect(timeOfCoat([hundredths(1640), hundredths(1640)], WORK_RATES.wallsPerSquareMetre)).toMatchObject({ minutes: 132, people: 1 });
  expect(timeOfCoat([hundredths(25), hundredths(25)], WORK_RATES.wallsPerSquareMetre).minutes).toBe(2);
  expect(timeOfCoat([hundredths(50), areaOf(1)], WORK_RATES.wallsPerSquareMetre).minutes).toBe(3);
  // Above 2^53 in square units × minutes.
  expect(timeOfCoat([hundredths(8_000_000), areaOf(1)], WORK_RATES.woodworkPerSquareMetre).minutes).toBe(1_200_001);
});

describe('what is to come', () => {
  const house = metricHouse({
    orders: [
      { id: 'late', placed: '2026-03-02', expected: '2026-03-16', lines: [{ covering: 'paper', run: '7', rolls: 4 }] },
      { id: 'soon', placed: '2026-03-02', expected: '2026-03-09', lines: [{ covering: 'paper', run: '7', rolls: 6 }, { covering: 'paper', run: '8', rolls: 6 }] },
    ],
  });
  const waits = (room: string, rolls: number, facts: Partial<RoomReadiness['waits'][number]> = {}): RoomReadiness => ({ room, state: 'waits', waits: [{ covering: 'paper', run: '7', rolls, isOnOrder: true, ...facts }] });
  const arrivals = (...readiness: readonly RoomReadiness[]) => readiness.map(({ room }) => findArrivals(house, readiness)(room, 'paper'));

  test('is there for each room beyond those before it', () => {
    expect(arrivals(waits('a', 5), waits('b', 3))).toEqual(['2026-03-09', '2026-03-16']);
    expect(arrivals(waits('a', 5), waits('b', 5), waits('c', 5), waits('d', 1, { run: '8' }))).toEqual(['2026-03-09', '2026-03-16', '2026-03-16', '2026-03-09']);
  });

  test('is the last of the runs that a room takes, and has no day where one of them has none', () => {
    const both = { room: 'a', state: 'waits' as const, waits: [...waits('a', 6).waits, ...waits('a', 6, { run: '8' }).waits] };
    expect(arrivals(waits('z', 4), both)).toEqual(['2026-03-09', '2026-03-16']);
    expect(arrivals({ ...both, waits: [both.waits[0]!, { ...both.waits[1]!, isOnOrder: false }] })).toEqual([null]);
    expect(arrivals({ room: 'a', state: 'ready', waits: [] })).toEqual([null]);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isRollGoods, type PlacedPiece, type RoomPieces, type Watch } from '../../shared-core/ordering/index.ts';
import { asSold, assignRuns, type RunQuestion } from '../../shared-core/ordering/runs.ts';
import { countCuts, countMurals, type Counter } from '../../shared-core/ordering/take.ts';
import type { Unit } from '../../shared-core/ordering/units.ts';
import { findWaysOut } from '../../shared-core/ordering/ways-out.ts';
import { inches, lengthOf, ZERO_LENGTH } from '../../shared-core/units/index.ts';
import { fernHouse } from './fern-house.ts';

const sizesOf = (...sizes: readonly number[]) => sizes.map((rolls) => ({ rolls, price: null, atLeast: 1 }));
const SINGLES = sizesOf(1);
const DOUBLES = sizesOf(2);
const STOPPED: Watch = { isStopped: () => true };

const unit = (room: string, facts: Partial<Unit> = {}): Unit => ({ rooms: [room], hangings: [{ room, parts: [[]] }], run: null, chosen: facts.run ? [room] : [], isHung: false, ...facts });
const tied = (...rooms: readonly string[]): Unit => ({ rooms, hangings: rooms.map((room) => ({ room, parts: [[]] })), run: null, chosen: [], isHung: false });
const offered = (run: string, rolls: number, inHand = 0) => ({ run, inHand, onOrder: 0, offered: rolls });

/** Rooms that take what they take, whatever is cut with them. */
function counterOf(sizes: Readonly<Record<string, number>>): Counter {
  const rollsOf = (own: Unit) => own.hangings.reduce((sum, { room }) => sum + sizes[room]!, 0);
  return {
    isAdditive: true,
    take(units) {
      const rolls = units.reduce((sum, own) => sum + rollsOf(own), 0);
      return { rolls, lowerBound: rolls, isProven: true, rollsByRoom: rolls, problems: [], impossible: [], cutRolls: () => [] };
    },
    bounds: (units) => [{ values: units.map(rollsOf), worth: 1 }],
  };
}

const question = (sizes: Readonly<Record<string, number>>, runs: RunQuestion['runs'], facts: Partial<RunQuestion> = {}): RunQuestion => ({ units: Object.keys(sizes).map((room) => unit(room)), runs, counter: counterOf(sizes), sold: SINGLES, ...facts });

describe('rooms are assigned to runs', () => {
  test('of 6 and 3 rolls, 8 on offer of run 2214 and 3 in hand of run 2207: the first from 2214, the second from 2207', () => {
    expect(assignRuns(question({ bed: 6, hall: 3 }, [offered('2214', 8), offered('2207', 0, 3)]))).toMatchObject({ runs: [0, 1], isProven: true });
  });

  test('from what is on order as from what is in hand', () => {
    expect(assignRuns(question({ den: 6 }, [offered('1', 9), { run: '2', inHand: 2, onOrder: 4, offered: 0 }])).runs).toEqual([1]);
  });

  test('from what can be bought in whole sale units', () => {
    const of = (rolls: number) => assignRuns(question({ attic: 7 }, [offered('1', rolls)], { sold: DOUBLES })).runs;
    expect([of(7), of(8)]).toEqual([[null], [0]]);
  });

  test('to the run they were set to, or to none', () => {
    const of = (rolls: number) => assignRuns(question({ study: 3 }, [offered('1', 9), offered('2', rolls)], { units: [unit('study', { run: '2' })] })).runs;
    expect([of(3), of(2)]).toEqual([[1], [null]]);
  });

  test('each room hung from a run that has enough for all that hang from it, tied rooms from one', () => {
    const rooms = ['a', 'b', 'c', 'd'];
    const sizes = fc.tuple(...rooms.map(() => fc.integer({ min: 1, max: 6 })));
    fc.assert(
      fc.property(sizes, fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 4 })), { minLength: 1, maxLength: 3 }), fc.boolean(), fc.boolean(), (counts, stocks, isTied, isInDoubles) => {
        const asked = Object.fromEntries(rooms.map((room, index) => [room, counts[index]!]));
        const units = isTied ? [tied('a', 'b'), unit('c'), unit('d')] : rooms.map((room) => unit(room));
        const sold = isInDoubles ? DOUBLES : SINGLES;
        const runs = stocks.map(([rolls, inHand], index) => offered(`${index}`, rolls, inHand));
        const { runs: assigned } = assignRuns(question(asked, runs, { units, sold }));
        const needed = (run: number) => counterOf(asked).take(units.filter((_, index) => assigned[index] === run)).rolls;
        runs.forEach(({ inHand, offered: rolls }, run) => expect(needed(run)).toBeLessThanOrEqual(inHand + asSold(rolls, sold)));
      }),
      { numRuns: 200 },
    );
  });
});

describe('once a watch is stopped', () => {
  const runs = [offered('s1', 8), offered('s2', 0, 3)];

  test('what was found before for the same rooms and runs stands where it still fits', () => {
    expect(assignRuns(question({ lounge: 6, porch: 3 }, runs)).runs).toEqual([0, 1]);
    // Rooms of 1 and 2 would both hang from the 3 in hand, but nobody has the time to find that out.
    expect(assignRuns(question({ lounge: 1, porch: 2 }, runs), STOPPED).runs).toEqual([0, 1]);
    expect(assignRuns(question({ lounge: 1, porch: 2 }, runs)).runs).toEqual([1, 1]);
  });

  test('what was found before and no longer fits does not stand', () => {
    expect(assignRuns(question({ cellar: 6, loft: 3 }, runs)).runs).toEqual([0, 1]);
    const [cellar, loft] = assignRuns(question({ cellar: 6, loft: 4 }, runs), STOPPED).runs;
    expect([cellar === 1, loft === 1]).toEqual([false, false]);
  });

  test('what is met then is not remembered as searched, nor called proved', () => {
    const { isProven } = assignRuns(question({ hut: 6, barn: 3 }, runs), STOPPED);
    expect(isProven).toBe(false);
    expect(assignRuns(question({ hut: 6, barn: 3 }, runs))).toMatchObject({ runs: [0, 1], isProven: true });
  });
});

describe('of an offer can be bought', () => {
  test('of seven rolls that are sold in doubles six', () => {
    expect(asSold(7, DOUBLES)).toBe(6);
  });

  test.each([[0, [2], 0], [1, [2], 0], [7, [1], 7], [7, [3, 2], 7], [1, [3, 2], 0], [4, [3], 3], [11, [4, 6], 10]])('of %i in sale units of %j %i', (rolls, sizes, expected) => {
    expect(asSold(rolls, sizesOf(...sizes))).toBe(expected);
  });
});

describe('the ways out', () => {
  const waysOf = (asked: RunQuestion) => findWaysOut(asked, assignRuns(asked).runs);

  test('where run 2214 has 8, bed 1 takes 6 and the hall 4: 2 more of it, or another run with 4', () => {
    expect(waysOf(question({ bed1: 6, hall: 4 }, [offered('2214', 8)]))).toEqual([
      { kind: 'ask-for-more', run: '2214', rolls: 2 },
      { kind: 'another-run', rolls: 4, rooms: ['hall'] },
    ]);
  });

  test('begin with what costs nothing: ties let go, then runs chosen anew', () => {
    const asked = question({ a: 3, b: 3, c: 2 }, [offered('1', 5), offered('2', 3)], { units: [tied('a', 'b'), unit('c', { run: '2' })] });
    // Tied, a and b are 6: no run has them. Apart, c in its run 2 leaves 1 there, so a or b waits: letting go is not enough.
    expect(waysOf(asked).map(({ kind }) => kind)).toEqual(['ask-for-more', 'ask-for-more', 'another-run']);
    expect(waysOf({ ...asked, units: [tied('a', 'b'), unit('c')] })[0]).toEqual({ kind: 'untie', rooms: ['a', 'b'] });
    expect(waysOf({ ...asked, units: [unit('a'), unit('b'), unit('c', { run: '2' })] })[0]).toEqual({ kind: 'choose-otherwise', rooms: ['c'] });
  });

  test('take nothing from the wall: neither ties nor choices of what hangs already', () => {
    const hung = question({ a: 3, b: 3 }, [offered('1', 5), offered('2', 3)], { units: [{ ...tied('a', 'b'), run: '1', chosen: ['a', 'b'], isHung: true }] });
    expect(waysOf(hung)).toEqual([{ kind: 'ask-for-more', run: '1', rolls: 1 }]);
  });

  test('let a room go that is only tied to one that hangs or is set to a run', () => {
    const both = (facts: Partial<Unit>) => waysOf(question({ a: 1, b: 4 }, [offered('1', 0, 1), offered('2', 0, 4)], { units: [{ ...tied('a', 'b'), run: '1', ...facts }] }));
    expect(both({ chosen: ['a'], isHung: true })).toEqual([{ kind: 'untie', rooms: ['a', 'b'] }, { kind: 'ask-for-more', run: '1', rolls: 4 }]);
    expect(both({ chosen: ['a', 'b'], isHung: true })).toEqual([{ kind: 'ask-for-more', run: '1', rolls: 4 }]);
  });

  test('let go only the ties and choices that are in the way where those of one are enough', () => {
    const runs = [offered('1', 0, 2), offered('2', 0, 2), offered('3', 0, 2)];
    const sizes = { a: 1, b: 1, c: 2, d: 2 };
    expect(waysOf(question(sizes, runs, { units: [tied('a', 'b'), tied('c', 'd')] }))[0]).toEqual({ kind: 'untie', rooms: ['c', 'd'] });
    // Here both pairs have to be let go: 3 and 3 of one run, and no run has more than 2.
    expect(waysOf(question({ a: 1, b: 2, c: 1, d: 2 }, runs, { units: [tied('a', 'b'), tied('c', 'd')] }))[0]).toEqual({ kind: 'untie', rooms: ['a', 'b', 'c', 'd'] });
    expect(waysOf(question({ a: 2, b: 2, c: 2 }, runs, { units: [unit('a', { run: '1' }), unit('b', { run: '1' }), unit('c', { run: '2' })] }))[0]).toEqual({ kind: 'choose-otherwise', rooms: ['a'] });
  });

  test('do not ask for more of a run where that would leave a room, nor for another where the room is set to one', () => {
    expect(waysOf(question({ a: 9 }, [offered('1', 2), offered('2', 3)], { units: [unit('a', { run: '1' })] }))).toEqual([{ kind: 'ask-for-more', run: '1', rolls: 7 }]);
  });

  test('ask for the fewest rolls: so many do, and one fewer leaves a room', () => {
    const sizes = fc.tuple(...[1, 2, 3].map(() => fc.integer({ min: 1, max: 7 })));
    fc.assert(
      fc.property(sizes, fc.array(fc.tuple(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 3 })), { minLength: 1, maxLength: 3 }), fc.boolean(), (counts, stocks, isInDoubles) => {
        const asked = question({ p: counts[0]!, q: counts[1]!, r: counts[2]! }, stocks.map(([rolls, inHand], index) => offered(`${index}`, rolls, inHand)), { sold: isInDoubles ? DOUBLES : SINGLES });
        const assigned = assignRuns(asked).runs;
        fc.pre(assigned.includes(null));
        const hangsAll = (runs: RunQuestion['runs']) => !assignRuns({ ...asked, runs }).runs.includes(null);
        const ways = findWaysOut(asked, assigned);
        expect(ways.length).toBe(stocks.length + 1);
        for (const way of ways) {
          if (way.kind !== 'ask-for-more' && way.kind !== 'another-run') throw new Error(`${way.kind} of rooms that are free`);
          const withRolls = (rolls: number) => (way.kind === 'another-run' ? [...asked.runs, offered('further', rolls)] : asked.runs.map((run) => (run.run === way.run ? { ...run, offered: run.offered + rolls } : run)));
          expect(hangsAll(withRolls(way.rolls))).toBe(true);
          expect(hangsAll(withRolls(way.rolls - 1))).toBe(false);
        }
        const rolls = ways.map((way) => ('rolls' in way ? way.rolls : 0));
        expect(rolls).toEqual(rolls.toSorted((one, other) => one - other));
      }),
      { numRuns: 100 },
    );
  });
});

const piece = (room: string, strip: number, length: number): PlacedPiece => ({
  room,
  band: 'main',
  piece: { label: `A${strip}`, strip, part: 'full', length: lengthOf(length), phase: ZERO_LENGTH, top: lengthOf(length), bottom: ZERO_LENGTH, upperEdge: lengthOf(length) },
});
const pieces = (room: string, count: number, length: number = inches(100)) => Array.from({ length: count }, (_, strip) => piece(room, strip, length));
const unitOf = (hanging: RoomPieces): Unit => ({ rooms: [hanging.room], hangings: [hanging], run: null, chosen: [], isHung: false });

function counting(hangings: readonly RoomPieces[], facts: object = {}): Counter {
  const house = fernHouse(facts);
  const [covering] = house.coverings;
  if (!covering || !isRollGoods(covering)) throw new Error('goods in rolls');
  return countCuts(house, covering, hangings, 'usual');
}

describe('what rooms take', () => {
  const hangings = [{ room: 'bed', parts: [pieces('bed', 14)] }, { room: 'hall', parts: [pieces('hall', 13)] }];
  const units = hangings.map(unitOf);

  test('of 14 strips and 13, three to a roll, is 5 and 5 room by room, 9 together', () => {
    const counter = counting(hangings);
    expect(counter.take(units)).toMatchObject({ rolls: 9, lowerBound: 9, isProven: true, rollsByRoom: 10, impossible: [] });
    expect(units.map((own) => counter.take([own]).rolls)).toEqual([5, 5]);
    expect(counter.isAdditive).toBe(false);
    expect(counter.take(units).cutRolls().map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(counter.take([])).toMatchObject({ rolls: 0, isProven: true });
  });

  test('where the house says so, is what each takes, and the rolls are numbered on from room to room', () => {
    const counter = counting(hangings, { rules: { pooling: 'room' } });
    expect(counter.take(units)).toMatchObject({ rolls: 10, lowerBound: 10, rollsByRoom: 10 });
    expect(counter.isAdditive).toBe(true);
    for (const { values, worth } of counter.bounds(units)) expect(values.reduce((sum, value) => sum + value, 0)).toBeLessThanOrEqual(10 * worth);
    expect(counter.take(units).cutRolls().map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });

  test('is a strip in a corner once where one run hangs both its parts, and once from each where two do', () => {
    const own = pieces('bed', 9);
    const parts = [own.slice(0, 5), own.slice(4)];
    const counter = counting([{ room: 'bed', parts }]);
    const [one, other] = parts.map((part) => unitOf({ room: 'bed', parts: [part] }));
    expect(counter.take([one!, other!]).rolls).toBe(3);
    expect([one!, other!].map((part) => counter.take([part]).rolls)).toEqual([2, 2]);
    expect(counter.take([one!, other!]).cutRolls().flatMap(({ cuts }) => cuts)).toHaveLength(9);
    expect(counter.bounds([one!, other!])).toEqual([]);
  });

  test('leaves out what no roll gives, and names it', () => {
    const parts = [[...pieces('bed', 3), piece('bed', 99, inches(400))]];
    const { rolls, impossible, cutRolls } = counting([{ room: 'bed', parts }]).take([unitOf({ room: 'bed', parts })]);
    expect([rolls, impossible.map((own) => own.piece.label), cutRolls().flatMap(({ cuts }) => cuts).length]).toEqual([1, ['A99'], 3]);
  });

  test('is never fewer rolls than the values of its units make', () => {
    const size = fc.record({ count: fc.integer({ min: 1, max: 8 }), tenths: fc.integer({ min: 300, max: 3700 }) });
    fc.assert(
      fc.property(fc.array(size, { minLength: 1, maxLength: 5 }), fc.integer({ min: 1, max: 31 }), (rooms, chosen) => {
        const all = rooms.map(({ count, tenths }, index) => ({ room: `r${index}`, parts: [pieces(`r${index}`, count, inches(tenths / 10))] }));
        const own = all.map(unitOf);
        const counter = counting(all);
        const taken = own.filter((_, index) => (chosen >> index) % 2 === 1);
        const { rolls, rollsByRoom, lowerBound } = counter.take(taken);
        expect(rolls).toBeLessThanOrEqual(rollsByRoom);
        expect(lowerBound).toBeLessThanOrEqual(rolls);
        const bounds = counter.bounds(own);
        expect(bounds.length).toBe(2);
        for (const { values, worth } of bounds) expect(rolls * worth).toBeGreaterThanOrEqual(values.reduce((sum, value, index) => sum + ((chosen >> index) % 2 === 1 ? value : 0), 0));
      }),
      { numRuns: 60 },
    );
  });
});

test('murals are counted by their places: one on a wall of each of two rooms is two', () => {
  const counter = countMurals();
  const mural = (room: string, murals: number) => unitOf({ room, parts: [[]], murals });
  expect(counter.take([mural('bed', 1), mural('hall', 1)])).toMatchObject({ rolls: 2, lowerBound: 2, rollsByRoom: 2, isProven: true });
  expect(counter.take([mural('bed', 3), unit('hall')]).rolls).toBe(3);
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SURFACE_KINDS, SURFACE_STATES } from '../../shared-core/house/index.ts';
import { CAUTION_KINDS } from '../../shared-core/prep/index.ts';
import { demoHouse } from '../../src-main/office/demo.ts';
import { documentOf, houseOf, wallcovering } from '../builders.ts';
import { prepared } from './prepared.ts';

const surface = fc.record({ kind: fc.constantFrom(...SURFACE_KINDS), states: fc.subarray([...SURFACE_STATES]), affected: fc.integer({ min: 1, max: 100 }), year: fc.option(fc.integer({ min: 1900, max: 2025 }), { nil: undefined }) });
const maybe = fc.option(surface, { nil: undefined });
const roomFacts = fc.record({ surfaces: fc.tuple(maybe, maybe, maybe, maybe), covered: fc.array(fc.record({ covering: fc.constantFrom('paper', 'vinyl', 'paint'), wall: fc.constantFrom('A', 'B', 'C', 'D') }), { maxLength: 4 }), overhead: fc.constantFrom(undefined, 'paper', 'paint'), ceilingSurface: maybe, woodwork: maybe, stairs: fc.boolean() });
const house = fc.record({ rooms: fc.array(roomFacts, { minLength: 1, maxLength: 3 }), built: fc.constantFrom(undefined, 1931, 1980, 1995, 2020), country: fc.constantFrom(undefined, 'US', 'GB') }).map(({ rooms, ...facts }) =>
  houseOf(
    documentOf({
      ...facts,
      coverings: [wallcovering(), wallcovering({ id: 'vinyl', patternNumber: 'V', material: 'vinyl' }), { id: 'paint', kind: 'paint' }],
      rooms: rooms.map(({ surfaces, covered, overhead, ceilingSurface, woodwork, stairs }, index) => ({
        id: `r${index}`,
        name: `Room ${index}`,
        stairs,
        ceilingSurface,
        ...(overhead ? { ceiling: { covering: overhead } } : {}),
        ...(woodwork ? { woodwork: { covering: 'paint', surface: woodwork } } : {}),
        walls: surfaces.map((one, at) => ({ id: 'ABCD'[at], length: '3 m', height: '2.5 m', surface: one })),
        bands: ['A', 'B', 'C', 'D'].flatMap((wall) => covered.filter((band) => band.wall === wall).slice(0, 1).map(({ covering }) => ({ id: `b${wall}`, covering, walls: [wall] }))),
      })),
    }),
  ),
);

test('ids are unlike, what comes before is there and earlier, and every caution stands beside a task', () => {
  fc.assert(
    fc.property(house, (facts) => {
      const { tasks, cautions } = prepared(facts);
      expect(new Set(tasks.map(({ id }) => id)).size).toBe(tasks.length);
      expect(new Set(cautions.map(({ id }) => id)).size).toBe(cautions.length);
      const done = new Set<string>();
      for (const { id, after, room, minutes, area } of tasks) {
        // Each names earlier tasks of its room alone, so that nothing waits in a circle.
        expect(after.filter((before) => !done.has(before) || !before.startsWith(`${room}:`))).toEqual([]);
        expect(Number.isSafeInteger(minutes) && minutes >= 0 && area >= 0).toBe(true);
        done.add(id);
      }
      const beside = new Set(tasks.flatMap(({ cautions: ids }) => ids));
      expect([...beside].sort()).toEqual(cautions.map(({ id }) => id).sort());
      expect(cautions.filter(({ words, ask, source }) => !words || !ask || !source)).toEqual([]);
    }),
    { numRuns: 200 },
  );
});

test('no caution is lost by what is left to others, or by minutes', () => {
  fc.assert(
    fc.property(house, fc.infiniteStream(fc.boolean()), (facts, isLeft) => {
      const plan = prepared(facts);
      const choices = plan.tasks.filter(() => isLeft.next().value).map(({ id }) => ({ task: id, isOthers: true, minutes: 0 }));
      const left = prepared({ ...facts, tasks: choices });
      expect(left.cautions).toEqual(plan.cautions);
      expect(left.tasks.map(({ id, cautions }) => [id, cautions])).toEqual(plan.tasks.map(({ id, cautions }) => [id, cautions]));
    }),
    { numRuns: 100 },
  );
});

test('the demo house has a room for each caution, beside a task and with its source', () => {
  const { tasks, cautions } = prepared(demoHouse());
  const beside = new Set(tasks.flatMap(({ cautions: ids }) => ids));
  const roomsOf = (kind: string) => cautions.filter((caution) => caution.kind === kind && beside.has(caution.id) && caution.source !== '').map(({ room }) => room);
  expect(CAUTION_KINDS.filter((kind) => roomsOf(kind).length === 0)).toEqual([]);
  expect([roomsOf('stairs'), roomsOf('asbestos-coating'), roomsOf('mould')]).toEqual([['hall'], ['sitting'], ['bed2']]);
  expect(cautions.filter(({ kind, isReached }) => kind === 'mould' && isReached !== false)).toEqual([]);
});

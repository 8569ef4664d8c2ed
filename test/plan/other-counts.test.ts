import { describe, expect, test } from 'vitest';
import { atLowerTolerance, countOtherwise, explainOrderLine, planHouse } from '../../shared-core/plan/index.ts';
import { parseMeasure } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';
import { MARKED_ROLL, SHORTEST_ROLL, TOLERANCE_COUNTS, TOLERANCE_ROOM } from '../conformance/rolls-and-strips.ts';

const measure = (typed: string) => {
  const parsed = parseMeasure(typed);
  if (!parsed.ok) throw new Error(typed);
  return parsed.value;
};

function otherCounts(document: Loose) {
  const house = houseOf(document);
  const [line] = planHouse(house).order;
  return { line: line!, ...countOtherwise(house, line!) };
}

/** One wall of so many strips of 2.40 m, no trims. */
const strips = (count: number, covering: Loose, facts: Loose = {}) =>
  documentOf({
    rules: { trim: '0 mm' },
    coverings: [wallcovering({ width: '53 cm', rollLength: '10.05 m', repeat: '0.625 m', ...covering })],
    rooms: [room([`${530 * count} mm`], facts, [{ height: '2.4 m' }])],
  });

describe('if rolls begin at a repeat', () => {
  test('16 strips of 2.40 m with a repeat of 0.625 m are 4 rolls instead of 6', () => {
    const { line, ifAtRepeat, leastWhenLooking } = otherCounts(strips(16, {}));
    expect(line.rollsNeeded).toBe(6);
    expect(leastWhenLooking).toBe(6);
    expect(ifAtRepeat).toEqual({ rolls: 4, isProven: true });
  });

  test('what no roll surely gives is in neither count', () => {
    expect(otherCounts(strips(16, { rollLength: '2.9 m' }))).toMatchObject({ line: { rollsNeeded: 0 }, ifAtRepeat: { rolls: 0, isProven: true } });
  });

  test.each([[{ repeat: '0 mm' }], [{ rollStart: 'at-repeat' }], [{ sequence: 'required' }]])('there is nothing to say of %o', (covering) => {
    expect(otherCounts(strips(16, covering))).toMatchObject({ ifAtRepeat: null, leastWhenLooking: null });
  });

  test('is counted for each room where rooms keep to their own rolls', () => {
    const rooms = ['one', 'other'].map((id) => room(['2120 mm'], { id, name: id }, [{ height: '2.4 m' }]));
    const apart = { ...strips(4, {}), rules: { trim: '0 mm', pooling: 'room' }, rooms };
    expect(otherCounts(apart)).toMatchObject({ line: { rollsNeeded: 4 }, ifAtRepeat: { rolls: 2, isProven: true } });
  });
});

describe('at the lower tolerance', () => {
  test('a roll is 1.5 % narrower and shorter', () => {
    const goods = { width: measure(MARKED_ROLL.width), rollLength: measure(MARKED_ROLL.rollLength) };
    const { width, rollLength } = atLowerTolerance(goods);
    expect([width.length, rollLength.length]).toEqual([measure(SHORTEST_ROLL.width).length, measure(SHORTEST_ROLL.rollLength).length]);
  });

  test('a room worked by hand takes 8 rolls instead of 6', () => {
    const [[, , , marked], [, , , shortest]] = TOLERANCE_COUNTS as never as [[string, unknown, number, number], [string, unknown, number, number]];
    const document = documentOf({ rules: TOLERANCE_ROOM.rules, coverings: [wallcovering({ ...MARKED_ROLL, repeat: '0 mm' })], rooms: [room(TOLERANCE_ROOM.walls, {}, Array<Loose>(4).fill({ height: TOLERANCE_ROOM.height }))] });
    const { line, atLowerTolerance: smallest, ifAtRepeat } = otherCounts(document);
    expect([line.rollsNeeded, smallest?.rolls, smallest?.isProven, smallest?.isEveryPieceGiven]).toEqual([marked, shortest, true, true]);
    expect(smallest?.rollLength).toBe(measure(SHORTEST_ROLL.rollLength).length);
    expect(ifAtRepeat).toBeNull();
  });

  test('says where a piece would not come out of such a roll any more', () => {
    expect(otherCounts(strips(3, { rollLength: '3.03 m' }))).toMatchObject({ line: { rollsNeeded: 3 }, atLowerTolerance: { isEveryPieceGiven: false } });
  });

  test('counts the rooms of the line alone, whatever its run has', () => {
    const walls = (id: string) => room(['140 in', '90 in', '140 in', '90 in'], { id, name: id });
    // Three strips of 100 in and a repeat of 20 in are 320 in.
    const paper = wallcovering({ rollLength: '322 in' });
    const alone = otherCounts(documentOf({ coverings: [paper], rooms: [walls('one')] }));
    const enough = alone.line.rollsNeeded + 1;
    const offers = ['1', '2'].map((run) => ({ covering: 'paper', run, rolls: enough }));
    const both = otherCounts(documentOf({ coverings: [paper], rooms: [walls('one'), walls('other')], offers }));
    expect(both.line).toMatchObject({ rooms: ['one'], run: '1' });
    // Not even one room comes out of the smallest rolls of what there is of a run.
    expect(alone.atLowerTolerance!.rolls).toBeGreaterThan(enough);
    expect([both.ifAtRepeat, both.atLowerTolerance]).toEqual([alone.ifAtRepeat, alone.atLowerTolerance]);
  });

  test('counts all rooms of the line, though its run has not enough of the smallest rolls', () => {
    const rooms = ['one', 'other'].map((id) => room(['140 in', '90 in', '140 in', '90 in'], { id, name: id }));
    const facts = { coverings: [wallcovering({ rollLength: '322 in' })], rooms };
    const free = otherCounts(documentOf(facts));
    const held = otherCounts(documentOf({ ...facts, offers: [{ covering: 'paper', run: '1', rolls: free.line.rollsNeeded + 1 }] }));
    expect(held.line).toMatchObject({ rooms: ['one', 'other'], run: '1' });
    expect(held.atLowerTolerance).toEqual(free.atLowerTolerance);
    expect(free.atLowerTolerance!.rolls).toBeGreaterThan(free.line.rollsNeeded + 1);
  });

  test('is asked of wallcoverings in rolls alone', () => {
    expect(otherCounts(strips(3, { rollLength: undefined, soldBy: { length: '1 m', pieceLength: '30 m' } })).atLowerTolerance).toBeNull();
    const border = { id: 'paper', kind: 'border', width: '17 cm', rollLength: '5 m', repeat: '52 cm' };
    const { ifAtRepeat, atLowerTolerance: smallest } = otherCounts({ ...strips(3, {}), coverings: [border], rooms: [room(['4 m'], { bands: [{ id: 'main', covering: 'paper', walls: ['A'], from: '1 m', to: '1.17 m' }] })] });
    expect([ifAtRepeat?.rolls, smallest]).toEqual([1, null]);
    const mural = { id: 'paper', kind: 'mural', panels: 4, panelWidth: '1 m', panelHeight: '2.5 m' };
    expect(otherCounts({ ...strips(3, {}), coverings: [mural] })).toMatchObject({ leastWhenLooking: null, ifAtRepeat: null, atLowerTolerance: null });
  });
});

test.each([
  [26, 25, '26 rolls; fewer than 25 will not do. Whether 25 would do is not known.'],
  [26, 23, '26 rolls; fewer than 23 will not do. Whether 23 to 25 would do is not known.'],
])('%d rolls of at least %d say so', (rollsNeeded, lowerBound, said) => {
  const house = houseOf(strips(16, {}));
  const [line] = planHouse(house).order;
  const texts = explainOrderLine(house, { ...line!, rollsNeeded, lowerBound, isProvenMinimum: false }).needed.map(({ text }) => text);
  expect(texts.at(-1)).toBe(`Cut together: ${said}`);
});

import { describe, expect, test } from 'vitest';
import { atLowerTolerance, countOtherwise, explainOrderLine, planHouse } from '../../shared-core/plan/index.ts';
import { parseMeasure } from '../../shared-core/units/index.ts';
import { documentOf, exampleDocument, houseOf, type Loose, room, wallcovering } from '../builders.ts';
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
    const { line, ifAtRepeat } = otherCounts(strips(16, {}));
    expect(line.rollsNeeded).toBe(6);
    expect(ifAtRepeat).toEqual({ rolls: 4, isProven: true });
  });

  test('what no roll surely gives is in neither count', () => {
    expect(otherCounts(strips(16, { rollLength: '2.9 m' }))).toMatchObject({ line: { rollsNeeded: 0 }, ifAtRepeat: { rolls: 0 } });
  });

  test.each([[{ repeat: '0 mm' }], [{ rollStart: 'at-repeat' }], [{ sequence: 'required' }]])('there is nothing to say of %o', (covering) => {
    expect(otherCounts(strips(16, covering)).ifAtRepeat).toBeNull();
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

  test('counts the rooms of the line alone, whatever runs there are', () => {
    const document = exampleDocument();
    const before = otherCounts(document);
    expect(before.line.covering).toBe('fern');
    const [line] = [before.line];
    document.offers = [{ covering: 'fern', run: '1', rolls: 60 }];
    const after = otherCounts(document);
    expect(after.line.run).toBe('1');
    expect([after.ifAtRepeat, after.atLowerTolerance]).toEqual([before.ifAtRepeat, before.atLowerTolerance]);
    expect(after.atLowerTolerance!.rolls).toBeGreaterThanOrEqual(line.rollsNeeded);
  });

  test('is asked of wallcoverings in rolls alone', () => {
    expect(otherCounts(strips(3, { rollLength: undefined, soldBy: { length: '1 m', pieceLength: '30 m' } })).atLowerTolerance).toBeNull();
    const border = { id: 'paper', kind: 'border', width: '17 cm', rollLength: '5 m', repeat: '52 cm' };
    const { ifAtRepeat, atLowerTolerance: smallest } = otherCounts({ ...strips(3, {}), coverings: [border], rooms: [room(['4 m'], { bands: [{ id: 'main', covering: 'paper', walls: ['A'], from: '1 m', to: '1.17 m' }] })] });
    expect([ifAtRepeat?.rolls, smallest]).toEqual([1, null]);
    const mural = { id: 'paper', kind: 'mural', panels: 4, panelWidth: '1 m', panelHeight: '2.5 m' };
    expect(otherCounts({ ...strips(3, {}), coverings: [mural] })).toMatchObject({ ifAtRepeat: null, atLowerTolerance: null });
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

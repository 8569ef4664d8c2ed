import { describe, expect, test } from 'vitest';
import { planHouse } from '../../shared-core/plan/index.ts';
import { demandCounter, dropOf, edgeOver, findStretches, killPoints, layAxis, seamsOf, setOutBorder, setOutStrips, sightOf, startCandidates, wrapAfter } from '../../shared-core/setting-out/index.ts';
import { inches, type Length } from '../../shared-core/units/index.ts';
import { bandsOf, documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const inInches = (length: Length | number) => length / inches(1);

/** The first band of a room with its stretch, and the house it stands in. */
function hung(roomFacts: Loose, covering: Loose = {}, rules: Loose = {}) {
  const house = houseOf(documentOf({ coverings: [wallcovering(covering)], rooms: [roomFacts], rules }));
  const [found] = house.rooms;
  const [paper] = house.coverings;
  const [band] = bandsOf(found);
  if (!band || paper?.kind !== 'wallcovering') throw new Error('a room hung with a wallcovering');
  const [stretch] = findStretches(found!, band);
  const axis = layAxis(stretch!, (wall) => wrapAfter(wall, house.rules));
  return { house, room: found!, band, paper, stretch: stretch!, axis, rules: house.rules };
}

const WORKED = ["12' 4\"", "10' 2\"", "12' 4\"", "10' 2\""];
const door = { id: 'door', kind: 'door', entrance: true, from: '2 ft', width: `2' 8"`, height: `6' 8"` };

/** What the docstrings of setting out give as examples, run. */
describe('the example of', () => {
  test('wrapAfter: a corner that leans by 1/2 in is wrapped by 1/2 in', () => {
    const { stretch, rules } = hung(room(['100 in', '100 in'], {}, [{ plumbRight: '1/2 in' }, { plumbRight: '1/16 in' }]));
    expect(stretch.walls.map((wall) => inInches(wrapAfter(wall, rules)))).toEqual([0.5, 0.125]);
  });

  test('Axis: two walls of 100 in round an inside corner take 0-100 in and 100 1/8-200 1/8 in', () => {
    const { axis } = hung(room(['100 in', '100 in']));
    expect(axis.walls.map(({ from, to }) => [inInches(from), inInches(to)])).toEqual([[0, 100], [100.125, 200.125]]);
    expect(inInches(axis.length)).toBe(200.125);
  });

  test('edgeOver: an edge from 8 ft to 10 ft over 10 ft reaches 9 ft over its first half', () => {
    const ends = { left: inches(96), right: inches(120) };
    expect(edgeOver(ends, inches(120), 0, inches(60))).toEqual({ lowest: inches(96), highest: inches(108) });
    expect(edgeOver({ left: ends.right, right: ends.left }, inches(120), inches(60), inches(120))).toEqual({ lowest: inches(96), highest: inches(108) });
  });

  test('dropOf: a half-drop of 21 in begins strip 3, like strip 1, 10 1/2 in further into the repeat', () => {
    const half = { numerator: 1, denominator: 2 };
    expect([3, 1, 0, 2, -1].map((strip) => inInches(dropOf(inches(21), half, strip)))).toEqual([10.5, 10.5, 0, 0, 10.5]);
  });

  test('dropOf, at a drop that does not divide the repeat: the part that is left over is dropped', () => {
    // A repeat of 10 units in thirds: 3 1/3 and 6 2/3 units lower, so 3 and 6.
    expect([0, 1, 2, 3, -1, -2].map((strip) => dropOf(10, { numerator: 1, denominator: 3 }, strip))).toEqual([0, 3, 6, 0, 6, 3]);
    expect([0, 1, 2, 3, 4, -1].map((strip) => dropOf(10, { numerator: 2, denominator: 5 }, strip))).toEqual([0, 4, 8, 2, 6, 6]);
  });

  test("demandCounter: 27 strips of 8' 4\" that all begin alike are one demand of 27", () => {
    const { axis, band, paper, rules, stretch } = hung(room(WORKED), { width: '20.5 in', rollLength: '33 ft', repeat: '21 in' });
    const { strips } = setOutStrips(stretch, band, paper, rules);
    const count = demandCounter(axis, band, paper, rules);
    // The second time from what the first one remembered.
    for (const _time of [1, 2]) expect(count(strips).pieces()).toEqual([{ length: inches(100), phase: inches(19), count: 27 }]);
  });

  test('findSlivers: strips of 20 in on a wall of 61 in leave 1 in in the corner', () => {
    const { stretch, band, paper, rules } = hung(room(['61 in']));
    expect(setOutStrips(stretch, band, paper, rules).slivers).toEqual([{ seam: inches(60), from: inches(60), to: inches(61) }]);
  });

  test('startCandidates: a wall of 100 in that is looked at most has its middle among them', () => {
    const { axis, band, room: found } = hung(room(['100 in'], { focalWall: 'A' }));
    // The least that must go round an outside corner is set to the wrap here, so that only the wrap and the sliver count.
    const { rules } = hung(room(['100 in']), {}, { minOutsideWrap: '1/8 in' });
    const places = startCandidates(axis, band, rules, sightOf(found)).map(({ place }) => inInches(place.at));
    expect([...new Set(places)].toSorted((one, other) => one - other)).toEqual([0, 0.125, 2, 50, 98, 99.875, 100]);
  });

  test("killPoints: with the entrance 2 ft from the left of A and 7 ft from its right, A's left corner is the entrance's", () => {
    const facts = room(['140 in', '122 in', '140 in', '122 in'], {}, [{ openings: [{ ...door, from: '24 in', width: '32 in' }] }]);
    const { axis, band, room: found } = hung(facts);
    expect(killPoints(axis, band, sightOf(found)).filter(({ kind }) => kind === 'entrance-corner').map(({ place }) => place)).toEqual([{ wall: 'A', at: 0 }]);
  });

  test('searchLayouts: in the worked room the ends meet at the side of the door, 7 1/2 in over', () => {
    // All four wraps are passed: 540 1/2 in. Over the door 16 in of 96 show, at 7 hundredths 0.525 in; in the corner by the
    // entrance 7 3/8 in show at 20 hundredths, 1.475 in. No kill point shows less.
    const facts = room(WORKED, {}, [{ openings: [door] }]);
    const paper = wallcovering({ width: '20.5 in', rollLength: '33 ft', repeat: '21 in' });
    const [band] = planHouse(houseOf(documentOf({ coverings: [paper], rooms: [facts] }))).rooms[0]!.bands;
    if (band?.kind !== 'strips') throw new Error('a band of strips');
    const [best] = band.stretches[0]!.options;
    expect(best).toMatchObject({ rolls: 9, killKind: 'over-opening', mismatch: { amount: inches(7.5), side: 'over' }, visibleMismatch: Math.ceil(0.525 * inches(1)) });
    expect(band.stretches[0]!.kill!.wall).toBe('A');
    expect([24, 56]).toContain(inInches(band.stretches[0]!.kill!.at));
  });

  test('setOutLiningUp: over strips of 20 in, lining of 20 in is begun 2 in beside them or further', () => {
    const facts = room(['200 in'], { bands: [{ id: 'under', covering: 'line', walls: ['A'] }, { id: 'main', covering: 'paper', walls: ['A'] }] });
    const line = { id: 'line', kind: 'lining', width: '20 in', rollLength: '33 ft', direction: 'up-and-down' };
    const [under, main] = planHouse(houseOf(documentOf({ coverings: [line, wallcovering()], rooms: [facts] }))).rooms[0]!.bands;
    if (under?.kind !== 'strips' || main?.kind !== 'strips') throw new Error('strips');
    const above = main.stretches.flatMap(seamsOf);
    const nearest = under.stretches.flatMap(seamsOf).map(({ at }) => Math.min(...above.map((seam) => Math.abs(seam.at - at))));
    expect(Math.min(...nearest)).toBeGreaterThanOrEqual(inches(2));
  });

  test('setOutLiningAcross: a wall of 12 ft 4 in, 8 ft high, from lining 22 in wide takes five courses', () => {
    const facts = room(["12' 4\""], { bands: [{ id: 'under', covering: 'line', walls: ['A'] }] });
    const [band] = planHouse(houseOf(documentOf({ coverings: [{ id: 'line', kind: 'lining', width: '22 in', rollLength: '33 ft' }], rooms: [facts] }))).rooms[0]!.bands;
    if (band?.kind !== 'lengths') throw new Error('lengths');
    expect(band.stretches[0]!.lengths.map(({ pieces }) => pieces.map(({ length }) => inInches(length)))).toEqual([[150], [150], [150], [150], [150]]);
  });

  test("setOutBorder: 12' 4\" and 10' 2\" take 12' 6\" and 10' 4\", beginning 19 1/2 in and 3 1/2 in into the pattern", () => {
    const { stretch, band, rules } = hung(room(["12' 4\"", "10' 2\""], { bands: [{ id: 'top', covering: 'paper', walls: ['A', 'B'], from: '90 in' }] }));
    const [ivy] = houseOf(documentOf({ coverings: [{ id: 'ivy', kind: 'border', width: '6 in', rollLength: '15 ft', repeat: '20.5 in' }] })).coverings;
    if (ivy?.kind !== 'border') throw new Error('a border');
    const pieces = setOutBorder(stretch, band, ivy, rules).lengths.flatMap((length) => length.pieces);
    expect(pieces.map(({ length, phase }) => [inInches(length), inInches(phase)])).toEqual([[150, 19.5], [124, 3.5]]);
  });
});

import { describe, expect, test } from 'vitest';
import { drawBorder, drawCeiling, drawElevation, type Drawing, drawPatternTop, drawRoomPlan, layOut, type Shape } from '../../shared-core/drawing/index.ts';
import { hungBand } from '../../shared-core/house/index.ts';
import { planHouse, rollsOfBand } from '../../shared-core/plan/index.ts';
import { seamsOf } from '../../shared-core/setting-out/index.ts';
import { inches } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';
import { setOutRoom, WORKED } from './rooms.ts';

const view = { width: 1100, height: 500, textHeight: 14, zoom: 1, panX: 0, panY: 0 };
const of = <Kind extends Shape['kind']>({ shapes }: Drawing, kind: Kind) => shapes.filter((shape): shape is Extract<Shape, { kind: Kind }> => shape.kind === kind);
const inInches = (units: number) => units / inches(1);

function houseOfRoom(facts: Loose, coverings: readonly Loose[]) {
  const house = houseOf(documentOf({ coverings, rooms: [facts] }));
  const plan = planHouse(house);
  return { house, plan, found: house.rooms[0]!, roomPlan: plan.rooms[0]! };
}

describe('a ceiling', () => {
  const facts = room(['100 in', '110 in', '100 in', '110 in'], { bands: [], ceiling: { covering: 'paper', along: 'B' } }, [{ openings: [{ id: 'w', kind: 'window', from: '20 in', width: '30 in', sill: '30 in', height: '40 in' }] }]);
  const { found, roomPlan, plan } = houseOfRoom(facts, [wallcovering()]);
  const drawing = drawCeiling({ room: found, outline: roomPlan.outline, layout: roomPlan.ceiling!, coveringName: 'P-1', rolls: rollsOfBand(plan, 'room', '(ceiling)') }, 'imperial');

  test('has a ring for each strip in the middle of it, counted away from the wall', () => {
    // Wall B is the right-hand one: strip 1 lies 0 to 20 in left of it, its middle at 90 in.
    expect(of(drawing, 'ring').map(({ number, at }) => [number, Math.round(inInches(at.x)), Math.round(inInches(at.y))])).toEqual([1, 2, 3, 4, 5].map((number) => [number, 110 - 20 * number, 55]));
  });

  test('has a seam between each two, and the line struck on the first', () => {
    expect(of(drawing, 'line').filter(({ pen, subject }) => pen === 'thin' && !subject).map(({ from, to }) => [inInches(from.x), inInches(to.x)].map(Math.round))).toEqual([80, 60, 40, 20].map((x) => [x, x]));
    expect(of(drawing, 'line').find(({ subject }) => subject?.kind === 'start')).toMatchObject({ pen: 'struck', from: { x: inches(80) } });
    expect(of(drawing, 'dimension').map(({ text }) => text)).toEqual([`1' 8"`]);
  });

  test('says of each strip how long it is and where it comes from', () => {
    expect(of(drawing, 'ring')[0]!.subject!.says).toMatch(/^Ceiling strip 1 of P-1, 1' 8" wide: 9' 6" from roll \d\.$/);
    expect(drawing.description).toBe('The ceiling of Room from above: P-1 in 5 strips along wall B, as chosen, hung in order away from it.');
    expect(layOut(drawing, view).filter(({ kind }) => kind === 'ring')).toHaveLength(5);
  });
});

describe('an elevation', () => {
  test('has the roll on the foot of each strip, clear of a door, and a corner off what is an offcut', () => {
    const { facts, plan } = setOutRoom(WORKED, { layout: { start: { wall: 'A', at: '24 in' } } });
    const drawing = drawElevation({ ...facts, rolls: rollsOfBand(plan, 'room', 'main') }, 'imperial');
    const tabs = of(drawing, 'tab');
    expect(tabs).toHaveLength(27);
    // Strip 0 hangs over the door from 24 in: its foot is the door's head, 80 in up.
    expect([inInches(tabs[0]!.at.y), tabs[0]!.strip]).toEqual([-80, 0]);
    // Strip 1 stands half in the door, which ends at 56 in: its tab between that and 65 in.
    expect(inInches(tabs[1]!.at.x)).toBeCloseTo((56 + 65) / 2);
    const corners = of(drawing, 'polygon').filter(({ points }) => points.length === 3);
    expect(corners.map(({ subject }) => subject?.id)).toEqual(['0']);
    expect(layOut(drawing, view).some((mark) => mark.kind === 'text' && mark.text === String(tabs[5]!.roll) && mark.subject === tabs[5]!.subject)).toBe(true);
  });

  test('has the openings in a chain of dimensions, and their heights inside', () => {
    const { facts } = setOutRoom(WORKED);
    const texts = of(drawElevation(facts, 'imperial'), 'dimension').map(({ text }) => text);
    expect(texts).toEqual(expect.arrayContaining([`2'`, `2' 8"`, `7' 8"`, `6' 8"`]));
    expect(of(drawElevation(facts, 'imperial', { isThumb: true }), 'dimension')).toEqual([]);
  });

  const facts = room(['100 in', '90 in', '100 in', '90 in'], {
    rails: [{ id: 'dado', name: 'dado rail', at: '32 in', width: '3 in' }],
    furniture: [{ id: 'bed', name: 'headboard', wall: 'A', from: '20 in', width: '60 in', height: '40 in' }],
    bands: [{ id: 'low', covering: 'plain', walls: ['A'], to: { rail: 'dado' } }, { id: 'high', covering: 'paper', walls: ['A'], from: { rail: 'dado' } }],
  }, [{ openings: [{ id: 'w', kind: 'window', from: '20 in', width: '40 in', sill: '40 in', height: '40 in', reveal: { depth: '6 in', sides: ['left', 'head'] } }] }]);
  const { found, roomPlan } = houseOfRoom(facts, [wallcovering(), wallcovering({ id: 'plain', match: 'free' })]);
  const high = roomPlan.bands[1]!;
  if (high.kind !== 'strips') throw new Error('strips');
  const paper = houseOf(documentOf({ coverings: [wallcovering()] })).coverings[0]!;
  if (paper.kind !== 'wallcovering') throw new Error('a wallcovering');
  const drawing = drawElevation({ room: found, band: hungBand(found, found.bands[1]!), covering: paper, coveringName: 'P-1', stretch: high.stretches[0]!, others: [{ band: hungBand(found, found.bands[0]!), coveringName: 'plain' }] }, 'imperial');
  const says = (kind: string) => drawing.shapes.find(({ subject }) => subject?.kind === kind)?.subject?.says;

  test('shows rails, furniture, other bands and covered reveals, and says what they are', () => {
    expect(says('rail')).toBe(`Dado rail on wall A, 2' 8" up and 3 in high.`);
    expect(says('furniture')).toBe(`Headboard before wall A, 3' 4" high.`);
    expect(says('band')).toBe('plain hangs here too, on wall A.');
    expect(says('opening')).toMatch(/Its left side and head, 6 in deep, are covered too\.$/);
    // A dashed line at the left side and one under the head.
    expect(of(drawing, 'line').filter(({ pen }) => pen === 'hidden')).toHaveLength(2);
  });

  test('does not draw what lines a reveal on the wall', () => {
    const strip = of(drawing, 'polygon').filter(({ subject }) => subject?.kind === 'strip');
    for (const { points } of strip) for (const { y } of points) expect(inInches(-y)).toBeGreaterThanOrEqual(35);
  });
});

test('a border has its pencil marks as ticks where it hangs, and runs level where it is to', () => {
  const ivy = { id: 'ivy', kind: 'border', width: '6 in', rollLength: '15 ft', repeat: '20 in' };
  const facts = room(['96 in', '90 in'], { bands: [{ id: 'top', covering: 'ivy', walls: ['A'], from: '80 in', level: true, layout: { start: { wall: 'A', at: '0 in' } } }] }, [{ height: ['96 in', '94 in'] }]);
  const { found, roomPlan, house } = houseOfRoom(facts, [ivy]);
  const [band] = roomPlan.bands;
  const [border] = house.coverings;
  if (band?.kind !== 'lengths' || border?.kind !== 'border') throw new Error('a border');
  const drawing = drawBorder({ room: found, band: hungBand(found, found.bands[0]!), covering: border, coveringName: 'ivy', stretch: band.stretches[0]! }, 'imperial');
  expect(of(drawing, 'line').filter(({ subject }) => subject?.kind === 'mark').map(({ from }) => [inInches(from.x), inInches(-from.y)])).toEqual([0, 24, 48, 72, 96].map((x) => [x, 91]));
  const [area] = of(drawing, 'polygon').filter(({ subject }) => subject?.kind === 'border-length');
  expect(area!.points.map(({ y }) => inInches(-y))).toEqual([94, 94, 88, 88]);
});

test('the plan has a tick where each two strips meet on a wall', () => {
  const { room: found, outline, facts } = setOutRoom(WORKED);
  const seams = seamsOf(facts.stretch);
  const drawing = drawRoomPlan(found, outline, 'imperial', { detail: 'marks', hangings: [{ start: facts.stretch.start, kill: facts.stretch.kill, direction: 'right', seams }] });
  const without = drawRoomPlan(found, outline, 'imperial', { detail: 'marks', hangings: [{ start: facts.stretch.start, kill: facts.stretch.kill, direction: 'right' }] });
  // 27 strips, three of them split at a corner, so that two of their edges each are no seams on a wall: 26.
  expect(seams).toHaveLength(26);
  expect(drawing.shapes.length - without.shapes.length).toBe(26);
});

describe('the pattern at the top', () => {
  const top = (band: object, covering: object = {}) => {
    const { facts, house } = setOutRoom([{ id: 'A', length: '100 in' }], band, { width: '20 in', ...covering });
    return drawPatternTop({ ...facts, rules: house.rules, hasPicture: true });
  };

  test('shows a repeat and a quarter under the ceiling, and the trim that is cut off over it', () => {
    const drawing = top({})!;
    expect([inInches(-drawing.bounds.top), inInches(-drawing.bounds.bottom)]).toEqual([98, 96 - 26.25]);
    expect(of(drawing, 'line').map(({ pen, from }) => [pen, inInches(-from.y)])).toEqual([['cut', 96]]);
  });

  test('moves with the position of the pattern', () => {
    // The top edge at 98 in lies 19 in into the repeat, so one begins at 117 in; 5 in further in, at 122 or 101 in.
    const begins = (drawing: Drawing) => ((inInches(-of(drawing, 'picture')[0]!.y) % 21) + 21) % 21;
    expect(begins(top({})!)).toBe(117 % 21);
    expect(begins(top({ position: '5 in' })!)).toBe(122 % 21);
  });

  test('is none where nothing repeats', () => {
    expect(top({}, { repeat: '0 in', match: 'free' })).toBeNull();
  });
});

describe('slivers', () => {
  const { facts } = setOutRoom([{ id: 'A', length: '61 in' }], {}, { width: '20 in', repeat: '0 in' });
  const drawing = drawElevation(facts, 'imperial');

  test('are outlined over the height of the band, with their width', () => {
    const outlined = drawing.shapes.filter((shape) => shape.kind === 'polygon' && shape.pen === 'warn');
    expect(outlined).toMatchObject([{ points: [{ x: inches(60), y: -inches(96) }, { x: inches(61), y: -inches(96) }, { x: inches(61), y: -0 }, { x: inches(60), y: -0 }], subject: { kind: 'mark' } }]);
    expect(drawing.shapes).toContainEqual(expect.objectContaining({ kind: 'text', pen: 'warn', text: expect.stringMatching(/^sliver 1( in|")$/) }));
    expect(outlined[0]!.subject!.says).toMatch(/the seam 5' from the left end of wall A leaves 1("| in) to the corner/);
  });

  test('are not drawn where there are none, nor on a small picture', () => {
    const { facts: even } = setOutRoom([{ id: 'A', length: '60 in' }], {}, { width: '20 in', repeat: '0 in' });
    for (const shapes of [drawElevation(even, 'imperial').shapes, drawElevation(facts, 'imperial', { isThumb: true }).shapes]) {
      expect(shapes.filter((shape) => 'pen' in shape && shape.pen === 'warn')).toEqual([]);
    }
  });
});

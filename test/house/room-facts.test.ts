import { describe, expect, test } from 'vitest';
import { applyEdit, decodeHouse, hungBand } from '../../shared-core/house/index.ts';
import { inches } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const BORDER = { id: 'ivy', kind: 'border', width: '6 in', rollLength: '15 ft' };
const MURAL = { id: 'lake', kind: 'mural', panels: 4, panelWidth: '40 in', panelHeight: '8 ft' };
const window = (facts: Loose = {}) => ({ id: 'win', kind: 'window', from: '20 in', width: '40 in', sill: '30 in', height: '40 in', ...facts });

function houseWith(roomFacts: Loose, wallFacts: Loose = {}): Loose {
  return documentOf({ coverings: [wallcovering(), BORDER, MURAL], rooms: [room(['100 in', '90 in', '100 in', '90 in'], roomFacts, [wallFacts])] });
}

const faultsOf = (document: Loose): readonly string[] => {
  const outcome = decodeHouse(document);
  return outcome.ok ? [] : outcome.faults.map(({ path, message }) => `${path} ${message}`);
};

describe('what a room has besides walls', () => {
  test('is kept as it was written', () => {
    const house = houseOf(
      houseWith(
        {
          rails: [{ id: 'dado', name: 'dado rail', at: '32 in', width: '3 in' }],
          furniture: [{ id: 'bed', name: 'headboard', wall: 'A', from: '10 in', width: '60 in', height: '4 ft' }],
          ceiling: { covering: 'paper', along: 'B' },
          bands: [{ id: 'dado', covering: 'paper', walls: ['A'], to: { rail: 'dado' } }, { id: 'main', covering: 'paper', walls: ['A'], from: { rail: 'dado' } }],
        },
        { openings: [window({ reveal: { depth: '6 in', sides: ['left', 'right', 'head'] } })] },
      ),
    );
    expect(house.rooms[0]).toMatchObject({ ceiling: { along: 'B' }, rails: [{ id: 'dado' }], walls: [{ openings: [{ reveal: { sides: ['left', 'right', 'head'] } }] }, {}, {}, {}] });
  });

  test.each<readonly [string, Loose, Loose, string]>([
    ['a reveal without depth', {}, { openings: [window({ reveal: { depth: '0 in', sides: ['left'] } })] }, 'rooms[0].walls[0].openings[0].reveal.depth is 0 in; it takes a length above 0'],
    ['a reveal of no side', {}, { openings: [window({ reveal: { depth: '4 in', sides: [] } })] }, 'rooms[0].walls[0].openings[0].reveal.sides names no side; it takes "left", "right", "head" or "sill"'],
    ['a reveal of a side twice', {}, { openings: [window({ reveal: { depth: '4 in', sides: ['left', 'left'] } })] }, 'rooms[0].walls[0].openings[0].reveal.sides[1] is "left", which the reveal names already'],
    ['the sill of what stands on the floor', {}, { openings: [window({ sill: '0 in', reveal: { depth: '4 in', sides: ['sill'] } })] }, 'is "sill", but the window "win" goes down to the floor'],
    ['a reveal of a wardrobe', {}, { openings: [window({ kind: 'furniture', reveal: { depth: '4 in', sides: ['left'] } })] }, 'fitted furniture, which has no reveal'],
    ['a rail above its wall', { rails: [{ id: 'r', at: '95 in', width: '2 in' }] }, {}, 'rooms[0].rails[0].at is 95 in: the rail "r" would stand above wall A, which is 8\' high'],
    ['a rail on a wall that is not there', { rails: [{ id: 'r', at: '80 in', width: '2 in', walls: ['Z'] }] }, {}, 'rooms[0].rails[0].walls[0] is "Z", which is not a wall of Room'],
    ['two rails of one id', { rails: [{ id: 'r', at: '80 in', width: '2 in' }, { id: 'r', at: '30 in', width: '2 in' }] }, {}, 'rooms[0].rails[1].id is "r", which another of the list has already'],
    ['furniture past the end of its wall', { furniture: [{ id: 'bed', wall: 'B', from: '50 in', width: '60 in', height: '3 ft' }] }, {}, 'rooms[0].furniture[0].width is 60 in: "bed" would end at 9\' 2", past the end of wall B at 90 in'],
    ['a band at a rail that is not there', { bands: [{ id: 'main', covering: 'paper', walls: ['A'], from: { rail: 'dado' } }] }, {}, 'rooms[0].bands[0].from.rail is "dado", which is not a rail of Room; its rails are none yet'],
    ['a band under a rail and over the same', { rails: [{ id: 'r', at: '30 in', width: '2 in' }], bands: [{ id: 'main', covering: 'paper', walls: ['A'], from: { rail: 'r' }, to: { rail: 'r' } }] }, {}, 'not above where the band starts'],
    ['a ceiling along a wall that is not there', { ceiling: { covering: 'paper', along: 'Q' } }, {}, 'rooms[0].ceiling.along is "Q", which is not a wall of Room'],
    ['a level line on a wallcovering', { bands: [{ id: 'main', covering: 'paper', walls: ['A'], levelLine: { below: '20 in', at: '50 in' } }] }, {}, 'rooms[0].bands[0].levelLine stands on a band of a wallcovering; only a mural is placed by it'],
    ['a fifth panel of four', { bands: [{ id: 'main', covering: 'lake', walls: ['A'], firstPanel: 5 }] }, {}, 'rooms[0].bands[0].firstPanel is 5; the mural lake has 4 panels'],
    ['a wallcovering hung level', { bands: [{ id: 'main', covering: 'paper', walls: ['A'], level: true }] }, {}, 'rooms[0].bands[0].level is true on a band of a wallcovering'],
  ])('refuses %s', (_what, roomFacts, wallFacts, fault) => {
    expect(faultsOf(houseWith(roomFacts, wallFacts)).join('\n')).toContain(fault);
  });

  test.each([
    ['lining', { id: 'line', kind: 'lining', width: '0.1 mm', rollLength: '10 m' }, 'coverings[0].width is 0.1 mm; it takes a length of 5 cm or more'],
    ['panels', { id: 'm', kind: 'mural', panels: 3, panelWidth: '1 mm', panelHeight: '2 m' }, 'coverings[0].panelWidth is 1 mm; it takes a length of 5 cm or more'],
  ])('refuses %s too narrow to count', (_what, covering, fault) => {
    expect(faultsOf(documentOf({ coverings: [covering] }))).toEqual([fault]);
  });
});

test('a band begins on a rail and ends under one', () => {
  const rails = [{ id: 'dado', at: '32 in', width: '3 in' }, { id: 'picture', at: '80 in', width: '2 in' }];
  const [found] = houseOf(houseWith({ rails, bands: [{ id: 'main', covering: 'paper', walls: ['A'], from: { rail: 'dado' }, to: { rail: 'picture' } }] })).rooms;
  expect(hungBand(found!, found!.bands[0]!)).toMatchObject({ from: { length: inches(35) }, to: { length: inches(80) } });
});

test('what belongs to a wall goes with it', () => {
  const house = houseOf(
    houseWith({
      bands: [],
      rails: [{ id: 'one', at: '30 in', width: '2 in', walls: ['B'] }, { id: 'two', at: '80 in', width: '2 in', walls: ['A', 'B'] }, { id: 'all', at: '60 in', width: '2 in' }],
      furniture: [{ id: 'bed', wall: 'B', from: '0 in', width: '60 in', height: '3 ft' }, { id: 'chest', wall: 'A', from: '0 in', width: '60 in', height: '3 ft' }],
      ceiling: { covering: 'paper', along: 'B' },
    }),
  );
  const outcome = applyEdit(house, { kind: 'remove-wall', room: 'room', wall: 'B' });
  const after = outcome.ok ? outcome.value.rooms[0] : undefined;
  expect(after?.rails.map(({ id, walls }) => [id, walls])).toEqual([['two', ['A']], ['all', undefined]]);
  expect(after?.furniture.map(({ id }) => id)).toEqual(['chest']);
  expect(after?.ceiling?.along).toBeUndefined();
});

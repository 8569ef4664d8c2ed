import { describe, expect, test } from 'vitest';
import { applyEdit, documentSchema, type Edit, encodeHouse, type House, isKept, LARGEST_DOCUMENT_CHARACTERS, LONGEST_PHOTO, MOST_PHOTOS, MOST_PHOTOS_OF_WALL, nameEdit, readDocument, withoutNotes, writeDocument } from '../../shared-core/house/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { documentOf, exampleDocument, exampleHouse, faultsOf, houseOf, type Loose, made, room, wallcovering } from '../builders.ts';

const IMAGE = 'data:image/jpeg;base64,/9j/4AAQ';
const KEPT = `kept:${'0a'.repeat(32)}`;

const photo = (facts: Loose = {}): Loose => ({ id: 'photo', room: 'bed1', wall: 'B', image: IMAGE, ...facts });
const many = (count: number, facts: Loose = {}) => Array.from({ length: count }, (_, index) => photo({ id: `photo${index}`, ...facts }));
const withPhotos = (...photos: readonly Loose[]): Loose => ({ ...exampleDocument(), photos });

describe('the photos of a document', () => {
  test('are of walls, written out and read in again as they are', () => {
    const photos = [photo({ caption: 'Damp at the left' }), photo({ id: 'photo2' })];
    const house = houseOf(withPhotos(...photos));
    expect(house.photos).toEqual(photos);
    const again = readDocument(writeDocument(house));
    expect(again.ok && again.value.photos).toEqual(photos);
    expect(exampleHouse().photos).toEqual([]);
  });

  test.each([
    ['an SVG', { image: 'data:image/svg+xml;base64,PHN2Zy8+' }, 'image', /it takes a photo as a data URL of image\/png, image\/jpeg or image\/webp in base64, of at most 160000 characters/],
    ['an address', { image: 'https://example.org/wall.jpg' }, 'image', /data URL/],
    ['no photo', { image: undefined }, 'image', /is missing; it takes a photo/],
    ['too much of one', { image: `data:image/png;base64,${'A'.repeat(LONGEST_PHOTO)}` }, 'image', /at most 160000 characters/],
    ['an unknown room', { room: 'attic' }, 'room', /^is "attic", which is not a room of this house; its rooms are bed1$/],
    ['an unknown wall', { wall: 'Z' }, 'wall', /^is "Z", which is not a wall of Front bedroom; its walls are A, B, C, D$/],
    ['an empty caption', { caption: ' ' }, 'caption', /is empty; it takes what the photo shows/],
    ['an unknown key', { taken: '2026-03-02' }, 'taken', /is not a key of a photo; its keys are id, room, wall, caption, image/],
  ])('are refused for %s', (_what, facts, key, words) => {
    const fault = faultsOf(withPhotos(photo(facts))).find(({ path }) => path === `photos[0].${key}`);
    expect(fault?.message).toMatch(words);
  });

  test('are refused where two have one id, where a wall has too many, and where the house has', () => {
    expect(faultsOf(withPhotos(photo(), photo()))).toMatchObject([{ path: 'photos[1].id' }]);
    expect(faultsOf(withPhotos(...many(MOST_PHOTOS_OF_WALL)))).toEqual([]);
    expect(faultsOf(withPhotos(...many(MOST_PHOTOS_OF_WALL + 2)))).toEqual([
      { path: `photos[${MOST_PHOTOS_OF_WALL}].wall`, message: 'is "B" of Front bedroom, which has 12 photos already; a wall takes no more. Take one away' },
    ]);
    expect(faultsOf(withPhotos(...many(MOST_PHOTOS + 1)))).toMatchObject([{ path: 'photos', message: 'holds more than 80 photos' }]);
  });

  test('are refused where they only point at what a house file keeps, which the window may', () => {
    expect([isKept(KEPT), isKept('data:image/png;base64,iVBORw0KGgo=')]).toEqual([true, false]);
    expect(faultsOf(withPhotos(photo({ image: KEPT })))).toEqual([]);
    const read = readDocument(JSON.stringify(withPhotos(photo(), photo({ id: 'photo2', image: KEPT }))));
    expect(read.ok ? [] : read.faults).toMatchObject([{ path: 'photos[1].image', message: expect.stringMatching(/^is "kept:0a0a.*stands for a photo in a house file; a document takes the photo itself/) }]);
  });

  test('as many and as large as a house takes, with as many pictures, still leave a document that can be read in', () => {
    const full = (start: string, length: number) => start + 'A'.repeat(length - start.length);
    const walls = Array.from({ length: 8 }, (_, index) => String.fromCharCode(65 + index));
    const photos = Array.from({ length: MOST_PHOTOS }, (_, index) => photo({ id: `photo${index}`, room: 'room', wall: walls[index % 8], image: full('data:image/jpeg;base64,/9j/', LONGEST_PHOTO) }));
    const coverings = Array.from({ length: 15 }, (_, index) => wallcovering({ id: `paper${index}` }));
    const pictures = coverings.map(({ id }) => ({ covering: id, image: full('data:image/jpeg;base64,/9j/', 400_000) }));
    const text = writeDocument(houseOf(documentOf({ rooms: [room(walls.map(() => '10 ft'), { bands: [] })], coverings, pictures, photos })));
    expect(text.length).toBeLessThan(LARGEST_DOCUMENT_CHARACTERS - 2_000_000);
    expect(readDocument(text).ok).toBe(true);
  });

  test('are told by the JSON schema, and take no part in the plan', () => {
    const { properties } = documentSchema() as { readonly properties: { readonly photos: Loose } };
    expect(properties.photos.items.required).toEqual(['id', 'room', 'wall', 'image']);
    expect(planHouse(houseOf(withPhotos(photo())))).toEqual(planHouse(exampleHouse()));
  });
});

describe('photos', () => {
  const house = () => houseOf(withPhotos(photo({ caption: 'Damp' }), photo({ id: 'photo2', wall: 'C' })));
  const ids = ({ photos }: House) => photos.map(({ id }) => id);

  test.each<readonly [Edit, (house: House) => unknown, unknown, string]>([
    [{ kind: 'add-photos', photos: [photo({ id: 'photo3' })] }, ids, ['photo', 'photo2', 'photo3'], 'add a photo of wall B in Front bedroom'],
    [{ kind: 'add-photos', photos: [photo({ id: 'photo3' }), photo({ id: 'photo4' })] }, ids, ['photo', 'photo2', 'photo3', 'photo4'], 'add 2 photos of wall B in Front bedroom'],
    [{ kind: 'change-photo', photo: 'photo2', facts: { caption: 'Crack' } }, ({ photos }) => photos[1]!.caption, 'Crack', 'change caption of a photo of wall C in Front bedroom'],
    [{ kind: 'change-photo', photo: 'photo', facts: { caption: null } }, ({ photos }) => photos[0], photo(), 'change caption of a photo of wall B in Front bedroom'],
    [{ kind: 'change-photo', photo: 'photo', facts: { wall: 'D' } }, ({ photos }) => photos[0]!.wall, 'D', 'move a photo of wall B in Front bedroom to wall D'],
    [{ kind: 'remove-photo', photo: 'photo' }, ids, ['photo2'], 'take away a photo of wall B in Front bedroom'],
    [{ kind: 'remove-wall', room: 'bed1', wall: 'B' }, ids, ['photo2'], 'remove wall B in Front bedroom'],
    [{ kind: 'replace-walls', room: 'bed1', walls: ['A', 'C'].map((id) => ({ id, length: '9 ft', height: '8 ft' })) }, ids, ['photo2'], 'replace the walls of Front bedroom'],
    [{ kind: 'remove-room', room: 'bed1' }, ids, [], 'remove room Front bedroom'],
    [{ kind: 'change-room', room: 'bed1', facts: { walls: [{ id: 'C', length: '10 ft', height: '8 ft' }], bands: [], focalWall: null } }, ids, ['photo2'], 'change walls and bands and wall looked at most of Front bedroom'],
    [{ kind: 'change-room', room: 'bed1', facts: { name: 'Bed 1' } }, ids, ['photo', 'photo2'], 'change name of Front bedroom'],
  ])('edit %# does what it says and is called so', (edit, look, expected, name) => {
    const before = house();
    expect(look(made(before, edit))).toEqual(expected);
    expect(before).toEqual(house());
    expect(nameEdit(before, edit)).toBe(name);
  });

  test('that an edit leaves alone keep their identity', () => {
    const before = house();
    expect(made(before, { kind: 'change-wall', room: 'bed1', wall: 'B', facts: { length: '10 ft' } }).photos).toBe(before.photos);
    expect(made(before, { kind: 'remove-wall', room: 'bed1', wall: 'D' }).photos[1]).toBe(before.photos[1]);
    expect(made(before, { kind: 'add-photos', photos: [photo({ id: 'photo3' })] }).photos[0]).toBe(before.photos[0]);
  });

  test.each<readonly [Edit, RegExp]>([
    [{ kind: 'add-photos', photos: [] }, /^photos holds no photo/],
    [{ kind: 'add-photos', photos: [photo()] }, /^photos\[2\]\.id is "photo"/],
    [{ kind: 'add-photos', photos: [photo({ id: 'photo3', wall: 'Z' })] }, /^photos\[2\]\.wall is "Z", which is not a wall of Front bedroom/],
    [{ kind: 'add-photos', photos: Array.from({ length: MOST_PHOTOS_OF_WALL }, (_, index) => photo({ id: `another${index}` })) }, /^photos\[13\]\.wall .* has 12 photos already/],
    [{ kind: 'change-photo', photo: 'photo9', facts: { caption: 'x' } }, /^photo is "photo9", which is not there; there are photo, photo2$/],
    [{ kind: 'change-photo', photo: 'photo', facts: { wall: 'Z' } }, /^photos\[0\]\.wall is "Z"/],
    [{ kind: 'change-photo', photo: 'photo', facts: { caption: 'x'.repeat(201) } }, /^photo\.caption .*at most 200/],
    [{ kind: 'remove-photo', photo: 'photo9' }, /^photo is "photo9"/],
  ])('edit %# that can not be made is refused in words', (edit, words) => {
    const outcome = applyEdit(house(), edit);
    expect(outcome.ok ? '' : outcome.faults.map(({ path, message }) => `${path} ${message}`).join('; ')).toMatch(words);
  });
});

describe('a note', () => {
  const NOTE = '  Damp at the left.\n\nAsk about the old lining. ';

  test('of a room and of a wall is kept as it was typed, and can be taken away', () => {
    const ofRoom = made(exampleHouse(), { kind: 'change-room', room: 'bed1', facts: { note: NOTE } });
    const both = made(ofRoom, { kind: 'change-wall', room: 'bed1', wall: 'B', facts: { note: NOTE } });
    expect([both.rooms[0]!.note, both.rooms[0]!.walls[1]!.note]).toEqual([NOTE, NOTE]);
    const again = readDocument(writeDocument(both));
    expect(again.ok && encodeHouse(again.value).rooms?.[0]).toMatchObject({ note: NOTE, walls: [{}, { note: NOTE }, {}, {}] });
    const none = made(both, { kind: 'change-wall', room: 'bed1', wall: 'B', facts: { note: null } });
    expect('note' in none.rooms[0]!.walls[1]!).toBe(false);
    expect(nameEdit(both, { kind: 'change-wall', room: 'bed1', wall: 'B', facts: { note: null } })).toBe('change note of wall B in Front bedroom');
    expect(planHouse(both).order).toEqual(planHouse(exampleHouse()).order);
  });

  test.each([['too long', 'x'.repeat(4_001)], ['empty', ' \n '], ['no text', 7]])('that is %s is refused', (_what, note) => {
    const outcome = applyEdit(exampleHouse(), { kind: 'change-wall', room: 'bed1', wall: 'B', facts: { note } });
    expect(outcome.ok ? [] : outcome.faults).toEqual([{ path: 'wall.note', message: expect.stringMatching(/it takes a note of at most 4000 characters$/) }]);
  });

  test('stays with its room: without notes a room is what it was, and the same one where there were none', () => {
    const [plain] = exampleHouse().rooms;
    expect(withoutNotes(plain!)).toBe(plain);
    const noted = made(exampleHouse(), { kind: 'change-wall', room: 'bed1', wall: 'A', facts: { note: 'damp at the left' } });
    expect(withoutNotes({ ...noted.rooms[0]!, note: NOTE })).toEqual(plain);
  });
});

import { describe, expect, test } from 'vitest';
import { applyEdit, documentSchema, type Edit, LONGEST_PICTURE, nameEdit, readDocument, writeDocument } from '../../shared-core/house/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { documentOf, exampleDocument, exampleHouse, faultsOf, houseOf, type Loose, made, wallcovering } from '../builders.ts';

const FERN = 'data:image/jpeg;base64,/9j/4AAQ';
const IVY = 'data:image/png;base64,iVBORw0KGgo=';

const withPictures = (...pictures: readonly Loose[]): Loose => ({ ...exampleDocument(), pictures });

describe('the pictures of a document', () => {
  test('are those of wallcoverings and borders, written out and read in again as they are', () => {
    const house = houseOf(withPictures({ covering: 'fern', image: FERN }, { covering: 'ivy', image: IVY }));
    expect(house.pictures).toEqual([{ covering: 'fern', image: FERN }, { covering: 'ivy', image: IVY }]);
    const again = readDocument(writeDocument(house));
    expect(again.ok && again.value.pictures).toEqual(house.pictures);
  });

  test('are none where the key is missing', () => {
    expect(exampleHouse().pictures).toEqual([]);
  });

  test.each([
    ['an SVG', { covering: 'fern', image: 'data:image/svg+xml;base64,PHN2Zy8+' }, 'pictures[0].image', /it takes a picture as a data URL of image\/png, image\/jpeg or image\/webp in base64, of at most 400000 characters/],
    ['an address', { covering: 'fern', image: 'https://example.org/fern.png' }, 'pictures[0].image', /is "https:\/\/example.org\/fern.png"; it takes a picture as a data URL/],
    ['a picture that is not base64', { covering: 'fern', image: 'data:image/png;base64,<script>' }, 'pictures[0].image', /data URL/],
    ['no picture', { covering: 'fern' }, 'pictures[0].image', /is missing; it takes a picture/],
    ['too much of one', { covering: 'fern', image: `data:image/png;base64,${'A'.repeat(LONGEST_PICTURE)}` }, 'pictures[0].image', /at most 400000 characters/],
    ['an unknown covering', { covering: 'moss', image: FERN }, 'pictures[0].covering', /is "moss", which is not a covering of this house/],
    ['lining', { covering: 'line', image: FERN }, 'pictures[0].covering', /is "line", a lining; a picture of one repeat belongs to a wallcovering or a border/],
    ['paint', { covering: 'chalk', image: FERN }, 'pictures[0].covering', /a paint/],
    ['an unknown key', { covering: 'fern', image: FERN, width: '10 in' }, 'pictures[0].width', /is not a key of a picture; its keys are covering, image/],
  ])('are refused for %s', (_what, picture, path, words) => {
    const fault = faultsOf(withPictures(picture)).find((one) => one.path === path);
    expect(fault?.message).toMatch(words);
  });

  test('are refused where a covering has two, or where all of them would make a document too large to read in', () => {
    expect(faultsOf(withPictures({ covering: 'fern', image: FERN }, { covering: 'fern', image: IVY }))).toEqual([
      { path: 'pictures[1].covering', message: 'is "fern", which has a picture already; each covering takes one' },
    ]);
    const image = `${IVY}`.replace('=', '').padEnd(LONGEST_PICTURE, 'A');
    const ids = Array.from({ length: 16 }, (_, index) => `paper${index}`);
    const many = (count: number) => documentOf({ coverings: ids.map((id) => wallcovering({ id })), pictures: ids.slice(0, count).map((covering) => ({ covering, image })) });
    expect(faultsOf(many(15))).toEqual([]);
    const [fault] = faultsOf(many(16));
    expect(fault?.path).toBe('pictures');
    expect(fault?.message).toMatch(/^hold 6400000 characters together; a house takes 6000000\. Take one away/);
    expect(readDocument(writeDocument(houseOf(many(15)))).ok).toBe(true);
  });

  test('are told by the JSON schema', () => {
    const { properties } = documentSchema() as { readonly properties: { readonly pictures: Loose } };
    expect(properties.pictures.items.required).toEqual(['covering', 'image']);
  });

  test('take no part in the plan', () => {
    const house = exampleHouse();
    expect(planHouse(made(house, { kind: 'set-picture', covering: 'fern', image: FERN }))).toEqual(planHouse(house));
  });
});

describe('set-picture', () => {
  const set = (covering: string, image: string | null): Edit => ({ kind: 'set-picture', covering, image });

  test('hangs, replaces in its place and takes away, and is called so', () => {
    const one = made(exampleHouse(), set('fern', FERN));
    const two = made(one, set('ivy', IVY));
    expect(two.pictures).toEqual([{ covering: 'fern', image: FERN }, { covering: 'ivy', image: IVY }]);
    expect(made(two, set('fern', IVY)).pictures).toEqual([{ covering: 'fern', image: IVY }, { covering: 'ivy', image: IVY }]);
    expect(made(two, set('fern', null)).pictures).toEqual([{ covering: 'ivy', image: IVY }]);
    expect(made(one, set('ivy', null))).toBe(one);
    expect(exampleHouse().pictures).toEqual([]);
    expect(nameEdit(one, set('fern', FERN))).toBe('hang the picture of K-2041');
    expect(nameEdit(one, set('fern', null))).toBe('take away the picture of K-2041');
  });

  test('is refused in words for what is no picture or no covering', () => {
    const refused = (edit: Edit) => {
      const outcome = applyEdit(exampleHouse(), edit);
      return outcome.ok ? '' : outcome.faults.map(({ path, message }) => `${path} ${message}`).join('; ');
    };
    expect(refused(set('fern', 'data:text/html;base64,PGI+'))).toMatch(/^image is "data:text\/html;base64,PGI\+"; it takes a picture as a data URL of image\/png/);
    expect(refused(set('moss', FERN))).toMatch(/^covering is "moss", which is not there; there are fern, ivy/);
    expect(refused(set('lake', FERN))).toMatch(/^pictures\[0\]\.covering is "lake", a mural/);
  });

  test('a covering that is removed takes its picture along; other edits leave it', () => {
    const house = houseOf(documentOf({ coverings: [wallcovering()], pictures: [{ covering: 'paper', image: FERN }] }));
    expect(made(house, { kind: 'remove-covering', covering: 'paper' })).toMatchObject({ coverings: [], pictures: [] });
    expect(made(house, { kind: 'change-house', facts: { name: 'Elm' } }).pictures).toBe(house.pictures);
    expect(made(house, { kind: 'change-covering', covering: 'paper', facts: { repeat: '10 in' } }).pictures).toBe(house.pictures);
  });
});

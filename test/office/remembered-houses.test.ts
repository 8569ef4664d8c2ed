import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { RememberedHouses } from '../../src-main/office/remembered-houses.ts';

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-remembered-'));
  file = join(folder, 'data', 'houses.json');
});
afterEach(() => rmSync(folder, { recursive: true }));

const names = (list: RememberedHouses) => list.list().map(({ name }) => name);

test('the house opened last is first, once, by the name it has now', () => {
  const list = new RememberedHouses(file);
  const keys = [list.remember('/a/One.struckline', 'One'), list.remember('/b/Two.struckline', 'Two'), list.remember('/a/One.struckline', 'One again')];
  expect(keys[2]).toBe(keys[0]);
  expect(names(new RememberedHouses(file))).toEqual(['One again', 'Two']);
  list.forget(keys[0]!);
  expect(new RememberedHouses(file).list()).toEqual([{ path: '/b/Two.struckline', name: 'Two', key: keys[1] }]);
  expect(readdirSync(join(folder, 'data'))).toEqual(['houses.json']);
});

test('two apps that run have one list', () => {
  const [one, other] = [new RememberedHouses(file), new RememberedHouses(file)];
  one.remember('/a/One.struckline', 'One');
  other.remember('/b/Two.struckline', 'Two');
  expect(names(one)).toEqual(['Two', 'One']);
});

test('no more than a hundred are remembered', () => {
  const list = new RememberedHouses(file);
  for (let index = 0; index < 103; index += 1) list.remember(`/a/${index}.struckline`, String(index));
  expect(names(list)).toHaveLength(100);
  expect(names(list)[0]).toBe('102');
});

test.each(['', 'noise', '{}', 'null', '[null, 7, {"path": "relative.struckline", "name": "x"}, {"path": "/a/b.struckline"}]'])('a list that reads %j is none, and the next house begins another', (text) => {
  const list = new RememberedHouses(file);
  list.remember('/a/One.struckline', 'One');
  writeFileSync(file, text);
  expect(names(list)).toEqual([]);
  list.remember('/b/Two.struckline', 'Two');
  expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual([{ path: '/b/Two.struckline', name: 'Two' }]);
});

test('where it can be written nowhere, it lasts as long as the run', () => {
  writeFileSync(join(folder, 'data'), 'a file in the way');
  const list = new RememberedHouses(file);
  expect(() => list.remember('/a/One.struckline', 'One')).not.toThrow();
  expect(names(list)).toEqual(['One']);
  expect(existsSync(file)).toBe(false);
});

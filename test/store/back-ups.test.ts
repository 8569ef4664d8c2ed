import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { HouseStore, listBackUps, restoreBackUp } from '../../src-main/store/index.ts';
import { type BackUp, isBackUpDue, tooMany } from '../../src-main/store/back-ups.ts';
import { exampleHouse } from '../builders.ts';
import { houseFileForEach } from './house-file.ts';

const file = houseFileForEach();
const nameTo = (name: string) => ({ kind: 'change-house', facts: { name } }) as const;
const nameIn = async (store: HouseStore) => {
  const read = await store.read();
  return read.ok ? read.value.house.name : read.faults;
};

/** A store whose clock is set by the test. */
async function storeAt(first: string) {
  let now = new Date(first);
  const store = await file.kept(HouseStore.create(file.path, exampleHouse(), () => now));
  let revision = 0;
  return {
    store,
    async edit(at: string, name: string) {
      now = new Date(at);
      const changed = await store.edit(nameTo(name), revision);
      if (!changed.ok) throw new Error(JSON.stringify(changed.failure));
      revision = changed.value.revision;
    },
  };
}

describe('a back-up of a house file', () => {
  test('is made before the first change after an hour, and has what stood there until then', async () => {
    const { edit } = await storeAt('2099-03-02T08:00:00Z');
    await edit('2099-03-02T08:00:00Z', 'One');
    await edit('2099-03-02T08:59:59Z', 'Two');
    await edit('2099-03-02T09:00:00Z', 'Three');
    await edit('2099-03-03T07:00:00Z', 'Four');
    expect(listBackUps(file.path).map(({ made, reason }) => [made, reason])).toEqual([
      ['2099-03-03T07:00:00Z', 'work'],
      ['2099-03-02T09:00:00Z', 'work'],
      ['2099-03-02T08:00:00Z', 'work'],
    ]);
    const houses = await Promise.all(listBackUps(file.path).map(({ name }) => HouseStore.look(join(dirname(file.path), 'Struckline back-ups', 'Alder', name))));
    expect(houses.map((looked) => looked.ok && [looked.value.house.name, looked.value.undo])).toEqual([
      ['Three', 'change name of the house'],
      ['Two', 'change name of the house'],
      ['7 Alder Court', null],
    ]);
  });

  test('is due whichever way a clock jumps', async () => {
    const { edit } = await storeAt('2099-03-02T08:00:00Z');
    await edit('2099-03-02T08:00:00Z', 'One');
    await edit('2019-01-01T00:00:00Z', 'Two');
    await edit('2019-01-01T00:10:00Z', 'Three');
    expect(listBackUps(file.path).map(({ made }) => made).slice(0, 2)).toEqual(['2099-03-02T08:00:00Z', '2019-01-01T00:10:00Z']);
    const at = (time: string) => isBackUpDue(new Date('2026-03-02T09:00:00Z'), new Date(`2026-03-02T${time}Z`));
    expect([at('09:59:59'), at('10:00:00'), at('08:00:01'), at('07:59:00')]).toEqual([false, true, false, true]);
  });

  test('that can not be made hinders no work and is told', async () => {
    const { store, edit } = await storeAt('2099-03-02T08:00:00Z');
    const inTheWay = join(dirname(file.path), 'Struckline back-ups');
    writeFileSync(inTheWay, 'a file where the folder should be');
    await edit('2099-03-02T08:00:00Z', 'One');
    expect(store.backUpTrouble).toMatch(/^The last back-up could not be made: .*(EEXIST|ENOTDIR).*tried again at the next change\.$/);
    expect(await nameIn(store)).toBe('One');
    rmSync(inTheWay);
    await edit('2099-03-02T08:00:01Z', 'Two');
    expect(store.backUpTrouble).toBeNull();
    expect(listBackUps(file.path)).toHaveLength(1);
  });

  test('of which there are too many goes, and no draft stays', async () => {
    const { edit } = await storeAt('2099-03-02T00:00:00Z');
    for (let hour = 0; hour < 24; hour += 2) await edit(`2099-03-02T${String(hour).padStart(2, '0')}:00:00Z`, `Hour ${hour}`);
    const folder = join(dirname(file.path), 'Struckline back-ups', 'Alder');
    expect(readdirSync(folder).sort()).toEqual([14, 16, 18, 20, 22].map((hour) => `2099-03-02T${hour}-00-00Z work.struckline`));
  });

  test('is not taken for one by another name', () => {
    const folder = join(dirname(file.path), 'Struckline back-ups', 'Alder');
    mkdirSync(folder, { recursive: true });
    for (const name of ['notes.txt', '2026-03-02T09-00-00Z.struckline', '2026-13-02T09-00-00Z work.struckline', '.x.draft', '2026-03-02T09-00-00Z other.struckline']) writeFileSync(join(folder, name), '');
    expect(listBackUps(file.path)).toEqual([]);
  });
});

describe('of many back-ups', () => {
  const at = (made: string, reason: BackUp['reason'] = 'work'): BackUp => ({ name: `${made} ${reason}`, made: `${made}:00Z`, reason });
  const gone = (backUps: readonly BackUp[]) => tooMany(backUps.toSorted((one, other) => other.made.localeCompare(one.made))).map(({ name }) => name);

  test('the oldest of six on one day goes', () => {
    expect(gone([9, 10, 11, 12, 13, 14].map((hour) => at(`2026-03-02T${String(hour).padStart(2, '0')}:00`)))).toEqual(['2026-03-02T09:00 work']);
  });

  test('the last of each day and week stays for a while', () => {
    const days = Array.from({ length: 60 }, (_, day) => new Date(Date.UTC(2026, 0, 1 + day, 9)).toISOString().slice(0, 16));
    const left = days.filter((day) => !gone(days.map((one) => at(one))).includes(`${day} work`));
    // 2026-03-01 is the last of the sixty days; weeks begin on a Thursday, as 1970-01-01 did.
    expect(left.map((day) => day.slice(5, 10))).toEqual(['02-11', '02-18', '02-23', '02-24', '02-25', '02-26', '02-27', '02-28', '03-01']);
  });

  test('those of other kinds stand apart: five of each stay', () => {
    const replaced = [1, 2, 3, 4, 5, 6].map((hour) => at(`2026-03-02T0${hour}:00`, 'replaced'));
    expect(gone([...replaced, at('2026-03-01T08:00', 'form')])).toEqual(['2026-03-02T01:00 replaced']);
  });
});

describe('a back-up that is restored', () => {
  test('stands in the place of the file, which becomes a back-up, with a revision that counts on', async () => {
    const { store, edit } = await storeAt('2099-03-02T08:00:00Z');
    await edit('2099-03-02T08:00:00Z', 'One');
    await edit('2099-03-02T10:00:00Z', 'Two');
    await store.close();
    const replaced = readFileSync(file.path);
    const [last] = listBackUps(file.path);
    await restoreBackUp(file.path, last!.name, { now: new Date('2099-03-02T11:00:00Z'), revision: 2 });
    const again = await file.kept(HouseStore.open(file.path));
    expect(await again.read()).toMatchObject({ ok: true, value: { house: { name: 'One' }, revision: 3, undo: 'change name of the house' } });
    const aside = join(dirname(file.path), 'Struckline back-ups', 'Alder', '2099-03-02T11-00-00Z replaced.struckline');
    expect(readFileSync(aside).equals(replaced)).toBe(true);
    expect(readdirSync(dirname(file.path)).sort()).toEqual(['Alder.struckline', 'Struckline back-ups']);
  });

  test('takes the place of a file that is gone or is none any more, and of its journal', async () => {
    const { store, edit } = await storeAt('2099-03-02T08:00:00Z');
    await edit('2099-03-02T08:00:00Z', 'One');
    await store.close();
    const [{ name }] = listBackUps(file.path) as [BackUp];
    rmSync(file.path);
    await restoreBackUp(file.path, name, { now: new Date('2099-03-02T11:00:00Z'), revision: 0 });
    expect((await HouseStore.look(file.path)).ok).toBe(true);
    writeFileSync(file.path, 'not a house any more');
    writeFileSync(`${file.path}-journal`, 'of what was there');
    await restoreBackUp(file.path, name, { now: new Date('2099-03-02T12:00:00Z'), revision: 0 });
    expect((await HouseStore.look(file.path)).ok).toBe(true);
    expect(existsSync(`${file.path}-journal`)).toBe(false);
    expect(listBackUps(file.path).map(({ reason }) => reason)).toEqual(['replaced', 'work']);
  });
});

describe('a store whose file is no longer there under its name', () => {
  test.each([
    ['removed', () => rmSync(file.path)],
    ['moved', () => renameSync(file.path, `${file.path}.moved`)],
    ['replaced', () => {
      copyFileSync(file.path, `${file.path}.other`);
      renameSync(`${file.path}.other`, file.path);
    }],
  ])('because it was %s makes no edit that nobody would find again', async (_what, happen) => {
    const store = await file.kept(HouseStore.create(file.path, exampleHouse()));
    expect(store.isElsewhere()).toBe(false);
    happen();
    expect(store.isElsewhere()).toBe(true);
    expect(await store.edit(nameTo('Lost'), 0)).toEqual({ ok: false, failure: { code: 'not-written', message: 'Alder.struckline was moved, replaced or removed while it was open; this change was not made. Open the house again.' } });
  });
});

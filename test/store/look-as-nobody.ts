import Database from 'better-sqlite3';
import { HouseStore } from '../../src-main/store/index.ts';

/** Opens a house file as a user who may only read it, and tries to change it; says what came of it as JSON. */
const [path] = process.argv.slice(2) as [string];
const NOBODY = 65_534;
// The library is loaded while this user may still read it.
new Database(':memory:').close();
if (process.getuid?.() === 0) {
  process.setgid?.(NOBODY);
  process.setuid?.(NOBODY);
}
const opened = await HouseStore.open(path);
if (opened.ok) {
  const store = opened.value;
  const read = await store.read();
  const changed = await store.edit({ kind: 'change-house', facts: { name: 'Elm' } }, read.ok ? read.value.revision : 0);
  await store.close();
  console.log(JSON.stringify({ lookOnly: store.lookOnly, name: read.ok && read.value.house.name, changed }));
} else console.log(JSON.stringify(opened));

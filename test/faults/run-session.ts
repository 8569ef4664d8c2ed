import { writeSync } from 'node:fs';
import { HouseStore } from '../../src-main/store/index.ts';
import { makeChange } from './numbered-edits.ts';

/**
 * A program of its own that edits a house file until it has made so many changes or is killed. It says a line 'revision N'
 * once a change is answered, 'failed CODE MESSAGE' where one could not be made, and goes on with the same one.
 */
const [path, changes, mostFailures] = process.argv.slice(2) as [string, string, string];
const say = (line: string) => writeSync(1, `${line}\n`);

say('ready');
const opened = await HouseStore.open(path);
if (!opened.ok) {
  say(`failed open ${opened.faults.map(({ message }) => message).join(' ')}`);
  process.exit(0);
}
const store = opened.value;
let failures = 0;
for (let made = 0; made < Number(changes); ) {
  const read = await store.read();
  const changed = read.ok ? await makeChange(store, read.value) : null;
  if (changed?.ok) {
    say(`revision ${changed.value.revision}`);
    made += 1;
    continue;
  }
  say(read.ok ? `failed ${changed?.failure.code} ${JSON.stringify(changed?.failure)}` : `failed read ${read.faults.map(({ message }) => message).join(' ')}`);
  failures += 1;
  if (failures > Number(mostFailures)) break;
}
await store.close();
say('closed');

import { readFileSync, readdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

const ROOT = new URL('..', import.meta.url).pathname;

/** What is pure is tested in one process after the other file; what speaks another language or stands in for a module has one of its own. */
const PURE = ['base', 'units', 'house', 'survey', 'cutting', 'setting-out', 'ordering', 'prep', 'calendar', 'costing', 'plan', 'drawing', 'conformance'];
const pureFiles = PURE.flatMap((folder) =>
  readdirSync(join(ROOT, 'test', folder), { recursive: true, encoding: 'utf8' })
    .map((name) => `test/${folder}/${name}`)
    .filter((file) => file.endsWith('.test.ts') && !/\bspeak\(|\bvi\.|process\./.test(readFileSync(join(ROOT, file), 'utf8'))),
);

export default defineConfig({
  test: {
    root: ROOT,
    environment: 'node',
    // Some wait for programs and disks, and a core would stay idle meanwhile.
    maxWorkers: Math.ceil(availableParallelism() * 1.5),
    retry: 0,
    provide: { randomRooms: { rooms: 400, searched: 25 }, share: 0.005 },
    // Ends what hangs; no test is judged by how long it takes.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 60_000 } },
    projects: [
      { extends: true, test: { name: 'pure', include: pureFiles, isolate: false } },
      { extends: true, test: { name: 'apart', include: ['test/**/*.test.ts'], exclude: [...pureFiles, 'test/e2e/**', 'test/bench/**', 'node_modules/**'] } },
    ],
  },
});

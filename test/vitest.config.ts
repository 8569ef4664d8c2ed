import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['test/**/*.test.ts'],
    exclude: ['test/e2e/**', 'test/bench/**', 'node_modules/**'],
    environment: 'node',
    // Without this one core stays idle.
    maxWorkers: '100%',
    retry: 0,
    provide: { randomRooms: { rooms: 400, searched: 40 }, share: 0.005 },
    // Ends what hangs; no test is judged by how long it takes.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 60_000 } },
  },
});

import { defineConfig } from 'vitest/config';
import usual from './vitest.config.ts';

/** The random rooms of setting out, as many as a property has to hold for. */
export default defineConfig({
  test: { ...usual.test, include: ['test/setting-out/**/*.test.ts'], provide: { randomRooms: { rooms: 10_000, searched: 10_000 } }, testTimeout: 0 },
});

import { defineConfig } from 'vitest/config';
import usual from './vitest.config.ts';

/** The long sets whole: random rooms of setting out as many as a property has to hold for, faults of the disk, damaged files. */
export default defineConfig({
  test: { ...usual.test, provide: { randomRooms: { rooms: 10_000, searched: 10_000 }, share: 1 }, testTimeout: 0 },
});

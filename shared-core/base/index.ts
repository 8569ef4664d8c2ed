export { assert, BrokenAssumption, present } from './assert.ts';
export type { Brand } from './brand.ts';
export { freeId, idFor } from './free-id.ts';
export { bad, fault, good, type Fault, type Outcome } from './outcome.ts';
export { type Memory, memoryOf } from './memory.ts';
export { capital, isSaid, squeeze, wordsTyped } from './words.ts';

import { describe, expect, test } from 'vitest';
import { planHouse } from '../../shared-core/plan/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { type Looking, sayGap, sayProof } from '../../src-renderer/places/order/say-proof.ts';

const house = demoHouse();
const proved = planHouse(house).order.map((line) => ({ ...line, isProvenMinimum: true }));
/** The order with so many of its patterns not proved. */
const unproved = (count: number) => {
  const open = [...new Set(proved.map(({ covering }) => covering))].slice(0, count);
  return proved.map((line) => ({ ...line, isProvenMinimum: !open.includes(line.covering) }));
};
const IDLE: Looking = { isWorking: false, isQuick: false, isLookingLonger: false, isCutShort: false, hasLookedLonger: false, progress: null };
const say = (order: typeof proved, looking: Partial<Looking>) => sayProof(house, order, { ...IDLE, ...looking });

describe('how far the proof is', () => {
  test('is said quietly where there is nothing more to find', () => {
    expect(say(proved, {})).toEqual({ words: 'Proved: no way of cutting these pieces takes fewer rolls.', isOpen: false, offer: null });
    expect(say(proved, { hasLookedLonger: true }).offer).toBeNull();
    // Nothing is said of a look that is over before it is seen.
    expect(say(proved, { isWorking: true }).offer).toBeNull();
  });

  test('offers to stop a look that is under way, and says how far it is', () => {
    expect(say(proved, { isWorking: true, isQuick: true })).toEqual({ words: 'Not yet proved: looking for fewer rolls. What is shown can be cut as it stands.', isOpen: true, offer: 'stop' });
    expect(say(unproved(1), { isWorking: true, isLookingLonger: true, progress: { done: 1, of: 3 } })).toEqual({ words: 'Looking longer for fewer rolls: 1 of 3 patterns done. What is shown can be cut as it stands.', isOpen: true, offer: 'stop' });
    expect(say(proved, { isWorking: true, isQuick: true, progress: { done: 0, of: 1 } }).words).not.toContain('of 1');
  });

  test('offers to look longer where it was stopped or something is open, until that has been done', () => {
    expect(say(proved, { isCutShort: true })).toEqual({ words: 'Stopped. What is shown can be cut as it stands; fewer rolls may do.', isOpen: true, offer: 'look-longer' });
    expect(say(unproved(1), {})).toEqual({ words: 'Whether fewer rolls of K-2041 would do is not yet proved.', isOpen: true, offer: 'look-longer' });
    expect(say(unproved(2), { hasLookedLonger: true })).toEqual({ words: 'Whether fewer rolls of K-2041, K-3310 would do could not be settled by looking longer.', isOpen: true, offer: null });
    expect(say(unproved(4), {}).words).toContain('of 4 patterns would');
  });
});

test('the gap of a line is said plainly', () => {
  const roll = proved.find(({ covering }) => house.coverings.find(({ id }) => id === covering)?.kind === 'wallcovering')!;
  expect(sayGap(house, { ...roll, rollsNeeded: 26, lowerBound: 25 })).toBe('26 rolls; fewer than 25 will not do. Not yet proved.');
});

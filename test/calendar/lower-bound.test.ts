import { describe, expect, test } from 'vitest';
import { earliestTimes, modelOf } from '../../shared-core/calendar/calendar-model.ts';
import { keptEnd, leastSpans, thriftyOrder } from '../../shared-core/calendar/kept-bound.ts';
import { leastEnd } from '../../shared-core/calendar/lower-bound.ts';
import { job, question, work } from './houses-of-jobs.ts';

const dayAndMinute = (day: number, minute: number) => day * 1_440 + 480 + minute;

describe('the bound of a calendar', () => {
  test('of five jobs of 4 hours for two people is the second day after 2 hours', () => {
    const model = modelOf(question(['a', 'b', 'c', 'd', 'e'].map((id) => job(id, 240)), { work: work({ people: 2 }) }));
    expect(leastEnd(model, dayAndMinute(4, 480))).toBe(dayAndMinute(1, 120));
  });

  test('counts pairs: of three people one pair at a time', () => {
    const model = modelOf(question(['a', 'b', 'c'].map((id) => job(id, 240, { people: 2 })), { work: work({ people: 3 }) }));
    expect(leastEnd(model, dayAndMinute(4, 480))).toBe(dayAndMinute(1, 240));
  });
});

describe('rooms that must stay usable', () => {
  const room = (name: string, wait: number, earliest: string | null = null) => [job(`${name}1`, 60, { room: name, waitMinutes: wait, earliest }), job(`${name}2`, 60, { room: name, after: [`${name}1`] })];
  const keptUsable = ['slow', 'quick', 'late'];

  test('that dry for 60 hours are out of use for four days from Monday on and for two from Friday on', () => {
    const model = modelOf(question([...room('slow', 3_600), ...room('quick', 600)], { keptUsable }));
    expect(leastSpans(model, dayAndMinute(0, 480))).toEqual([4, 2]);
    expect(leastSpans(model, dayAndMinute(11, 480))).toEqual([2, 2]);
  });

  test('of two days each, one delivered on the third day, are over on the fourth', () => {
    const model = modelOf(question([...room('late', 600, '2026-03-04'), ...room('quick', 600)], { keptUsable }));
    expect(keptEnd(model, earliestTimes(model).start)).toBe(dayAndMinute(3, 60));
  });

  test('follow each other so that the weekend is in the way of what dries longest', () => {
    const model = modelOf(question([...room('slow', 3_600), ...room('quick', 600), ...room('late', 600)], { keptUsable }));
    expect(thriftyOrder(model, earliestTimes(model).start, leastSpans(model, dayAndMinute(11, 480)))).toEqual([2, 0, 1]);
  });
});

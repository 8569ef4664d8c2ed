import { describe, expect, test } from 'vitest';
import { sayFault, sayFaults } from '../../src-renderer/parts/say-fault.ts';
import { heightText, readHeightTyped, readTurnTyped } from '../../src-renderer/places/survey/typed-facts.ts';
import { parseMeasure } from '../../shared-core/units/index.ts';

test.each([
  ['inside', 'inside'],
  ['i', 'inside'],
  ['Out', 'outside'],
  [' s ', 'straight'],
  ['135', '135'],
  ['135°', '135'],
  ['91,5 deg', '91.5'],
])('a corner typed %j is %s', (typed, turn) => {
  expect(readTurnTyped(typed)).toBe(turn);
});

test.each(['', 'left', '1000', '12 34', '-90'])('a corner typed %j is none', (typed) => {
  expect(readTurnTyped(typed)).toBeNull();
});

describe('a height typed', () => {
  test('is one length, in the way of the house where it has no unit', () => {
    expect(readHeightTyped("8' 2", 'imperial')).toEqual({ height: `8' 2"` });
    expect(readHeightTyped('2,44', 'metric')).toEqual({ height: '2,44 m' });
  });

  test('is two lengths where the ceiling slopes', () => {
    expect(readHeightTyped("5' to 8' 6\"", 'imperial')).toEqual({ height: ["5'", `8' 6"`] });
  });

  test('that is none says what was not understood', () => {
    expect(readHeightTyped('tall', 'metric')).toEqual({ trouble: expect.stringMatching(/tall.*Nothing was changed\.$/) as string });
    expect(readHeightTyped('1 m to 2 m to 3 m', 'metric')).toEqual({ trouble: expect.stringContaining('one length, or two') as string });
  });

  test('is shown again as it was typed', () => {
    const [left, right] = ["5'", '2.6 m'].map((typed) => {
      const parsed = parseMeasure(typed);
      if (!parsed.ok) throw new Error(typed);
      return parsed.value;
    });
    expect(heightText(left!)).toBe("5'");
    expect(heightText([left!, right!])).toBe("5' to 2.6 m");
  });
});

test.each([
  ['rooms[0].walls[1].length', 'is -3 m; it takes a length above 0', 'Length is -3 m; it takes a length above 0.'],
  ['coverings[0].rollLength', 'is missing', 'Roll length is missing.'],
  ['rooms[0].bands[2]', 'overlaps the band "main"', 'Band overlaps the band "main".'],
  ['rooms[0].bands[0].layout.start.at', 'is 99 ft', 'The place is 99 ft.'],
  ['', 'There is nothing to undo.', 'There is nothing to undo.'],
])('the fault at %j is said as a sentence', (path, message, sentence) => {
  expect(sayFault({ path, message })).toBe(sentence);
});

test('no fault says nothing', () => {
  expect(sayFaults([])).toBeNull();
});

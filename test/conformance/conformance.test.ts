import { describe, expect, it } from 'vitest';
import { CARE } from './care.checks.ts';
import { CUTTING_AND_PACKING } from './cutting-and-packing.checks.ts';
import type { Check, KnownDifference } from './figure.ts';
import knownDifferences from './known-differences.json' with { type: 'json' };
import { PAINT } from './paint.checks.ts';
import { ROLLS_AND_STRIPS } from './rolls-and-strips.checks.ts';
import { UNITS } from './units.checks.ts';

const LINES: readonly KnownDifference[] = knownDifferences;
const KNOWN = new Map(LINES.map((line) => [line.id, line]));
const GROUPS: readonly (readonly [name: string, checks: readonly Check[]])[] = [
  ['rolls and strips', ROLLS_AND_STRIPS],
  ['cutting and packing', CUTTING_AND_PACKING],
  ['units', UNITS],
  ['paint', PAINT],
  ['care', CARE],
];
const ALL = GROUPS.flatMap(([, checks]) => checks);

describe.each(GROUPS)('figures from outside: %s', (_, checks) => {
  it.each(checks.map((check) => [check.id, check] as const))('%s', (id, { expected, ours, source }) => {
    const known = KNOWN.get(id);
    const found = ours();
    if (!known) {
      expect(found, `${source.name} (${source.how}) says otherwise and the difference is not known`).toEqual(expected);
      return;
    }
    expect(found, 'the known difference is none any more: take its line out').not.toEqual(expected);
    expect({ expected, ours: found }, 'the known difference is another one now').toEqual({ expected: known.expected, ours: known.ours });
  });
});

describe('the figures', () => {
  it('have an id and a source each', () => {
    expect(new Set(ALL.map(({ id }) => id)).size).toBe(ALL.length);
    expect(ALL.length).toBeGreaterThanOrEqual(80);
    expect(ALL.filter(({ source }) => source.name.length < 10)).toEqual([]);
  });

  it('hold every known difference, with its cause', () => {
    expect(LINES.map(({ id }) => id).filter((id) => !ALL.some((check) => check.id === id))).toEqual([]);
    expect(KNOWN.size).toBe(LINES.length);
    expect(LINES.filter(({ cause }) => cause.length < 20)).toEqual([]);
  });

  it('of the German chart are met within one roll, and exactly in its first row', () => {
    const cells = ROLLS_AND_STRIPS.filter(({ id }) => id.startsWith('German chart')).map(({ id, expected, ours }) => ({ id, off: Number(ours()) - Number(expected) }));
    expect(cells).toHaveLength(21);
    expect(cells.filter(({ off }) => Math.abs(off) > 1)).toEqual([]);
    expect(cells.slice(0, 7).filter(({ off }) => off !== 0)).toEqual([]);
  });
});

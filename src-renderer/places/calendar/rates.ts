import { WORK_RATES } from '../../../shared-core/calendar/index.ts';
import { type Rule, RULES, type Task } from '../../../shared-core/prep/index.ts';
import { say } from '../../../shared-core/words/index.ts';

/** Something that takes time, with our figure for it. */
export interface OurRate {
  /** What the house's own figure is kept by. */
  readonly of: string;
  readonly words: string;
  readonly minutes: number;
}

/**
 * What takes time in a house: what is hung and painted anywhere, and the preparation that its tasks ask for.
 *
 * Example: of a house whose only task is washing down, after the strips, coats and lines comes 'Wash down …'.
 */
export function ratesIn(tasks: readonly Pick<Task, 'rule'>[]): readonly OurRate[] {
  const used = new Set(tasks.map(({ rule }) => rule));
  return [
    ...Object.entries(WORK_RATES).map(([of, { words, minutes }]) => ({ of, words, minutes })),
    ...RULES.filter(({ id, minutes }) => used.has(id) && minutes > 0).map((rule) => ({ of: rule.id, words: sayRule(rule), minutes: rule.minutes })),
  ];
}

function sayRule({ words, per }: Rule): string {
  if (per === 'square-metre') return words(say`a square metre`);
  return per === 'surface' ? words(say`each surface`) : words(say`once for a room`);
}

import { capital } from '../../../shared-core/base/index.ts';
import { type Delivery, type House, nameCovering } from '../../../shared-core/house/index.ts';
import type { CheckedDelivery, Ledger } from '../../../shared-core/ordering/index.ts';
import { sayUnits } from '../../../shared-core/plan/index.ts';
import { say, sayDay } from '../../../shared-core/words/index.ts';

export type Tone = 'quiet' | 'look' | 'stop';

/** How something that came stands to what was ordered: a sign, words, and whether it wants a look or stops the work. */
export interface Finding {
  readonly sign: string;
  readonly words: string;
  readonly tone: Tone;
}

const RANK: Readonly<Record<Tone, number>> = { stop: 0, look: 1, quiet: 2 };

/** What stops the work comes before what wants a look, and that before what is quiet. */
export function rankOf({ tone }: Finding): number {
  return RANK[tone];
}

/** A sign with its figure, such as −3 and +2. */
export const less = (rolls: number): string => `−${rolls}`;
export const more = (rolls: number): string => `+${rolls}`;

/**
 * What a package is, in a few words.
 *
 * Example: '≠ run 2215 was not ordered', '−3 2 damaged, 1 missing', '= as ordered'.
 */
export function sayPackage(house: House, ledger: Ledger, checked: CheckedDelivery): Finding {
  const { delivery, verdict, sound, gone } = checked;
  const { damaged, short, run } = delivery;
  if (sound > 0 && gone >= sound) return quiet(say`gone back`);
  if (verdict === 'sent-back') return { sign: '≠', words: say`to go back`, tone: 'look' };
  if (verdict === 'wrong-pattern') return { sign: '≠', words: sayWrongPattern(house, checked), tone: 'stop' };
  if (verdict === 'run-not-ordered') return { sign: '≠', words: say`run ${run} was not ordered`, tone: 'stop' };
  const wentBack = gone > 0 ? `; ${say`${gone} gone back`}` : '';
  if (damaged + short > 0) return { sign: less(damaged + short), words: `${sayLost(checked)}${wentBack}`, tone: 'look' };
  const over = Math.max(0, checked.tooMany - gone);
  if (over > 0) return { sign: more(over), words: `${say`more than ordered`}${wentBack}`, tone: 'look' };
  if (ledger.lines.length === 0) return quiet(`${say`counts for its run`}${wentBack}`);
  return quiet(`${isOrdered(ledger, run) ? say`as ordered` : say`kept`}${wentBack}`);
}

/**
 * What a package that was just recorded means, as a sentence.
 *
 * Example: 10 ordered and 10 on the label, 2 damaged and 1 missing: '10 rolls of K-2041, run 2214. 2 damaged, 1 missing:
 * 3 still to come.'
 */
export function sayReceived(house: House, ledger: Ledger, checked: CheckedDelivery): Finding {
  const { delivery, verdict, tooMany } = checked;
  const { run, damaged, short } = delivery;
  const finding = sayPackage(house, ledger, checked);
  const saying = (words: string): Finding => ({ ...finding, words: `${sayPacked(house, delivery)}. ${words}` });
  if (verdict === 'wrong-pattern') return saying(say`${capital(finding.words)}: it counts for no room. Send it back, or correct its label below.`);
  if (verdict === 'run-not-ordered') return saying(say`${capital(finding.words)}: keep it or send it back.`);
  const lost = damaged + short > 0 ? sayLost(checked) : null;
  if (ledger.lines.length === 0) return saying(`${lost ? `${capital(lost)}. ` : ''}${say`Nothing of it was ordered; it counts for its run.`}`);
  const toCome = ledger.lines.reduce((sum, line) => sum + (line.run === run ? line.outstanding : 0), 0);
  const rest = toCome > 0 ? say`${toCome} still to come` : null;
  if (tooMany > 0) return saying(`${lost ? `${capital(lost)}; ` : ''}${say`${tooMany} more than ordered`}.`);
  if (lost) return saying(`${capital(lost)}: ${rest ?? say`none still to come`}.`);
  return saying(rest ? say`As ordered; ${rest}.` : say`As ordered.`);
}

/** Example: '1 package', '4 packages'. */
export function sayPackages(count: number): string {
  return count === 1 ? say`${count} package` : say`${count} packages`;
}

/** A package as one speaks of it: '3 rolls of K-2041, run 2215, of 5 Mar 2026'. */
export function namePackage(house: House, { delivery }: CheckedDelivery): string {
  const packed = sayPacked(house, delivery);
  return delivery.received === undefined ? packed : say`${packed}, of ${sayDay(delivery.received)}`;
}

function sayPacked(house: House, { covering, rolls, patternNumber, run }: Delivery): string {
  return say`${sayUnits(house, covering, rolls)} of ${patternNumber}, run ${run}`;
}

export function sayWrongPattern(house: House, { delivery }: CheckedDelivery): string {
  return say`pattern ${delivery.patternNumber} came for ${nameCovering(house, delivery.covering)}`;
}

export function isOrdered(ledger: Ledger, run: string): boolean {
  return ledger.lines.some((line) => line.run === run);
}

export function quiet(words: string): Finding {
  return { sign: '=', words, tone: 'quiet' };
}

function sayLost({ delivery: { damaged, short } }: CheckedDelivery): string {
  return [damaged > 0 && say`${damaged} damaged`, short > 0 && say`${short} missing`].filter(Boolean).join(', ');
}

import { isSaid } from '../../../shared-core/base/index.ts';
import { type House, nameCovering } from '../../../shared-core/house/index.ts';
import type { CheckedDelivery, Ledger, LineProgress } from '../../../shared-core/ordering/index.ts';
import { sayUnits, type WorkingLine } from '../../../shared-core/plan/index.ts';
import { say, sayDay } from '../../../shared-core/words/index.ts';
import { compare } from '../../parts/found.ts';
import { type Finding, isOrdered, less, more, quiet, rankOf, sayPackage } from './say-package.ts';

/** A count of rolls and how it was reached; no lines where there was nothing to add up. */
export interface Figure {
  readonly rolls: number;
  readonly lines: readonly WorkingLine[];
}

/** What was ordered and came of one run of a pattern number, as it stands on the labels. */
export interface RunRow {
  readonly key: string;
  readonly label: string;
  /** Null where an order asks for any one run and none has come. */
  readonly run: string | null;
  readonly ordered: Figure;
  readonly sound: Figure;
  readonly damaged: Figure;
  readonly missing: Figure;
  /** Rolls of another run that are kept in the place of this one's. */
  readonly ofAnotherRun: Figure;
  readonly toCome: Figure;
  readonly findings: readonly Finding[];
}

/** A run as the table names it. */
export function sayRunNumber(run: string | null): string {
  return run === null ? say`any one run` : say`run ${run}`;
}

/** The runs of one covering. */
export interface PatternRows {
  readonly covering: string;
  readonly name: string;
  readonly rows: readonly RunRow[];
}

export type RowOrder = 'pattern' | 'to-come' | 'state';

/** What was ordered against what came, by pattern number and run number; nothing of a covering of which neither is known. */
export function rowsAgainstOrder(house: House, ledgers: readonly Ledger[]): readonly PatternRows[] {
  return ledgers.flatMap((ledger): readonly PatternRows[] => {
    const name = nameCovering(house, ledger.covering);
    const isRightLabel = ({ delivery, verdict }: CheckedDelivery) => verdict !== 'wrong-pattern' && (delivery.patternNumber === name || !isPatternNumber(house, ledger.covering));
    const labels = ledger.deliveries.map((checked) => ({ label: isRightLabel(checked) ? name : checked.delivery.patternNumber, run: checked.delivery.run as string | null, checked }));
    const asked = ledger.lines.map(({ run }) => ({ label: name, run }));
    const keys = new Map([...asked, ...labels].map(({ label, run }) => [JSON.stringify([ledger.covering, label, run]), { label, run }]));
    const rows = [...keys].map(([key, { label, run }]) => {
      const came = labels.filter((one) => one.label === label && one.run === run).map(({ checked }) => checked);
      const lines = label === name ? ledger.lines.filter((line) => line.run === run) : [];
      return rowOf(house, ledger, key, label, run, lines, came);
    });
    return rows.length === 0 ? [] : [{ covering: ledger.covering, name, rows }];
  });
}

function isPatternNumber(house: House, covering: string): boolean {
  return house.coverings.some(({ id, patternNumber }) => id === covering && patternNumber !== undefined);
}

function rowOf(house: House, ledger: Ledger, key: string, label: string, run: string | null, lines: readonly LineProgress[], came: readonly CheckedDelivery[]): RunRow {
  const instead = sum(lines, (line) => line.instead);
  return {
    key,
    label,
    run,
    ordered: added(lines.map((line) => [line.line.rolls, sayOrdered(house, ledger, line)])),
    sound: added(came.map((checked) => [checked.sound, sayCame(checked)])),
    damaged: added(came.filter(({ delivery }) => delivery.damaged > 0).map(({ index, delivery }) => [delivery.damaged, say`Package ${index + 1}: ${delivery.damaged} damaged.`])),
    missing: added(came.filter(({ delivery }) => delivery.short > 0).map(({ index, delivery }) => [delivery.short, say`Package ${index + 1}: ${delivery.short} missing.`])),
    ofAnotherRun: { rolls: instead, lines: instead === 0 ? [] : [{ text: say`${sayUnits(house, ledger.covering, instead)} kept of ${otherRuns(ledger)}.`, rule: say`a run that is kept takes the place of what is still to come` }] },
    toCome: toCome(lines),
    findings: findingsOf(house, ledger, lines, came),
  };
}

/** Counts one below the other, and their sum where there are several. */
function added(parts: readonly (readonly [rolls: number, text: string])[]): Figure {
  const rolls = sum(parts, ([count]) => count);
  const total = parts.length > 1 ? [{ text: `${parts.map(([count]) => count).join(' + ')} = ${rolls}.` }] : [];
  return { rolls, lines: [...parts.map(([, text]) => ({ text })), ...total] };
}

function sayOrdered(house: House, { covering }: Ledger, { order, line }: LineProgress): string {
  const rolls = sayUnits(house, covering, line.rolls);
  const day = sayDay(house.orders.find(({ id }) => id === order)?.placed ?? '');
  return line.closed ? say`${rolls} in order ${order} of ${day}, closed: nothing more of it will come.` : say`${rolls} in order ${order} of ${day}.`;
}

function sayCame({ index, delivery: { received, rolls, damaged, short }, sound }: CheckedDelivery): string {
  const name = received === undefined ? say`Package ${index + 1}` : say`Package ${index + 1} of ${sayDay(received)}`;
  return say`${name}: ${rolls} on the label - ${damaged} damaged - ${short} missing = ${sound}.`;
}

function otherRuns(ledger: Ledger): string {
  const runs = [...new Set(ledger.deliveries.filter(({ verdict, delivery }) => verdict === 'counts' && !isOrdered(ledger, delivery.run)).map(({ delivery }) => delivery.run))];
  return runs.length === 1 ? say`run ${runs[0]!}` : say`runs ${runs.join(', ')}`;
}

function toCome(lines: readonly LineProgress[]): Figure {
  if (lines.length === 0) return { rolls: 0, lines: [] };
  const texts = lines.map(({ line, received, instead, notComing, outstanding }): readonly [number, string] => [
    outstanding,
    say`${line.rolls} ordered - ${received} come sound - ${instead} of another run${notComing > 0 ? say` - ${notComing} that will not come` : ''} = ${outstanding}.`,
  ]);
  const { rolls, lines: said } = added(texts);
  return { rolls, lines: [...said.slice(0, -1), { ...said.at(-1)!, rule: say`damaged and missing rolls stay still to come` }] };
}

function findingsOf(house: House, ledger: Ledger, lines: readonly LineProgress[], came: readonly CheckedDelivery[]): readonly Finding[] {
  const found: Finding[] = [];
  const outstanding = sum(lines, (line) => line.outstanding);
  const over = sum(came, ({ verdict, tooMany, gone }) => (verdict === 'counts' ? Math.max(0, tooMany - gone) : 0));
  const notComing = sum(lines, (line) => line.notComing);
  if (outstanding > 0) found.push({ sign: less(outstanding), words: say`${outstanding} still to come`, tone: 'look' });
  if (notComing > 0) found.push({ sign: less(notComing), words: say`${notComing} will not come`, tone: 'quiet' });
  if (over > 0) found.push({ sign: more(over), words: say`${over} more than ordered`, tone: 'look' });
  // What counts is in the figures above; of what does not, each kind once.
  const others = came.filter(({ verdict }) => verdict !== 'counts').map((checked) => sayPackage(house, ledger, checked));
  for (const other of others) if (!found.some(({ words }) => words === other.words)) found.push(other);
  if (found.length > 0) return found;
  if (ledger.lines.length === 0) return [quiet(say`nothing was ordered; it counts`)];
  if (lines.length === 0) return [quiet(say`kept`)];
  const instead = sum(lines, (line) => line.instead);
  return [quiet(instead > 0 ? say`as many as ordered, ${instead} of another run` : say`as ordered`)];
}

/**
 * The rows of which every word typed is said, patterns and their runs each in the order that was chosen.
 *
 * 'pattern' keeps a pattern's runs as the orders name them, 'to-come' has the most first, 'state' what stops the work.
 */
export function inOrder(patterns: readonly PatternRows[], order: RowOrder, isBackwards: boolean, filter: string): readonly PatternRows[] {
  const holds = (name: string, { label, run, findings }: RunRow) => isSaid(filter, [name, label, sayRunNumber(run), ...findings.map(({ words }) => words)]);
  const found = patterns.map((pattern) => ({ ...pattern, rows: pattern.rows.filter((row) => holds(pattern.name, row)) })).filter(({ rows }) => rows.length > 0);
  const way = isBackwards ? -1 : 1;
  const figure = (row: RunRow) => (order === 'to-come' ? -row.toCome.rolls : Math.min(...row.findings.map(rankOf)));
  if (order === 'pattern') return found.toSorted((one, other) => way * compare(one.name, other.name));
  const sorted = found.map((pattern) => ({ ...pattern, rows: pattern.rows.toSorted((one, other) => way * (figure(one) - figure(other))) }));
  return sorted.toSorted((one, other) => way * (figure(one.rows[0]!) - figure(other.rows[0]!)));
}

function sum<Item>(items: readonly Item[], figure: (item: Item) => number): number {
  return items.reduce((total, item) => total + figure(item), 0);
}

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { applyEdit, decodeHouse, type Edit, encodeHouse, type House } from '../../shared-core/house/index.ts';
import { bySupplier, type WayOut } from '../../shared-core/ordering/index.ts';
import { type HousePlan, planHouse } from '../../shared-core/plan/index.ts';
import { type Money, printLength, printMoney } from '../../shared-core/units/index.ts';
import { documentOf, type Loose } from '../builders.ts';

const FOLDER = new URL('./order-life/', import.meta.url);

interface Case {
  readonly title: string;
  /** The arithmetic by which the expected values were found, without the program. */
  readonly reasoning: readonly string[];
  readonly source: string;
  readonly house: Loose;
  /** The house as it is, and as it becomes edit by edit. */
  readonly steps: readonly { readonly title: string; readonly edits?: readonly Edit[]; readonly expected: Loose }[];
}

const edited = (house: House, edits: readonly Edit[]): House =>
  edits.reduce((before, edit) => {
    const outcome = applyEdit(before, edit);
    if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
    return outcome.value;
  }, house);

/** What is compared of a plan, as plain JSON: money and lengths as texts, what hangs from each run by its room. */
function readingOf(house: House, plan: HousePlan): Loose {
  const print = (money: Money | null) => (money === null ? null : printMoney(money, house.currency));
  const hung = plan.cuts.map(({ run, rolls }) => ({ run, byRoom: Map.groupBy(rolls.flatMap(({ cuts }) => cuts.map(({ placed }) => placed)), ({ room }) => room) }));
  return {
    facts: encodeHouse(house),
    order: plan.order.map((line) => ({ ...line, price: print(line.price) })),
    runs: Object.fromEntries(plan.runs.map((own) => [own.covering, own])),
    pieces: hung.map(({ run, byRoom }) => ({ run, ...Object.fromEntries([...byRoom].map(([room, placed]) => [room, placed.map(({ piece }) => piece.label).sort()])) })),
    strips: hung.map(({ run, byRoom }) => ({ run, ...Object.fromEntries([...byRoom].map(([room, placed]) => [room, placed.length])) })),
    readiness: plan.readiness,
    left: plan.left.map((left) => ({ ...left, lengths: left.lengths.map(({ length, count }) => ({ length: printLength(length, house.lengths), count })) })),
    suppliers: bySupplier(house, plan.order).map(({ supplier, net, tax, gross }) => ({ supplier, net: print(net), tax: print(tax), gross: print(gross) })),
    problems: plan.problems.map(({ message }) => message),
  };
}

/** Facts that follow a way out; null where the house has no fact for it (a run on its way has no number yet). */
function taken(house: House, covering: string, way: WayOut, rolls: number): readonly Edit[] | null {
  const document = encodeHouse(house);
  const runChoices = (document.runChoices ?? []).map((choice) => ({ ...choice }));
  const offered = (run: string): Edit => ({ kind: 'set-offers', offers: [...(document.offers ?? []).map((offer) => ({ ...offer })), { covering, run, rolls }] });
  switch (way.kind) {
    case 'untie':
      return [{ kind: 'set-matching', matching: house.matching.filter(({ rooms }) => !rooms.some((room) => way.rooms.includes(room))).map((one) => ({ ...one, rooms: [...one.rooms] })) }];
    case 'choose-otherwise':
      return [{ kind: 'set-run-choices', runChoices: runChoices.filter(({ room }) => !way.rooms.includes(room)) }];
    case 'change-at-corner': {
      const band = house.rooms.find(({ id }) => id === way.room)!.bands.find((one) => one.covering === covering)!;
      return [{ kind: 'change-band', room: way.room, band: band.id, facts: { runMayChange: [...way.walls] } }];
    }
    case 'ask-for-more':
      return way.run === null ? null : [offered(way.run)];
    case 'another-run':
      return [offered('a further run')];
  }
}

const isShort = (plan: HousePlan, covering: string) => plan.order.some((line) => line.covering === covering && line.shortfall > 0);

const files = readdirSync(FOLDER).sort();

describe.each(files)('%s', (file) => {
  const { title, reasoning, source, house: document, steps } = JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as Case;
  const decoded = decodeHouse(documentOf(document));
  if (!decoded.ok) throw new Error(decoded.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
  let before = decoded.value;
  const houses = steps.map(({ edits = [] }) => (before = edited(before, edits)));

  test('has its arithmetic in words, and where it is from', () => {
    expect(reasoning.length).toBeGreaterThan(1);
    expect(source).not.toBe('');
    expect(steps.length).toBeGreaterThan(1);
  });

  test.each(steps.map((step, index) => [step.title, step, houses[index]!] as const))(`${title}: %s`, (_title, { expected }, house) => {
    const plan = planHouse(house);
    const { says = [], saysNot = [], ...figures } = expected;
    expect(Object.keys(figures).length).toBeGreaterThan(0);
    expect(readingOf(house, plan)).toMatchObject(figures);
    const messages = [...plan.problems, ...plan.warnings].map(({ message }) => message);
    for (const words of says) expect(messages).toContainEqual(expect.stringContaining(words));
    for (const words of saysNot) expect(messages).not.toContainEqual(expect.stringContaining(words));
  });

  test.each(steps.map(({ title: step }, index) => [step, houses[index]!] as const))('%s: each way out lets every room hang, and one roll fewer does not', (_title, house) => {
    for (const { covering, waysOut } of planHouse(house).runs) {
      if (waysOut.length > 0) expect(isShort(planHouse(house), covering)).toBe(true);
      for (const way of waysOut) {
        const rolls = 'rolls' in way ? way.rolls : 0;
        const edits = taken(house, covering, way, rolls);
        if (!edits) continue;
        const after = planHouse(edited(house, edits));
        expect(isShort(after, covering), JSON.stringify(way)).toBe(false);
        if (way.kind === 'another-run') expect(after.order.find(({ run }) => run === 'a further run')?.rooms, JSON.stringify(way)).toEqual(way.rooms);
        if (rolls > 0) expect(isShort(planHouse(edited(house, taken(house, covering, way, rolls - 1)!)), covering), `one fewer: ${JSON.stringify(way)}`).toBe(true);
      }
    }
  });
});

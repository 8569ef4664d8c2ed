import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkCuts, planCuts } from '../../shared-core/cutting/index.ts';
import type { House } from '../../shared-core/house/index.ts';
import { isRollGoods, longestPiece, rollOf } from '../../shared-core/ordering/index.ts';
import { type HousePlan, piecesOf, planHouse } from '../../shared-core/plan/index.ts';
import { modulo } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room } from '../builders.ts';
import { shareOf } from '../share-of.ts';

const PRICES: Readonly<Record<number, number>> = { 1: 45_00, 2: 84_00, 3: 120_00 };

const pattern = fc
  .record({
    kind: fc.constantFrom('wallcovering', 'wallcovering', 'border', 'lining'),
    width: fc.integer({ min: 18, max: 30 }),
    rollLength: fc.integer({ min: 200, max: 420 }),
    repeat: fc.integer({ min: 4, max: 30 }),
    match: fc.constantFrom('free', 'straight', '1/2', '1/3', '2/5'),
    rollStart: fc.constantFrom('anywhere', 'at-repeat'),
    across: fc.boolean(),
    sizes: fc.constantFrom([1], [2], [2, 1], [3, 2]),
    spareRolls: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ kind, width, rollLength, repeat, match, rollStart, across, sizes, spareRolls }): Loose => {
    const facts = { id: 'paper', kind, patternNumber: 'Q-7', width: `${width} in`, rollLength: `${rollLength} in`, spareRolls, soldIn: sizes.map((rolls) => ({ rolls, price: `${PRICES[rolls]! / 100}.00` })) };
    if (kind === 'lining') return { ...facts, direction: across ? 'across' : 'up-and-down' };
    if (kind === 'border') return { ...facts, width: '6 in', repeat: `${repeat} in`, rollStart };
    return { ...facts, repeat: `${repeat} in`, rollStart, ...(match.includes('/') ? { match: 'drop', dropBy: match } : { match }) };
  });

const rooms = fc.array(
  fc.record({ across: fc.integer({ min: 50, max: 150 }), deep: fc.integer({ min: 50, max: 150 }), height: fc.integer({ min: 80, max: 110 }), door: fc.integer({ min: 0, max: 18 }), isOpen: fc.boolean() }),
  { minLength: 1, maxLength: 4 },
);

const quantities = fc.array(fc.record({ run: fc.constantFrom('1', '2'), rolls: fc.integer({ min: 0, max: 12 }) }), { maxLength: 2 });

const house = fc
  .record({ pattern, rooms, pooling: fc.constantFrom('house', 'room'), stock: quantities, offers: quantities, deliveries: fc.array(fc.record({ run: fc.constantFrom('1', '3'), rolls: fc.integer({ min: 2, max: 8 }), damaged: fc.integer({ min: 0, max: 2 }), patternNumber: fc.constantFrom('Q-7', 'Q-1') }), { maxLength: 2 }) })
  .map(({ pattern: covering, rooms: all, pooling, ...quantity }) => {
    const isBorder = covering.kind === 'border';
    const facts = all.map(({ across, deep, height, door, isOpen }, index) => {
      const openings = [{ id: 'door', kind: 'door', entrance: true, from: `${door} in`, width: '31 in', height: '78 in' }];
      const band = { id: 'main', covering: 'paper', walls: isOpen ? ['A', 'B'] : ['A', 'B', 'C', 'D'], ...(isBorder ? { from: '30 in', to: '36 in' } : {}) };
      return room([across, deep, across, deep].map((length) => `${length} in`), { id: `r${index}`, name: `Room ${index}`, bands: [band] }, [{ openings, height: `${height} in` }, ...[1, 2, 3].map(() => ({ height: `${height} in` }))]);
    });
    const of = (list: readonly Loose[]) => list.map((entry) => ({ covering: 'paper', ...entry }));
    return houseOf(documentOf({ rules: { pooling }, coverings: [covering], rooms: facts, stock: of(quantity.stock), offers: of(quantity.offers), deliveries: of(quantity.deliveries) }));
  });

/** A loaded machine takes longer over many plans than a test is given. */
const SLOW = 60_000;

const check = (property: (plan: HousePlan, house: House) => void, numRuns = shareOf(150, 12)) => fc.assert(fc.property(house, (facts) => property(planHouse(facts), facts)), { numRuns });

function goodsOf({ coverings: [covering] }: House) {
  if (!covering || !isRollGoods(covering)) throw new Error('goods in rolls');
  return covering;
}

test('every piece of every room is cut once, but for those that no roll gives, which are problems', () => {
  check((plan, facts) => {
    const longest = longestPiece(goodsOf(facts));
    const wanted = plan.rooms.flatMap(({ id, bands }) => bands.flatMap((band) => piecesOf(band).map((piece) => ({ name: `${id} ${band.id} ${piece.label}`, piece }))));
    const cut = plan.cuts.flatMap(({ rolls }) => rolls.flatMap(({ cuts }) => cuts.map(({ placed }) => `${placed.room} ${placed.band} ${placed.piece.label}`)));
    const { rollStart, rollLength } = rollOf(goodsOf(facts));
    // A roll that begins at its repeat gives a piece only from the piece's own place on.
    const isPossible = ({ piece }: (typeof wanted)[number]) => piece.length + (rollStart === 'at-repeat' ? piece.phase : 0) <= (rollStart === 'at-repeat' ? rollLength : longest);
    expect(new Set(wanted.map(({ name }) => name)).size).toBe(wanted.length);
    expect(cut.toSorted()).toEqual(wanted.filter(isPossible).map(({ name }) => name).toSorted());
    expect(plan.problems.filter(({ place }) => place === 'coverings')).toHaveLength(wanted.filter((one) => !isPossible(one)).length);
  });
}, SLOW);

test('no room is cut from two runs, and the lists number their rolls from 1', () => {
  check((plan) => {
    for (const line of plan.order) {
      const lists = plan.cuts.filter(({ run }) => run === line.run);
      expect(lists).toHaveLength(1);
      expect(lists[0]!.rolls.map(({ number }) => number)).toEqual(Array.from({ length: line.rollsNeeded }, (_, index) => index + 1));
      for (const { cuts } of lists[0]!.rolls) for (const { placed } of cuts) expect(line.rooms).toContain(placed.room);
    }
    const hung = plan.order.flatMap(({ rooms: ids }) => ids);
    expect(hung.toSorted()).toEqual(plan.rooms.map(({ id }) => id));
  });
}, SLOW);

test('each roll gives its pieces in order, at their place in the pattern, wherever it begins', () => {
  check((plan, facts) => {
    const { repeat, rollStart, rollLength } = rollOf(goodsOf(facts));
    const starts = rollStart === 'at-repeat' || repeat === 0 ? [0] : Array.from({ length: 41 }, (_, index) => Math.floor((repeat * index) / 41)).concat(repeat - 1);
    for (const { cuts } of plan.cuts.flatMap(({ rolls }) => rolls)) {
      for (const start of starts) {
        // Where the pattern of the roll's first cut comes first; a free match and a roll at its repeat are cut as listed.
        const first = rollStart === 'anywhere' && repeat > 0 ? modulo(cuts[0]!.placed.piece.phase - start, repeat) : 0;
        let end = 0;
        for (const { placed, from } of cuts) {
          expect(first + from).toBeGreaterThanOrEqual(end);
          if (repeat > 0) expect(modulo(start + first + from, repeat)).toBe(placed.piece.phase);
          end = first + from + placed.piece.length;
        }
        expect(end).toBeLessThanOrEqual(rollLength);
      }
    }
  });
}, SLOW);

test("the figures of a line follow from each other and from the run's stock and offer", () => {
  check((plan, facts) => {
    const goods = goodsOf(facts);
    const isKnown = facts.stock.length + facts.offers.length + facts.deliveries.filter(({ patternNumber }) => patternNumber === 'Q-7').length > 0;
    for (const line of plan.order) {
      const count = (list: readonly { readonly run: string; readonly rolls: number }[]) => list.filter(({ run }) => run === line.run).reduce((sum, { rolls }) => sum + rolls, 0);
      const sound = facts.deliveries.filter(({ patternNumber }) => patternNumber === 'Q-7').map(({ run, rolls, damaged }) => ({ run, rolls: rolls - damaged }));
      expect(line.inHand).toBe(count(facts.stock) + count(sound));
      const wanted = Math.max(0, line.rollsNeeded + line.spare - line.inHand);
      expect(line.toBuy).toBe(line.packs.reduce((sum, { rolls, count: packs }) => sum + rolls * packs, 0));
      expect(line.price).toBe(line.packs.reduce((sum, { rolls, count: packs }) => sum + PRICES[rolls]! * packs, 0));
      expect(line.spareLacking).toBe(Math.max(0, wanted - line.toBuy));
      expect(line.spare).toBe(goods.spareRolls);
      expect(line.lowerBound).toBeLessThanOrEqual(line.rollsNeeded);
      if (line.isProvenMinimum) expect(line.lowerBound).toBe(line.rollsNeeded);
      if (facts.rules.pooling === 'room') expect(line.rollsNeeded).toBe(line.rollsByRoom);
      else expect(line.rollsNeeded).toBeLessThanOrEqual(line.rollsByRoom);
      if (line.run === null) {
        expect(line.shortfall).toBe(isKnown ? line.rollsNeeded : 0);
        expect(line.toBuy).toBeGreaterThanOrEqual(wanted);
        continue;
      }
      expect(line.shortfall).toBe(0);
      expect(line.toBuy).toBeLessThanOrEqual(count(facts.offers));
      // What is lacking is of the spare alone; every room that stands in a run's line can be hung from it.
      expect(line.spareLacking).toBeLessThanOrEqual(line.spare);
      expect(line.inHand + line.toBuy).toBeGreaterThanOrEqual(line.rollsNeeded);
    }
  }, 300);
}, SLOW);

test('every cutting behind a line holds against a check that shares nothing with what found it', () => {
  check((plan) => {
    for (const { problems, rollsNeeded } of plan.order) {
      const plans = problems.map((problem) => ({ problem, cutting: planCuts(problem) }));
      for (const { problem, cutting } of plans) expect(checkCuts(problem, cutting)).toEqual([]);
      expect(plans.reduce((sum, { cutting }) => sum + cutting.rollCount, 0)).toBe(rollsNeeded);
    }
  }, 60);
}, SLOW);

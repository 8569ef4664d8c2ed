import { assert, present } from '../base/index.ts';
import { explainCount } from '../cutting/index.ts';
import type { House, Mural } from '../house/index.ts';
import { asCut, isInSequence, isRollGoods, longestPiece, type OrderLine, type RollGoods, spareRule } from '../ordering/index.ts';
import { type Length, lengthOf, type Money, parseMoney, printMoney, showLength, showMoney } from '../units/index.ts';
import { say, sayDecimal } from '../words/index.ts';
import { sayRolls, sayUnits } from './say-units.ts';

/** One line of arithmetic, with the rule it follows where there is one. */
export interface WorkingLine {
  readonly text: string;
  readonly rule?: string;
}

export interface OrderWorking {
  readonly needed: readonly WorkingLine[];
  readonly toBuy: readonly WorkingLine[];
  readonly price: readonly WorkingLine[];
}

/**
 * How the figures of an order line were reached, in lines of arithmetic.
 *
 * Example: 9 needed, 1 spare, 4 in hand reads '9 needed + 1 spare - 4 in hand = 6'.
 */
export function explainOrderLine(house: House, line: OrderLine): OrderWorking {
  const found = house.coverings.find(({ id }) => id === line.covering);
  const covering = found && asCut(found);
  assert(covering && (isRollGoods(covering) || covering.kind === 'mural'), 'an order line is of a mural or of a covering in rolls');
  const needed = covering.kind === 'mural' ? [{ text: say`${sayUnits(house, covering.id, line.rollsNeeded)}: one for each place it hangs.` }] : explainNeeded(house, line, covering);
  return { needed, toBuy: explainToBuy(house, line, covering), price: explainPrice(house, line, covering) };
}

function explainNeeded(house: House, line: OrderLine, covering: RollGoods): readonly WorkingLine[] {
  const show = (length: Length) => showLength(length, house.lengths);
  const pieces = line.problems.flatMap((problem) => problem.pieces);
  const counts = new Map<number, number>();
  for (const { length, count } of pieces) counts.set(length, (counts.get(length) ?? 0) + count);
  const byLength = [...counts].sort(([one], [other]) => other - one);
  const listed = byLength.slice(0, 8).map(([length, count]) => `${count} × ${show(lengthOf(length))}`);
  const all = pieces.reduce((sum, { count }) => sum + count, 0);
  const safe = longestPiece(covering);
  const lines: WorkingLine[] = [
    { text: say`${all} pieces: ${listed.join(', ')}${byLength.length > 8 ? say` and ${byLength.length - 8} other lengths` : ''}.`, rule: say`trims of ${house.rules.trim.typed} at top and bottom; common practice, no source` },
  ];
  if ('repeat' in covering && safe < covering.rollLength.length) {
    lines.push({ text: say`A roll of ${show(covering.rollLength.length)} may begin anywhere in the repeat of ${covering.repeat.typed}: from its first cut it surely gives ${show(safe)}.`, rule: say`worst case over every place in the pattern` });
  }
  const [problem] = line.problems;
  const [type] = problem?.pieces ?? [];
  if (isInSequence(covering)) {
    return [...lines, { text: say`Cut in hanging order, roll after roll: ${sayRolls(line.rollsNeeded)}. No other order is allowed, and in this one no fewer do.`, rule: say`strips in the sequence of the roll, as the covering asks` }];
  }
  // A roll that begins at its repeat loses what lies above the first piece's place in the pattern.
  const lost = problem?.rollStart === 'at-repeat' ? (type?.phase ?? 0) : 0;
  if (problem && type && line.problems.length === 1 && problem.pieces.length === 1 && lost < problem.rollLength) {
    const explained = explainCount({ rollLength: problem.rollLength - lost, repeat: problem.repeat, length: type.length, count: type.count });
    const perRoll = problem.rollStart === 'anywhere' ? explained.safe.perRoll : explained.best.perRoll;
    lines.push({ text: say`A piece every ${show(lengthOf(explained.spacing))} keeps the match: ${perRoll} to a roll.` });
  }
  const isCutApart = line.problems.length > 1;
  const how = isCutApart ? say`Each room from rolls of its own: ${sayRolls(line.rollsNeeded)}` : say`Cut together: ${sayRolls(line.rollsNeeded)}`;
  const isApartByChoice = isCutApart && house.rules.pooling === 'room';
  lines.push({
    text: line.isProvenMinimum
      ? isApartByChoice
        ? say`${how}. No way of cutting them so takes fewer.`
        : say`${how}. No way of cutting takes fewer.`
      : say`${how}; fewer than ${line.lowerBound} will not do. Whether ${sayBetween(line)} would do is not known.`,
    rule: say`a lower bound that holds however they are cut`,
  });
  if (line.rooms.length > 1 && !isCutApart) lines.push({ text: say`Room by room: ${sayRolls(line.rollsByRoom)}.` });
  return lines;
}

function explainToBuy(house: House, line: OrderLine, covering: RollGoods | Mural): readonly WorkingLine[] {
  if (line.running && 'soldBy' in covering && covering.soldBy) {
    const { length, minimum, pieceLength } = covering.soldBy;
    const show = (units: Length) => showLength(units, house.lengths);
    const isAllWanted = line.running.wanted === line.running.needed;
    return [
      { text: say`${show(line.running.needed)} in ${line.rollsNeeded} of the supplier's pieces of ${pieceLength.typed}.`, rule: say`one running length for each run, no roll count` },
      ...(isAllWanted ? [] : [{ text: say`Beyond what is there and ordered: ${show(line.running.wanted)}.` }]),
      { text: say`Sold by ${length.typed}${minimum ? say`, at least ${minimum.typed}` : ''}: ${line.running.units} × ${length.typed} = ${show(line.running.toBuy)}.`, rule: say`rounded up to whole sale units` },
    ];
  }
  const wanted = Math.max(0, line.rollsNeeded + line.spare - line.inHand - line.onOrder);
  const rule = spareRule(house, covering);
  const onOrder = line.onOrder > 0 ? say` - ${line.onOrder} on order` : '';
  const packs = line.packs.map(({ rolls: size, count }) => `${count} × ${size}`).join(' + ');
  const lines: WorkingLine[] = [
    { text: say`${line.rollsNeeded} needed + ${line.spare} spare - ${line.inHand} in hand${onOrder} = ${wanted}.`, rule: typeof rule === 'string' ? say`a spare of ${rule} of the rolls needed, rounded up` : say`one spare roll a pattern and run unless said otherwise; common practice, no source` },
  ];
  if (line.toBuy + line.spareLacking < wanted) lines.push({ text: say`${wanted - line.toBuy - line.spareLacking} of that not: what hangs already took no more than was there.` });
  if (packs) lines.push({ text: say`As sold: ${packs} = ${line.toBuy}${line.toBuy > wanted ? say`, ${line.toBuy - wanted} more than wanted` : ''}.`, rule: say`the mixture of sale units that costs least` });
  if (line.spareLacking > 0) lines.push({ text: say`The run's offer ends there: ${line.spareLacking} of the spare is lacking.` });
  if ('singlesPerRoll' in covering && covering.singlesPerRoll > 1) lines.push({ text: say`The supplier calls that ${line.toBuy * covering.singlesPerRoll} single rolls.` });
  return lines;
}

function explainPrice(house: House, line: OrderLine, covering: RollGoods | Mural): readonly WorkingLine[] {
  if (line.price === null) return [{ text: say`A sale unit of this covering has no price yet.` }];
  if (line.running && 'soldBy' in covering && covering.soldBy) {
    return [{ text: `${line.running.units} × ${covering.soldBy.price} = ${showMoney(line.price, house.currency)}.`, rule: say`prices as typed` }];
  }
  const terms = line.packs.map(({ unit, count }) => `${count} × ${sayDecimal(printMoney(priceOf(unit, house, covering), house.currency))}`);
  return [{ text: `${terms.join(' + ') || say`nothing to buy`} = ${showMoney(line.price, house.currency)}.`, rule: say`prices as typed` }];
}

function priceOf(unit: number, house: House, covering: RollGoods | Mural): Money {
  const parsed = parseMoney(present(covering.soldIn?.[unit]?.price, 'the price of a sale unit that is bought at one'), house.currency);
  assert(parsed.ok, 'a price that was read once is read again');
  return parsed.value;
}

/** The counts that are neither found nor ruled out. */
function sayBetween({ lowerBound, rollsNeeded }: OrderLine): string {
  return rollsNeeded === lowerBound + 1 ? String(lowerBound) : say`${lowerBound} to ${rollsNeeded - 1}`;
}

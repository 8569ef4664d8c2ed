import { type House, nameCovering } from '../../shared-core/house/index.ts';
import { type BandPlan, countStrips, type HousePlan, nameRoom, piecesOf, type RoomPlan, sayUnits } from '../../shared-core/plan/index.ts';
import { showLength, showMoney } from '../../shared-core/units/index.ts';
import { say } from '../../shared-core/words/index.ts';

/** The plan as plain text for a terminal: rooms, order, what can't be met and what is worth a look. */
export function planText(house: House, plan: HousePlan): string {
  const rooms = plan.rooms.flatMap((room) => [room.name, ...room.bands.map((band) => bandText(house, band)), ...ceilingText(house, room)]);
  return [...rooms, '', orderText(house, plan), ...notes(plan)].join('\n');
}

function bandText(house: House, band: BandPlan): string {
  const [first] = band.stretches;
  const hung = countHung(band.kind, countStrips(band));
  const pieces = piecesOf(band).length;
  const alone = sayUnits(house, band.covering, band.rollsAlone);
  const facts = [
    pieces === 1 ? say`${hung}, ${pieces} piece, ${alone} alone` : say`${hung}, ${pieces} pieces, ${alone} alone`,
    ...(first ? [say`from wall ${first.start.wall} at ${showLength(first.start.at, house.lengths)}`] : []),
    ...(first?.mismatch ? [say`${showLength(first.mismatch.amount, house.lengths)} mismatch at the kill point`] : []),
  ];
  return `  ${nameCovering(house, band.covering)}: ${facts.join(', ')}`;
}

function ceilingText(house: House, { ceiling }: RoomPlan): readonly string[] {
  if (!ceiling) return [];
  const { covering, strips, along, rollsAlone } = ceiling;
  return [say`  ${nameCovering(house, covering)} on the ceiling: ${countHung('strips', strips.length)} along wall ${along}, ${sayUnits(house, covering, rollsAlone)} alone`];
}

function countHung(kind: BandPlan['kind'], count: number): string {
  if (kind === 'strips') return count === 1 ? say`${count} strip` : say`${count} strips`;
  return count === 1 ? say`${count} length` : say`${count} lengths`;
}

/** The bulk order as plain text, grouped by pattern number and run number. */
export function orderText(house: House, plan: HousePlan): string {
  if (plan.order.length === 0) return say`Nothing to order yet: no room has a covering that comes in rolls.\n`;
  return `${plan.order.map((line) => lineText(house, line)).join('\n')}\n`;
}

function lineText(house: House, line: HousePlan['order'][number]): string {
  const covering = house.coverings.find(({ id }) => id === line.covering);
  const run = line.run !== null ? say`run ${line.run}` : line.shortfall > 0 ? say`no run has it` : say`run not known yet`;
  const toBuy = line.running ? showLength(line.running.toBuy, house.lengths) : sayUnits(house, line.covering, line.toBuy);
  const singles = covering && 'singlesPerRoll' in covering && covering.singlesPerRoll > 1 ? say` (= ${line.toBuy * covering.singlesPerRoll} singles)` : '';
  const packs = line.packs.map((pack) => `${pack.count} × ${pack.rolls}`).join(' + ');
  const price = line.price === null ? '' : `, ${showMoney(line.price, house.currency)}`;
  const rooms = line.rooms.map((room) => nameRoom(house, room)).join(', ');
  const proof = line.isProvenMinimum ? say`proved the fewest` : say`${line.lowerBound} at least`;
  const onOrder = line.onOrder > 0 ? say`, ${line.onOrder} on order` : '';
  return [
    say`${nameCovering(house, line.covering)}, ${run}: buy ${toBuy}${singles}${packs ? say` as ${packs}` : ''}${price}`,
    say`  for ${rooms}: ${line.rollsNeeded} needed (${proof}; ${line.rollsByRoom} room by room), ${line.spare} spare, ${line.inHand} in hand${onOrder}`,
  ].join('\n');
}

function notes(plan: HousePlan): readonly string[] {
  return [
    ...plan.problems.map(({ message }) => say`Can't be met: ${message}`),
    ...plan.warnings.map(({ message }) => say`Look: ${message}`),
    '',
  ];
}

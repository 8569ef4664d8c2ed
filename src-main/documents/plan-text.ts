import { type House, nameCovering } from '../../shared-core/house/index.ts';
import { countStrips, type HousePlan, nameRoom, piecesOf, sayUnits } from '../../shared-core/plan/index.ts';
import { showLength, showMoney } from '../../shared-core/units/index.ts';

/** The plan as plain text for a terminal: rooms, order, what can't be met and what is worth a look. */
export function planText(house: House, plan: HousePlan): string {
  const ceilingOf = ({ ceiling }: HousePlan['rooms'][number]) =>
    ceiling ? [`  ${nameCovering(house, ceiling.covering)} on the ceiling: ${ceiling.strips.length} strips along wall ${ceiling.along}, ${sayUnits(house, ceiling.covering, ceiling.rollsAlone)} alone`] : [];
  const rooms = plan.rooms.flatMap((room) => [
    room.name,
    ...room.bands.map((band) => {
      const [first] = band.stretches;
      const what = band.kind === 'strips' ? 'strips' : 'lengths';
      const start = first ? `from wall ${first.start.wall} at ${showLength(first.start.at, house.lengths)}` : '';
      const mismatch = first?.mismatch ? `, ${showLength(first.mismatch.amount, house.lengths)} mismatch at the kill point` : '';
      return `  ${nameCovering(house, band.covering)}: ${countStrips(band)} ${what}, ${piecesOf(band).length} pieces, ${sayUnits(house, band.covering, band.rollsAlone)} alone, ${start}${mismatch}`;
    }),
    ...ceilingOf(room),
  ]);
  return [...rooms, '', orderText(house, plan), ...notes(plan)].join('\n');
}

/** The bulk order as plain text, grouped by pattern number and run number. */
export function orderText(house: House, plan: HousePlan): string {
  if (plan.order.length === 0) return 'Nothing to order yet: no room has a covering that comes in rolls.\n';
  const lines = plan.order.map((line) => {
    const covering = house.coverings.find(({ id }) => id === line.covering);
    const singles = covering && 'singlesPerRoll' in covering && covering.singlesPerRoll > 1 ? ` (= ${line.toBuy * covering.singlesPerRoll} singles)` : '';
    const packs = line.packs.map((pack) => `${pack.count} × ${pack.rolls}`).join(' + ');
    return [
      `${nameCovering(house, line.covering)}, ${line.run !== null ? `run ${line.run}` : line.shortfall > 0 ? 'no run has it' : 'run not known yet'}: buy ${line.running ? showLength(line.running.toBuy, house.lengths) : sayUnits(house, line.covering, line.toBuy)}${singles}${packs ? ` as ${packs}` : ''}${line.price === null ? '' : `, ${showMoney(line.price, house.currency)}`}`,
      `  for ${line.rooms.map((room) => nameRoom(house, room)).join(', ')}: ${line.rollsNeeded} needed (${line.isProvenMinimum ? 'proved the fewest' : `${line.lowerBound} at least`}; ${line.rollsByRoom} room by room), ${line.spare} spare, ${line.inHand} in hand${line.onOrder > 0 ? `, ${line.onOrder} on order` : ''}`,
    ].join('\n');
  });
  return `${lines.join('\n')}\n`;
}

function notes(plan: HousePlan): readonly string[] {
  return [
    ...plan.problems.map(({ message }) => `Can't be met: ${message}`),
    ...plan.warnings.map(({ message }) => `Look: ${message}`),
    '',
  ];
}

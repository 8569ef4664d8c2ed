import { assert, present } from '../base/index.ts';
import { endsOf, type House, hungBand, moneyIn, OPENING_WORDS, type Paint } from '../house/index.ts';
import { drawOutline, goesAllRound } from '../survey/index.ts';
import { type Area, type Length, moneyOf, ratio, type Ratio, showArea, showLength, showMoney, showSpreadingRate, showSquareUnits, showVolume, wholeMillilitres } from '../units/index.ts';
import { DEDUCTION_RULES } from './opening-rules.ts';
import { coatFactors } from './paint-coats.ts';
import { type MeasuredOpening, type MeasuredSurface, paintedSurfaces } from './paint-surfaces.ts';
import { coatedArea, spreadingOf } from './plan-paint.ts';
import type { PaintedSurface, PaintNeed } from './prep-plan.ts';
import { say, sayDecimal } from '../words/index.ts';

/** One line of arithmetic, with the rule it follows and where that comes from, where there is one. */
export interface PaintLine {
  readonly words: string;
  readonly rule: string | null;
  readonly source: string | null;
}

const plain = (words: string): PaintLine => ({ words, rule: null, source: null });
const COMMON_PRACTICE = say`common practice, no source`;

/**
 * How the area of a painted surface was reckoned: its size, each opening by the rule of the house, what its coats take.
 *
 * Example: a wall of 4 m by 2.5 m with a door by NRM2 reads 'Wall A, 4 m long and 2.5 m high: 10.00 m².', 'Wall A, door d,
 * 1.60 m²: 1.60 m² taken off.', '10.00 m² - 1.60 m² = 8.40 m².' and '8.40 m² × 2 coats = 16.80 m².'
 */
export function explainPaintedSurface(house: House, need: PaintNeed, surface: PaintedSurface): readonly PaintLine[] {
  const measured = present(
    paintedSurfaces(house, need.covering).find(({ room, surface: of, band }) => room.id === surface.room && band === surface.band && JSON.stringify(of) === JSON.stringify(surface.surface)),
    'a surface of the house that is planned',
  );
  const show = (area: Area) => showArea(area, house.lengths);
  const { gross, deducted, reveals, area } = surface;
  const isChanged = deducted > 0 || reveals > 0;
  const terms = `${show(gross)}${deducted > 0 ? ` - ${show(deducted)}` : ''}${reveals > 0 ? ` + ${show(reveals)}` : ''}`;
  return [
    ...explainParts(house, measured),
    ...measured.openings.map((opening) => explainOpening(house, opening, measured)),
    ...(isChanged ? [plain(`${terms} = ${show(area)}.`)] : []),
    explainCoats(house, measured, surface),
  ];
}

const shownArea = (house: House, area: Ratio) => showSquareUnits(area, house.lengths);
/** What `coatedArea` gives is in hundredths. */
const shownCoated = (house: House, hundredths: bigint) => shownArea(house, ratio(hundredths, 100n));

function explainParts(house: House, measured: MeasuredSurface): readonly PaintLine[] {
  const { room, parts } = measured;
  const sayLength = (units: Length) => showLength(units, house.lengths);
  return parts.map(({ part, area, count }): PaintLine => {
    const size = shownArea(house, area);
    if (part === 'wall') return plain(sayWall(measured, sayLength, size));
    if (part === 'ceiling') {
      const rule = goesAllRound(room) ? say`the walls’ outline; slopes overhead are not reckoned` : say`the walls do not go all the way round: a straight line from the last to the first closes them`;
      return { words: say`The ceiling, as large as the floor: ${size}.`, rule, source: COMMON_PRACTICE };
    }
    if (part === 'skirting') {
      const { skirting } = present(room.woodwork, 'the woodwork of a room that has its skirting painted');
      return plain(say`The skirting, ${sayLength(drawOutline(room).perimeter)} long and ${sayLength(skirting.length)} high: ${size}.`);
    }
    return { words: count === 1 ? say`The face of the door: ${size}.` : say`The faces of ${count} doors: ${size}.`, rule: say`a face is as large as its opening; frames and edges are not reckoned apart`, source: COMMON_PRACTICE };
  });
}

function sayWall({ room, surface, band }: MeasuredSurface, sayLength: (units: Length) => string, size: string): string {
  const wall = present(room.walls.find(({ id }) => surface.kind === 'wall' && id === surface.wall), 'the wall of a surface');
  const { from, to } = hungBand(room, present(room.bands.find(({ id }) => id === band), 'the band of a surface'));
  const { left, right } = endsOf(wall.height);
  const long = sayLength(wall.length.length);
  const high = left === right ? say`${sayLength(left)} high` : say`${sayLength(left)} high at the left and ${sayLength(right)} at the right`;
  if (from === 'floor' && to === 'ceiling') return say`Wall ${wall.id}, ${long} long and ${high}: ${size}.`;
  return say`Wall ${wall.id}, ${long} long and ${high}, from ${from === 'floor' ? say`the floor` : sayLength(from.length)} to ${to === 'ceiling' ? say`the ceiling` : sayLength(to.length)}: ${size}.`;
}

function explainOpening(house: House, { wall, opening, size, deducted, reveals }: MeasuredOpening, { surface }: MeasuredSurface): PaintLine {
  const what = say`Wall ${wall}, ${OPENING_WORDS[opening.kind]} ${opening.id}, ${shownArea(house, size)}`;
  if (surface.kind === 'woodwork') return { words: say`${what} of it where the skirting would be: taken off.`, rule: say`there is no skirting where an opening goes down to the floor`, source: COMMON_PRACTICE };
  const { words: rule, source } = DEDUCTION_RULES[house.rules.openings];
  if (deducted.numerator === 0n) return { words: say`${what}: nothing taken off.`, rule, source };
  const off = shownArea(house, deducted);
  return { words: reveals.numerator > 0n ? say`${what}: ${off} taken off, ${shownArea(house, reveals)} of covered reveals added.` : say`${what}: ${off} taken off.`, rule, source };
}

function explainCoats(house: House, { ground }: MeasuredSurface, painted: PaintedSurface): PaintLine {
  const { area, coats, firstFactor, factor } = painted;
  const { words: rule, source } = coatFactors(ground);
  const shown = showArea(area, house.lengths);
  const all = shownCoated(house, coatedArea(painted));
  if (firstFactor === factor) {
    const times = factor === 100 ? '' : ` × ${factor} %`;
    return { words: coats === 1 ? say`${shown} × 1 coat${times} = ${all}.` : say`${shown} × ${coats} coats${times} = ${all}.`, rule, source };
  }
  if (coats === 1) return { words: say`${shown} × 1 coat${` × ${firstFactor} %`} = ${all}.`, rule, source };
  const later = (coats - 1) * factor;
  return { words: coats === 2 ? say`${shown} × (${firstFactor} % for the first coat + ${later} % for the other) = ${all}.` : say`${shown} × (${firstFactor} % for the first coat + ${later} % for the ${coats - 1} others) = ${all}.`, rule, source };
}

/**
 * What a paint covers and why: by its tin, else by its solids and film.
 *
 * Example: 'Of 65 % solids a film of 50 µm stays: 65 × 10 ÷ 50 = 13 m²/L.'
 */
export function explainSpreading(house: House, covering: string): PaintLine {
  const { spreadingRate, solids, film } = paintOf(house, covering);
  const rate = spreadingOf(paintOf(house, covering));
  if (rate === null) return plain(say`Neither a spreading rate nor solids and film are recorded: how much it takes is not known.`);
  if (spreadingRate !== undefined) return { words: say`By the tin: ${sayDecimal(spreadingRate)}.`, rule: say`what the tin says counts before solids and film`, source: COMMON_PRACTICE };
  const percent = sayDecimal(solids!.replace(',', '.'));
  return {
    words: say`Of ${percent} % solids a film of ${film!} µm stays: ${percent} × 10 ÷ ${film!} = ${showSpreadingRate(rate, 'metric')}.`,
    rule: say`in theory, with no loss: solids in percent × 10 ÷ dry film in µm`,
    source: say`ISO 23811 for the quantity; a table of it was read`,
  };
}

/**
 * How much of a paint the house takes: all coats of all surfaces by the spreading rate, rounded up once.
 *
 * Example: 'All coats of 5 surfaces: 100.00 m².' and '100.00 m² ÷ 12 m²/L = 8.33 L.'
 */
export function explainPaintNeed(house: House, need: PaintNeed): readonly PaintLine[] {
  const all = shownCoated(house, need.surfaces.reduce((sum, surface) => sum + coatedArea(surface), 0n));
  const once = shownArea(house, ratio(need.surfaces.reduce((sum, { area }) => sum + BigInt(area), 0n)));
  const count = need.surfaces.length;
  const lines = [
    plain(say`Painted: ${once}.`),
    plain(count === 1 ? say`All its coats: ${all}.` : say`All coats of ${count} surfaces: ${all}.`),
    explainSpreading(house, need.covering),
  ];
  if (need.spreading === null || need.millilitres === null) return lines;
  return [...lines, { words: `${all} ÷ ${showSpreadingRate(need.spreading, house.lengths)} = ${showVolume(need.millilitres, house.lengths)}.`, rule: say`pooled over all rooms, rounded up once to whole millilitres`, source: COMMON_PRACTICE }];
}

/**
 * Which tins are bought, what they leave over and what they cost.
 *
 * Example: '2 × 5 L = 10 L, 1.67 L over.' and '2 × 54.00 USD = 108.00 USD.'
 */
export function explainTins(house: House, need: PaintNeed): readonly PaintLine[] {
  if (need.millilitres === null) return [plain(say`How much it takes is not known, so no tins are chosen.`)];
  if (need.tins === null) return [plain(say`What it is sold in is not recorded.`)];
  if (need.tins.length === 0) return [plain(say`Nothing to buy.`)];
  const { soldIn = [] } = paintOf(house, need.covering);
  const bought = need.tins.reduce((sum, { litres, count }) => sum + wholeMillilitres(litres) * count, 0);
  const tins = need.tins.map(({ litres, count }) => `${count} × ${sayDecimal(String(litres))} L`).join(' + ');
  const over = showVolume(bought - need.millilitres, 'metric');
  const isPriced = need.price !== null;
  return [
    {
      words: say`${tins} = ${showVolume(bought, 'metric')}, ${over} over.`,
      rule: isPriced ? say`the tins that cost least; of those the least over, then the fewest` : say`not every tin has a price: the least over, then the fewest tins`,
      source: null,
    },
    ...(isPriced ? [plain(`${need.tins.map(({ litres, count }) => `${count} × ${priceOf(house, soldIn, litres)}`).join(' + ')} = ${showMoney(need.price, house.currency)}.`)] : []),
  ];
}

function paintOf(house: House, id: string): Paint {
  const covering = house.coverings.find((one) => one.id === id);
  assert(covering?.kind === 'paint', 'a need is of a paint of its house');
  return covering;
}

/** Of tins that hold as much the cheapest is bought. */
function priceOf(house: House, soldIn: NonNullable<Paint['soldIn']>, litres: number): string {
  const prices = soldIn.flatMap((tin) => (tin.litres === litres ? (moneyIn(house, tin.price) ?? []) : []));
  return showMoney(moneyOf(Math.min(...prices)), house.currency);
}

import { millimetres, readSpreadingRate, spreadingOfSolids, ZERO_LENGTH } from '../units/index.ts';
import { quoteValue } from './accepted.ts';
import { laidWidthOf, matchOf } from './readings.ts';
import { LONGEST_WALL, type Report, reportPrice, reportRange, sayLength } from './report.ts';
import type { Covering, House, Paint, Wallcovering } from './types.ts';
import { say } from '../words/index.ts';

const WIDEST_COVERING = millimetres(10_000);
/** Narrower goods are a slip of the unit, and their strips could not be counted. */
const NARROWEST_STRIP = millimetres(50);
/** Far below any pattern that is matched; a roll would have thousands of places to cut at. */
const SMALLEST_REPEAT = millimetres(5);
const LONGEST_ROLL = millimetres(1_000_000);
/** Less is a sample, more no tin: a slip of the unit. */
const SMALLEST_TIN_LITRES = 0.01;
const LARGEST_TIN_LITRES = 1000;
/** Far more than a house takes. */
const MOST_LITRES = 10_000;

export function findCoveringFaults(covering: Covering, house: House, path: string, report: Report): void {
  if ('width' in covering) reportRange(`${path}.width`, covering.width, covering.kind === 'lining' ? { least: NARROWEST_STRIP, most: WIDEST_COVERING } : { above: ZERO_LENGTH, most: WIDEST_COVERING }, report);
  if ('rollLength' in covering && covering.rollLength) {
    reportRange(`${path}.rollLength`, covering.rollLength, { above: ZERO_LENGTH, most: LONGEST_ROLL }, report);
  }
  if ('repeat' in covering) {
    const isGood = reportRange(`${path}.repeat`, covering.repeat, { least: ZERO_LENGTH, most: LONGEST_WALL }, report);
    const { rollLength } = covering;
    if (isGood && covering.repeat.length > 0 && covering.repeat.length < SMALLEST_REPEAT) {
      report(`${path}.repeat`, say`is ${covering.repeat.typed}; it takes 0, or ${sayLength(SMALLEST_REPEAT, 'metric')} and more. Check the unit`);
    }
    if (isGood && rollLength && covering.repeat.length > rollLength.length) {
      report(`${path}.repeat`, say`is ${covering.repeat.typed}, longer than the roll of ${rollLength.typed}`);
    }
  }
  if (covering.kind === 'wallcovering') findWallcoveringFaults(covering, house, path, report);
  if (covering.kind === 'mural') {
    reportRange(`${path}.panelWidth`, covering.panelWidth, { least: NARROWEST_STRIP, most: WIDEST_COVERING }, report);
    reportRange(`${path}.panelHeight`, covering.panelHeight, { above: ZERO_LENGTH, most: LONGEST_WALL }, report);
  }
  if (covering.kind === 'paint') findPaintFaults(covering, path, report);
  covering.soldIn?.forEach((unit, index) => reportPrice(unit.price, house, `${path}.soldIn[${index}].price`, report));
}

function findPaintFaults({ spreadingRate, solids, film, soldIn, batches }: Paint, path: string, report: Report): void {
  if (spreadingRate !== undefined) {
    const read = readSpreadingRate(spreadingRate);
    if (!read.ok) for (const { message } of read.faults) report(`${path}.spreadingRate`, say`is ${quoteValue(spreadingRate)}: ${message}`);
  }
  if (solids !== undefined && film === undefined) report(`${path}.solids`, say`stands without a dry film; say first how thick one coat dries, in micrometres`);
  if (solids !== undefined && film !== undefined) {
    const spread = spreadingOfSolids(solids, film);
    if (!spread.ok) for (const { message } of spread.faults) report(`${path}.solids`, say`is ${quoteValue(solids)}: ${message}`);
  }
  soldIn?.forEach(({ litres }, index) => {
    if (litres < SMALLEST_TIN_LITRES || litres > LARGEST_TIN_LITRES) report(`${path}.soldIn[${index}].litres`, say`is ${litres}; a tin holds from ${SMALLEST_TIN_LITRES} to ${LARGEST_TIN_LITRES} litres. Check the unit`);
  });
  batches?.forEach(({ litres }, index) => {
    if (litres !== undefined && (litres < SMALLEST_TIN_LITRES || litres > MOST_LITRES)) report(`${path}.batches[${index}].litres`, say`is ${litres}; of a batch there are from ${SMALLEST_TIN_LITRES} to ${MOST_LITRES} litres. Check the unit`);
  });
}

function findWallcoveringFaults(covering: Wallcovering, house: House, path: string, report: Report): void {
  if (!covering.rollLength === !covering.soldBy) {
    report(
      `${path}.rollLength`,
      covering.soldBy ? say`stands beside soldBy; a covering comes in rolls or by the length, not both` : say`is missing; it takes the length of one roll, such as "10.05 m" or "33 ft", or soldBy for goods by the length`,
    );
  }
  if (covering.soldBy) {
    reportRange(`${path}.soldBy.length`, covering.soldBy.length, { above: ZERO_LENGTH, most: LONGEST_ROLL }, report);
    reportRange(`${path}.soldBy.pieceLength`, covering.soldBy.pieceLength, { above: ZERO_LENGTH, most: LONGEST_ROLL }, report);
    reportPrice(covering.soldBy.price, house, `${path}.soldBy.price`, report);
  }
  if (!reportRange(`${path}.selvedge`, covering.selvedge, { least: ZERO_LENGTH, most: WIDEST_COVERING }, report)) return;
  const laidWidth = laidWidthOf(covering);
  if (laidWidth < NARROWEST_STRIP) {
    const least = sayLength(NARROWEST_STRIP, 'metric');
    report(
      `${path}.width`,
      laidWidth <= 0
        ? say`is ${covering.width.typed}, of which selvedges and seam leave nothing to hang; a strip is at least ${least} wide. Check the unit`
        : say`is ${covering.width.typed}, of which selvedges and seam leave ${sayLength(laidWidth, house.lengths)} to hang; a strip is at least ${least} wide. Check the unit`,
    );
    return;
  }
  const match = matchOf(covering);
  if (match !== 'free' && covering.repeat.length === 0) {
    report(
      `${path}.repeat`,
      match === 'drop'
        ? say`is 0; a drop match takes the height of the repeat, or set the match to "free"`
        : say`is 0; a straight match takes the height of the repeat, or set the match to "free"`,
    );
  }
  if (match === 'drop' && !covering.dropBy) report(`${path}.dropBy`, say`is missing; a drop match takes the part of the repeat it drops by, such as "1/2"`);
  if (match !== 'drop' && covering.dropBy) report(`${path}.dropBy`, say`stands without a drop match; set the match to "drop"`);
  if (covering.reverseAlternate && match !== 'free') {
    report(
      `${path}.reverseAlternate`,
      match === 'drop'
        ? say`is true; only a free match can be hung with every other strip upside down, this one is drop`
        : say`is true; only a free match can be hung with every other strip upside down, this one is straight`,
    );
  }
  if (covering.horizontalRepeat) {
    const repeat = covering.horizontalRepeat;
    if (!reportRange(`${path}.horizontalRepeat`, repeat, { above: ZERO_LENGTH, most: LONGEST_WALL }, report)) return;
    if (match !== 'free' && laidWidth % repeat.length !== 0 && repeat.length % laidWidth !== 0) {
      report(
        `${path}.horizontalRepeat`,
        say`is ${repeat.typed}; it takes a whole part or a whole multiple of the laid width, ${sayLength(laidWidth, house.lengths)}, or the seams would not match`,
      );
    }
  }
}

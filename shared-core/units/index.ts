export { isCalendarDay } from './calendar-day.ts';
export { addAreas, type Area, areaOf, rectangleArea, showArea, showSquareUnits, ZERO_AREA } from './area.ts';
export { printLength, showLength } from './format-length.ts';
export { type Fraction, MAX_DENOMINATOR, parseFraction, printFraction } from './fraction.ts';
export { checkDigitOf, checkGtin, faultOfCheckDigit, GTIN_LENGTHS, sameGtin } from './gtin.ts';
export { ceilDivide, floorDivide, modulo, roundedDivide } from './integer.ts';
export {
  inches,
  type Length,
  lengthOf,
  type LengthStyle,
  MAX_LENGTH,
  millimetres,
  UNITS_PER_FOOT,
  UNITS_PER_INCH,
  UNITS_PER_METRE,
  UNITS_PER_MILLIMETRE,
  ZERO_LENGTH,
} from './length.ts';
export {
  MAX_MONEY,
  minorDigits,
  type Money,
  moneyOf,
  parseMoney,
  printMoney,
  scaleMoney,
  showMoney,
  splitMoney,
  ZERO_MONEY,
} from './money.ts';
export { quoteTyped } from './quote-typed.ts';
export { parseLength, parseMeasure } from './parse-length.ts';
export { addRatios, decimalRatio, ratio, type Ratio, roundRatio } from './ratio.ts';
export { readSeparated, separatedCell, type Separator, separatorOf, type TableLine, writeSeparated } from './separated-values.ts';
export { readSpreadingRate, showSpreadingRate, spreadingOfSolids, type SpreadingRate } from './spreading-rate.ts';
export { columnOf, type ColumnWords, readHeading, wordsIn } from './table-heading.ts';
export { MAX_LENGTH_TEXT, type Measure } from './read-length.ts';
export { spillsOver } from './spills-over.ts';
export { millilitresOf, NANOLITRES_PER_IMPERIAL_GALLON, NANOLITRES_PER_US_GALLON, showVolume, wholeMillilitres } from './volume.ts';
export { sayTime, sayWait } from './say-time.ts';

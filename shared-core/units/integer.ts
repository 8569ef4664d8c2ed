import { assert } from '../base/index.ts';

/**
 * The largest whole number of `divisor`s that is not above `dividend`.
 *
 * Both are safe integers and `divisor` is above zero; anything else is a bug of ours. Never goes through a rounded
 * quotient: the remainder is taken off first, so the division that is left has no remainder.
 *
 * `floorDivide(7, 2)` is 3; `floorDivide(-7, 2)` is -4.
 */
export function floorDivide(dividend: number, divisor: number): number {
  assertDivisible(dividend, divisor);
  const remainder = dividend % divisor;
  const towardsZero = (dividend - remainder) / divisor;
  return remainder < 0 ? towardsZero - 1 : towardsZero;
}

/**
 * The smallest whole number of `divisor`s that is not below `dividend`.
 *
 * Both are safe integers and `divisor` is above zero; anything else is a bug of ours.
 *
 * `ceilDivide(7, 2)` is 4; `ceilDivide(-7, 2)` is -3.
 */
export function ceilDivide(dividend: number, divisor: number): number {
  assertDivisible(dividend, divisor);
  const remainder = dividend % divisor;
  const towardsZero = (dividend - remainder) / divisor;
  return remainder > 0 ? towardsZero + 1 : towardsZero;
}

/**
 * What is left of `dividend` above a whole number of `divisor`s: from 0 up to, not including, `divisor`.
 *
 * Both are safe integers and `divisor` is above zero; anything else is a bug of ours.
 * `dividend = floorDivide(dividend, divisor) * divisor + modulo(dividend, divisor)`.
 *
 * `modulo(7, 3)` is 1; `modulo(-7, 3)` is 2.
 */
export function modulo(dividend: number, divisor: number): number {
  assertDivisible(dividend, divisor);
  const remainder = dividend % divisor;
  // Adding zero turns the -0 that % gives for a negative multiple into 0.
  return remainder < 0 ? remainder + divisor : remainder + 0;
}

/**
 * The nearest whole number of `divisor`s to `dividend`; a half goes away from zero.
 *
 * Both are safe integers and `divisor` is above zero; anything else is a bug of ours.
 *
 * `roundedDivide(5, 2)` is 3; `roundedDivide(-5, 2)` is -3; `roundedDivide(4, 3)` is 1.
 */
export function roundedDivide(dividend: number, divisor: number): number {
  assertDivisible(dividend, divisor);
  const remainder = dividend % divisor;
  const towardsZero = (dividend - remainder) / divisor;
  const left = Math.abs(remainder);
  // Not `left * 2 >= divisor`: that could leave the safe integers.
  if (left < divisor - left) return towardsZero;
  return dividend < 0 ? towardsZero - 1 : towardsZero + 1;
}

function assertDivisible(dividend: number, divisor: number): void {
  assert(Number.isSafeInteger(dividend), `the dividend ${dividend} is a safe integer`);
  assert(Number.isSafeInteger(divisor) && divisor > 0, `the divisor ${divisor} is a safe integer above zero`);
}

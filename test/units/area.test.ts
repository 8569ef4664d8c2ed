import { describe, expect, it } from 'vitest';
import { BrokenAssumption } from '../../shared-core/base/index.ts';
import {
  addAreas,
  areaOf,
  inches,
  lengthOf,
  MAX_LENGTH,
  millimetres,
  rectangleArea,
  showArea,
} from '../../shared-core/units/index.ts';

describe('areas', () => {
  it('give the worked examples', () => {
    expect(areaOf(102_400)).toBe(rectangleArea(millimetres(1), millimetres(1)));
    expect(rectangleArea(millimetres(4000), millimetres(2500))).toBe(1_024_000_000_000);
    expect(addAreas(areaOf(3), areaOf(4))).toBe(7);
    expect(addAreas()).toBe(0);
    const wall = rectangleArea(millimetres(4113), millimetres(3000));
    expect(showArea(wall, 'metric')).toBe('12.34 m²');
    expect(showArea(wall, 'imperial')).toBe('132.8 sq ft');
  });

  it('are shown rounded half away from zero', () => {
    expect(showArea(areaOf(0), 'metric')).toBe('0.00 m²');
    expect(showArea(areaOf(-1), 'metric')).toBe('0.00 m²');
    expect(showArea(rectangleArea(millimetres(1000), millimetres(5)), 'metric')).toBe('0.01 m²');
    expect(showArea(areaOf(-rectangleArea(millimetres(1000), millimetres(5))), 'metric')).toBe('-0.01 m²');
    expect(showArea(rectangleArea(inches(12), inches(12)), 'imperial')).toBe('1.0 sq ft');
    // 7.2 sq in is 0.05 sq ft.
    expect(showArea(rectangleArea(inches(7.5), inches(0.96)), 'imperial')).toBe('0.1 sq ft');
    expect(showArea(rectangleArea(inches(7.5), inches(0.95)), 'imperial')).toBe('0.0 sq ft');
    expect(showArea(areaOf(Number.MAX_SAFE_INTEGER), 'metric')).toBe('87960.93 m²');
    expect(showArea(areaOf(Number.MAX_SAFE_INTEGER), 'imperial')).toBe('946803.6 sq ft');
  });

  it('stop at what is exact', () => {
    expect(() => rectangleArea(MAX_LENGTH, MAX_LENGTH)).toThrow(BrokenAssumption);
    expect(rectangleArea(millimetres(87_900), MAX_LENGTH)).toBe(87_900 * 320 * 320_000_000);
    expect(() => rectangleArea(lengthOf(-1), lengthOf(1))).toThrow(BrokenAssumption);
    expect(() => addAreas(areaOf(Number.MAX_SAFE_INTEGER), areaOf(1))).toThrow(BrokenAssumption);
    expect(() => areaOf(0.5)).toThrow(BrokenAssumption);
  });
});

import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Rectangle } from 'electron';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { beside, LEAST_SIZE, placeWindow, WindowStateFile } from '../../src-main/desktop/window-state.ts';

const rectangle = (x: number, y: number, width: number, height: number): Rectangle => ({ x, y, width, height });

const MAIN = rectangle(0, 25, 1920, 1055);
const RIGHT = rectangle(1920, 0, 2560, 1440);

describe('a window is put', () => {
  test.each<[string, Rectangle | null, readonly Rectangle[], Partial<Rectangle>]>([
    ['in the middle of the main screen the first time', null, [MAIN, RIGHT], { width: 1280, height: 800 }],
    ['as large as fits there', null, [rectangle(0, 0, 1024, 740)], { width: 1024, height: 740 }],
    ['in its usual size where no screen is told of', null, [], { width: 1280, height: 800 }],
    ['back where it was', rectangle(200, 100, 1000, 700), [MAIN, RIGHT], rectangle(200, 100, 1000, 700)],
    ['back on a screen beside the main one', rectangle(2500, 100, 1000, 700), [MAIN, RIGHT], rectangle(2500, 100, 1000, 700)],
    ['back on a screen left of the main one', rectangle(-1800, 100, 1000, 700), [MAIN, rectangle(-1920, 0, 1920, 1080)], rectangle(-1800, 100, 1000, 700)],
    ['whole on the screen that it shares most with', rectangle(1700, 100, 1000, 700), [MAIN, RIGHT], rectangle(1920, 100, 1000, 700)],
    ['whole on the one screen it reaches past', rectangle(1800, -300, 1000, 700), [MAIN], rectangle(920, 25, 1000, 700)],
    ['in the middle of the main screen where its own is gone, in its size', rectangle(2500, 100, 1000, 700), [MAIN], { width: 1000, height: 700 }],
    ['in no larger size than the screen', rectangle(1920, 0, 2560, 1440), [MAIN, rectangle(1920, 0, 1600, 900)], rectangle(1920, 0, 1600, 900)],
    ['in no smaller size than the least', rectangle(100, 100, 300, 20), [MAIN], rectangle(100, 100, 900, 600)],
    ['with its upper left in sight on a screen that is too small', rectangle(100, 100, 1000, 700), [rectangle(0, 0, 640, 480)], rectangle(0, 0, 900, 600)],
  ])('%s', (_where, kept, areas, place) => {
    expect(placeWindow(kept, areas)).toEqual(place);
  });

  test('whole on one of the screens, wherever it was and whichever there are', () => {
    const at = fc.integer({ min: -10_000, max: 10_000 });
    const anyRectangle = (least: number) => fc.record({ x: at, y: at, width: fc.integer({ min: least, max: 6_000 }), height: fc.integer({ min: least, max: 6_000 }) });
    fc.assert(
      fc.property(anyRectangle(1), fc.array(anyRectangle(LEAST_SIZE.width), { minLength: 1, maxLength: 4 }), (kept, areas) => {
        const { x, y, width, height } = placeWindow(kept, areas);
        const isIn = ({ x: left, y: top, width: wide, height: high }: Rectangle) =>
          x === undefined || y === undefined ? width <= wide && height <= high : x >= left && y >= top && x + width <= left + wide && y + height <= top + high;
        expect(areas.some(isIn)).toBe(true);
        expect(width).toBeGreaterThanOrEqual(LEAST_SIZE.width);
        expect(height).toBeGreaterThanOrEqual(LEAST_SIZE.height);
      }),
    );
  });

  test('a little further right and down than the one before it', () => {
    expect(beside(rectangle(100, 50, 1000, 700))).toEqual(rectangle(132, 82, 1000, 700));
  });
});

describe('the file of its state', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'struckline-state-'));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  const STATE = { bounds: rectangle(-200, 100, 1000, 700), isMaximised: true };

  test('is made when a window is closed, and read again', () => {
    const path = join(folder, 'own', 'window.json');
    expect(new WindowStateFile(path).read()).toBeNull();
    expect(existsSync(join(folder, 'own'))).toBe(false);
    new WindowStateFile(path).write(STATE);
    expect(new WindowStateFile(path).read()).toEqual(STATE);
    expect(readdirSync(join(folder, 'own'))).toEqual(['window.json']);
    expect(JSON.parse(readFileSync(path, 'utf8'))).toEqual({ version: 1, ...STATE });
  });

  test.each([
    'noise',
    '',
    'null',
    '7',
    '[]',
    '{}',
    '{"version":2,"bounds":{"x":0,"y":0,"width":1000,"height":700},"isMaximised":false}',
    '{"version":1,"bounds":{"x":0,"y":0,"width":1000,"height":700}}',
    '{"version":1,"bounds":null,"isMaximised":false}',
    '{"version":1,"bounds":{"x":0,"y":0,"width":1000},"isMaximised":false}',
    '{"version":1,"bounds":{"x":0.5,"y":0,"width":1000,"height":700},"isMaximised":false}',
    '{"version":1,"bounds":{"x":"0","y":0,"width":1000,"height":700},"isMaximised":false}',
    '{"version":1,"bounds":{"x":1e300,"y":0,"width":1000,"height":700},"isMaximised":false}',
    '{"version":1,"bounds":{"x":0,"y":0,"width":0,"height":700},"isMaximised":false}',
  ])('is as good as none where it holds %s', (text) => {
    const path = join(folder, 'window.json');
    writeFileSync(path, text);
    expect(new WindowStateFile(path).read()).toBeNull();
  });

  test('that can not be written keeps no window open', () => {
    writeFileSync(join(folder, 'taken'), '');
    expect(() => new WindowStateFile(join(folder, 'taken', 'window.json')).write(STATE)).not.toThrow();
  });
});

import { readFileSync } from 'node:fs';
import type { Rectangle } from 'electron';
import { writeOwn } from '../office/own-folder.ts';

export interface WindowState {
  /** Where the window stands when it is not maximised. */
  readonly bounds: Rectangle;
  readonly isMaximised: boolean;
}

/** Without a place the window stands in the middle of the main screen. */
export type WindowPlace = Pick<Rectangle, 'width' | 'height'> & Partial<Pick<Rectangle, 'x' | 'y'>>;

const USUAL_SIZE = { width: 1280, height: 800 };
export const LEAST_SIZE = { width: 900, height: 600 };
/** How much further right and down another window stands than the one before it. */
const STEP = 32;

/**
 * Where a window is put, whole on one of the screens there are; `areas` is what can be used of each, the main one first.
 *
 * It goes back to the screen that it shares most with; where that screen is gone, to the middle of the main one, in its
 * size as far as that fits. Example: of a window 1000 wide at x 1800 and a screen 1920 wide, the window's x is 920.
 */
export function placeWindow(kept: Rectangle | null, areas: readonly Rectangle[]): WindowPlace {
  const home = kept && areas.filter((area) => shared(kept, area) > 0).sort((one, other) => shared(kept, other) - shared(kept, one))[0];
  const size = fit(kept ?? USUAL_SIZE, home ?? areas[0] ?? USUAL_SIZE);
  return home ? { ...size, x: within(kept.x, size.width, home.x, home.width), y: within(kept.y, size.height, home.y, home.height) } : size;
}

/** Where another window stands, so that the one before it is not hidden. */
export function beside(bounds: Rectangle): Rectangle {
  return { ...bounds, x: bounds.x + STEP, y: bounds.y + STEP };
}

function shared(one: Rectangle, other: Rectangle): number {
  const overlap = (start: number, size: number, otherStart: number, otherSize: number) => Math.max(0, Math.min(start + size, otherStart + otherSize) - Math.max(start, otherStart));
  return overlap(one.x, one.width, other.x, other.width) * overlap(one.y, one.height, other.y, other.height);
}

type Size = Pick<Rectangle, 'width' | 'height'>;

function fit(size: Size, room: Size): Size {
  const one = (side: 'width' | 'height') => Math.max(LEAST_SIZE[side], Math.min(size[side], room[side]));
  return { width: one('width'), height: one('height') };
}

/** On a screen that is too small for the window its upper left is seen. */
function within(start: number, size: number, roomStart: number, roomSize: number): number {
  return Math.max(roomStart, Math.min(start, roomStart + roomSize - size));
}

const VERSION = 1;
/** Far beyond any row of screens; Electron refuses numbers that are no 32-bit integers. */
const FURTHEST = 1_000_000;

/** The state of the window that was closed last, in a small file of the app's own; what can't be read is as good as none. */
export class WindowStateFile {
  readonly #path: string;

  constructor(path: string) {
    this.#path = path;
  }

  read(): WindowState | null {
    try {
      const read: unknown = JSON.parse(readFileSync(this.#path, 'utf8'));
      return isKept(read) ? { bounds: read.bounds, isMaximised: read.isMaximised } : null;
    } catch {
      return null;
    }
  }

  write(state: WindowState): void {
    try {
      writeOwn(this.#path, { version: VERSION, ...state });
    } catch {
      // A full or locked disk keeps no window open: where it stood is a convenience.
      return;
    }
  }
}

function isKept(read: unknown): read is WindowState {
  const { version, bounds, isMaximised } = (read ?? {}) as Record<string, unknown>;
  if (version !== VERSION || typeof isMaximised !== 'boolean' || typeof bounds !== 'object' || bounds === null) return false;
  const { x, y, width, height } = bounds as Record<string, unknown>;
  const areWhole = [x, y, width, height].every((value) => Number.isInteger(value) && Math.abs(value as number) <= FURTHEST);
  return areWhole && (width as number) > 0 && (height as number) > 0;
}

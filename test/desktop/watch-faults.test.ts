import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { settled, type StandInElectron } from './stand-in.ts';
import { Starting } from './starting.ts';
import type { StandInWindow } from './stand-in-window.ts';

const RELOAD = 0;
const OTHERWISE = 1;

let starting: Starting;
let electron: StandInElectron;
let window: StandInWindow;
beforeEach(async () => {
  starting = new Starting();
  electron = await starting.start();
  window = electron.windows[0]!;
  electron.log.length = 0;
});
afterEach(() => starting.clear());

const end = (reason: string) => window.webContents.emit('render-process-gone', {}, { reason, exitCode: 1 });

describe("a window's process that ends", () => {
  test.each(['crashed', 'oom', 'killed', 'abnormal-exit', 'launch-failed', 'integrity-failure'])('by itself (%s) is loaded again where the user says so', async (reason) => {
    end(reason);
    expect(electron.questions).toMatchObject([{ type: 'error', message: 'This window has stopped.', detail: expect.stringContaining(`(${reason})`), buttons: ['Load it again', 'Close the window'] }]);
    expect(electron.questions[0]?.detail).toContain('in the house file');
    expect(electron.log).toEqual([]);
    await electron.answer(RELOAD);
    expect(electron.log).toEqual(['reload']);
  });

  test('is closed otherwise', async () => {
    end('crashed');
    await electron.answer(OTHERWISE);
    expect(electron.log[0]).toBe('closed');
  });

  test('is left alone where its window is closed before the user has answered', async () => {
    end('crashed');
    window.close();
    electron.log.length = 0;
    await electron.answer(RELOAD);
    expect(electron.log).toEqual([]);
  });

  test('as it should is not spoken of', async () => {
    end('clean-exit');
    await settled();
    expect(electron.questions).toEqual([]);
  });
});

describe('a window that does not answer', () => {
  test('is ended and loaded again where the user says so, and not asked about once more', async () => {
    window.emit('unresponsive');
    expect(electron.questions).toMatchObject([{ type: 'question', message: 'This window does not answer.', buttons: ['Load it again', 'Wait'], defaultId: OTHERWISE, cancelId: OTHERWISE }]);
    await electron.answer(RELOAD);
    expect(electron.log).toEqual(['crash', 'reload']);
    expect(electron.questions).toHaveLength(1);
    end('crashed');
    expect(electron.questions).toHaveLength(2);
  });

  test('is waited for otherwise, and asked about again when it still does not answer', async () => {
    window.emit('unresponsive');
    window.emit('unresponsive');
    expect(electron.questions).toHaveLength(1);
    await electron.answer(OTHERWISE);
    expect(electron.log).toEqual([]);
    window.emit('unresponsive');
    expect(electron.questions).toHaveLength(2);
  });

  test.each([['answers again', () => window.emit('responsive')], ['ends', () => end('clean-exit')]])('is asked about no longer once it %s', async (_what, happen) => {
    window.emit('unresponsive');
    happen();
    await settled();
    expect(electron.questions[0]?.signal?.aborted).toBe(true);
    expect(electron.log).toEqual([]);
  });

  test('is left alone where it is closed before the user has answered', async () => {
    window.emit('unresponsive');
    window.close();
    electron.log.length = 0;
    await electron.answer(RELOAD);
    expect(electron.log).toEqual([]);
  });
});

describe('the shell', () => {
  test.each(['uncaughtException', 'unhandledRejection'])('says a fault of its own in words, once, and ends (%s)', (event) => {
    electron.process.emit(event, new Error('no memory left'));
    electron.process.emit(event, new Error('and another'));
    expect(electron.errorBoxes).toEqual([expect.stringMatching(/^Struckline met a fault of its own: no memory left\n\nEvery change that was taken is in the house file\./)]);
    expect(electron.log).toEqual(['exit 1']);
  });

  test('says what it is told where that is no error', () => {
    electron.process.emit('unhandledRejection', 'a word');
    expect(electron.errorBoxes[0]).toContain('a word');
  });

  test('reports a helper that ended by itself, which Electron starts anew', () => {
    electron.emit('child-process-gone', {}, { type: 'GPU', reason: 'clean-exit', exitCode: 0 });
    electron.emit('child-process-gone', {}, { type: 'GPU', reason: 'crashed', exitCode: 5 });
    expect(electron.reports).toEqual(['A process that helps the windows (GPU) ended by itself: crashed, 5.']);
    expect(electron.questions).toEqual([]);
  });
});

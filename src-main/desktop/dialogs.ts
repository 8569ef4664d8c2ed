import { basename } from 'node:path';
import type { MessageBoxOptions, OpenDialogOptions } from 'electron';
import type { ReplyError } from '../../shared-core/contract/index.ts';
import { say } from '../../shared-core/words/index.ts';

/** The button that both questions about a window have first. */
export const RELOAD = 0;

/** A window's process has ended by itself, for a reason in Electron's own word. */
export function askAfterEnd(reason: string): MessageBoxOptions {
  return {
    type: 'error',
    message: say`This window has stopped.`,
    detail: say`Its process ended by itself (${reason}). Every change that was taken is in the house file. What stood in a field and was not taken yet has to be typed again.`,
    buttons: [say`Load it again`, say`Close the window`],
    defaultId: RELOAD,
    cancelId: 1,
    noLink: true,
  };
}

export function askWhileStuck(): MessageBoxOptions {
  return {
    type: 'question',
    message: say`This window does not answer.`,
    detail: say`It may be busy with something large. Every change that was taken is in the house file. What stands in a field and was not taken yet is lost if the window is loaded again.`,
    buttons: [say`Load it again`, say`Wait`],
    defaultId: 1,
    cancelId: 1,
    noLink: true,
  };
}

/** A house file could not be opened; the office has said why. */
export function sayNotOpened(path: string, error: ReplyError): MessageBoxOptions {
  return {
    type: 'error',
    message: say`${basename(path)} was not opened.`,
    detail: [error.message, ...error.details.map(({ path: place, message }) => `${place} ${message}`.trim())].join('\n'),
    buttons: [say`All right`],
    noLink: true,
  };
}

export function chooseHouses(folder: string): OpenDialogOptions {
  return {
    title: say`Open a house`,
    defaultPath: folder,
    filters: [{ name: say`Houses of Struckline`, extensions: ['struckline'] }],
    properties: ['openFile', 'multiSelections'],
  };
}

/** What is shown where the shell itself has a fault, before it ends. */
export function sayFault(error: unknown): readonly [title: string, text: string] {
  const what = error instanceof Error ? error.message : String(error);
  return [say`Struckline met a fault of its own`, `${what}\n\n${say`Every change that was taken is in the house file. Struckline ends now; start it again.`}`];
}

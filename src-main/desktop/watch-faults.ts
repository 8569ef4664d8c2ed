import { say } from '../../shared-core/words/index.ts';
import { askAfterEnd, askWhileStuck, RELOAD, sayFault } from './dialogs.ts';
import type { ElectronCalls, WindowCalls } from './electron-calls.ts';

/** How a process ends that is told to. */
const AS_MEANT = 'clean-exit';

/** A window whose process has ended or does not answer is loaded again where the user says so; its address keeps where it was. */
export function watchWindow(window: WindowCalls, ask: ElectronCalls['ask']): void {
  const page = window.webContents;
  let question: AbortController | null = null;
  let isBeingEnded = false;

  async function askAgain(reason: string): Promise<void> {
    const { response } = await ask(window, askAfterEnd(reason));
    if (window.isDestroyed()) return;
    if (response === RELOAD) page.reload();
    else window.destroy();
  }

  async function askStuck(): Promise<void> {
    const asked = new AbortController();
    question = asked;
    const { response } = await ask(window, { ...askWhileStuck(), signal: asked.signal });
    question = null;
    if (response !== RELOAD || window.isDestroyed()) return;
    // A page that does not answer can't be loaded again in the process that it is stuck in.
    isBeingEnded = true;
    page.forcefullyCrashRenderer();
    page.reload();
  }

  page.on('render-process-gone', (_event, { reason }) => {
    question?.abort();
    if (reason !== AS_MEANT && !isBeingEnded) void askAgain(reason);
    isBeingEnded = false;
  });
  window.on('unresponsive', () => {
    if (!question) void askStuck();
  });
  window.on('responsive', () => question?.abort());
}

/** Faults of the shell itself are said before it ends; what helps the windows is started anew by Electron. */
export function watchShell({ app, process, showErrorBox, report }: ElectronCalls): void {
  let hasFailed = false;
  for (const event of ['uncaughtException', 'unhandledRejection']) {
    process.on(event, (error: unknown) => {
      if (hasFailed) return;
      hasFailed = true;
      showErrorBox(...sayFault(error));
      app.exit(1);
    });
  }
  app.on('child-process-gone', (_event, { type, reason, exitCode }) => {
    if (reason !== AS_MEANT) report(say`A process that helps the windows (${type}) ended by itself: ${reason}, ${exitCode}.`);
  });
}

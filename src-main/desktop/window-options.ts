import type { BrowserWindowConstructorOptions } from 'electron';
import { LEAST_SIZE, type WindowPlace } from './window-state.ts';

export interface PageFacts {
  readonly preloadFile: string;
  /** Whether this is the app as it is installed, not the checkout. */
  readonly isPackaged: boolean;
}

/** A window with every protection that Electron has; what Electron would do anyway is written down all the same. */
export function windowOptions({ preloadFile, isPackaged }: PageFacts, place: WindowPlace): BrowserWindowConstructorOptions {
  return {
    title: 'Struckline',
    ...place,
    minWidth: LEAST_SIZE.width,
    minHeight: LEAST_SIZE.height,
    show: false,
    webPreferences: {
      preload: preloadFile,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      plugins: false,
      navigateOnDragDrop: false,
      safeDialogs: true,
      // Electron fetches its dictionaries from outside.
      spellcheck: false,
      devTools: !isPackaged,
    },
  };
}

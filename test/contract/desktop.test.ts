import { join } from 'node:path';
import type { Reply } from '../../shared-core/contract/index.ts';
import { startDesktop } from '../../src-main/desktop/start-desktop.ts';
import { type Office, openOffice } from '../../src-main/office/index.ts';
import { StandInElectron } from '../desktop/stand-in.ts';
import { type Connection, describeContract, ownFolderBeside } from './contract-suite.ts';
import { describeKeeping } from './keeping-suite.ts';
import { describePapers } from './papers-suite.ts';

// The real shell over a stand-in for Electron, which copies data as Electron does between its processes.
const connect = async (folder: string): Promise<Connection> => {
  const electron = new StandInElectron();
  let office: Office | undefined;
  await startDesktop(electron.calls, {
    rendererFolder: folder,
    preloadFile: 'preload.cjs',
    windowStateFile: join(folder, 'window.json'),
    platform: process.platform,
    isPackaged: true,
    folder,
    files: [],
    openOffice: () => (office = openOffice({ shell: 'desktop', folder, ownFolder: ownFolderBeside(folder) })),
  });
  return {
    host: { call: async (method, argument) => (await electron.invoke(method, argument)) as Reply<never> },
    openPath: async (path) => (await electron.drop(path)) as Reply<never>,
    close: async () => office?.close(),
  };
};

describeContract('desktop', connect);
describeKeeping('desktop', connect);
describePapers('desktop', connect);

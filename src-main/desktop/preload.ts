import { contextBridge, ipcRenderer, webUtils } from 'electron';
import { BRIDGE_NAME, DESKTOP_CHANNEL, DESKTOP_DROP_CHANNEL, type DesktopBridge } from '../../shared-core/contract/host.ts';

const bridge: DesktopBridge = {
  call: (method, argument) => ipcRenderer.invoke(DESKTOP_CHANNEL, method, argument),
  // The path of what the user dropped; empty for a file that the page made up.
  openDropped: (file) => ipcRenderer.invoke(DESKTOP_DROP_CHANNEL, webUtils.getPathForFile(file as File)),
};

contextBridge.exposeInMainWorld(BRIDGE_NAME, bridge);

import { contextBridge, ipcRenderer } from 'electron';
import { BRIDGE_NAME, DESKTOP_CHANNEL, type DesktopBridge } from '../../shared-core/contract/host.ts';

const bridge: DesktopBridge = { call: (method, argument) => ipcRenderer.invoke(DESKTOP_CHANNEL, method, argument) };

contextBridge.exposeInMainWorld(BRIDGE_NAME, bridge);

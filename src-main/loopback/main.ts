import { homedir } from 'node:os';
import { join } from 'node:path';
import { speakChosen } from '../office/speak-chosen.ts';

speakChosen({ platform: process.platform, environment: process.env, homeFolder: homedir() });
const { runLoopback } = await import('./run.ts');
process.exitCode = await runLoopback(process.argv.slice(2), join(import.meta.dirname, '..', '..', 'out', 'renderer'));
if (process.connected) process.disconnect();

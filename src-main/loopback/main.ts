import { join } from 'node:path';
import { runLoopback } from './run.ts';

process.exitCode = await runLoopback(process.argv.slice(2), join(import.meta.dirname, '..', '..', 'out', 'renderer'));
if (process.connected) process.disconnect();

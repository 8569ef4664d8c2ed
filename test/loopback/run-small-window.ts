import { runLoopback } from '../../src-main/loopback/run.ts';

// The real program over a window that needs no build.
const [rendererFolder = '', ...argv] = process.argv.slice(2);
process.exitCode = await runLoopback(argv, rendererFolder);
if (process.connected) process.disconnect();

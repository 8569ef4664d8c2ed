import { homedir } from 'node:os';
import { speakChosen } from '../office/speak-chosen.ts';

speakChosen({ platform: process.platform, environment: process.env, homeFolder: homedir() });
const { runCommandLine } = await import('./run.ts');
const { status, output, errors } = await runCommandLine(process.argv.slice(2));
process.stderr.write(errors);
process.stdout.write(output);
process.exitCode = status;

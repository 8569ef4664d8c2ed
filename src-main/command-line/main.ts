import { runCommandLine } from './run.ts';

const { status, output, errors } = await runCommandLine(process.argv.slice(2));
process.stderr.write(errors);
process.stdout.write(output);
process.exitCode = status;

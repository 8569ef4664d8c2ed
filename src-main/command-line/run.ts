import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import type { House } from '../../shared-core/house/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { type Desk, exportText, openDesk, roomsCsv, schemaText } from '../office/desk.ts';
import { addRooms, makeHouseFile, newHouse, readHouse, replaceHouse } from '../office/index.ts';
import { type CommandResult, done, finished, PROGRAM, withProblems, writeNew } from './command-result.ts';
import { type PaperOptions, listPapers, writeAllPapers, writePaper } from './papers.ts';

const USAGE = [
  say`struckline new FILE [--from house.json]   make a house file`,
  say`struckline plan FILE [--json]             the plan: rooms with their strips and rolls, the house's order`,
  say`struckline order FILE [--csv OUT]         the bulk order, grouped by pattern number and run number`,
  say`struckline order FILE --pdf OUT           the order sheets for its suppliers`,
  say`struckline import FILE house.json         replace the house in FILE; can be undone in the app`,
  say`struckline export FILE                    the house as an exchange document`,
  say`struckline rooms FILE [--csv OUT]         the rooms as CSV: a row for each wall and what is on it`,
  say`struckline add-rooms FILE rooms.csv       add the rooms of such a table to the house in FILE; can be undone in the app`,
  say`struckline calendar FILE [--ics OUT]      the days of the work, for a calendar program`,
  say`struckline papers FILE                    the papers there are of the house, a line each`,
  say`struckline papers FILE --into FOLDER      all of them, each in all its forms, into a folder`,
  say`struckline paper FILE KIND [OF] --pdf OUT one of them; --csv, --text or --ics where it has that form`,
  say`struckline schema                         the JSON Schema of the exchange document`,
  say`struckline check FILE                     faults and warnings`,
  '',
  say`FILE is a house file (.struckline) or an exchange document (.json). OUT may be - for standard output, but for a PDF.`,
  say`KIND and OF are the first words of a line of struckline papers. --size a4 or --size letter chooses the paper.`,
  say`Exit status: 0; 1 for bad input, with nothing changed; 3 where the plan can't be met.`,
  '',
].join('\n');

/** Runs one command; what it prints is given back, so that it can be tested without a process. */
export async function runCommandLine(words: readonly string[]): Promise<CommandResult> {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...words],
      allowPositionals: true,
      options: { from: { type: 'string' }, json: { type: 'boolean' }, csv: { type: 'string' }, ics: { type: 'string' }, pdf: { type: 'string' }, text: { type: 'string' }, into: { type: 'string' }, size: { type: 'string' }, help: { type: 'boolean' } },
    });
  } catch (error) {
    return misused(error instanceof Error ? error.message : String(error));
  }
  const { values, positionals } = parsed;
  const [command, ...files] = positionals;
  if (values.help || command === 'help') return done(USAGE);
  if (command === undefined) return misused(say`Say which command.`);
  const expected = COMMANDS.get(command);
  if (!expected) return misused(say`‘${command}’ is not a command.`);
  if (files.length < expected.files || files.length > expected.files + (expected.more ?? 0)) return misused(filesTaken(command, expected.files));
  const strange = Object.keys(values).find((option) => !expected.options.includes(option));
  if (strange !== undefined) return misused(say`${command} has no option --${strange}.`);
  return expected.run(files, values);
}

function filesTaken(command: string, files: number): string {
  if (command === 'paper') return say`paper takes a file and the kind of a paper, and of some papers which one.`;
  if (files === 0) return say`${command} takes no file.`;
  return files === 1 ? say`${command} takes one file.` : say`${command} takes ${files} files.`;
}

interface Options extends PaperOptions {
  readonly from?: string | undefined;
  readonly json?: boolean | undefined;
}

interface Command {
  readonly files: number;
  /** Words that may follow the files. */
  readonly more?: number;
  readonly options: readonly string[];
  run(files: readonly string[], options: Options): Promise<CommandResult>;
}

const COMMANDS: ReadonlyMap<string, Command> = new Map<string, Command>([
  ['new', { files: 1, options: ['from'], run: ([file], { from }) => makeNew(file!, from) }],
  ['plan', { files: 1, options: ['json'], run: ([file], { json }) => withDesk(file!, (desk) => (json ? desk.planJson() : desk.planText())) }],
  ['order', { files: 1, options: ['csv', 'pdf', 'size'], run: ([file], { csv, pdf, size }) => (pdf === undefined ? order(file!, csv) : writePaper(file!, 'orders', undefined, { pdf, csv, size })) }],
  ['import', { files: 2, options: [], run: ([file, document]) => withHouse(document!, async (house) => finished(await replaceHouse(file!, house))) }],
  ['export', { files: 1, options: [], run: ([file]) => withHouse(file!, async (house) => done(exportText(house))) }],
  ['rooms', { files: 1, options: ['csv'], run: ([file], { csv }) => withHouse(file!, (house) => rooms(house, csv)) }],
  ['add-rooms', { files: 2, options: [], run: async ([file, table]) => finished(await addRooms(file!, table!)) }],
  ['calendar', { files: 1, options: ['ics', 'pdf', 'size'], run: ([file], options) => writePaper(file!, 'calendar', undefined, options.pdf === undefined ? { ics: '-', ...options } : options) }],
  ['papers', { files: 1, options: ['into', 'size'], run: ([file], options) => (options.into === undefined ? listPapers(file!) : writeAllPapers(file!, options.into, options)) }],
  ['paper', { files: 2, more: 1, options: ['pdf', 'csv', 'text', 'ics', 'size'], run: ([file, kind, of], options) => writePaper(file!, kind!, of, options) }],
  ['schema', { files: 0, options: [], run: async () => done(schemaText()) }],
  ['check', { files: 1, options: [], run: ([file]) => withDesk(file!, checkText) }],
]);

async function makeNew(file: string, from: string | undefined): Promise<CommandResult> {
  if (from === undefined) return finished(await makeHouseFile(file, newHouse(basename(file, '.struckline'))));
  return withHouse(from, async (house) => finished(await makeHouseFile(file, house)));
}

async function order(file: string, csv: string | undefined): Promise<CommandResult> {
  if (csv === undefined || csv === '-') return withDesk(file, (desk) => (csv === '-' ? desk.orderCsv() : desk.orderText()));
  return withHouse(file, async (house) => {
    const desk = openDesk(house);
    const faults = await writeNew(csv, desk.orderCsv(), (why) => say`The order was not written: ${why}`);
    return faults.length > 0 ? finished(faults) : withProblems(desk.plan, say`The order was written to ${csv}.\n`);
  });
}

function rooms(house: House, csv: string | undefined): Promise<CommandResult> {
  return printOrWrite(roomsCsv(house), csv, { written: (path) => say`The rooms were written to ${path}.\n`, failed: (why) => say`The rooms were not written: ${why}` });
}

async function printOrWrite(text: string, path: string | undefined, { written, failed }: { readonly written: (path: string) => string; readonly failed: (why: string) => string }): Promise<CommandResult> {
  if (path === undefined || path === '-') return done(text);
  const faults = await writeNew(path, text, failed);
  return faults.length > 0 ? finished(faults) : done(written(path));
}

function checkText({ plan }: Desk): string {
  const lines = [...plan.problems.map(({ message }) => say`Can't be met: ${message}`), ...plan.warnings.map(({ message }) => say`Look: ${message}`)];
  return lines.length === 0 ? say`The facts are good and there is nothing to look at.\n` : `${lines.join('\n')}\n`;
}

async function withDesk(file: string, print: (desk: Desk) => string): Promise<CommandResult> {
  return withHouse(file, async (house) => {
    const desk = openDesk(house);
    return withProblems(desk.plan, print(desk));
  });
}

async function withHouse(file: string, work: (house: House) => Promise<CommandResult>): Promise<CommandResult> {
  const house = await readHouse(file);
  return house.ok ? work(house.value) : finished(house.faults);
}

function misused(why: string): CommandResult {
  return { status: 1, output: '', errors: `${PROGRAM}: ${why}\n\n${USAGE}` };
}

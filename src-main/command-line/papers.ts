import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Fault, Outcome } from '../../shared-core/base/index.ts';
import type { PaperForm, PaperListing, PaperSize } from '../../shared-core/plan/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { readStamped } from '../office/index.ts';
import { PaperDesk, type PaperFile } from '../office/paper-desk.ts';
import { type CommandResult, done, fault, finished, withProblems, writeNew } from './command-result.ts';

/** Where a paper is written to in which form, and its size. */
export type PaperOptions = { readonly [Form in PaperForm]?: string | undefined } & { readonly size?: string | undefined; readonly into?: string | undefined };

const FORMS: readonly PaperForm[] = ['pdf', 'csv', 'text', 'ics'];
const SIZES: readonly PaperSize[] = ['a4', 'letter'];
const NO_PAPERS = say`There is nothing to write down yet: survey a room and hang something in it.`;

/** A line for each paper: what it is asked for by, its title, its forms. */
export async function listPapers(file: string): Promise<CommandResult> {
  const opened = await openPapers(file, undefined);
  if (!opened.ok) return finished(opened.faults);
  const lines = opened.value.desk.list().map((paper) => `${nameOf(paper)}: ${paper.title} (${paper.forms.join(', ')})\n`);
  return done(lines.length > 0 ? lines.join('') : `${NO_PAPERS}\n`);
}

/** All papers in all their forms, each by itself, as files of a folder, which is made where it is not there. */
export async function writeAllPapers(file: string, folder: string, { size }: PaperOptions): Promise<CommandResult> {
  const opened = await openPapers(file, size);
  if (!opened.ok) return finished(opened.faults);
  const { desk, size: paperSize } = opened.value;
  const written: string[] = [];
  for (const paper of desk.list().filter(({ isTogether }) => !isTogether)) {
    for (const form of paper.forms) {
      const made = (await desk.make(paper, form, paperSize))!;
      const path = join(folder, made.fileName);
      const faults = await writeInto(folder, path, made);
      if (faults.length > 0) return finished(faults);
      written.push(say`${path}${sayUnset(made)}\n`);
    }
  }
  return withProblems(desk.plan, written.join(''));
}

/** One paper in one form. */
export async function writePaper(file: string, kind: string, of: string | undefined, options: PaperOptions): Promise<CommandResult> {
  const asked = FORMS.filter((form) => options[form] !== undefined);
  const [form] = asked;
  if (form === undefined || asked.length > 1) return finished(fault(say`Say in which form the paper is wanted, and only in one: --pdf OUT, or --csv, --text or --ics where it has that form.`).faults);
  const out = options[form]!;
  if (form === 'pdf' && out === '-') return finished(fault(say`A PDF is not printed on a terminal; say a file for it.`).faults);
  const opened = await openPapers(file, options.size);
  if (!opened.ok) return finished(opened.faults);
  const { desk, size } = opened.value;
  const listed = find(desk.list(), kind, of);
  if (!listed.ok) return finished(listed.faults);
  const made = await desk.make(listed.value, form, size);
  if (!made) return finished(fault(say`${nameOf(listed.value)} has no form ${form}; it has ${listed.value.forms.join(', ')}.`).faults);
  if (out === '-') return withProblems(desk.plan, new TextDecoder().decode(made.bytes));
  const faults = await writeNew(out, made.bytes, (why) => say`The paper was not written: ${why}`);
  return faults.length > 0 ? finished(faults) : withProblems(desk.plan, say`${made.title} was written to ${out}.${sayUnset(made)}\n`);
}

async function openPapers(file: string, size: string | undefined): Promise<Outcome<{ readonly desk: PaperDesk; readonly size: PaperSize }>> {
  const chosen = SIZES.find((one) => one === size);
  if (size !== undefined && chosen === undefined) return fault(say`--size is ${size}; it takes ${SIZES.join(', ')}.`);
  const stamped = await readStamped(file);
  if (!stamped.ok) return stamped;
  const desk = new PaperDesk(stamped.value);
  return { ok: true, value: { desk, size: chosen ?? desk.usualSize } };
}

/** The paper of that name; of orders for all suppliers, where there is but one, that one. */
function find(papers: readonly PaperListing[], kind: string, of: string | undefined): Outcome<PaperListing> {
  const alike = papers.filter((paper) => paper.kind === kind);
  const found = alike.find((paper) => (paper.of ?? undefined) === of) ?? (kind === 'orders' ? papers.find((paper) => paper.kind === 'order') : undefined);
  if (found) return { ok: true, value: found };
  if (kind === 'calendar') return fault(say`There is no day to write yet: say what is on the walls or hang something, and on which day the work begins.`);
  if (papers.length === 0) return fault(NO_PAPERS);
  return fault(say`There is no paper ${[kind, ...(of === undefined ? [] : [of])].join(' ')} of this house; there are ${(alike.length > 0 ? alike : papers).map(nameOf).join(', ')}.`);
}

function nameOf({ kind, of }: PaperListing): string {
  return of === null ? kind : `${kind} ${of}`;
}

async function writeInto(folder: string, path: string, { bytes }: PaperFile): Promise<readonly Fault[]> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    return fault(say`The papers were not written: ${error instanceof Error ? error.message : String(error)}`).faults;
  }
  return writeNew(path, bytes, (why) => say`The papers were not written: ${why}`);
}

function sayUnset({ unset }: PaperFile): string {
  return unset.length === 0 ? '' : say` Letters without a font are shown as missing: ${unset.join(' ')}`;
}

import { closeSync, copyFileSync, existsSync, fsyncSync, mkdirSync, openSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { randomUUID } from 'node:crypto';
import Database from 'better-sqlite3';
import type { BackUpListing } from '../../shared-core/contract/index.ts';

type BackUpReason = BackUpListing['reason'];

export interface BackUp {
  /** Its file's name among the back-ups of its house. */
  readonly name: string;
  /** When it was made, as an ISO date and time in UTC. */
  readonly made: string;
  readonly reason: BackUpReason;
}

/** Beside the house files, so that whoever looks for a lost house finds it without the app. */
const FOLDER = 'Struckline back-ups';
const NAME = /^(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)Z (work|form|replaced)\.struckline$/;

const KEPT = { newest: 5, days: 7, weeks: 4, ofOtherReasons: 5 };
const MILLISECONDS_A_DAY = 86_400_000;
const MILLISECONDS_BETWEEN = 3_600_000;

/** Where the back-ups of a house file lie; there may be none yet. */
export function backUpFolder(path: string): string {
  return join(dirname(path), FOLDER, basename(path, extname(path)));
}

/** The back-ups of a house file, the last one first. */
export function listBackUps(path: string): readonly BackUp[] {
  let names: readonly string[];
  try {
    names = readdirSync(backUpFolder(path));
  } catch {
    return [];
  }
  return names.flatMap(readName).toSorted((one, other) => other.made.localeCompare(one.made));
}

function readName(name: string): readonly BackUp[] {
  const [, day, hours, minutes, seconds, reason] = NAME.exec(name) ?? [];
  const made = `${day}T${hours}:${minutes}:${seconds}Z`;
  return day === undefined || Number.isNaN(Date.parse(made)) ? [] : [{ name, made, reason: reason as BackUpReason }];
}

/**
 * Whether an hour of work has no back-up yet. A clock that was put back makes one due rather than none for long.
 *
 * Example: with the last one made at 09:00 one is due at 10:00, and also at 07:59.
 */
export function isBackUpDue(last: Date, now: Date): boolean {
  return Math.abs(now.getTime() - last.getTime()) >= MILLISECONDS_BETWEEN;
}

/**
 * Makes a back-up; it appears under its name only when it is whole and on the disk. Those that are too many go then.
 *
 * `write` puts the house's file at the path that it is given. Gives the back-up's name; what goes wrong is thrown.
 */
export async function keepBackUp(path: string, reason: BackUpReason, now: Date, write: (draft: string) => Promise<void>): Promise<string> {
  const folder = backUpFolder(path);
  mkdirSync(folder, { recursive: true });
  const draft = join(folder, `.${randomUUID()}.draft`);
  try {
    await write(draft);
    const name = `${now.toISOString().slice(0, 19).replaceAll(':', '-')}Z ${reason}.struckline`;
    moveToDisk(draft, join(folder, name));
    for (const { name: old } of tooMany(listBackUps(path))) rmSync(join(folder, old));
    return name;
  } finally {
    rmSync(draft, { force: true });
  }
}

/**
 * Puts a back-up in the place of its house file, which becomes a back-up itself, whatever state it is in.
 *
 * At every moment there is a whole file under the house's name. Its revision counts on from the one that it had, so that
 * nobody takes these facts for those.
 */
export async function restoreBackUp(path: string, name: string, { now, revision }: { readonly now: Date; readonly revision: number }): Promise<void> {
  const draft = join(dirname(path), `.${randomUUID()}.draft`);
  try {
    copyFileSync(join(backUpFolder(path), name), draft);
    countBeyond(draft, revision);
    if (existsSync(path)) await keepBackUp(path, 'replaced', now, async (aside) => copyFileSync(path, aside));
    // A journal of what is replaced would be played into the file that stands there then.
    rmSync(`${path}-journal`, { force: true });
    moveToDisk(draft, path);
  } finally {
    rmSync(draft, { force: true });
  }
}

function countBeyond(path: string, revision: number): void {
  const database = new Database(path);
  try {
    database.prepare('update house set revision = max(revision, ?) + 1').run(revision);
  } finally {
    database.close();
  }
}

/** Gives a file its name once all of it is on the disk, and the name too. */
export function moveToDisk(from: string, to: string): void {
  sync(from);
  renameSync(from, to);
  // Windows opens no folder.
  if (process.platform !== 'win32') sync(dirname(to));
}

function sync(path: string): void {
  const descriptor = openSync(path, process.platform === 'win32' ? 'r+' : 'r');
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}

/**
 * Of back-ups in order, the last one first, those that go: beside the newest the last of each day and week stays for a while.
 *
 * Rule: of those made from time to time the 5 newest stay, the last one of each of the 7 last days and 4 last weeks on
 * which there are any, and 5 of each other kind. The clock is not asked, so that one which is wrong loses none.
 * Example: of six made on one day and none before, the oldest goes.
 */
export function tooMany(backUps: readonly BackUp[]): readonly BackUp[] {
  const work = backUps.filter(({ reason }) => reason === 'work');
  const dayOf = ({ made }: BackUp) => Math.floor(Date.parse(made) / MILLISECONDS_A_DAY);
  const kept = new Set([
    ...work.slice(0, KEPT.newest),
    ...lastOfEach(work, dayOf).slice(0, KEPT.days),
    ...lastOfEach(work, (one) => Math.floor(dayOf(one) / 7)).slice(0, KEPT.weeks),
    ...(['form', 'replaced'] as const).flatMap((reason) => backUps.filter((one) => one.reason === reason).slice(0, KEPT.ofOtherReasons)),
  ]);
  return backUps.filter((one) => !kept.has(one));
}

function lastOfEach(backUps: readonly BackUp[], spanOf: (backUp: BackUp) => number): readonly BackUp[] {
  return [...Map.groupBy(backUps, spanOf).values()].map(([last]) => last!);
}

import { basename, dirname } from 'node:path';
import type { Chance } from './seeded.ts';

/** What a program did to files of one folder, in order, and what it said meanwhile. */
export type DiskEvent =
  | { readonly kind: 'write'; readonly file: number; readonly at: number; readonly bytes: Buffer }
  | { readonly kind: 'cut'; readonly file: number; readonly length: number }
  | { readonly kind: 'sync'; readonly file: number }
  | { readonly kind: 'sync-folder' }
  | { readonly kind: 'make'; readonly name: string; readonly file: number }
  | { readonly kind: 'remove'; readonly name: string }
  | { readonly kind: 'rename'; readonly name: string; readonly to: string }
  | { readonly kind: 'say'; readonly line: string };

/** The system calls that change a file or say something; each is in the trace with its whole data, as \xNN. */
export const TRACED_CALLS = ['openat', 'write', 'pwrite64', 'fsync', 'fdatasync', 'unlink', 'rename', 'ftruncate', 'close', 'fallocate', 'pwritev', 'writev', 'creat', 'unlinkat', 'renameat', 'renameat2'];
export const TRACE_OPTIONS = ['-f', '-xx', '-s', '1000000', '-e', 'signal=none', '-e', `trace=${TRACED_CALLS.join(',')}`];
/** Ways of changing a file that this reading does not know: met in the folder they would make it wrong. */
const NOT_READ = new Set(['fallocate', 'pwritev', 'writev', 'creat', 'unlinkat', 'renameat', 'renameat2']);

const STANDARD_OUTPUT = 1;
/** The file that is there before the program begins. */
export const FIRST_FILE = 0;

/**
 * Reads a trace that strace wrote with `TRACE_OPTIONS` of a program that works on files of one folder.
 *
 * Example: of "7 unlink("\x2f\x61\x2f\x62") = 0" and the folder /a it is that b was removed.
 */
export function readTrace(trace: string, folder: string, firstName: string): readonly DiskEvent[] {
  const events: DiskEvent[] = [];
  const unfinished = new Map<string, string>();
  /** By descriptor: which file it stands for, or the folder. */
  const open = new Map<number, number | 'folder'>();
  const names = new Map([[firstName, FIRST_FILE]]);
  let files = FIRST_FILE;
  const isWithin = (path: string) => dirname(path) === folder;
  for (const line of trace.split('\n')) {
    const [, process, rest] = /^(\d+) +(.*)$/.exec(line) ?? [];
    if (process === undefined || rest === undefined) continue;
    if (rest.endsWith('<unfinished ...>')) {
      unfinished.set(process, rest.slice(0, -'<unfinished ...>'.length));
      continue;
    }
    const whole = rest.replace(/^<\.\.\. \w+ resumed>/, () => unfinished.get(process) ?? '');
    const [, call, given, result] = /^(\w+)\((.*)\) += (-?\d+)/.exec(whole) ?? [];
    if (call === undefined || given === undefined || Number(result) < 0) continue;
    const [first, second] = [...given.matchAll(/"((?:\\x[0-9a-f]{2})*)"/g)].map(([, hex]) => Buffer.from(hex!.replaceAll('\\x', ''), 'hex'));
    const descriptor = Number.parseInt(given, 10);
    const file = open.get(descriptor);
    if (call === 'openat') {
      const path = first!.toString();
      if (path === folder) open.set(Number(result), 'folder');
      if (!isWithin(path)) continue;
      const name = basename(path);
      if (!names.has(name)) {
        files += 1;
        names.set(name, files);
        events.push({ kind: 'make', name, file: files });
      }
      open.set(Number(result), names.get(name)!);
      if (given.includes('O_TRUNC')) events.push({ kind: 'cut', file: names.get(name)!, length: 0 });
    } else if (call === 'close') {
      open.delete(descriptor);
    } else if (call === 'unlink' && isWithin(first!.toString())) {
      names.delete(basename(first!.toString()));
      events.push({ kind: 'remove', name: basename(first!.toString()) });
    } else if (call === 'rename' && isWithin(first!.toString())) {
      const [name, to] = [basename(first!.toString()), basename(second!.toString())];
      names.set(to, names.get(name)!);
      names.delete(name);
      events.push({ kind: 'rename', name, to });
    } else if (call === 'write' && descriptor === STANDARD_OUTPUT) {
      for (const said of first!.toString().split('\n').filter(Boolean)) events.push({ kind: 'say', line: said });
    } else if (file === 'folder') {
      if (call === 'fsync' || call === 'fdatasync') events.push({ kind: 'sync-folder' });
    } else if (file !== undefined) {
      if (call === 'pwrite64') events.push({ kind: 'write', file, at: Number(/, (\d+)$/.exec(given)![1]), bytes: first!.subarray(0, Number(result)) });
      else if (call === 'fsync' || call === 'fdatasync') events.push({ kind: 'sync', file });
      else if (call === 'ftruncate') events.push({ kind: 'cut', file, length: Number(/, (\d+)$/.exec(given)![1]) });
      else if (call === 'write' || NOT_READ.has(call)) throw new Error(`the trace has a ${call} on a file of the folder, which this reading does not know`);
    } else if (NOT_READ.has(call) && [first, second].some((path) => path !== undefined && isWithin(path.toString()))) {
      throw new Error(`the trace has a ${call} in the folder, which this reading does not know`);
    }
  }
  return events;
}

type Change = Extract<DiskEvent, { kind: 'write' | 'cut' }>;
/** What stands in a folder: names and bytes. */
export type Contents = ReadonlyMap<string, Buffer>;

const SECTOR_BYTES = 512;

/** A disk that keeps for good only what was synced: of the rest a power cut leaves all, nothing or any part. */
export class WatchedDisk {
  readonly #durable = new Map<number, Buffer>();
  readonly #pending = new Map<number, Change[]>();
  #names: ReadonlyMap<string, number>;
  #durableNames: ReadonlyMap<string, number>;

  constructor(name: string, bytes: Buffer) {
    this.#durable.set(FIRST_FILE, bytes);
    this.#names = this.#durableNames = new Map([[name, FIRST_FILE]]);
  }

  take(event: DiskEvent): void {
    const names = new Map(this.#names);
    switch (event.kind) {
      case 'write':
      case 'cut':
        this.#pending.set(event.file, [...(this.#pending.get(event.file) ?? []), event]);
        return;
      case 'sync':
        this.#durable.set(event.file, this.#after(event.file, this.#pending.get(event.file) ?? []));
        this.#pending.delete(event.file);
        return;
      case 'sync-folder':
        this.#durableNames = this.#names;
        return;
      case 'make':
        names.set(event.name, event.file);
        break;
      case 'remove':
        names.delete(event.name);
        break;
      case 'rename':
        names.set(event.to, names.get(event.name)!);
        names.delete(event.name);
        break;
      case 'say':
        return;
    }
    this.#names = names;
  }

  /** Everything that was done has reached the disk. */
  all(): Contents {
    return new Map([...this.#names].map(([name, file]) => [name, this.#after(file, this.#pending.get(file) ?? [])]));
  }

  /** Nothing but what was synced has. */
  synced(): Contents {
    return new Map([...this.#durableNames].map(([name, file]) => [name, this.#after(file, [])]));
  }

  /** What was not synced has in part: some writes, some of them torn between sectors, some names. */
  torn(chance: Chance): Contents {
    const names = new Map(this.#durableNames);
    for (const name of new Set([...this.#durableNames.keys(), ...this.#names.keys()])) {
      if (chance.oneIn(2)) continue;
      const file = this.#names.get(name);
      if (file === undefined) names.delete(name);
      else names.set(name, file);
    }
    const part = (change: Change): readonly Change[] => {
      if (chance.oneIn(3)) return [];
      if (chance.oneIn(2) || change.kind === 'cut' || change.bytes.length <= SECTOR_BYTES) return [change];
      const sectors = chance.below(change.bytes.length / SECTOR_BYTES);
      return [{ ...change, bytes: change.bytes.subarray(0, sectors * SECTOR_BYTES) }];
    };
    return new Map([...names].map(([name, file]) => [name, this.#after(file, (this.#pending.get(file) ?? []).flatMap(part))]));
  }

  #after(file: number, changes: readonly Change[]): Buffer {
    return changes.reduce(
      (bytes, change) => {
        const length = change.kind === 'cut' ? change.length : Math.max(bytes.length, change.at + change.bytes.length);
        const next = Buffer.alloc(length);
        bytes.copy(next, 0, 0, Math.min(bytes.length, length));
        if (change.kind === 'write') change.bytes.copy(next, change.at);
        return next;
      },
      this.#durable.get(file) ?? Buffer.alloc(0),
    );
  }
}

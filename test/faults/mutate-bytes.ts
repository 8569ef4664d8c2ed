import { type Chance } from './seeded.ts';

const PAGE = 4096;
/** Where SQLite's header has its fields and how many bytes each takes (file format of SQLite, from memory). */
const HEADER_FIELDS: readonly (readonly [name: string, at: number, bytes: 1 | 2 | 4])[] = [
  ['page size', 16, 2], ['write version', 18, 1], ['read version', 19, 1], ['reserved bytes', 20, 1], ['most of a page', 21, 1], ['least of a page', 22, 1], ['leaf part', 23, 1],
  ['change counter', 24, 4], ['pages', 28, 4], ['first free page', 32, 4], ['free pages', 36, 4], ['schema cookie', 40, 4], ['schema format', 44, 4], ['cache', 48, 4],
  ['largest root', 52, 4], ['encoding', 56, 4], ['user version', 60, 4], ['incremental vacuum', 64, 4], ['application id', 68, 4], ['version valid for', 92, 4], ['written by', 96, 4],
];

type Mutation = (bytes: Buffer, chance: Chance, others: readonly Buffer[]) => readonly [Buffer, string];

const MUTATIONS: readonly Mutation[] = [
  (bytes, chance) => {
    const count = 1 + chance.below(8);
    for (let flip = 0; flip < count; flip += 1) bytes[chance.below(bytes.length)]! ^= 1 << chance.below(8);
    return [bytes, `${count} bits flipped`];
  },
  (bytes, chance) => {
    const [from, length, what] = [chance.below(bytes.length), 1 + chance.below(chance.pick([4, 64, PAGE])), chance.pick(['zeros', 'ones', 'noise'] as const)];
    for (let at = from; at < Math.min(bytes.length, from + length); at += 1) bytes[at] = what === 'zeros' ? 0 : what === 'ones' ? 0xff : chance.below(256);
    return [bytes, `${length} bytes of ${what} at ${from}`];
  },
  (bytes, chance) => {
    const length = chance.below(bytes.length);
    return [bytes.subarray(0, length), `cut to ${length}`];
  },
  (bytes, chance) => {
    const pages = chance.below(pagesOf(bytes));
    return [bytes.subarray(0, pages * PAGE), `cut to ${pages} pages`];
  },
  (bytes, chance, others) => {
    const other = chance.pick(others);
    const [size, grain] = chance.pick([[1 + chance.below(600), 1], [PAGE, PAGE], [3 * PAGE, PAGE]] as const);
    const [from, to] = [chance.below(Math.ceil(other.length / grain)) * grain, chance.below(Math.ceil(bytes.length / grain)) * grain];
    other.copy(bytes, to, from, from + size);
    return [bytes, `${size} bytes at ${from} of another file put at ${to}`];
  },
  (bytes, chance) => {
    const [one, other] = [chance.below(pagesOf(bytes)) * PAGE, chance.below(pagesOf(bytes)) * PAGE];
    const kept = Buffer.from(bytes.subarray(one, one + PAGE));
    bytes.copy(bytes, one, other, other + PAGE);
    kept.copy(bytes, other);
    return [bytes, `pages at ${one} and ${other} exchanged`];
  },
  (bytes, chance) => {
    const [name, at, size] = chance.pick(HEADER_FIELDS);
    if (bytes.length < at + size) return [bytes, 'nothing'];
    const before = bytes.readUIntBE(at, size);
    const value = chance.pick([0, 1, 2, 512, 0xffff_ffff, 0x7fff_ffff, 0x8000_0000, before + 1, before - 1, chance.below(2 ** 32)]) >>> 0;
    bytes.writeUIntBE(value % 2 ** (8 * size), at, size);
    return [bytes, `${name} ${before} made ${value % 2 ** (8 * size)}`];
  },
  (bytes, chance) => {
    // What leads through a page stands at its beginning: what kind it is, how many cells it has, where each lies.
    const page = chance.below(pagesOf(bytes));
    const at = page * PAGE + (page === 0 ? 100 : 0) + chance.below(chance.pick([12, 60]));
    const value = chance.pick([0, 2, 5, 10, 13, 0xff, chance.below(256)]);
    if (at < bytes.length) bytes[at] = value;
    return [bytes, `byte ${at} of page ${page} made ${value}`];
  },
  (bytes, chance) => {
    const [at, length] = [chance.below(bytes.length), 1 + chance.below(chance.pick([3, PAGE]))];
    if (chance.oneIn(2)) return [Buffer.concat([bytes.subarray(0, at), bytes.subarray(at + length)]), `${length} bytes taken out at ${at}`];
    return [Buffer.concat([bytes.subarray(0, at), Buffer.alloc(length, chance.below(256)), bytes.subarray(at)]), `${length} bytes put in at ${at}`];
  },
];

/** A file damaged in one to three places, and how. */
export function damaged(file: Buffer, others: readonly Buffer[], chance: Chance): { readonly bytes: Buffer; readonly how: string } {
  let bytes: Buffer = Buffer.from(file);
  const how: string[] = [];
  for (let left = chance.pick([1, 1, 2, 3]); left > 0 && bytes.length > 0; left -= 1) {
    const [changed, what] = chance.pick(MUTATIONS)(bytes, chance, others);
    bytes = Buffer.from(changed);
    how.push(what);
  }
  return { bytes, how: how.join(', ') };
}

function pagesOf(bytes: Buffer): number {
  return Math.ceil(bytes.length / PAGE);
}

import { type Chance } from './seeded.ts';

/** JSON that a test may change as it likes. */
type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Holder = Json[] | { [key: string]: Json };

/** Text that JSON.stringify would never write stands behind this sign until the document is text. */
const SIGN = '␀raw:';

/** What no honest program writes as a value, as it stands in the text. */
const RAW: readonly (() => string)[] = [
  () => '1e999', () => '-1e999', () => '-0', () => '0.1e-400', () => '123456789012345678901234567890', () => '9007199254740993',
  () => '"\\ud800"', () => '"\\udfff\\ud800"', () => '"a\\u0000b"', () => '"\\u202e\\u202dx"', () => '"\\u0007"', () => '"\\u2028\\u2029"',
  () => '['.repeat(100_000) + ']'.repeat(100_000), () => '{"a":'.repeat(60_000) + '1' + '}'.repeat(60_000), () => '['.repeat(21) + ']'.repeat(21),
  () => `"${'x'.repeat(200_000)}"`, () => `"${' '.repeat(200_000)}y"`, () => `"${'1 '.repeat(50_000)}"`, () => `"${'\u0301'.repeat(1000)}"`, () => `"${'9'.repeat(100_000)}"`,
  () => `[${Array(100_000).fill('1').join(',')}]`, () => `[${Array(100_000).fill('{}').join(',')}]`, () => `[${Array(100_000).fill('"1 m"').join(',')}]`,
  () => '{"__proto__":{"polluted":true}}', () => '{"constructor":{"prototype":{"polluted":true}}}', () => '{"prototype":{"polluted":true},"toString":1,"hasOwnProperty":null}',
  () => `{${Array.from({ length: 20_000 }, (_, index) => `"k${index}":1`).join(',')}}`,
];

/** What a program may write, and few houses have. */
const ODD: readonly Json[] = [
  null, true, false, 0, 1, -1, 0.5, 2 ** 31, 1e21, [], {}, '', ' ', 'undefined', 'NaN', 'null', '1', '-1', '1 m', '0 m', '-1 m', '100 m', '100.0001 m', '1 mm', '5 mm', '0.003125 mm', '1000 m', '30 m', "12' 4\"",
  '1/2', '0/1', '1/1', '999/1000', '1/1000000', '99%', '101%', '100', '7,25', '84.00', '999999999999', '0', 'floor', 'ceiling', 'start', 'inside', 'outside', 'straight', '10', '350', '180', '359.99', '2026-02-29', '0000-00-00', '9999-12-31', '2026-03-02',
  'left', 'right', 'both', 'free', 'drop', 'required', 'equal', 'double-cut', 'across', 'USD', 'JPY', 'KWD', 'imperial', 'metric', '__proto__', 'constructor', 'toString', 'length', [null], [[]], [{}], ['1 m', '2 m'], { rail: 'dado' }, { wall: 'A', at: '1 m' },
];

const HOSTILE_KEYS = ['__proto__', 'constructor', 'prototype', 'toString', 'length', '', ' ', 'x'.repeat(10_000), '\u0000', '0', 'hasOwnProperty'];

type Mutation = (document: Json, chance: Chance) => string;

/** In the values of a document. */
const IN_VALUES: readonly Mutation[] = [
  (document, chance) => atSomePlace(document, chance, (holder, key) => {
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else delete holder[key];
    return 'taken out';
  }),
  (document, chance) => atSomePlace(document, chance, (holder, key) => {
    const value = valueAt(holder, key);
    const count = chance.pick([1, 2, 50]);
    if (Array.isArray(holder)) holder.splice(Number(key), 0, ...Array.from({ length: count }, () => structuredClone(value)));
    else set(holder, `${key}${count}`, structuredClone(value));
    return `put in ${count} times more`;
  }),
  (document, chance) => atSomePlace(document, chance, (holder, key) => {
    const there: string[] = [];
    const other = atSomePlace(document, chance, (from, at) => {
      const [one, two] = [valueAt(holder, key), valueAt(from, at)];
      if (contains(one, from) || contains(two, holder)) return 'left';
      set(holder, key, two);
      set(from, at, one);
      there.push(at);
      return '';
    });
    return `exchanged with ${other}`;
  }),
  ...[1, 2, 3].map((): Mutation => (document, chance) => atSomePlace(document, chance, (holder, key) => {
    const odd = chance.pick(ODD);
    set(holder, key, structuredClone(odd));
    return `made ${JSON.stringify(odd)}`;
  })),
  (document, chance) => atSomePlace(document, chance, (holder, key) => {
    const which = chance.below(RAW.length);
    set(holder, key, `${SIGN}${which}`);
    return `made raw ${which}`;
  }),
  (document, chance) => atSomePlace(document, chance, (holder, key) => {
    const value = valueAt(holder, key);
    const other = typeof value === 'string' ? (Number.isNaN(Number.parseFloat(value)) ? [value] : Number.parseFloat(value)) : typeof value === 'number' ? String(value) : JSON.stringify(value);
    set(holder, key, other);
    return 'of another type';
  }),
  (document, chance) => atSomePlace(document, chance, (holder) => {
    const name = chance.pick(HOSTILE_KEYS);
    if (!Array.isArray(holder)) set(holder, name, chance.pick([{ polluted: true }, 1, null]));
    return `with a key ${name.slice(0, 20)}`;
  }),
];

/** In the text of a document. */
const IN_TEXT: readonly ((text: string, chance: Chance) => readonly [string, string])[] = [
  (text, chance) => {
    const at = chance.below(text.length);
    return [text.slice(0, at) + String.fromCharCode(text.charCodeAt(at) ^ (1 << chance.below(8))) + text.slice(at + 1), `a bit of ${at} flipped`];
  },
  (text, chance) => {
    const at = chance.below(text.length);
    return [text.slice(0, at), `cut to ${at}`];
  },
  (text, chance) => {
    const [from, length, to] = [chance.below(text.length), chance.below(300), chance.below(text.length)];
    return [text.slice(0, to) + text.slice(from, from + length) + text.slice(to), `${length} of ${from} put in at ${to}`];
  },
  (text, chance) => {
    const [at, what] = [chance.below(text.length), chance.pick(['\u0000', '\ufeff', '\ud800', '"', '}', ']', ',', ':', '\\', '\n', '{"a":1,"a":2}'])];
    return [text.slice(0, at) + what + text.slice(at), `${JSON.stringify(what)} put in at ${at}`];
  },
  (text) => [`\ufeff${text}`, 'a mark in front'],
  (text, chance) => {
    const key = /"(?:name|id|rooms|version|format|walls|covering)":/.exec(text.slice(chance.below(text.length)))?.[0] ?? '"name":';
    const brace = text.indexOf('{', chance.below(text.length));
    return [brace < 0 ? text : `${text.slice(0, brace + 1)}${key}"twice",${text.slice(brace + 1)}`, `${key} once more at ${brace}`];
  },
];

/** The text of a document changed in one to four places, and how. */
export function changedDocument(document: Json, chance: Chance): { readonly text: string; readonly how: string } {
  const copy = structuredClone(document);
  const isInText = chance.oneIn(4);
  const how = isInText ? [] : Array.from({ length: chance.pick([1, 1, 2, 4]) }, () => chance.pick(IN_VALUES)(copy, chance));
  const plain = JSON.stringify(copy).replaceAll(new RegExp(`"${SIGN}(\\d+)"`, 'g'), (_, which: string) => RAW[Number(which)]!());
  if (!isInText) return { text: plain, how: how.join(', ') };
  const [text, what] = chance.pick(IN_TEXT)(plain, chance);
  return { text, how: what };
}

/** Does something to some value of a document, and says where. */
function atSomePlace(document: Json, chance: Chance, change: (holder: Holder, key: string) => string): string {
  let holder = document as Holder;
  let path = '';
  for (;;) {
    const keys = Object.keys(holder);
    if (keys.length === 0) return `${path} left`;
    const key = chance.pick(keys);
    const value = valueAt(holder, key);
    path = `${path}/${key.slice(0, 20)}`;
    if (typeof value !== 'object' || value === null || Object.keys(value).length === 0 || chance.oneIn(4)) return `${path} ${change(holder, key)}`;
    holder = value;
  }
}

function valueAt(holder: Holder, key: string): Json {
  return Object.getOwnPropertyDescriptor(holder, key)!.value as Json;
}

/** As a key of its own, whatever its name. */
function set(holder: Holder, key: string, value: Json): void {
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
}

function contains(value: Json, holder: Holder): boolean {
  if (value === holder) return true;
  return typeof value === 'object' && value !== null && Object.values(value).some((inner) => contains(inner, holder));
}

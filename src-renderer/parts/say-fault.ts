import type { Fault } from '../../shared-core/base/index.ts';

const KEY_WORDS: Readonly<Record<string, string>> = {
  at: 'the place',
  from: 'its beginning',
  to: 'its upper edge',
  walls: 'what it covers',
  turn: 'the corner',
  lengths: 'the way of measuring',
};

/** A fault as a sentence: 'Width is 3 m: …' from the last word of its path and what is said of it. */
export function sayFault({ path, message }: Fault): string {
  const key = path.split('.').at(-1) ?? '';
  const isOneOfMany = /\[\d+\]$/.test(key);
  const plain = key.replace(isOneOfMany ? /s?\[\d+\]$/ : '', '');
  const words = KEY_WORDS[plain] ?? plain.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  const sentence = words === '' ? message : `${words} ${message}`;
  const closed = /[.?]$/.test(sentence) ? sentence : `${sentence}.`;
  return closed.charAt(0).toUpperCase() + closed.slice(1);
}

export function sayFaults(faults: readonly Fault[]): string | null {
  return faults.length === 0 ? null : faults.map(sayFault).join(' ');
}

import type { Fault } from '../../shared-core/base/index.ts';
import { FACT_WORDS } from './fact-words.ts';

/** A fault as a sentence: 'Width is 3 m: …' from the last word of its path and what is said of it. */
export function sayFault({ path, message }: Fault): string {
  const key = path.split('.').at(-1) ?? '';
  const plain = key.replace(/ies\[\d+\]$/, 'y').replace(/s?\[\d+\]$/, '');
  const words = FACT_WORDS[plain] ?? plain.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  const sentence = words === '' ? message : `${words} ${message}`;
  const closed = /[.?]$/.test(sentence) ? sentence : `${sentence}.`;
  return closed.charAt(0).toUpperCase() + closed.slice(1);
}

export function sayFaults(faults: readonly Fault[]): string | null {
  return faults.length === 0 ? null : faults.map(sayFault).join(' ');
}

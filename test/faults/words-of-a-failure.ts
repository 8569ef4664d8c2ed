import type { Reply } from '../../shared-core/contract/index.ts';

/** What no user is to read: a stack, a code, what a program prints of what is not there, a library's own words. */
const RAW = /undefined|\[object|NaN|\bError\b|SQLITE_|SqliteError|malformed|not a database|no such (?:table|column)|JSON at position|Unexpected (?:token|end)|\n\s+at |node:|Maximum call stack|Invalid string length/;

/** What is wrong with how a failure is said; null of a reply that is good, and of a failure that is said in whole words. */
export function badlySaid(reply: Reply<unknown>): string | null {
  if (reply.ok) return null;
  const { code, message, details } = reply.error;
  if (code === 'host-failure') return `the host failed: ${message}`;
  if (code === 'bad-argument') return `the call was not understood: ${message}`;
  const said = [message, ...details.map((detail) => detail.message)];
  const empty = said.some((words) => words.trim() === '');
  // What somebody wrote may say anything, and is quoted.
  const raw = said.find((words) => RAW.test(words.replaceAll(/"(?:[^"\\]|\\.)*"|‘[^’]*’/g, '…')));
  if (empty || !/[.?!]$/.test(message.trim())) return `no sentence: ${JSON.stringify(said)}`;
  return raw === undefined ? null : `no words for a user: ${raw}`;
}

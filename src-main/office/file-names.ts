/** With an ending, a count and what SQLite puts behind it every disk still takes it. */
const MOST_BYTES = 200;
const MOST_CHARACTERS = 80;

/** What no disk takes in a name, what would lead elsewhere, and what cannot be seen or turns the rest round. */
const NEVER_IN_A_NAME = /[/\\:*?"<>|\p{C}\p{Zl}\p{Zp}]+/gu;
const NEVER_AT_ITS_ENDS = /^[\s.-]+|[\s.]+$/gu;
/** Names that Windows keeps for devices, whatever ending they have. */
const DEVICE = /^(?:con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³]|conin\$|conout\$)(?:\.|$)/iu;

/**
 * A name that somebody gave as the name of a file on any system, with what follows it: never a path, never hidden, at
 * most 200 bytes long. Where nothing is left of it, it is 'House'.
 *
 * Example: of '../CON.doc: 1' and '.json' it is '_CON.doc 1.json'.
 */
export function fileNameOf(name: string, rest: string): string {
  const plain = name.normalize('NFC').toWellFormed().replace(NEVER_IN_A_NAME, ' ').replace(/\s+/gu, ' ').replace(NEVER_AT_ITS_ENDS, '');
  const safe = DEVICE.test(plain) ? `_${plain}` : plain;
  const room = MOST_BYTES - Buffer.byteLength(rest);
  let short = '';
  for (const character of [...safe].slice(0, MOST_CHARACTERS)) {
    if (Buffer.byteLength(short + character) > room) break;
    short += character;
  }
  return `${short.replace(NEVER_AT_ITS_ENDS, '') || 'House'}${rest}`;
}

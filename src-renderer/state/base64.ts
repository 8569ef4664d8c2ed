const BYTES_AT_ONCE = 0x8000;

/** Bytes in base64. Example: of 77 and 97 it is 'TWE='. */
export function toBase64(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let from = 0; from < bytes.length; from += BYTES_AT_ONCE) parts.push(String.fromCharCode(...bytes.subarray(from, from + BYTES_AT_ONCE)));
  return btoa(parts.join(''));
}

/** The bytes that stand in base64. Example: of 'TWE=' they are 77 and 97. */
export function fromBase64(text: string): Uint8Array {
  return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
}

/** A picture's own text. No SVG: it could hold more than a picture. */
export const IMAGE_PATTERN = /^data:image\/(?:png|jpeg|webp);base64,[A-Za-z0-9+/]+={0,2}$/;
/** More than any camera's picture shrunk for a house; what says that it is larger would take a window's whole memory. */
export const MOST_PIXELS = 4000;

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Some bytes of an image, and zeros past its end. */
type Bytes = (from: number, count: number) => readonly number[];

interface Form {
  /** What every image of this form begins with; null stands for any byte. */
  readonly begins: readonly (number | null)[];
  /** How many pixels wide and high it says that it is; null where it says nothing, and so can't be shown. */
  sizeOf(bytes: Bytes, length: number): readonly [number, number] | null;
}

const codes = (text: string) => [...text].map((letter) => letter.charCodeAt(0));
const largeEnd = (bytes: readonly number[]) => bytes.reduce((value, byte) => value * 256 + byte, 0);
const smallEnd = (bytes: readonly number[]) => largeEnd(bytes.toReversed());

/** Sources: PNG (ISO/IEC 15948), JPEG (ITU-T T.81), the WebP container specification; all from memory. */
const FORMS: Readonly<Record<string, Form>> = {
  png: {
    begins: [0x89, ...codes('PNG\r\n'), 0x1a, 0x0a],
    sizeOf: (bytes) => [largeEnd(bytes(16, 4)), largeEnd(bytes(20, 4))],
  },
  jpeg: { begins: [0xff, 0xd8, 0xff], sizeOf: sizeOfJpeg },
  webp: { begins: [...codes('RIFF'), null, null, null, null, ...codes('WEBP')], sizeOf: sizeOfWebp },
};

/**
 * Whether a text is a picture of dots as a data URL: PNG, JPEG or WebP by what it begins with and not by its word alone,
 * and of no more than 4,000 pixels each way.
 *
 * What it holds behind its beginning is not looked at; what can't be shown shows nothing.
 * Example: 'data:image/png;base64,iVBORw0KGgo=' is one, 'data:image/jpeg;base64,iVBORw0KGgo=' is not.
 */
export function isRasterImage(image: string): boolean {
  if (!IMAGE_PATTERN.test(image)) return false;
  const data = image.indexOf(',') + 1;
  const form = FORMS[image.slice('data:image/'.length, image.indexOf(';'))]!;
  const length = Math.floor(((image.length - data) * 3) / 4);
  const bytes: Bytes = (from, count) => bytesOf(image, data, from, count);
  const head = bytes(0, form.begins.length);
  if (!form.begins.every((byte, index) => byte === null || byte === head[index])) return false;
  return (form.sizeOf(bytes, length) ?? []).every((pixels) => pixels <= MOST_PIXELS);
}

/** Four characters stand for three bytes, so that any of them can be read without those before. */
function bytesOf(image: string, data: number, from: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => {
    const at = from + index;
    const [group, place] = [data + Math.floor(at / 3) * 4, at % 3];
    const digit = (which: number) => Math.max(0, DIGITS.indexOf(image.charAt(group + which) || '='));
    return ((digit(place) << (2 * place + 2)) | (digit(place + 1) >> (4 - 2 * place))) & 0xff;
  });
}

/** From one part to the next, each of which says how long it is, as far as the one that begins the picture. */
function sizeOfJpeg(bytes: Bytes, length: number): readonly [number, number] | null {
  for (let at = 2; at < length; ) {
    const [mark, kind, high, low] = bytes(at, 4) as [number, number, number, number];
    if (mark !== 0xff) return null;
    const isFrame = kind >= 0xc0 && kind <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(kind);
    if (isFrame) return [largeEnd(bytes(at + 7, 2)), largeEnd(bytes(at + 5, 2))];
    // Any number of such bytes may stand before a mark, and some marks stand alone.
    const isAlone = kind === 0x01 || (kind >= 0xd0 && kind <= 0xd8);
    at += kind === 0xff ? 1 : isAlone ? 2 : 2 + high * 256 + low;
  }
  return null;
}

function sizeOfWebp(bytes: Bytes): readonly [number, number] | null {
  switch (String.fromCharCode(...bytes(12, 4))) {
    case 'VP8X':
      return [smallEnd(bytes(24, 3)) + 1, smallEnd(bytes(27, 3)) + 1];
    case 'VP8 ':
      return [smallEnd(bytes(26, 2)) % 0x4000, smallEnd(bytes(28, 2)) % 0x4000];
    case 'VP8L': {
      const both = smallEnd(bytes(21, 4));
      return [(both % 0x4000) + 1, (Math.floor(both / 0x4000) % 0x4000) + 1];
    }
    default:
      return null;
  }
}

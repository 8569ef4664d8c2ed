import { crc32, deflateSync } from 'node:zlib';

/** A picture, rings on a plain ground unless it is painted otherwise, as a PNG of 8 bits a channel. */
export function png(width: number, height: number, paint = rings(width, height)): Buffer {
  const row = 1 + width * 3;
  const pixels = Buffer.alloc(row * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      pixels.set(paint(x, y), y * row + 1 + x * 3);
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), chunk('IHDR', header), chunk('IDAT', deflateSync(pixels)), chunk('IEND', Buffer.alloc(0))]);
}

type Paint = (x: number, y: number) => readonly number[];

function rings(width: number, height: number): Paint {
  return (x, y) => {
    const distance = Math.hypot(x - width / 2, y - height / 2);
    return Math.floor(distance / 30) % 2 === 0 && distance < Math.min(width, height) / 2 ? [40, 92, 70] : [236, 226, 202];
  };
}

/** What a picture is hardest to make small of. */
export function noise(): Paint {
  let state = 1;
  const next = () => {
    state = (state * 1_103_515_245 + 12_345) % 2 ** 31;
    return Math.floor(state / 2 ** 16) % 256;
  };
  return () => [next(), next(), next()];
}

function chunk(kind: string, content: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(kind, 'latin1'), content]);
  const framed = Buffer.alloc(named.length + 8);
  framed.writeUInt32BE(content.length, 0);
  named.copy(framed, 4);
  framed.writeUInt32BE(crc32(named), named.length + 4);
  return framed;
}

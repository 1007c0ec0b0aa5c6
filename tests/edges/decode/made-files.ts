/** Files made on the spot for the decoding tests, with an encoder only: nothing here goes through the code under test. */
import sharp, { type Sharp } from 'sharp';

export interface RawPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly srgb: Uint8Array;
}

/** Park–Miller minimal standard generator (Park and Miller, 1988): the same grain in every run. */
function grain(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Unlike itself in all eight positions: brighter to the right, redder to the bottom, one dark corner, with grain. */
export function asymmetricPicture(widthPx = 400, heightPx = 304): RawPicture {
  const next = grain(7);
  const srgb = new Uint8Array(widthPx * heightPx * 3);
  for (let row = 0; row < heightPx; row += 1) {
    for (let column = 0; column < widthPx; column += 1) {
      const corner = row < 40 && column < 60 ? 70 : 0;
      const base = 80 + (90 * column) / widthPx - corner;
      const at = (row * widthPx + column) * 3;
      srgb[at] = base + (60 * row) / heightPx + 8 * next();
      srgb[at + 1] = base + 8 * next();
      srgb[at + 2] = base - 8 * next();
    }
  }
  return { widthPx, heightPx, srgb };
}

/** One colour everywhere. */
export function plainPicture(rgb: readonly [number, number, number], widthPx = 400, heightPx = 300): RawPicture {
  const srgb = new Uint8Array(widthPx * heightPx * 3).map((_, i) => rgb[i % 3]);
  return { widthPx, heightPx, srgb };
}

/** A picture handed to the encoder, without file and without metadata. `encoder(picture).jpeg().toBuffer()` */
export function encoder({ widthPx, heightPx, srgb }: RawPicture): Sharp {
  return sharp(srgb, { raw: { width: widthPx, height: heightPx, channels: 3 } });
}

/** A plain view, as it comes from a request body: not a Buffer. */
export const plainBytes = (buffer: Buffer): Uint8Array => new Uint8Array(buffer);

/** Writes another size into a JPEG's frame header (ITU-T T.81, B.2.2: precision, lines, samples per line). */
export function withStatedJpegSize(jpeg: Uint8Array, widthPx: number, heightPx: number): Uint8Array {
  const forged = Buffer.from(jpeg);
  const frame = forged.indexOf(Buffer.from([0xff, 0xc0]));
  forged.writeUInt16BE(heightPx, frame + 5);
  forged.writeUInt16BE(widthPx, frame + 7);
  return plainBytes(forged);
}

/** A PNG chunk with its length and checksum (W3C PNG, 5.3). */
export function pngChunk(type: string, data: Uint8Array): Uint8Array {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const chunk = Buffer.alloc(body.length + 8);
  chunk.writeUInt32BE(data.length, 0);
  body.copy(chunk, 4);
  chunk.writeUInt32BE(crc32(body), body.length + 4);
  return chunk;
}

/** Puts a chunk behind the header chunk of a PNG. */
export function withPngChunk(png: Uint8Array, type: string, data: Uint8Array): Uint8Array {
  const afterHeader = 8 + 25;
  return plainBytes(Buffer.concat([png.subarray(0, afterHeader), pngChunk(type, data), png.subarray(afterHeader)]));
}

/** CRC-32 of ISO 3309, as in W3C PNG annex D. */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

/** Mean absolute difference of code values; throws where the sizes differ. */
export function meanDifference(one: Uint8Array, other: Uint8Array): number {
  if (one.length !== other.length) throw new RangeError(`sizes differ: ${one.length} and ${other.length}`);
  return one.reduce((sum, code, i) => sum + Math.abs(code - other[i]), 0) / one.length;
}

/** Adobe RGB (1998) colour image encoding, annex: media white relative primaries in the D50 connection space. */
export const ADOBE_RGB_D50 = [0.60974, 0.31111, 0.01947, 0.20528, 0.62567, 0.06087, 0.14919, 0.06322, 0.74457];

/** A display profile of three primaries (X, Y, Z each, D50) and one power curve; ICC.1:2022 with version 2 tags. */
export function matrixProfile(primariesD50: readonly number[], gamma: number): Uint8Array {
  const fixed = (value: number): Buffer => {
    const bytes = Buffer.alloc(4);
    bytes.writeInt32BE(Math.round(value * 65536));
    return bytes;
  };
  const word = (letters: string): Buffer => Buffer.concat([Buffer.from(letters, 'latin1'), Buffer.alloc(4)]);
  const whole = (value: number): Buffer => {
    const bytes = Buffer.alloc(4);
    bytes.writeUInt32BE(value);
    return bytes;
  };
  const xyz = (values: readonly number[]): Buffer => Buffer.concat([word('XYZ '), ...values.map(fixed)]);
  const curve = Buffer.concat([word('curv'), whole(1), Buffer.from([Math.floor(gamma), Math.round((gamma % 1) * 256)]), Buffer.alloc(2)]);
  const name = Buffer.concat([word('desc'), whole(5), Buffer.from('Made\0'), Buffer.alloc(79)]);
  const parts: readonly (readonly [string, Buffer])[] = [
    ['desc', name],
    ['cprt', Buffer.concat([word('text'), Buffer.from('CC0\0')])],
    ['wtpt', xyz([0.9642, 1, 0.8249])],
    ...['r', 'g', 'b'].map((letter, i) => [`${letter}XYZ`, xyz(primariesD50.slice(i * 3, i * 3 + 3))] as const),
    ...['r', 'g', 'b'].map((letter) => [`${letter}TRC`, curve] as const),
  ];
  let offset = 128 + 4 + parts.length * 12;
  const table: Buffer[] = [whole(parts.length)];
  for (const [tag, data] of parts) {
    table.push(Buffer.from(tag, 'latin1'), whole(offset), whole(data.length));
    offset += data.length;
  }
  const header = Buffer.alloc(128);
  header.writeUInt32BE(offset, 0);
  header.writeUInt32BE(0x02400000, 8);
  header.write('mntrRGB XYZ ', 12, 'latin1');
  header.write('acsp', 36, 'latin1');
  xyz([0.9642, 1, 0.8249]).copy(header, 68, 8);
  return Buffer.concat([header, ...table, ...parts.map(([, data]) => data)]);
}

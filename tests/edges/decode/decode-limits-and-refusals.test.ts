import sharp from 'sharp';
import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { isRefused } from '../../../lib/edges/decode/container-header';
import { decodePhoto } from '../../../lib/edges/decode/decode-photo';
import { readHeader } from '../../../lib/edges/decode/read-header';
import { DECODE_REFUSAL_SENTENCE } from '../../../lib/photo/decode-refusals';
import { asymmetricPicture, encoder, plainBytes, pngChunk, withPngChunk, withStatedJpegSize } from './made-files';

const refusalOf = async (bytes: Uint8Array): Promise<string> => {
  const result = await decodePhoto(bytes);
  if (result.decoded) return 'decoded';
  expect(result.refusal.sentence).toBe(DECODE_REFUSAL_SENTENCE[result.refusal.id]);
  return result.refusal.id;
};
const text = (words: string): Uint8Array => new TextEncoder().encode(words);
const picture = encoder(asymmetricPicture());
const jpeg = plainBytes(await picture.clone().jpeg({ quality: 90 }).toBuffer());
const png = plainBytes(await picture.clone().png().toBuffer());
const webp = plainBytes(await picture.clone().webp({ quality: 90 }).toBuffer());
const progressive = plainBytes(await picture.clone().jpeg({ progressive: true }).toBuffer());
const gif = plainBytes(await picture.clone().gif().toBuffer());
const avif = plainBytes(await picture.clone().resize(64).avif({ effort: 0 }).toBuffer());

describe('a file that is no photo', () => {
  it.each([
    ['a drawing', text('<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" width="400" height="400"/>')],
    ['a drawing without a declaration', text('\n  <svg xmlns="http://www.w3.org/2000/svg"/>')],
    ['a document', text('%PDF-1.7\n1 0 obj\n<<>>\nendobj')],
    ['a TIFF', text('II*\0\x08\0\0\0')],
    ['a GIF', gif],
    ['an AVIF', avif],
    ['a film', text('\0\0\0\x18ftypisom\0\0\0\0isommp42')],
    ['a few words', text('not a photo at all')],
  ])('is refused by its content, whatever it is called: %s', async (_, bytes) => {
    expect(await refusalOf(bytes)).toBe('unsupportedFormat');
  });

  it('is refused when it is empty', async () => {
    expect(await refusalOf(new Uint8Array(0))).toBe('emptyFile');
  });

  it('cannot reach another loader of the picture library even when asked directly', async () => {
    const drawing = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>');
    await expect(sharp(drawing).raw().toBuffer()).rejects.toThrow(/unsupported image format/);
  });
});

describe('a photo that was cut off', () => {
  const cases = [0.3, 0.6, 0.95].flatMap((share) =>
    Object.entries({ jpeg, progressive, png, webp }).map(([kind, bytes]) => [kind, share, bytes] as const),
  );

  it.each(cases)('is refused: %s at %d', async (_, share, bytes) => {
    expect(await refusalOf(bytes.subarray(0, Math.floor(bytes.length * share)))).toBe('truncated');
  });

  it.each([0.3, 0.6, 0.95])('is refused when only an end marker was put behind the cut at %d', async (share) => {
    const cut = jpeg.subarray(0, Math.floor(jpeg.length * share));
    expect(await refusalOf(Uint8Array.of(...cut, 0xff, 0xd9))).toBe('truncated');
  });

  it('is refused when its last two bytes, the end marker, are missing', async () => {
    expect(await refusalOf(jpeg.subarray(0, -2))).toBe('truncated');
  });
});

describe('a photo that is whole but odd', () => {
  it('is decoded when a second picture or padding follows the end marker', async () => {
    expect(await refusalOf(Uint8Array.of(...jpeg, ...jpeg))).toBe('decoded');
    expect(await refusalOf(Uint8Array.of(...jpeg, ...new Uint8Array(500)))).toBe('decoded');
  });

  it('is decoded when stray bytes stand between two segments', async () => {
    const afterStart = 2 + 2 + ((jpeg[4] << 8) | jpeg[5]);
    const stray = Uint8Array.of(...jpeg.subarray(0, afterStart), 1, 2, 3, ...jpeg.subarray(afterStart));
    await expect(sharp(stray, { failOn: 'warning' }).raw().toBuffer()).rejects.toThrow(/extraneous bytes/);
    expect(await refusalOf(stray)).toBe('decoded');
  });

  it('is decoded when its start of scan carries odd spectral limits, as some phones write them', async () => {
    const odd = Buffer.from(jpeg);
    const scan = odd.indexOf(Buffer.from([0xff, 0xda]));
    // Ss, Se, AhAl of a sequential scan are 0, 63, 0 (ITU-T T.81, B.2.3); decoders warn and go on.
    odd[scan + 2 + odd.readUInt16BE(scan + 2) - 2] = 0;
    await expect(sharp(odd, { failOn: 'warning' }).raw().toBuffer()).rejects.toThrow(/Invalid SOS parameters/);
    expect(await refusalOf(plainBytes(odd))).toBe('decoded');
  });

  it('is refused when its coded data is damaged in the middle', async () => {
    const broken = Buffer.from(jpeg);
    broken.fill(0x5a, broken.length >> 1, (broken.length >> 1) + 3000);
    expect(await refusalOf(plainBytes(broken))).not.toBe('decoded');
  });

  it('is refused when another size is written into its header than was coded', async () => {
    expect(await refusalOf(withStatedJpegSize(jpeg, 400, 3040))).toBe('truncated');
  });
});

describe('the limits', () => {
  it('refuse more than 64 million pixels before decoding', async () => {
    expect(await refusalOf(withStatedJpegSize(jpeg, 30_000, 30_000))).toBe('tooManyPixels');
    const header = Buffer.from(png.subarray(16, 29));
    header.writeUInt32BE(30_000, 0);
    header.writeUInt32BE(30_000, 4);
    const forged = Buffer.concat([png.subarray(0, 8), pngChunk('IHDR', header), png.subarray(33)]);
    expect(await refusalOf(plainBytes(forged))).toBe('tooManyPixels');
  });

  it('refuse a picture whose long edge is below 320 pixels', async () => {
    const edge = async (px: number) => plainBytes(await encoder(asymmetricPicture(px, 200)).jpeg().toBuffer());
    expect(await refusalOf(await edge(319))).toBe('tooSmall');
    expect(await refusalOf(await edge(320))).toBe('decoded');
  });

  it('refuse a file beyond the byte limit that the caller sets', async () => {
    const result = await decodePhoto(jpeg, null, { maxPixels: 1e6, minLongEdgePx: 1, maxFileBytes: 1000 });
    expect(result).toMatchObject({ decoded: false, refusal: { id: 'fileTooLarge' } });
  });

  it('refuse an animation of 500 frames, and an animated PNG', async () => {
    const frames = new Uint8Array(32 * 32 * 3 * 500).map((_, i) => (i >> 10) % 251);
    const raw = { width: 32, height: 32 * 500, channels: 3, pageHeight: 32 } as const;
    const animation = plainBytes(await sharp(frames, { raw }).webp({ quality: 1, effort: 0 }).toBuffer());
    expect(await refusalOf(animation)).toBe('severalPictures');
    const control = Buffer.alloc(8);
    control.writeUInt32BE(500, 0);
    expect(await refusalOf(withPngChunk(png, 'acTL', control))).toBe('severalPictures');
  });

  it('never let a text chunk, which can unpack to gigabytes, reach a decoder', async () => {
    const words = Buffer.concat([Buffer.from('Comment\0\0', 'latin1'), deflateSync(Buffer.alloc(1_000_000))]);
    const withWords = withPngChunk(png, 'zTXt', words);
    expect(await refusalOf(withWords)).toBe('decoded');
    const header = readHeader(withWords);
    if (isRefused(header)) throw new Error(header.detail);
    expect(Buffer.from(header.picture).includes('zTXt')).toBe(false);
  });

  it('refuse a colour profile that unpacks to more than any profile holds', async () => {
    const bomb = Buffer.concat([Buffer.from('profile\0\0', 'latin1'), deflateSync(Buffer.alloc(5_000_000))]);
    expect(await refusalOf(withPngChunk(png, 'iCCP', bomb))).toBe('unsupportedColour');
  });

  it('refuse a file that is nothing but hundreds of thousands of empty parts', async () => {
    const empty = Buffer.concat(Array<Uint8Array>(200_000).fill(pngChunk('junk', new Uint8Array(0))));
    const parts = plainBytes(Buffer.concat([png.subarray(0, 33), empty, png.subarray(33)]));
    expect(await refusalOf(parts)).toBe('truncated');
    const boxes = Buffer.concat([Buffer.from('\0\0\0\x10ftypheic\0\0\0\0'), Buffer.alloc(2_000_000, '\0\0\0\x08free')]);
    expect(await refusalOf(plainBytes(boxes))).toBe('corrupt');
  });

  it('refuse high dynamic range code points instead of guessing their colours', async () => {
    expect(await refusalOf(withPngChunk(png, 'cICP', Uint8Array.of(9, 16, 0, 1)))).toBe('unsupportedColour');
  });
});

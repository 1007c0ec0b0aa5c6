/** Files made by others, with what exiftool read from them (facts.json beside them): the truth of this test. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DECODE_LIMITS } from '../../../lib/edges/decode/check-limits';
import { isRefused } from '../../../lib/edges/decode/container-header';
import { decodeHeic } from '../../../lib/edges/decode/decode-heic';
import { decodePhoto, type DecodeResult } from '../../../lib/edges/decode/decode-photo';
import { readHeader } from '../../../lib/edges/decode/read-header';
import type { CaptureFacts, UprightPhoto } from '../../../lib/photo/upright-photo';
import { hasSharedData, sharedFile } from '../../shared-data';
import { REFUSED } from './expected-refusals';

interface Fact {
  readonly ImageWidth?: number;
  readonly ImageHeight?: number;
  readonly Orientation?: number;
  readonly GPSLatitude?: number;
  readonly GPSLongitude?: number;
}

const here = hasSharedData('decode');
const facts = here ? (JSON.parse(readFileSync(sharedFile('decode', 'facts.json'), 'utf8')) as Record<string, Fact>) : {};
const bytesOf = (name: string): Uint8Array => new Uint8Array(readFileSync(sharedFile('decode', name)));
const open = (name: string): Promise<DecodeResult> => decodePhoto(bytesOf(name));
/** Several of the files are a few pixels large on purpose. */
const openAnySize = (name: string): Promise<DecodeResult> =>
  decodePhoto(bytesOf(name), null, { ...DECODE_LIMITS, minLongEdgePx: 1 });

async function photoOf(name: string): Promise<UprightPhoto> {
  const result = await openAnySize(name);
  if (!result.decoded) throw new Error(`${name}: ${result.refusal.id} ${result.refusal.detail}`);
  return result.photo;
}

const COLOUR_SPACE: Readonly<Record<string, CaptureFacts['colourSpace']>> = {
  'cmyk_adobe_noprofile.jpg': 'cmyk',
  'gps_fujifilm_a.jpg': 'srgb',
  'gps_htc_desire.jpg': 'srgb',
  'icc_over_400kB.jpg': 'other-profile',
  'iphone11pro_p3.heic': 'display-p3',
  'iphone13mini_p3_gainmap.jpg': 'display-p3',
  'orient_landscape_2.jpg': 'other-profile',
  'p3_red.png': 'display-p3',
  'progressive_cat.jpg': 'srgb',
};

describe.skipIf(!here)('files made by others', () => {
  it('are all known to this test', () => {
    expect(Object.keys(REFUSED).every((name) => name in facts)).toBe(true);
    expect(Object.keys(facts).length).toBe(38);
  });

  it.each(Object.entries(REFUSED))('are refused with a reason: %s, %s', async (name, id) => {
    expect(await open(name)).toMatchObject({ decoded: false, refusal: { id } });
  });

  it.each(Object.keys(facts).filter((name) => !(name in REFUSED)))('are decoded to their stated size: %s', async (name) => {
    const { ImageWidth: width, ImageHeight: height, Orientation: orientation = 1 } = facts[name];
    const photo = await photoOf(name);
    // A HEIC's stated size is upright already (exiftool reads it after rotation); the others swap for 5…8.
    const upright = orientation >= 5 && photo.capture.format !== 'heic' ? [height, width] : [width, height];
    expect([photo.widthPx, photo.heightPx]).toEqual(upright);
    expect(photo.srgb.length).toBe(photo.widthPx * photo.heightPx * 3);
    expect(photo.capture.orientationTag).toBe(orientation);
    expect(photo.sha256).toBe(createHash('sha256').update(bytesOf(name)).digest('hex'));
  });

  it.each(Object.entries(COLOUR_SPACE))('say which colours they use: %s, %s', async (name, colourSpace) => {
    expect((await photoOf(name)).capture.colourSpace).toBe(colourSpace);
  });

  it.each(Object.keys(facts).filter((name) => facts[name].GPSLatitude !== undefined))(
    'leave nothing of their position behind: %s',
    async (name) => {
      const photo = await photoOf(name);
      const said = JSON.stringify({ ...photo, srgb: null });
      for (const degrees of [facts[name].GPSLatitude, facts[name].GPSLongitude]) {
        if (degrees === undefined) continue;
        expect(said).not.toContain(Math.abs(degrees).toFixed(1));
        expect(said).not.toContain(String(Math.trunc(Math.abs(degrees))) + '.');
      }
      expect(said).not.toMatch(/gps|latitude|longitude|serial/i);
    },
  );
});

/** Mean of a rectangle given in shares of the picture. */
function meanRgb(photo: UprightPhoto, [left, top, right, bottom]: readonly number[]): number[] {
  const sums = [0, 0, 0, 0];
  for (let row = Math.floor(top * photo.heightPx); row < bottom * photo.heightPx; row += 1) {
    for (let column = Math.floor(left * photo.widthPx); column < right * photo.widthPx; column += 1) {
      for (let channel = 0; channel < 3; channel += 1) sums[channel] += photo.srgb[(row * photo.widthPx + column) * 3 + channel];
      sums[3] += 1;
    }
  }
  return sums.slice(0, 3).map((sum) => sum / sums[3]);
}

describe.skipIf(!here)('what files made by others show', () => {
  it('is the same upright scene for all eight orientations (blocks of an eighth, away from the printed digit)', async () => {
    const blocks = Array.from({ length: 64 }, (_, i) => {
      const [left, top] = [(i % 8) / 8, Math.floor(i / 8) / 8];
      return [left, top, left + 1 / 8, top + 1 / 8];
    }).filter(([left, top]) => Math.abs(left - 7 / 16) > 0.2 || Math.abs(top - 7 / 16) > 0.2);
    const greenOf = (photo: UprightPhoto) => blocks.map((block) => meanRgb(photo, block)[1]);
    const first = greenOf(await photoOf('orient_landscape_2.jpg'));
    for (const orientation of [1, 3, 4, 5, 6, 7, 8]) {
      const other = greenOf(await photoOf(`orient_landscape_${orientation}.jpg`));
      expect(correlation(first, other), `orientation ${orientation}`).toBeGreaterThan(0.97);
    }
  });

  it('is red where CMYK says red: the Adobe marker turns the inks round', async () => {
    const [red, green, blue] = meanRgb(await photoOf('cmyk_adobe_noprofile.jpg'), [0, 0, 0.05, 0.05]);
    expect(red).toBeGreaterThan(150);
    expect(Math.max(green, blue)).toBeLessThan(90);
  });

  it('is red, white and blue in the bands of a 16 bit flag', async () => {
    const photo = await photoOf('png16_rgb_flag.png');
    const bands = [0.1, 0.5, 0.9].map((middle) => meanRgb(photo, [middle - 0.02, 0.45, middle + 0.02, 0.55]));
    const rows = [0.1, 0.5, 0.9].map((middle) => meanRgb(photo, [0.45, middle - 0.02, 0.55, middle + 0.02]));
    const [first, second, third] = Math.abs(bands[0][2] - bands[2][2]) > 50 ? bands : rows;
    expect(first[0] - first[2]).toBeGreaterThan(80);
    expect(Math.min(...second)).toBeGreaterThan(240);
    expect(third[2] - third[0]).toBeGreaterThan(50);
  });

  it('is the first picture of a gain-map file, with the gain map noted', async () => {
    const photo = await photoOf('iphone13mini_p3_gainmap.jpg');
    expect(photo.capture).toMatchObject({ hasGainMap: true, deviceClass: 'phone', focalLength35Mm: 26, utcOffset: '+01:00' });
    expect((await photoOf('gps_htc_desire.jpg')).capture.hasGainMap).toBe(false);
  });
});

function correlation(one: readonly number[], other: readonly number[]): number {
  const centred = (values: readonly number[]) => values.map((value) => value - values.reduce((a, b) => a + b, 0) / values.length);
  const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, value, i) => sum + value * b[i], 0);
  const [a, b] = [centred(one), centred(other)];
  return dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b));
}

describe.skipIf(!here)('a HEIC made by another phone', () => {
  const phone = 'iphone11pro_p3.heic';

  it('is decoded again and again with memory that stays bounded', async () => {
    const sizes: number[] = [];
    for (let i = 0; i < 4; i += 1) {
      await open(phone);
      sizes.push(process.memoryUsage().rss);
    }
    // One decoded picture is 37 MB; a decoder that never let go would add 85 MB and more with every file.
    expect(sizes[3] - sizes[1]).toBeLessThan(150_000_000);
  });

  it.each([0.3, 0.6, 0.95])('is refused when it was cut off at %d', async (share) => {
    const bytes = bytesOf(phone);
    const result = await decodePhoto(bytes.subarray(0, Math.floor(bytes.length * share)));
    expect(result).toMatchObject({ decoded: false, refusal: { id: 'truncated' } });
  });

  it('is refused before decoding when any of its parts claims more than 64 million pixels', async () => {
    const forged = Buffer.from(bytesOf(phone));
    forged.writeUInt32BE(30_000, forged.indexOf('ispe') + 8);
    forged.writeUInt32BE(30_000, forged.indexOf('ispe') + 12);
    expect(await decodePhoto(new Uint8Array(forged))).toMatchObject({ refusal: { id: 'tooManyPixels' } });
  });

  it.each([0.3, 0.6, 0.95])('is refused when everything from %d on is zeros or noise', async (share) => {
    for (const fill of [() => 0, (i: number) => (i * 73) & 0xff]) {
      const forged = bytesOf(phone);
      for (let i = Math.floor(forged.length * share); i < forged.length; i += 1) forged[i] = fill(i);
      expect(await decodePhoto(forged)).toMatchObject({ decoded: false, refusal: { id: 'corrupt' } });
    }
  });

  it('is refused, and takes nothing down, when the decoder itself cannot make sense of it', async () => {
    const forged = Buffer.from(bytesOf(phone));
    const setup = forged.indexOf('hvcC');
    forged.fill(0xff, setup + 30, setup + 100);
    const result = await decodePhoto(new Uint8Array(forged));
    expect(result).toMatchObject({ decoded: false, refusal: { id: 'corrupt' } });
  });

  it('is stopped by the clock, and the next one is decoded as usual', async () => {
    const header = readHeader(bytesOf(phone));
    if (isRefused(header)) throw new Error(header.detail);
    expect(await decodeHeic(header, 1)).toMatchObject({ id: 'tookTooLong' });
    const again = await decodeHeic(header);
    expect('widthPx' in again && [again.widthPx, again.heightPx]).toEqual([3024, 4032]);
  });

  it('is turned by its own rotation only, never by the EXIF tag as well', async () => {
    const forged = Buffer.from(bytesOf(phone));
    const exif = forged.indexOf('Exif\0\0MM', 4000, 'latin1') + 6;
    const tag = forged.indexOf(Buffer.from([0x01, 0x12, 0x00, 0x03]), exif);
    forged.writeUInt16BE(6, tag + 8);
    const result = await decodePhoto(new Uint8Array(forged));
    if (!result.decoded) throw new Error(result.refusal.detail);
    expect(result.photo.capture.orientationTag).toBe(6);
    expect([result.photo.widthPx, result.photo.heightPx]).toEqual([3024, 4032]);
  });
});

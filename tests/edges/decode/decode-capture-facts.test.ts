import { describe, expect, it } from 'vitest';
import { decodePhoto } from '../../../lib/edges/decode/decode-photo';
import type { CaptureFacts } from '../../../lib/photo/upright-photo';
import { asymmetricPicture, encoder, plainBytes } from './made-files';

const factsOf = async (bytes: Uint8Array): Promise<CaptureFacts> => {
  const result = await decodePhoto(bytes);
  if (!result.decoded) throw new Error(`${result.refusal.id}: ${result.refusal.detail}`);
  return result.photo.capture;
};

const picture = encoder(asymmetricPicture());
const phone = {
  IFD0: { Make: 'Invented', Model: 'Phone Nine', DateTime: '2026:03:05 08:00:00' },
  IFD2: {
    DateTimeOriginal: '2026:03:02 19:32:31',
    OffsetTime: '+09:00',
    OffsetTimeOriginal: '-05:00',
    FocalLength: '51/10',
    FocalLengthIn35mmFilm: '26',
    LensModel: 'back camera 5.1mm f/1.6',
    BodySerialNumber: 'SERIAL-4711',
    DigitalZoomRatio: '2/1',
  },
  IFD3: {
    GPSLatitudeRef: 'N',
    GPSLatitude: '47/1 11/1 1234/100',
    GPSLongitudeRef: 'E',
    GPSLongitude: '8/1 32/1 5678/100',
  },
};

describe('what the file says about how it was taken', () => {
  it.each(['jpeg', 'png', 'webp'] as const)('is read from %s', async (format) => {
    const file = plainBytes(await picture.clone().withExif(phone).toFormat(format).toBuffer());
    expect(await factsOf(file)).toEqual({
      format,
      localTime: '2026-03-02T19:32:31',
      utcOffset: '-05:00',
      focalLengthMm: 5.1,
      focalLength35Mm: 26,
      lensModel: 'back camera 5.1mm f/1.6',
      digitalZoom: 2,
      deviceClass: 'phone',
      colourSpace: expect.stringMatching(/^(srgb|untagged)$/) as string,
      orientationTag: 1,
      hasGainMap: false,
    });
  });

  it('never takes the offset or the date of the last change for that of the photo', async () => {
    const edited = { IFD0: { DateTime: '2026:03:05 08:00:00' }, IFD2: { OffsetTime: '+09:00' } };
    const facts = await factsOf(plainBytes(await picture.clone().withExif(edited).jpeg().toBuffer()));
    expect([facts.localTime, facts.utcOffset]).toEqual([null, null]);
  });

  it('holds no position, no serial number, no maker and no model', async () => {
    const facts = JSON.stringify(await factsOf(plainBytes(await picture.clone().withExif(phone).jpeg().toBuffer())));
    for (const word of ['4711', '1234', '12.34', '47.18', '8.54', 'Invented', 'Nine', 'GPS']) {
      expect(facts).not.toContain(word);
    }
  });

  it('is absent, and the photo is still decoded, where the EXIF block is damaged anywhere', async () => {
    const file = await picture.clone().withExif(phone).jpeg().toBuffer();
    const start = file.indexOf('Exif\0\0') + 6;
    const length = file.readUInt16BE(start - 8) - 8;
    for (let at = 0; at < length; at += 7) {
      const damaged = Buffer.from(file);
      damaged.fill(0xff, start + at, start + Math.min(length, at + 7));
      const facts = await factsOf(plainBytes(damaged));
      expect(facts.orientationTag).toBe(1);
    }
  });
});

import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { classifyIccProfile } from '../../../lib/edges/decode/classify-icc-profile';
import { ADOBE_RGB_D50, encoder, matrixProfile, plainPicture } from './made-files';

/** color.org, "sRGB profiles": the primaries of sRGB in the D50 connection space. */
const SRGB_D50 = [0.43607, 0.22249, 0.01392, 0.38515, 0.71687, 0.09708, 0.14307, 0.06061, 0.7141];

async function embedded(name: 'srgb' | 'p3' | 'cmyk'): Promise<Uint8Array> {
  const { icc } = await sharp(await encoder(plainPicture([9, 9, 9])).withIccProfile(name).jpeg().toBuffer()).metadata();
  if (!icc) throw new Error(`no profile in the ${name} file`);
  return icc;
}

describe('an embedded profile', () => {
  it('is known by its numbers', async () => {
    expect(classifyIccProfile(await embedded('srgb'))).toBe('srgb');
    expect(classifyIccProfile(await embedded('p3'))).toBe('display-p3');
    expect(classifyIccProfile(await embedded('cmyk'))).toBe('cmyk');
    expect(classifyIccProfile(matrixProfile(ADOBE_RGB_D50, 563 / 256))).toBe('other-profile');
  });

  it('with the primaries of sRGB and a plain power curve is not taken for sRGB', () => {
    expect(classifyIccProfile(matrixProfile(SRGB_D50, 2.2))).toBe('other-profile');
  });

  it('is left to the colour engine wherever it is damaged', async () => {
    const profile = await embedded('p3');
    for (let length = 0; length < profile.length; length += 5) {
      expect(['other-profile', 'display-p3']).toContain(classifyIccProfile(profile.subarray(0, length)));
    }
    expect(classifyIccProfile(new Uint8Array(0))).toBe('other-profile');
    expect(classifyIccProfile(new Uint8Array(600).fill(0xff))).toBe('other-profile');
  });
});

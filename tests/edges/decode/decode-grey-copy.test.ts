import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { decodePhoto } from '../../../lib/edges/decode/decode-photo';
import { detectFiducials } from '../../../lib/edges/vision/detect-fiducials';
import { openCv } from '../../../lib/edges/vision/open-cv';
import { findCard, quickLook } from '../../../lib/rectify/find-card';
import { type GreyImage, shrinkToGrey } from '../../../lib/rectify/grey-image';
import { ROOT } from '../../architecture/source-tree';
import { asymmetricPicture, encoder, plainBytes } from './made-files';

async function glanced(bytes: Uint8Array) {
  const copies: GreyImage[] = [];
  const result = await decodePhoto(bytes, (copy) => (copies.push(copy), null));
  return { copies, result };
}

const jpeg = async (widthPx: number, heightPx: number, orientation = 1) =>
  plainBytes(await encoder(asymmetricPicture(widthPx, heightPx)).withMetadata({ orientation }).jpeg({ quality: 92 }).toBuffer());

describe('the grey copy shown while a photo is decoded', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('lies on the photo as the one made from it does, turned by orientation %d', async (orientation) => {
    const { copies, result } = await glanced(await jpeg(2000, 1200, orientation));
    if (!result.decoded) throw new Error(result.refusal.detail);
    expect(copies).toHaveLength(1);
    const reference = shrinkToGrey(result.photo, 2);
    expect(copies[0]).toMatchObject({ shrink: 2, widthPx: reference.widthPx, heightPx: reference.heightPx });
    const apart = copies[0].grey.reduce((sum, code, i) => sum + Math.abs(code - reference.grey[i]), 0) / reference.grey.length;
    expect(apart).toBeLessThan(4);
  });

  it('is not offered where stored pixels are left over at an edge, nor for another format', async () => {
    expect((await glanced(await jpeg(2001, 1200))).copies).toEqual([]);
    expect((await glanced(plainBytes(await encoder(asymmetricPicture(2000, 1200)).png().toBuffer()))).copies).toEqual([]);
  });

  it('leaves it to the whole decode to say what is wrong with a file', async () => {
    const whole = await jpeg(2000, 1200);
    const { result } = await glanced(whole.subarray(0, Math.floor(whole.length / 2)));
    expect(result).toMatchObject({ decoded: false, refusal: { id: 'truncated' } });
  });

  it('leads to the same card as a search of the whole photo', async () => {
    const { cv } = await openCv();
    const detect = (image: GreyImage, dictionary: string, effort?: 'quick' | 'thorough') => detectFiducials(cv, image, dictionary, effort);
    const { copies, result } = await glanced(new Uint8Array(readFileSync(path.join(ROOT, 'sample-images', 'measured', 'light-warm-led.jpg'))));
    if (!result.decoded) throw new Error(result.refusal.detail);
    const late = findCard(result.photo, OWN_CARD, detect);
    const early = findCard(result.photo, OWN_CARD, detect, quickLook(copies[0], OWN_CARD, detect));
    if (!late.found || !early.found) throw new Error('The card was not found.');
    late.fit.imageFromCard.forEach((value, i) => expect(early.fit.imageFromCard[i] / value).toBeCloseTo(1, 4));
  });
});

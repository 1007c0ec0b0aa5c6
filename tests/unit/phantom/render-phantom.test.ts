import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { faultSpec } from '../../phantom/fault-spec';
import { FAULT_KINDS } from '../../phantom/phantom-spec';
import { renderMany } from '../../phantom/render-many';
import { renderPhantom } from '../../phantom/render-phantom';
import { gateOf } from '../../phantom/truth/scene-truth';
import { GATE_ADVICE } from '../../../lib/photo/reasons';
import { smallPhoto } from './small-photo';

async function upright(jpeg: Uint8Array): Promise<{ data: Buffer; width: number; height: number }> {
  const { data, info } = await sharp(jpeg).autoOrient().raw().toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height };
}

/** Mean absolute difference of code values. */
const differenceOf = (a: Buffer, b: Buffer): number => a.reduce((sum, value, i) => sum + Math.abs(value - b[i]), 0) / a.length;

describe('a rendered phantom', () => {
  it('is the same to the byte for the same spec, on a worker thread too', async () => {
    const spec = smallPhoto(31);
    const [here, [there]] = await Promise.all([renderPhantom(spec), renderMany([spec], 1)]);
    expect(Buffer.from(there.jpeg).equals(Buffer.from(here.jpeg))).toBe(true);
    expect(there.truth).toEqual(here.truth);
  });

  it('is another photo for another seed', async () => {
    const [a, b] = await Promise.all([renderPhantom(smallPhoto(31)), renderPhantom(smallPhoto(32))]);
    expect(Buffer.from(a.jpeg).equals(Buffer.from(b.jpeg))).toBe(false);
  });

  const plainly = renderPhantom(smallPhoto(33)).then(({ jpeg }) => upright(jpeg));

  it.each([3, 6, 8] as const)('is upright again after orientation tag %i is applied', async (orientationTag) => {
    const plain = await plainly;
    const { jpeg } = await renderPhantom(smallPhoto(33, { camera: { orientationTag } }));
    expect((await sharp(jpeg).metadata()).orientation).toBe(orientationTag);
    const turned = await upright(jpeg);
    expect([turned.width, turned.height]).toEqual([480, 360]);
    expect(differenceOf(turned.data, plain.data)).toBeLessThan(3);
  });

  it('carries the time and the focal length of its camera', async () => {
    const { jpeg } = await renderPhantom(smallPhoto(34, { camera: { captureTime: '2026-03-02T19:32:31' } }));
    const { exif } = await sharp(jpeg).metadata();
    expect(exif?.toString('latin1')).toContain('2026:03:02 19:32:31');
  });

  it('shows the mirrored fault from side to side', async () => {
    const plain = await upright((await renderPhantom(smallPhoto(35))).jpeg);
    const flipped = await renderPhantom(smallPhoto(35, { faults: ['mirrored'] }));
    const back = await sharp(flipped.jpeg).flop().raw().toBuffer();
    expect(differenceOf(back, plain.data)).toBeLessThan(3);
    expect(flipped.truth.expectedGate).toBe('mirrored');
  });

  it('leaves a photo without a card when there is none', async () => {
    const { truth } = await renderPhantom(smallPhoto(36, { card: null, faults: ['noCard'] }));
    expect(truth.card.present).toBe(false);
  });
});

describe('the faults', () => {
  it.each(FAULT_KINDS.map((kind) => [kind] as const))('name a gate that exists for %s', (kind) => {
    expect(Object.keys(GATE_ADVICE)).toContain(gateOf([kind]));
    expect(faultSpec(kind, 5).faults).toEqual([kind]);
  });

  it('go beyond the limits they are meant to break', () => {
    for (let seed = 0; seed < 20; seed++) {
      expect(faultSpec('tilt', seed).camera.tiltDeg).toBeGreaterThanOrEqual(40);
      const { focal35Mm, widthPx, heightPx, distanceMm } = faultSpec('lowResolution', seed).camera;
      expect((focal35Mm * Math.hypot(widthPx, heightPx)) / Math.hypot(36, 24) / distanceMm).toBeLessThan(5.01);
    }
  });
});

import { describe, expect, it } from 'vitest';
import type { CardGeometry } from '../../../lib/card/card-geometry';
import { BLACK } from '../../../lib/card/constants';
import type { InkedShape } from '../../../lib/card/inked-shape';
import { OWN_CARD } from '../../../lib/card/own-card';
import { parseGeometry } from '../../../lib/card/parse-geometry';
import { placeShape } from '../../../lib/card/place-shape';
import { mintSerial } from '../../../lib/card/mint-serial';
import { parseSerial, showSerial } from '../../../lib/card/serial';
import { shapeCoverage } from '../../../lib/card/shape-coverage';
import { writeGeometry } from '../../../lib/card/write-geometry';
import { sampleDrawing } from '../../unit/card/sample-drawing';

/** Numbers 0…1 that look random and are the same each time (mulberry32). */
function drawn(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

function areaMm2(shape: InkedShape): number {
  return shape.rings.reduce((total, ring) => {
    const last = ring[ring.length - 1];
    const twice = ring.reduce((sum, p, i) => {
      const q = i === 0 ? last : ring[i - 1];
      return sum + q.acrossMm * p.downMm - p.acrossMm * q.downMm;
    }, 0);
    return total + twice / 2;
  }, 0);
}

const inkMm2 = (shape: InkedShape, pxPerMm: number): number => {
  const { share } = shapeCoverage(shape, pxPerMm, Math.round(85.6 * pxPerMm), Math.ceil(53.98 * pxPerMm));
  return share.reduce((sum, part) => sum + part, 0) / pxPerMm ** 2;
};

describe('ink is neither lost nor made by rastering', () => {
  const exact = sampleDrawing().filter((shape) => /^(fiducial|patch|bar|qr|frame)/.test(shape.name));

  it.each([1, 5.3, 12, 20, 33.7])('at %f px/mm every fiducial, patch, bar and code keeps its area', (pxPerMm) => {
    expect(exact.length).toBeGreaterThan(25);
    for (const shape of exact) expect(inkMm2(shape, pxPerMm), shape.name).toBeCloseTo(areaMm2(shape), 8);
  });

  it('keeps the area of triangles of any shape, anywhere', () => {
    const next = drawn(1);
    for (let trial = 0; trial < 300; trial++) {
      const point = () => ({ acrossMm: 1 + 20 * next(), downMm: 1 + 20 * next() });
      const ring = [point(), point(), point()];
      const triangle = { name: 'triangle', ink: BLACK, rings: [ring] };
      const clockwise = areaMm2(triangle) > 0 ? triangle : { ...triangle, rings: [[...ring].reverse()] };
      expect(inkMm2(clockwise, 3 + 9 * next())).toBeCloseTo(areaMm2(clockwise), 8);
    }
  });

  it('covers each pixel by the share that fine sampling finds', () => {
    const ring = [{ acrossMm: 1.1, downMm: 0.4 }, { acrossMm: 6.3, downMm: 2.2 }, { acrossMm: 2.7, downMm: 5.9 }];
    const { left, top, widthPx, heightPx, share } = shapeCoverage({ name: 'triangle', ink: BLACK, rings: [ring] }, 1, 8, 8);
    const inside = (x: number, y: number): boolean =>
      ring.every((p, i) => {
        const q = ring[(i + 1) % 3];
        return (q.acrossMm - p.acrossMm) * (y - p.downMm) - (q.downMm - p.downMm) * (x - p.acrossMm) >= 0;
      });
    const fine = 64;
    for (let row = 0; row < heightPx; row++) {
      for (let column = 0; column < widthPx; column++) {
        let hits = 0;
        for (let i = 0; i < fine; i++) for (let j = 0; j < fine; j++) if (inside(left + column + (i + 0.5) / fine, top + row + (j + 0.5) / fine)) hits++;
        // A line crosses at most 2 · 64 of the 4096 samples of a pixel.
        expect(Math.abs(share[row * widthPx + column] - hits / fine ** 2)).toBeLessThan(2 / fine);
      }
    }
  });

  it('does not depend on where a shape lies', () => {
    const marker = exact.find((shape) => shape.name === 'fiducial 0') as InkedShape;
    const moved = placeShape(marker, { acrossMm: 7.123, downMm: 11.377 });
    expect(inkMm2(moved, 7.7)).toBeCloseTo(inkMm2(marker, 7.7), 8);
  });
});

describe('what is written is read back', () => {
  it('a geometry file gives the same card', () => {
    expect(parseGeometry(writeGeometry(OWN_CARD))).toEqual({ geometry: OWN_CARD });
  });

  it('any card does, at any size', () => {
    const next = drawn(2);
    for (let trial = 0; trial < 50; trial++) {
      const scale = 0.5 + next();
      const point = (p: { acrossMm: number; downMm: number }) => ({ acrossMm: p.acrossMm * scale, downMm: p.downMm * scale });
      const card: CardGeometry = {
        ...OWN_CARD,
        version: `trial ${trial}`,
        widthMm: OWN_CARD.widthMm * scale,
        heightMm: OWN_CARD.heightMm * scale,
        notch: OWN_CARD.notch.map(point),
        fiducials: OWN_CARD.fiducials.map((f) => ({ id: f.id, centre: point(f.centre), sizeMm: f.sizeMm * scale })),
        patches: OWN_CARD.patches.map((p) => ({ ...p, centre: point(p.centre), widthMm: p.widthMm * scale, heightMm: p.heightMm * scale })),
        qr: trial % 2 === 0 ? null : OWN_CARD.qr && { centre: point(OWN_CARD.qr.centre), sizeMm: OWN_CARD.qr.sizeMm * scale },
      };
      expect(parseGeometry(writeGeometry(card))).toEqual({ geometry: card });
    }
  });

  it('every minted serial is accepted as shown, and no two of a thousand are the same', () => {
    const next = drawn(3);
    const minted = Array.from({ length: 1000 }, () => mintSerial((limit) => Math.floor(next() * limit)));
    expect(new Set(minted).size).toBe(1000);
    for (const serial of minted) expect(parseSerial(showSerial(serial))).toEqual({ serial });
  });
});

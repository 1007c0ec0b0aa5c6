import { describe, expect, it } from 'vitest';
import { OWN_CARD } from '../../../lib/card/own-card';
import { fiducialCorners } from '../../../lib/rectify/fiducial-corners';
import { type CardFit, fitCard } from '../../../lib/rectify/fit-card';
import type { FoundFiducial } from '../../../lib/rectify/found-fiducial';
import { type Homography, toImage } from '../../../lib/rectify/homography';
import { randomSource } from '../../phantom/random/random-source';
import { randomCamera } from './random-camera';
import { imageFromCardOf } from './synthetic-camera';

const random = randomSource(21, 'fit card');
const views: Homography[] = Array.from({ length: 24 }, () => imageFromCardOf(randomCamera(random, 35)));

/** What a faultless detector would report, each printed edge `insetMm` inside its design. */
function seenThrough(h: Homography, insetMm = 0): FoundFiducial[] {
  return OWN_CARD.fiducials.map((f) => ({ id: f.id, cornersPx: fiducialCorners(f, insetMm).map((corner) => toImage(h, corner)) }));
}

function worstMapErrorPx(fit: CardFit, h: Homography): number {
  const places = [0, 20, 42.8, 65, 85.6].flatMap((acrossMm) => [0, 27, 54].map((downMm) => ({ acrossMm, downMm })));
  return Math.max(...places.map((place) => {
    const [a, b] = [toImage(fit.imageFromCard, place), toImage(h, place)];
    return Math.hypot(a.row - b.row, a.column - b.column);
  }));
}

const fitted = (found: readonly FoundFiducial[]): CardFit => {
  const fit = fitCard(found, OWN_CARD);
  if (!fit) throw new Error('the card was not fitted');
  return fit;
};

describe('the plane of the card', () => {
  it('is recovered exactly from exact corners, however the phone is held', () => {
    for (const h of views) {
      const fit = fitted(seenThrough(h));
      expect(worstMapErrorPx(fit, h)).toBeLessThan(1e-6);
      expect(fit.residualMm).toBeLessThan(1e-6);
      expect(Math.abs(fit.insetMm)).toBeLessThan(1e-6);
      expect(fit.used).toHaveLength(8);
    }
  });

  it.each([-0.15, 0.1, 0.2])('keeps its scale when ink or blur moves every edge by %f mm, and tells that inset', (insetMm) => {
    for (const h of views) {
      const fit = fitted(seenThrough(h, insetMm));
      expect(Math.abs(fit.insetMm - insetMm)).toBeLessThan(0.002);
      // The prior holds the inset back by less than a hundredth of itself; over 50 mm that is under 0.01 %.
      const [a, b] = [{ acrossMm: 20, downMm: 27 }, { acrossMm: 70, downMm: 27 }];
      const [seenA, seenB] = [toImage(fit.imageFromCard, a), toImage(fit.imageFromCard, b)];
      const [trueA, trueB] = [toImage(h, a), toImage(h, b)];
      const ratio = Math.hypot(seenB.row - seenA.row, seenB.column - seenA.column) / Math.hypot(trueB.row - trueA.row, trueB.column - trueA.column);
      expect(Math.abs(ratio - 1)).toBeLessThan(1e-4);
    }
  });

  it('leaves out any one fiducial that was moved by 2 mm', () => {
    for (const h of views) {
      for (const spoilt of OWN_CARD.fiducials) {
        const found = seenThrough(h).map((one) => {
          if (one.id !== spoilt.id) return one;
          const moved = fiducialCorners({ ...spoilt, centre: { acrossMm: spoilt.centre.acrossMm + 1.6, downMm: spoilt.centre.downMm - 1.2 } }, 0);
          return { id: one.id, cornersPx: moved.map((corner) => toImage(h, corner)) };
        });
        const fit = fitted(found);
        expect(fit.used.map((one) => one.id)).not.toContain(spoilt.id);
        expect(fit.used).toHaveLength(7);
        expect(worstMapErrorPx(fit, h)).toBeLessThan(1e-5);
      }
    }
  });

  it('does not exist with three fiducials', () => {
    expect(fitCard(seenThrough(views[0]).slice(0, 3), OWN_CARD)).toBeNull();
  });

  it('does not count ids that the card does not bear', () => {
    const strangers = seenThrough(views[0]).slice(0, 4).map((one, i) => (i === 0 ? { ...one, id: 17 } : one));
    expect(fitCard(strangers, OWN_CARD)).toBeNull();
  });

  it('shows a residual where four fiducials contradict one another and none can be spared', () => {
    const four = seenThrough(views[0]).filter((one) => [0, 1, 39, 46].includes(one.id));
    const spoilt = four.map((one) => (one.id === 46 ? { ...one, cornersPx: one.cornersPx.map((p) => ({ row: p.row + 60, column: p.column + 60 })) } : one));
    expect(fitted(spoilt).residualMm).toBeGreaterThan(0.45);
  });

  it('scatters by less than 0.05 % in scale under corner noise of 0.15 px', () => {
    const h = imageFromCardOf({ ...randomCamera(random, 20), pxPerMm: 10 });
    const [a, b] = [{ acrossMm: 25, downMm: 35 }, { acrossMm: 60, downMm: 35 }];
    const trueLength = Math.hypot(toImage(h, a).row - toImage(h, b).row, toImage(h, a).column - toImage(h, b).column);
    const ratios = Array.from({ length: 20 }, () => {
      const noisy = seenThrough(h).map((one) => ({
        ...one,
        cornersPx: one.cornersPx.map((p) => ({ row: p.row + 0.15 * random.normal(), column: p.column + 0.15 * random.normal() })),
      }));
      const fit = fitted(noisy);
      const [p, q] = [toImage(fit.imageFromCard, a), toImage(fit.imageFromCard, b)];
      return Math.hypot(p.row - q.row, p.column - q.column) / trueLength - 1;
    });
    expect(Math.max(...ratios.map(Math.abs))).toBeLessThan(0.0015);
    expect(Math.sqrt(ratios.reduce((sum, r) => sum + r * r, 0) / ratios.length)).toBeLessThan(0.0005);
  });
});

import type { PointMm } from '../units';
import type { CardGeometry } from './card-geometry';

/**
 * The card as it was really printed: every length times the print's true scale, so that everything measured in its
 * frame comes out in true millimetres.
 *
 * @param geometry the design
 * @param scale true length over design length, > 0 (`print-check`)
 * @example scaleGeometry(OWN_CARD, 0.94).widthMm // 80.464
 */
export function scaleGeometry(geometry: CardGeometry, scale: number): CardGeometry {
  if (!(scale > 0)) throw new RangeError(`scaleGeometry: scale must be positive, received ${scale}`);
  if (scale === 1) return geometry;
  const point = (p: PointMm): PointMm => ({ acrossMm: p.acrossMm * scale, downMm: p.downMm * scale });
  return {
    ...geometry,
    widthMm: geometry.widthMm * scale,
    heightMm: geometry.heightMm * scale,
    notch: geometry.notch.map(point),
    fiducials: geometry.fiducials.map((f) => ({ ...f, centre: point(f.centre), sizeMm: f.sizeMm * scale })),
    patches: geometry.patches.map((p) => ({
      ...p,
      centre: point(p.centre),
      widthMm: p.widthMm * scale,
      heightMm: p.heightMm * scale,
    })),
    qr: geometry.qr && { centre: point(geometry.qr.centre), sizeMm: geometry.qr.sizeMm * scale },
  };
}

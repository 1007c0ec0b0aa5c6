import type { Measurand } from '../measure/measure-input';

/** Every measurand as the method page says it: its name, and what it is. */
export const MEASURAND_WORDS: Readonly<Record<Measurand, readonly [name: string, meaning: string]>> = {
  erythemaArea: ['Redness area', 'skin joined to the treated fold whose redness exceeds that of this person’s own reference skin; its edge is where the excess has fallen to half of its plateau'],
  rednessLoad: ['Redness load', 'the excess of the erythema index added up over the region and its rim'],
  reach: ['Reach', 'greatest distance of the region’s edge from the nail-fold margin'],
  reachP95: ['Reach, 95th percentile', 'the same, of 95 in 100 points of the edge'],
  proximalReach: ['Proximal reach', 'how far the region goes toward the ankle beyond the most proximal point of the margin'],
  unrolledArea: ['Unrolled area', 'the area on a cylinder fitted to the toe'],
  unrolledReach: ['Unrolled reach', 'the reach on that cylinder'],
  rednessDeltaEi: ['Redness, erythema index', 'mean excess of 100 · (log10 R − log10 G) inside the region'],
  rednessDeltaA: ['Redness, a*', 'mean excess of CIE a* (D65, 2°) inside the region'],
  grooveWidth: ['Groove width', 'gap between the cut edge of the plate and the margin, mean'],
  grooveWidthMax: ['Groove width, largest', 'the same, at its widest'],
  rawArea: ['Raw area', 'open, moist or granulating surface in and beside the groove'],
  maceratedArea: ['Macerated area', 'white, water-logged skin near the fold'],
  foldStripArea: ['Strip of fold', 'skin beside the margin that soaked skin is a share of'],
  rawBeyondMargin: ['Raw tissue beyond the margin', 'how far raw tissue stands over the fold'],
  rawRedShare: ['Raw area, red share', 'share of the raw area that is red'],
  rawYellowShare: ['Raw area, yellow share', 'share of the raw area that is yellow'],
  rawDarkShare: ['Raw area, dark share', 'share of the raw area that is dark'],
  foldBulge: ['Fold bulge', 'how far the fold stands out against the other side'],
  foldSeenShare: ['Fold in view', 'how much of the fold the camera could see'],
};

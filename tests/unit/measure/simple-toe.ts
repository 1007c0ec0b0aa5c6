/** A toe made of simple shapes in the middle of an ID-1 card, so that every right answer can be written down. */
import type { MeasureInput, Outlines } from '../../../lib/measure/measure-input';
import type { MarginLine, Region } from '../../../lib/segment/segmentation';
import type { LineMm, RingMm } from '../../../lib/units';
import { circleRing, rectangleRing } from './shapes';

export const region = (ring: RingMm, boundaryUMm = 0.3): Region => ({
  rings: [{ ring, hole: false }],
  confidence: 1,
  boundaryUMm,
});

export const marginLine = (line: LineMm, boundaryUMm = 0.15): MarginLine => ({
  line,
  confidence: 1,
  boundaryUMm,
  origin: 'confirmed',
});

export const NOTHING: Outlines = {
  erythema: null,
  raw: null,
  macerated: null,
  nailPlate: null,
  toe: null,
  nailFoldMargin: null,
  marginLateral: null,
  cutEdge: null,
};

/** The side of the nail: 14 mm straight down the page at across = 50. */
export const LATERAL: LineMm = [
  { acrossMm: 50, downMm: 20 },
  { acrossMm: 50, downMm: 34 },
];

/** Redness of 3 mm radius beside the margin, 2.5 mm groove, toe of 20 mm width with straight sides. */
export const SIMPLE: MeasureInput = {
  scale: {
    printRelativeU: 0.005,
    tiltDeg: 0,
    distanceMm: 250,
    distanceRelativeU: 0.1,
    homographyResidualMm: 0.05,
    pxPerMm: 12,
  },
  grid: { originAcrossMm: 20, originDownMm: 5, pxPerMm: 8, widthPx: 400, heightPx: 400 },
  outlines: {
    ...NOTHING,
    erythema: region(circleRing(53, 30, 3)),
    raw: region(rectangleRing(48, 22, 2, 10)),
    macerated: region(rectangleRing(50, 21, 1, 2)),
    nailPlate: region(rectangleRing(38, 20, 9.5, 14)),
    toe: region(rectangleRing(33, 12, 22, 38)),
    nailFoldMargin: marginLine([...LATERAL, { acrossMm: 43, downMm: 36 }]),
    marginLateral: LATERAL,
    cutEdge: { line: LATERAL.map(({ downMm }) => ({ acrossMm: 47.5, downMm })), boundaryUMm: 0.1 },
  },
  redness: null,
  toeAxis: null,
};

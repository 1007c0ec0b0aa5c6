import { OWN_CARD } from '../../../lib/card/own-card';
import type { Analysis, SeenCard } from '../../../lib/pipeline/analysis';
import { measureSegmentation } from '../../../lib/pipeline/measure-segmentation';
import { notchFrame } from '../../../lib/rectify/notch-frame';
import { segmentToe } from '../../../lib/segment/segment-toe';
import { drawFields } from '../segment/draw-fields';
import { GRID, SQUARE_TOE, squareToeColours } from '../segment/square-toe';

/** A card looked at straight from above, 12 pixels a millimetre. */
export const STRAIGHT_CARD: SeenCard = {
  version: OWN_CARD.version,
  frame: notchFrame(OWN_CARD),
  serial: '7K3QM2XPAVC',
  fit: { imageFromCard: [12, 0, 0, 0, 12, 0, 0, 0, 1], cardFromImage: [1 / 12, 0, 0, 0, 1 / 12, 0, 0, 0, 1], used: [], insetMm: 0, residualMm: 0.05 },
  pose: { tiltDeg: 0, distanceMm: 250, distanceRelativeU: 0.1, focalFrom: 'file', lens: { acrossMm: 42.8, downMm: 29, heightMm: 250 } },
  pxPerMm: 12,
  edgeSpreadMm: 0.1,
  print: { scale: 1, relativeU: 0.005, confirmed: true },
};

/** The analysis of the square toe whose redness stands out by `stepEi`: no photo, no model, every shape known. */
export function drawnAnalysis(stepEi: number): Analysis {
  const fields = drawFields(GRID, SQUARE_TOE);
  const colours = squareToeColours(fields, stepEi);
  const segmentation = segmentToe(colours, fields);
  return {
    photo: { widthPx: 1, heightPx: 1, srgb: new Uint8Array(3), sha256: 'a'.repeat(64), capture: CAPTURE },
    methodVersion: 'test',
    reasons: [],
    card: STRAIGHT_CARD,
    colour: null,
    matchedToBaseline: false,
    colours,
    fields,
    segmentation,
    measurement: measureSegmentation(segmentation, STRAIGHT_CARD, fields, colours.erythemaIndex),
  };
}

const CAPTURE: Analysis['photo']['capture'] = {
  format: 'jpeg',
  localTime: '2026-03-02T19:32:31',
  utcOffset: null,
  focalLengthMm: null,
  focalLength35Mm: 26,
  lensModel: null,
  digitalZoom: null,
  deviceClass: 'phone',
  colourSpace: 'srgb',
  orientationTag: 1,
  hasGainMap: false,
};

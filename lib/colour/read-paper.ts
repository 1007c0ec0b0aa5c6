import type { CardGeometry } from '../card/card-geometry';
import type { UprightPhoto } from '../photo/upright-photo';
import type { Homography } from '../rectify/homography';
import { isInsideOutline } from '../rectify/inside-outline';
import type { PointMm } from '../units';
import type { WhiteSample } from './card-readings';
import { CARD_EDGE_MARGIN_MM, PAPER_PITCH_MM, PAPER_SPOT_MM, PRINT_EDGE_MARGIN_MM } from './constants';
import { readSpot } from './read-spot';

/**
 * Spots of bare paper all over the card: a grid without notch, fiducials, patches and QR code. Some spots still hold
 * print (text, bar) or lie under a finger; the fit that uses them has to be robust.
 *
 * @param photo the upright photo
 * @param imageFromCard the card's plane
 * @param geometry the card
 * @returns one sample per spot that lies inside the photo
 * @example readPaper(photo, fit.imageFromCard, OWN_CARD)[0].code // [240, 238, 231]
 */
export function readPaper(photo: UprightPhoto, imageFromCard: Homography, geometry: CardGeometry): WhiteSample[] {
  const spot = { acrossMm: PAPER_SPOT_MM, downMm: PAPER_SPOT_MM };
  return spotCentres(geometry).flatMap((centre) => {
    const reading = readSpot(photo, imageFromCard, centre, spot);
    return reading ? [{ ...centre, code: reading.codeMedian }] : [];
  });
}

/** Where the spots lie is the design's own; it is asked for with every photo. */
const knownCentres = new WeakMap<CardGeometry, readonly PointMm[]>();

function spotCentres(geometry: CardGeometry): readonly PointMm[] {
  const centres = knownCentres.get(geometry) ?? findSpotCentres(geometry);
  knownCentres.set(geometry, centres);
  return centres;
}

function findSpotCentres(geometry: CardGeometry): PointMm[] {
  const centres: PointMm[] = [];
  const first = CARD_EDGE_MARGIN_MM + PAPER_SPOT_MM / 2;
  for (let downMm = first; downMm < geometry.heightMm - CARD_EDGE_MARGIN_MM; downMm += PAPER_PITCH_MM) {
    for (let acrossMm = first; acrossMm < geometry.widthMm - CARD_EDGE_MARGIN_MM; acrossMm += PAPER_PITCH_MM) {
      if (isBarePaper({ acrossMm, downMm }, geometry)) centres.push({ acrossMm, downMm });
    }
  }
  return centres;
}

function isBarePaper(at: PointMm, geometry: CardGeometry): boolean {
  const clear = PAPER_SPOT_MM / 2 + PRINT_EDGE_MARGIN_MM;
  const outside = (centre: PointMm, widthMm: number, heightMm: number) =>
    Math.abs(at.acrossMm - centre.acrossMm) > widthMm / 2 + clear || Math.abs(at.downMm - centre.downMm) > heightMm / 2 + clear;
  const nearby = [-clear - CARD_EDGE_MARGIN_MM, 0, clear + CARD_EDGE_MARGIN_MM];
  const clearOfNotch = nearby.every((a) => nearby.every((d) => !isInsideOutline({ acrossMm: at.acrossMm + a, downMm: at.downMm + d }, geometry.notch)));
  return (
    clearOfNotch &&
    geometry.fiducials.every((f) => outside(f.centre, f.sizeMm, f.sizeMm)) &&
    geometry.patches.every((p) => p.kind === 'white' || outside(p.centre, p.widthMm, p.heightMm)) &&
    (geometry.qr === null || outside(geometry.qr.centre, geometry.qr.sizeMm, geometry.qr.sizeMm))
  );
}

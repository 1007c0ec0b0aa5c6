import type { CardGeometry } from '../card/card-geometry';
import type { UprightPhoto } from '../photo/upright-photo';
import type { PointMm } from '../units';
import type { CodeTriple, PatchReading, WhiteSample } from './card-readings';
import { type Homography, toImage } from '../rectify/homography';
import { isInsideOutline } from '../rectify/inside-outline';
import { MAD_TO_SIGMA } from './constants';
import { medianOf } from './median-of';

interface SpotReading {
  readonly codeMedian: CodeTriple;
  readonly clippedShare: number;
  readonly spread: number;
}

/** Ink and blur reach this far into a patch or out of a printed part, mm. */
const EDGE_MARGIN_MM = 0.7;
const READINGS_PER_SIDE = 9;
const CLIPPED_CODE = 254;
/** Paper is read on spots of this size at this pitch, mm. */
const SPOT_MM = 1.2;
const PITCH_MM = 3;
const CARD_EDGE_MARGIN_MM = 1.2;

/** Every patch of the card as the photo shows it; patches outside the photo are left out. */
export function readPatches(photo: UprightPhoto, imageFromCard: Homography, geometry: CardGeometry): PatchReading[] {
  return geometry.patches.flatMap((patch) => {
    const size = { acrossMm: patch.widthMm - 2 * EDGE_MARGIN_MM, downMm: patch.heightMm - 2 * EDGE_MARGIN_MM };
    const sample = readSpot(photo, imageFromCard, patch.centre, size);
    return sample ? [{ patch, ...sample }] : [];
  });
}

/**
 * Spots of bare paper all over the card: a grid without notch, fiducials, patches and QR code. Some spots still hold
 * print (text, bar) or lie under a finger; the fit that uses them has to be robust.
 */
export function readPaper(photo: UprightPhoto, imageFromCard: Homography, geometry: CardGeometry): WhiteSample[] {
  const samples: WhiteSample[] = [];
  const spot = { acrossMm: SPOT_MM, downMm: SPOT_MM };
  for (let downMm = CARD_EDGE_MARGIN_MM + SPOT_MM / 2; downMm < geometry.heightMm - CARD_EDGE_MARGIN_MM; downMm += PITCH_MM) {
    for (let acrossMm = CARD_EDGE_MARGIN_MM + SPOT_MM / 2; acrossMm < geometry.widthMm - CARD_EDGE_MARGIN_MM; acrossMm += PITCH_MM) {
      const at = { acrossMm, downMm };
      if (!isBarePaper(at, geometry)) continue;
      const sample = readSpot(photo, imageFromCard, at, spot);
      if (sample) samples.push({ ...at, code: sample.codeMedian });
    }
  }
  return samples;
}

function isBarePaper(at: PointMm, geometry: CardGeometry): boolean {
  const clear = SPOT_MM / 2 + EDGE_MARGIN_MM;
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

function readSpot(photo: UprightPhoto, imageFromCard: Homography, centre: PointMm, size: PointMm): SpotReading | null {
  const red: number[] = [];
  const green: number[] = [];
  const blue: number[] = [];
  let clipped = 0;
  for (let i = 0; i < READINGS_PER_SIDE ** 2; i++) {
    const acrossMm = centre.acrossMm + size.acrossMm * ((i % READINGS_PER_SIDE) / (READINGS_PER_SIDE - 1) - 0.5);
    const downMm = centre.downMm + size.downMm * (Math.floor(i / READINGS_PER_SIDE) / (READINGS_PER_SIDE - 1) - 0.5);
    const { row, column } = toImage(imageFromCard, { acrossMm, downMm });
    const r = Math.round(row);
    const c = Math.round(column);
    if (r < 0 || c < 0 || r >= photo.heightPx || c >= photo.widthPx) return null;
    const at = (r * photo.widthPx + c) * 3;
    red.push(photo.srgb[at]);
    green.push(photo.srgb[at + 1]);
    blue.push(photo.srgb[at + 2]);
    if (Math.max(photo.srgb[at], photo.srgb[at + 1], photo.srgb[at + 2]) >= CLIPPED_CODE) clipped++;
  }
  const middle = medianOf(green);
  return {
    codeMedian: [medianOf(red), middle, medianOf(blue)],
    clippedShare: clipped / green.length,
    spread: MAD_TO_SIGMA * medianOf(green.map((value) => Math.abs(value - middle))),
  };
}

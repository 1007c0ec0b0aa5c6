import type { LinearRgb } from '../colour/encodings';
import { lineToJson, type PositionMm } from '../measure/line-to-json';
import { MEASURAND_UNIT, type Measurand, type Outlines } from '../measure/measure-input';
import { type Measurement, notMeasured } from '../result';
import type { Region, Segmentation } from '../segment/segmentation';
import { type Analysis, isMeasuredAnalysis, type SeenCard } from './analysis';

/** Closed outlines, holes marked, or open lines; positions in the card's frame, mm. */
export interface OutlineJson {
  readonly ring: readonly PositionMm[];
  readonly hole: boolean;
}

/**
 * An analysis as plain data for files and other programs. Fields may be added, never renamed.
 *
 * @param analysis one photo's analysis
 * @param photoName what the person calls the photo
 * @example analysisToJson(analysis, 'toe.jpg').measured // true
 */
export function analysisToJson(analysis: Analysis, photoName: string) {
  const { segmentation, measurement } = analysis;
  return {
    photo: photoName,
    sha256: analysis.photo.sha256,
    capturedAt: analysis.photo.capture.localTime,
    capturedOffset: analysis.photo.capture.utcOffset,
    methodVersion: analysis.methodVersion,
    measured: isMeasuredAnalysis(analysis),
    reasons: analysis.reasons,
    picture: { widthPx: analysis.photo.widthPx, heightPx: analysis.photo.heightPx },
    card: analysis.card && cardToJson(analysis.card),
    colour: colourToJson(analysis),
    measurements: allMeasurements(measurement?.measurements ?? null),
    budget: measurement?.budget ?? {},
    outlines: segmentation && outlinesToJson(segmentation, measurement?.outlines ?? segmentation),
    outlinesAsSeen: segmentation && movedOutlinesJson(segmentation),
  };
}

export type AnalysisJson = ReturnType<typeof analysisToJson>;
export type OutlinesJson = NonNullable<AnalysisJson['outlines']>;

function cardToJson(card: SeenCard) {
  return {
    version: card.version,
    serial: card.serial,
    fiducials: card.fit.used.length,
    tiltDeg: card.pose.tiltDeg,
    distanceMm: card.pose.distanceMm,
    distanceRelativeU: card.pose.distanceRelativeU,
    lens: card.pose.lens,
    focalFrom: card.pose.focalFrom,
    pxPerMm: card.pxPerMm,
    residualMm: card.fit.residualMm,
    edgeSpreadMm: card.edgeSpreadMm,
    printScale: card.print.scale,
    printRelativeU: card.print.relativeU,
    printConfirmed: card.print.confirmed,
    homography: card.fit.cardFromImage,
  };
}

function colourToJson({ colour, segmentation, matchedToBaseline }: Analysis) {
  if (!colour) return null;
  const reference = segmentation?.reference ?? null;
  return {
    itaDeg: reference?.ita.angleDeg ?? null,
    itaClass: reference?.ita.itaClass ?? null,
    contrastToNoise: segmentation?.evidence?.contrastToNoise ?? null,
    leastVisibleEi: segmentation?.leastVisibleEi ?? null,
    cardKind: colour.kind,
    residualDeltaE: colour.residualDeltaE,
    matchedToBaseline,
    paperLight: lightToJson(colour.paperLight),
    patches: colour.patches.map(({ patch, light }) => ({ name: patch.name, light: lightToJson(light) })),
  };
}

const lightToJson = ({ red, green, blue }: LinearRgb) => [red, green, blue].map((light) => Number(light.toPrecision(6)));

/** Every measurand is always there: with its value, or with the reason why it has none. */
function allMeasurements(measurements: Readonly<Record<Measurand, Measurement>> | null): Record<Measurand, Measurement> {
  const keys = Object.keys(MEASURAND_UNIT) as Measurand[];
  return Object.fromEntries(keys.map((key) => [key, measurements?.[key] ?? notMeasured('gateFailed')])) as Record<Measurand, Measurement>;
}

/**
 * Outlines in the card's millimetres. Lengths and areas are taken from straightened ones; lines are drawn where a leaning
 * camera shows the skin, which is beside that.
 *
 * @param found what the segment stage found; toe and reference skin are always as seen
 * @param lines the outlines to write; without them as the camera shows them
 * @example outlinesToJson(segmentation).treatedSide // 'right'
 */
export function outlinesToJson(found: Segmentation, lines: Outlines = found) {
  return {
    toe: rings(lines.toe),
    ...movedOutlinesJson(lines),
    referenceSkin: rings(found.reference?.region ?? null),
    treatedSide: found.treatedSide,
    marginOrigin: found.nailFoldMargin?.origin ?? null,
  };
}

/**
 * Of the outlines those that straightening moves.
 *
 * @param lines straightened or as seen
 * @example movedOutlinesJson(outlines).nailFoldMargin?.[0] // [46, 25]
 */
export const movedOutlinesJson = (lines: Outlines) => ({
  nailPlate: rings(lines.nailPlate),
  nailFoldMargin: lines.nailFoldMargin && lineToJson(lines.nailFoldMargin.line),
  nailFoldMarginLateral: lines.marginLateral && lineToJson(lines.marginLateral),
  cutEdge: lines.cutEdge && lineToJson(lines.cutEdge.line),
  erythema: rings(lines.erythema),
  raw: rings(lines.raw),
  macerated: rings(lines.macerated),
});

const rings = (region: Region | null): OutlineJson[] | null => region && region.rings.map(({ ring, hole }) => ({ ring: lineToJson(ring), hole }));

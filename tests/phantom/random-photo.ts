/** How the photo was taken, drawn at random: pose, light, phone and card. The ranges are judgement. */
import { edgeSpreadPx } from './camera/blur';
import { LIGHT_NAMES } from './light/light-spectra';
import type { CameraSpec, CardSpec, LightSpec, PoseSpec } from './phantom-spec';
import type { RandomSource } from './random/random-source';

/** Widths of toes that lie freely in each cut of the notch, half, mm. */
const NOTCH_CUTS = [['own-S', 10.2], ['own-M', 11.8], ['own-L', 14]] as const;

/** How a toe may lie in the notch. */
export function randomPose(random: RandomSource): PoseSpec {
  return {
    tipGapMm: random.between(1.2, 4.5),
    sideShiftMm: random.between(-1, 1),
    yawDeg: random.between(-7, 7),
    pitchDeg: random.between(-4, 8),
    rollDeg: random.between(-7, 7),
    heightOffsetMm: random.between(-2.5, 3.5),
  };
}

/** Light as in a home. */
export function randomLight(random: RandomSource): LightSpec {
  const key = random.pick(LIGHT_NAMES);
  return {
    key,
    ambient: random.chance(0.25) ? random.pick(LIGHT_NAMES) : key,
    ambientShare: random.between(0.3, 0.7),
    elevationDeg: random.between(38, 75),
    azimuthDeg: random.between(0, 360),
    spreadDeg: random.between(2, 14),
    gradient: random.between(0, 0.5),
    gradientAzimuthDeg: random.between(0, 360),
    shadowEdge: null,
  };
}

/** Phones whose picture holds the wanted scale at the wanted distance; "2×" lenses and crops are part of it. */
export function randomCamera(random: RandomSource): CameraSpec {
  const [longPx, shortPx] = random.pick([[1440, 1080], [1600, 1200], [1632, 1224], [1920, 1440], [2016, 1512]] as const);
  const upright = random.chance(0.5);
  const [widthPx, heightPx] = upright ? [shortPx, longPx] : [longPx, shortPx];
  const distanceMm = random.between(180, 380);
  const wantedPxPerMm = random.between(7, Math.min(15, shortPx / 92));
  const focal35Mm = (wantedPxPerMm * distanceMm * Math.hypot(36, 24)) / Math.hypot(longPx, shortPx);
  const camera: CameraSpec = {
    phoneSeed: random.whole(1, 9),
    widthPx,
    heightPx,
    focal35Mm: Math.round(focal35Mm * 10) / 10,
    distanceMm,
    tiltDeg: random.between(0, 1) ** 1.3 * 33,
    azimuthDeg: random.between(0, 360),
    rollDeg: random.chance(0.85) ? random.normal() * 9 : random.between(0, 360),
    aimMm: [random.between(-6, 6), random.between(-5, 9)],
    k1: random.between(-0.05, 0.05),
    k2: random.between(-0.02, 0.02),
    opticsBlurPx: random.between(0.5, 1.1),
    defocusPx: random.chance(0.2) ? random.between(1, 1.6) : 0,
    motionPx: random.chance(0.15) ? random.between(1, 2) : 0,
    motionDeg: random.between(0, 180),
    vignetting: random.between(0, 0.25),
    exposure: random.between(0.72, 1.02),
    whiteBalance: [random.between(0.92, 1.12), random.between(0.88, 1.08)],
    fullWell: random.between(2500, 12000),
    readNoise: random.between(0.0008, 0.003),
    toneContrast: random.between(0, 0.8),
    toneShoulder: random.between(0, 0.5),
    saturation: random.between(0.95, 1.18),
    denoise: random.between(0, 0.8),
    sharpen: random.between(0, 0.9),
    jpegQuality: random.whole(75, 92),
    orientationTag: random.pick([1, 1, 1, 3, 6, 8] as const),
    captureTime: `2026-03-${String(random.whole(1, 28)).padStart(2, '0')}T${String(random.whole(7, 21)).padStart(2, '0')}:${random.whole(10, 59)}:${random.whole(10, 59)}`,
  };
  return heldSharp(camera, wantedPxPerMm);
}

/**
 * An edge may be spread so much on the card, also across the lean of the camera. From 0.35 mm on a photo is rightly
 * refused: one that is softer than this belongs among those with a fault.
 */
const WIDEST_CLEAN_EDGE_MM = 0.28;
const SHARPER = 0.96;

/** Optics, defocus and shake made smaller together until edges are narrow enough. */
function heldSharp(camera: CameraSpec, pxPerMm: number): CameraSpec {
  const widestPx = WIDEST_CLEAN_EDGE_MM * pxPerMm * Math.cos((camera.tiltDeg * Math.PI) / 180);
  let held = camera;
  while (edgeSpreadPx(held) > widestPx) {
    held = { ...held, opticsBlurPx: SHARPER * held.opticsBlurPx, defocusPx: SHARPER * held.defocusPx, motionPx: SHARPER * held.motionPx };
  }
  return held;
}

/** In the middle of the card no channel of the paper comes nearer to the end of the scale than this. */
const BRIGHTEST_CLEAN_PAPER = 0.93;

/** The same camera, exposed so that the paper of this card is not washed out as a whole: that would be a fault. */
export function heldFromClipping(camera: CameraSpec, card: CardSpec | null): CameraSpec {
  if (card === null) return camera;
  const gain = card.paperWhite * Math.max(1, ...camera.whiteBalance);
  return { ...camera, exposure: Math.min(camera.exposure, BRIGHTEST_CLEAN_PAPER / gain) };
}

/** A card from a home printer, cut along the line that suits the toe. */
export function randomCard(random: RandomSource, serialSeed: number, toeHalfWidthMm: number): CardSpec {
  const fitting = NOTCH_CUTS.find(([, widest]) => toeHalfWidthMm <= widest) ?? NOTCH_CUTS[2];
  return {
    face: fitting[0],
    serialSeed,
    printScale: 1,
    paperWhite: random.between(0.8, 0.92),
    inkBlack: random.between(0.025, 0.07),
    inkGamma: random.between(0.85, 1.2),
    cast: [random.between(0.96, 1), random.between(0.97, 1), random.between(0.93, 1)],
  };
}

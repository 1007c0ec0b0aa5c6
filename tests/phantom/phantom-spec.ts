/**
 * Everything that decides one photo, as plain data: the same spec gives the same bytes. Lengths in millimetres, angles
 * in degrees. "Left" and "right" are seen with the toe pointing up the page; "proximal" is toward the ankle.
 */
import type { LightName } from './light/light-spectra';
import type { SkinClass } from './skin/skin-class';

export type Side = 'left' | 'right';

export const FAULT_KINDS = [
  'noCard', 'tooFewFiducials', 'wrongCard', 'mirrored', 'tilt', 'lowResolution', 'defocus', 'motion', 'overexposed',
  'tooDark', 'unevenLight', 'glareNail', 'toeNotInNotch', 'notAPhotograph', 'captureTime', 'duplicate',
] as const;
export type FaultKind = (typeof FAULT_KINDS)[number];

/** The body of the toe and its nail, which stay the same from visit to visit. */
export interface ToeSpec {
  /** Decides relief, wrinkles, freckles and every other small irregularity. */
  readonly seed: number;
  /** Which foot: decides where the other toes lie. */
  readonly foot: Side;
  readonly halfWidthMm: number;
  /** Height of the upper half over half the width. */
  readonly flatness: number;
  /** Exponent of the superelliptic cross-section; 2 is an ellipse. */
  readonly squareness: number;
  readonly tipLengthMm: number;
  /** Sideways bend of the axis, reached 40 mm behind the tip. */
  readonly bendMm: number;
  readonly wrinkleDepthMm: number;
  readonly nail: NailSpec;
  readonly skin: SkinSpec;
}

export interface NailSpec {
  /** Half the distance between the two lateral fold margins along the skin. */
  readonly halfWidthMm: number;
  /** Free edge, from the tip of the toe. */
  readonly freeEdgeMm: number;
  readonly lengthMm: number;
  /** How far the white free edge reaches back, and the lunula forward. */
  readonly whiteEdgeMm: number;
  readonly lunulaMm: number;
  readonly cornerMm: number;
  readonly curveRadiusMm: number;
  readonly foldHeightMm: number;
  readonly thicknessMm: number;
  /** Linear sRGB of varnish, or null. */
  readonly polish: readonly [number, number, number] | null;
}

export interface SkinSpec {
  readonly skinClass: SkinClass;
  readonly itaDeg: number;
  /** Relative spread of melanin and of blood that skin has by itself. */
  readonly melaninSpread: number;
  readonly bloodSpread: number;
  readonly hairCount: number;
  readonly freckleCount: number;
}

/** One redness: added blood along a stretch of fold or around a spot. */
export interface RednessSpec {
  readonly where: 'treatedFold' | 'untreatedFold' | 'elsewhere';
  /** Added blood in the plateau, as a share of the dermis. */
  readonly addedBloodShare: number;
  /** How far the half-plateau line lies from the margin, on average. */
  readonly widthMm: number;
  /** 10–90 % width of the edge. */
  readonly edgeMm: number;
  /** Stretch of the fold: 0 at its distal end, 1 in the middle of the proximal fold. */
  readonly from: number;
  readonly to: number;
  /** 0 smooth … 1 ragged. */
  readonly raggedness: number;
  /** Length of a tongue toward the ankle; 0 for none. */
  readonly tongueMm: number;
  /** For `elsewhere`: position from the tip along the toe and from its middle line, along the skin. */
  readonly spot: readonly [number, number] | null;
}

/** The state of the operated side on one day. */
export interface WoundSpec {
  readonly side: Side;
  /** Width of nail removed, along the skin; 2–3 mm as seen from above is common practice. */
  readonly stripMm: number;
  readonly redness: readonly RednessSpec[];
  /** How much higher the treated fold stands, whatever its colour. */
  readonly swellingMm: number;
  /** Share of the groove that is raw, 0…1. */
  readonly rawShare: number;
  readonly granulationMm: number;
  readonly sloughShare: number;
  readonly driedBloodCount: number;
  readonly crustCount: number;
  readonly macerationMm: number;
  /** 0…1 */
  readonly iodine: number;
  /** 0 dry … 1 wet. */
  readonly wetness: number;
}

/** How the toe lies in the card's notch. */
export interface PoseSpec {
  /** Tip of the toe below the end of the notch. */
  readonly tipGapMm: number;
  readonly sideShiftMm: number;
  readonly yawDeg: number;
  readonly pitchDeg: number;
  readonly rollDeg: number;
  /** Card plane above (+) or below (−) the mean height of the lateral nail-fold margins. */
  readonly heightOffsetMm: number;
}

export interface LightSpec {
  readonly key: LightName;
  /** The ambient light may come from another lamp. */
  readonly ambient: LightName;
  readonly ambientShare: number;
  readonly elevationDeg: number;
  readonly azimuthDeg: number;
  /** Half the angle that the lamp fills: soft or hard shadows. */
  readonly spreadDeg: number;
  /** Relative fall of the key light per 100 mm, and the direction it falls toward. */
  readonly gradient: number;
  readonly gradientAzimuthDeg: number;
  /** A shadow edge across the scene, or null. */
  readonly shadowEdge: { readonly throughMm: readonly [number, number]; readonly azimuthDeg: number; readonly depth: number; readonly softMm: number } | null;
}

export interface CameraSpec {
  readonly phoneSeed: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Focal length as for a 35 mm film frame, by the diagonal. */
  readonly focal35Mm: number;
  /** From the pupil to the point looked at. */
  readonly distanceMm: number;
  readonly tiltDeg: number;
  readonly azimuthDeg: number;
  readonly rollDeg: number;
  /** Where the optical axis meets the card plane, from the middle of the nail. */
  readonly aimMm: readonly [number, number];
  readonly k1: number;
  readonly k2: number;
  readonly opticsBlurPx: number;
  readonly defocusPx: number;
  readonly motionPx: number;
  readonly motionDeg: number;
  readonly vignetting: number;
  /** Linear value of a perfect white in the middle of the card; above 1 is clipped. */
  readonly exposure: number;
  /** Relative error of the white balance, red and blue. */
  readonly whiteBalance: readonly [number, number];
  /** Electrons at full scale: the fewer, the noisier. */
  readonly fullWell: number;
  readonly readNoise: number;
  /** 0 plain … 1 strong. */
  readonly toneContrast: number;
  readonly toneShoulder: number;
  readonly saturation: number;
  readonly denoise: number;
  readonly sharpen: number;
  readonly jpegQuality: number;
  readonly orientationTag: 1 | 3 | 6 | 8;
  /** `2026-03-02T19:32:31` */
  readonly captureTime: string | null;
}

export interface CardSpec {
  /** `own-S`, `own-M`, `own-L` (the line that was cut), or `stand-in`. */
  readonly face: string;
  /** Decides the serial that is printed on it and in its QR code. */
  readonly serialSeed: number;
  /** True size over designed size. */
  readonly printScale: number;
  readonly paperWhite: number;
  readonly inkBlack: number;
  readonly inkGamma: number;
  readonly cast: readonly [number, number, number];
}

export type Ground = 'wood' | 'tiles' | 'cloth' | 'towel' | 'paper';

/** A printed shape of exact area in the notch, in the card's plane. */
export type PrintedShape =
  | { readonly kind: 'disc'; readonly centreMm: readonly [number, number]; readonly radiusMm: number }
  | { readonly kind: 'ellipse'; readonly centreMm: readonly [number, number]; readonly halfAxesMm: readonly [number, number]; readonly turnDeg: number }
  | { readonly kind: 'polygon'; readonly cornersMm: readonly (readonly [number, number])[] };

export type Subject =
  | { readonly kind: 'toe' }
  | { readonly kind: 'shapes'; readonly shapes: readonly PrintedShape[]; readonly heightMm: number }
  | { readonly kind: 'skinPatch'; readonly addedBloodShare: number }
  | { readonly kind: 'nothing' };

export interface PhantomSpec {
  /** Decides noise and ground; the toe has its own seed. */
  readonly seed: number;
  readonly subject: Subject;
  readonly toe: ToeSpec;
  readonly wound: WoundSpec;
  readonly pose: PoseSpec;
  readonly light: LightSpec;
  readonly camera: CameraSpec;
  readonly card: CardSpec | null;
  readonly ground: Ground;
  readonly groundTone: number;
  readonly faults: readonly FaultKind[];
}

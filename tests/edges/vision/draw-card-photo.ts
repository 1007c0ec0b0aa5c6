/**
 * Photos of a printed card without a camera: the drawing's exact raster, seen through a known map, integrated and
 * blurred in linear light, then given shot noise and coded values. The truth is the map itself.
 */
import { OWN_CARD } from '../../../lib/card/own-card';
import type { CardGeometry } from '../../../lib/card/card-geometry';
import type { InkedShape } from '../../../lib/card/inked-shape';
import { BLACK } from '../../../lib/card/constants';
import { rasterDrawing } from '../../../lib/card/raster-drawing';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import { type Homography, invertHomography } from '../../../lib/rectify/homography';
import { LINEAR_LIGHT } from '../../../lib/rectify/linear-light';
import { nailPlace } from '../../../lib/rectify/notch-frame';
import { type RandomSource, randomSource } from '../../phantom/random/random-source';
import { sampleDrawing } from '../../unit/card/sample-drawing';
import { codeOf, photoOf } from '../../unit/rectify/photo-of';

/** A printed disc where the nail would be: a shape of known area in the card's plane. */
export const DISC = { centre: nailPlace(OWN_CARD), radiusMm: 6 };

const discShape: InkedShape = {
  name: 'disc',
  ink: BLACK,
  rings: [Array.from({ length: 360 }, (_, i) => {
    // A polygon of the circle's own area: the corners lie a little outside.
    const radiusMm = DISC.radiusMm * Math.sqrt((2 * Math.PI) / 360 / Math.sin((2 * Math.PI) / 360));
    const angle = (2 * Math.PI * i) / 360;
    return { acrossMm: DISC.centre.acrossMm + radiusMm * Math.cos(angle), downMm: DISC.centre.downMm + radiusMm * Math.sin(angle) };
  })],
};

/** Grey light of the printed face at one scale; one channel stands for all three, for nothing here asks about colour. */
export interface Face {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerMm: number;
  readonly light: Float32Array;
}

/** The face of a card, with what is printed on it, at a scale. */
export function faceOf(shapes: readonly InkedShape[], pxPerMm: number, size: CardGeometry = OWN_CARD): Face {
  const { widthPx, heightPx, srgb } = rasterDrawing(shapes, size, pxPerMm);
  return { widthPx, heightPx, pxPerMm, light: Float32Array.from({ length: widthPx * heightPx }, (_, i) => LINEAR_LIGHT[srgb[i * 3 + 1]]) };
}

const ownShapes = [...sampleDrawing(), discShape];
const faces = new Map<number, Face>();
const FACE_SCALES = [10, 14, 20, 32] as const;
/** A pixel gathers light from all of its surface: an unblurred face read at points would make edges jump by 0.2 px. */
const FACE_BLUR_PX = 1.2;
/** The project's own card, finer than the camera sees it. */
export function ownFace(cameraPxPerMm: number): Face {
  const pxPerMm = FACE_SCALES.find((one) => one >= 1.5 * cameraPxPerMm) ?? 32;
  const known = faces.get(pxPerMm);
  if (known) return known;
  const face = faceOf(ownShapes, pxPerMm);
  blur(face.light, face.widthPx, face.heightPx, FACE_BLUR_PX);
  faces.set(pxPerMm, face);
  return face;
}

const normals = randomSource(1, 'shot noise');
const NOISE = Float32Array.from({ length: 65536 }, () => normals.normal());

export interface Development {
  /** Gaussian blur of the lens beyond that of the pixel itself, camera pixels. */
  readonly blurPx: number;
  /** Light of white paper, 0…1, and how much it changes from one end of the picture to the other. */
  readonly paper: number;
  readonly slope: number;
  /** Light reflected by black ink, as a share of paper. */
  readonly ink: number;
  /** Light of what lies around the card, as a share of paper. */
  readonly ground: number;
  /** Shot noise: standard deviation of full light; falls as the root of light. */
  readonly noise: number;
}

export const CLEAN: Development = { blurPx: 0, paper: 0.75, slope: 0, ink: 0.03, ground: 0.3, noise: 0 };

/** The card's face through a map; `random` drives the noise. */
export function drawCardPhoto(
  face: Face,
  imageFromCard: Homography,
  size: { readonly widthPx: number; readonly heightPx: number },
  development: Development,
  random: RandomSource,
): UprightPhoto {
  const light = project(face, invertHomography(imageFromCard), size, development);
  blur(light, size.widthPx, size.heightPx, development.blurPx);
  const srgb = new Uint8Array(light.length * 3);
  const start = random.whole(0, NOISE.length - 1);
  for (let i = 0; i < light.length; i++) {
    // A stride without pattern through the table: neighbours are independent, and two photos begin elsewhere.
    const shot = development.noise * Math.sqrt(light[i]) * NOISE[(start + Math.imul(i, 40503) + (i >>> 8)) & 65535];
    const code = codeOf(light[i] + shot);
    srgb[3 * i] = code;
    srgb[3 * i + 1] = code;
    srgb[3 * i + 2] = code;
  }
  return photoOf(size.widthPx, size.heightPx, srgb);
}

/** Each pixel reads the softened face at its centre. */
function project(face: Face, h: Homography, { widthPx, heightPx }: { widthPx: number; heightPx: number }, look: Development): Float32Array {
  const light = new Float32Array(widthPx * heightPx);
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      const w = 1 / (h[6] * column + h[7] * row + h[8]);
      const seen = faceLight(face, (h[0] * column + h[1] * row + h[2]) * w, (h[3] * column + h[4] * row + h[5]) * w, look);
      light[row * widthPx + column] = seen * look.paper * (1 + look.slope * (column / widthPx - 0.5));
    }
  }
  return light;
}

function faceLight(face: Face, acrossMm: number, downMm: number, look: Development): number {
  const x = acrossMm * face.pxPerMm - 0.5;
  const y = downMm * face.pxPerMm - 0.5;
  if (!(x >= 0 && y >= 0 && x < face.widthPx - 1 && y < face.heightPx - 1)) return look.ground;
  const [x0, y0] = [x | 0, y | 0];
  const [fx, fy] = [x - x0, y - y0];
  const at = y0 * face.widthPx + x0;
  const { light, widthPx } = face;
  const top = light[at] + fx * (light[at + 1] - light[at]);
  const below = light[at + widthPx] + fx * (light[at + widthPx + 1] - light[at + widthPx]);
  return look.ink + (1 - look.ink) * (top + fy * (below - top));
}

/** Gaussian blur in place, rows first, then columns; both run along memory. */
function blur(light: Float32Array, widthPx: number, heightPx: number, sigmaPx: number): void {
  if (sigmaPx <= 0) return;
  const reach = Math.ceil(2.5 * sigmaPx);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * sigmaPx ** 2)));
  const total = weights.reduce((sum, w) => sum + w, 0);
  const before = light.slice();
  light.fill(0);
  addShifted(light, before, widthPx, heightPx, (k) => [0, k - reach, weights[k] / total], weights.length);
  before.set(light);
  light.fill(0);
  addShifted(light, before, widthPx, heightPx, (k) => [k - reach, 0, weights[k] / total], weights.length);
}

type Shift = readonly [down: number, across: number, weight: number];

/** Adds weighted, shifted copies; beyond its border the picture goes on as it ends. */
function addShifted(to: Float32Array, from: Float32Array, widthPx: number, heightPx: number, shift: (k: number) => Shift, count: number): void {
  for (let k = 0; k < count; k++) {
    for (let row = 0; row < heightPx; row++) {
      const [down, across, weight] = shift(k);
      const start = Math.min(heightPx - 1, Math.max(0, row + down)) * widthPx;
      const first = row * widthPx + Math.max(0, -across);
      const last = row * widthPx + widthPx - Math.max(0, across);
      for (let i = row * widthPx; i < first; i++) to[i] += weight * from[start];
      const offset = start - row * widthPx + across;
      for (let i = first; i < last; i++) to[i] += weight * from[i + offset];
      for (let i = last; i < (row + 1) * widthPx; i++) to[i] += weight * from[start + widthPx - 1];
    }
  }
}

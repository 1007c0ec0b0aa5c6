/** The printed side of a card as ink: what the designer asked the printer for, and what that printer made of it. */
import type { CardGeometry } from '../../../lib/card/card-geometry';
import type { PointMm } from '../../../lib/units';
import type { Matrix3 } from '../camera/phone-sensor';
import type { CardSpec } from '../phantom-spec';

export interface CardFace {
  readonly geometry: CardGeometry;
  /** The notch as it was cut; a person may cut a narrower line than the geometry's widest. */
  readonly cut: readonly PointMm[];
  readonly pxPerMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** sRGB code values, three per pixel; the centre of pixel (0, 0) lies half a pixel inside the card. */
  readonly srgb: Uint8Array;
}

/** One size of the printed picture, in linear light of one lamp. */
export interface FaceLevel {
  readonly pxPerMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rgb: Float32Array;
}

const decode = (code: number): number => {
  const c = code / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
};

/** Code value → reflectance of this printer's ink on this paper, before its colour cast. */
function inkCurve(card: CardSpec): Float32Array {
  return Float32Array.from({ length: 256 }, (_, code) => card.inkBlack + (card.paperWhite - card.inkBlack) * decode(code) ** card.inkGamma);
}

function halve(level: FaceLevel): FaceLevel {
  const widthPx = level.widthPx >> 1;
  const heightPx = level.heightPx >> 1;
  const rgb = new Float32Array(widthPx * heightPx * 3);
  const row = level.widthPx * 3;
  for (let r = 0; r < heightPx; r++) {
    for (let c = 0, from = 2 * r * row, to = r * widthPx * 3; c < widthPx; c++, from += 6, to += 3) {
      rgb[to] = (level.rgb[from] + level.rgb[from + 3] + level.rgb[from + row] + level.rgb[from + row + 3]) / 4;
      rgb[to + 1] = (level.rgb[from + 1] + level.rgb[from + 4] + level.rgb[from + row + 1] + level.rgb[from + row + 4]) / 4;
      rgb[to + 2] = (level.rgb[from + 2] + level.rgb[from + 5] + level.rgb[from + row + 2] + level.rgb[from + row + 5]) / 4;
    }
  }
  return { pxPerMm: level.pxPerMm / 2, widthPx, heightPx, rgb };
}

/** The inks of the whole picture, at its own size or, to save a big table, at half of it. */
function inked(face: CardFace, inks: readonly Float32Array[], half: boolean): FaceLevel {
  const step = half ? 2 : 1;
  const widthPx = Math.floor(face.widthPx / step);
  const heightPx = Math.floor(face.heightPx / step);
  const rgb = new Float32Array(widthPx * heightPx * 3);
  const row = half ? face.widthPx * 3 : 0;
  const next = half ? 3 : 0;
  const { srgb } = face;
  inks.forEach((ink, k) => {
    for (let r = 0; r < heightPx; r++) {
      for (let c = 0, from = step * r * face.widthPx * 3 + k, to = r * widthPx * 3 + k; c < widthPx; c++, from += 3 * step, to += 3) {
        rgb[to] = (ink[srgb[from]] + ink[srgb[from + next]] + ink[srgb[from + row]] + ink[srgb[from + row + next]]) / 4;
      }
    }
  });
  return { pxPerMm: face.pxPerMm / step, widthPx, heightPx, rgb };
}

/** The printed face in one light, at the size whose grain suits a photo of `photoPxPerMm`. */
export function printedFace(face: CardFace, card: CardSpec, [mr, mg, mb]: Matrix3, photoPxPerMm: number): FaceLevel {
  const curve = inkCurve(card);
  const inks = card.cast.map((cast) => curve.map((reflectance) => reflectance * cast));
  const finest = 2.2 * photoPxPerMm;
  let level = inked(face, inks, face.pxPerMm > finest);
  while (level.pxPerMm > finest) level = halve(level);
  const lit = level.rgb;
  for (let i = 0; i < lit.length; i += 3) {
    const r = lit[i], g = lit[i + 1], b = lit[i + 2];
    lit[i] = mr[0] * r + mr[1] * g + mr[2] * b;
    lit[i + 1] = mg[0] * r + mg[1] * g + mg[2] * b;
    lit[i + 2] = mb[0] * r + mb[1] * g + mb[2] * b;
  }
  return level;
}

/** The face's colour at a place of the designed card, joined bilinearly; the edge continues outward. */
export function faceColourInto(out: Float64Array, level: FaceLevel, acrossMm: number, downMm: number): void {
  const c = Math.min(level.widthPx - 1.001, Math.max(0, acrossMm * level.pxPerMm - 0.5));
  const r = Math.min(level.heightPx - 1.001, Math.max(0, downMm * level.pxPerMm - 0.5));
  const c0 = c | 0;
  const r0 = r | 0;
  const fc = c - c0;
  const fr = r - r0;
  const i = (r0 * level.widthPx + c0) * 3;
  const j = i + level.widthPx * 3;
  for (let k = 0; k < 3; k++) {
    const top = level.rgb[i + k] + (level.rgb[i + 3 + k] - level.rgb[i + k]) * fc;
    const bottom = level.rgb[j + k] + (level.rgb[j + 3 + k] - level.rgb[j + k]) * fc;
    out[k] = top + (bottom - top) * fr;
  }
}

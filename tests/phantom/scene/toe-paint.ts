/** The colour and the shine of every texel of the toe, in one lamp's light: linear sRGB with a perfect white balance. */
import type { ColourResponse } from '../camera/colour-response';
import type { Rgb } from '../camera/phone-sensor';
import { layeredNoise, valueNoise } from '../random/value-noise';
import type { PhantomSpec } from '../phantom-spec';
import { melaninForIta, RESTING_BLOOD_SHARE, RESTING_SATURATION } from '../skin/skin-class';
import { skinMarks } from './skin-marks';
import { mix, smoothStep } from './smooth';
import type { ToeFields } from './toe-fields';
import type { ToeSurface } from './toe-surface';

export interface ToePaint {
  /** Three numbers per texel. */
  readonly albedo: Float32Array;
  /** Strength of the shine, 0…1, and its sharpness, 0 broad … 1 a mirror. */
  readonly shine: Float32Array;
  readonly sharpness: Float32Array;
}

/** Linear sRGB in daylight of the plain colours; invented. */
const NAIL_VEIL: Rgb = [0.74, 0.62, 0.54];
const LUNULA: Rgb = [0.8, 0.7, 0.64];
const FREE_EDGE: Rgb = [0.74, 0.7, 0.57];
const SLOUGH: Rgb = [0.62, 0.53, 0.31];
const DRIED_BLOOD: Rgb = [0.07, 0.018, 0.014];
const CRUST: Rgb = [0.24, 0.12, 0.045];
const MACERATED: Rgb = [0.74, 0.69, 0.62];
const IODINE: Rgb = [0.75, 0.42, 0.12];
const HAIR: Rgb = [0.03, 0.022, 0.018];
const CUTICLE: Rgb = [0.66, 0.55, 0.47];

/** Nothing that belongs to the wound lies farther from the margin than this. */
const WOUND_REACH_MM = -8;

type Painter = (at: number, along: number, across: number, i: number) => void;

/** Skin by itself: melanin and blood with their natural patchiness, a redder tip and joint, and the added blood. */
function skinPainter(spec: PhantomSpec, fields: ToeFields, response: ColourResponse, albedo: Float32Array): Painter {
  const { toe } = spec;
  const melanin = melaninForIta(toe.skin.itaDeg);
  const pigment = layeredNoise(toe.seed + 31, 2);
  const flush = layeredNoise(toe.seed + 32, 2);
  const veins = layeredNoise(toe.seed + 33, 2);
  const grain = valueNoise(toe.seed + 34);
  // What depends on the row alone is worked out once for the row.
  let rowAt = -1;
  let warm = 1;
  let crease = 1;
  return (at, along, across, i) => {
    if (along !== rowAt) {
      const joint = Math.exp(-(((along - 31) / 6) ** 2));
      rowAt = along;
      warm = 1 + 0.55 * (1 - smoothStep(1, 11, along)) + 0.18 * joint;
      crease = 1 + 0.35 * joint * Math.min(1, melanin * 8);
    }
    const pores = 1 + 0.25 * toe.skin.bloodSpread * grain(along * 4.1, across * 4.1);
    const patchy = pores * (1 + 2 * toe.skin.bloodSpread * flush(along * 0.16, across * 0.16)) * (1 + 0.6 * toe.skin.bloodSpread * veins(along * 1.1, across * 1.1));
    const dark = melanin * crease * (1 + 2 * toe.skin.melaninSpread * pigment(along * 0.22, across * 0.22));
    const open = smoothStep(-0.15, 0.25, fields.rawMm[i]);
    const bed = smoothStep(-0.35, 0.25, fields.insideMm[i]);
    const thin = Math.max(open, bed * 0.92);
    const blood = RESTING_BLOOD_SHARE * warm * patchy + fields.addedBlood[i] + 0.02 * bed * (1 - open) + (open > 0 ? 0.075 * open * (1 + 0.5 * veins(along * 0.9, across * 0.9)) : 0);
    response.skinInto(albedo, at, Math.max(0, dark * (1 - thin)), Math.max(0.0005, blood), Math.min(0.98, RESTING_SATURATION + 0.1 * fields.rednessShare[i] + 0.15 * open));
  };
}

function blend(albedo: Float32Array, at: number, colour: Rgb, share: number): void {
  if (share <= 0) return;
  for (let c = 0; c < 3; c++) albedo[at + c] += (colour[c] - albedo[at + c]) * share;
}

/** The plate over its bed: veil, lunula, white free edge, streaks; or varnish. */
function platePainter(spec: PhantomSpec, surface: ToeSurface, fields: ToeFields, response: ColourResponse, paint: ToePaint): Painter {
  const { nail } = spec.toe;
  const [veil, lunula, white] = [NAIL_VEIL, LUNULA, FREE_EDGE].map(response.paint);
  const polish = nail.polish ? response.paint(nail.polish) : null;
  const streak = valueNoise(spec.toe.seed + 41);
  return (at, along, across, i) => {
    const plate = smoothStep(-0.06, 0.08, fields.plateMm[i]);
    if (plate === 0) return;
    const behind = surface.nail.behindFreeEdgeMm(along, across);
    const streaks = 0.06 * streak(across * 2.6, along * 0.08);
    const whiteEdge = 1 - smoothStep(nail.whiteEdgeMm - 0.25, nail.whiteEdgeMm + 0.35, behind + 0.15 * streak(across * 0.8, 9));
    const toRoot = surface.nail.rootMm - along;
    const moon = 1 - smoothStep(nail.lunulaMm - 0.5, nail.lunulaMm + 0.5, Math.hypot(toRoot, across * 0.42));
    blend(paint.albedo, at, veil, plate * (0.34 + streaks));
    blend(paint.albedo, at, lunula, plate * 0.5 * moon);
    blend(paint.albedo, at, white, plate * 0.86 * whiteEdge);
    if (polish) blend(paint.albedo, at, polish, plate * 0.95 * smoothStep(0.1, 0.35, Math.min(fields.insideMm[i], toRoot - 0.8)));
    paint.shine[i] = mix(paint.shine[i], polish ? 0.9 : 0.55, plate);
    paint.sharpness[i] = mix(paint.sharpness[i], polish ? 0.95 : 0.7, plate);
  };
}

/** What lies on top: slough, maceration, iodine, dried blood, crust, hair, freckles. */
function overlayPainter(spec: PhantomSpec, surface: ToeSurface, fields: ToeFields, response: ColourResponse, paint: ToePaint): Painter {
  const { wound, toe } = spec;
  const [slough, blood, crust, macerated, iodine, hair, cuticle] = [SLOUGH, DRIED_BLOOD, CRUST, MACERATED, IODINE, HAIR, CUTICLE].map(response.paint);
  const rough = layeredNoise(toe.seed + 51, 2);
  const marks = skinMarks(spec, surface);
  const grainAt = (along: number, across: number, inside: number): number => (inside < -6 ? 0.5 : 0.5 + 0.5 * rough(along * 0.8, across * 0.8));
  const nearWound = (at: number, along: number, across: number, i: number): void => {
    const inside = fields.insideMm[i];
    if (inside > -1 && inside < 0.5) blend(paint.albedo, at, cuticle, 0.3 * Math.exp(-(((inside + 0.25) / 0.22) ** 2)) * smoothStep(2, 6, along));
    const grain = grainAt(along, across, inside);
    blend(paint.albedo, at, macerated, 0.66 * smoothStep(-0.55, 0.55, fields.maceratedMm[i]) * (0.75 + 0.25 * grain));
    const open = smoothStep(-0.05, 0.3, fields.rawMm[i]);
    blend(paint.albedo, at, slough, 0.7 * open * (1 - smoothStep(wound.sloughShare * 0.75 - 0.1, wound.sloughShare * 0.75 + 0.25, grain - 0.1)));
    const wet = Math.max(open * (0.4 + 0.6 * wound.wetness), smoothStep(0, 0.3, fields.grooveMm[i]) * wound.wetness);
    paint.shine[i] = Math.max(paint.shine[i], wet);
    paint.sharpness[i] = mix(paint.sharpness[i], 0.85, wet);
  };
  const stained = (at: number, along: number, across: number): void => {
    const stain = wound.iodine * smoothStep(0.25, 0.6, 0.5 + 0.6 * rough(along * 0.12, across * 0.12)) * smoothStep(27, 18, along);
    for (let c = 0; c < 3; c++) paint.albedo[at + c] *= 1 - stain * (1 - iodine[c]);
  };
  const dried = (at: number, along: number, across: number, i: number): void => {
    blend(paint.albedo, at, blood, 0.9 * marks.driedBlood(along, across));
    const scab = marks.crust(along, across);
    blend(paint.albedo, at, crust, 0.88 * scab * (0.75 + 0.25 * grainAt(along, across, fields.insideMm[i])));
    paint.shine[i] *= 1 - 0.85 * scab;
  };
  return (at, along, across, i) => {
    const near = fields.insideMm[i] > WOUND_REACH_MM;
    if (near) nearWound(at, along, across, i);
    if (wound.iodine > 0 && along < 27) stained(at, along, across);
    if (near) dried(at, along, across, i);
    const spot = marks.freckle(along, across);
    if (spot > 0 && fields.insideMm[i] < -0.3) for (let c = 0; c < 3; c++) paint.albedo[at + c] *= 1 - spot * (0.22 + 0.12 * c);
    if (marks.hair !== null) blend(paint.albedo, at, hair, marks.hair[i]);
  };
}

/** Paints the whole table in one light. */
export function toePaint(spec: PhantomSpec, surface: ToeSurface, fields: ToeFields, response: ColourResponse): ToePaint {
  const { rows, columns, alongMm, acrossMm } = surface;
  const size = rows * columns;
  const paint: ToePaint = {
    albedo: new Float32Array(size * 3),
    shine: new Float32Array(size).fill(0.16),
    sharpness: new Float32Array(size).fill(0.12),
  };
  const painters = [
    skinPainter(spec, fields, response, paint.albedo),
    platePainter(spec, surface, fields, response, paint),
    overlayPainter(spec, surface, fields, response, paint),
  ];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const i = r * columns + c;
      for (const painter of painters) painter(i * 3, alongMm[r], acrossMm[i], i);
    }
  }
  return paint;
}

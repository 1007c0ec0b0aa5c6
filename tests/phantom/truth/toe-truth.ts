/** Outlines and measurands of a placed toe. Definitions: the project's table of measurands. */
import type { LineOfPairs, PairMm, TruthMeasurements, TruthOutlines, TruthRing } from '../phantom-truth';
import type { Scene } from '../scene/build-scene';
import type { SkinPoint } from '../scene/nail-unit';
import { skinToToe } from '../scene/toe-surface';
import { denseRing, distanceToLineMm } from './line-distance';
import { onSkin } from './on-skin';
import { onPlane, planeMap, type PlaneMap } from './plane-map';
import { joinedPieces } from './joined-pieces';
import { areaOf, zeroOutline } from './zero-outline';

const GRID_PX_PER_MM = 12;
const AT_MARGIN_MM = 0.25;
const MARGIN_STEPS = 240;
const HALF_PLATEAU = 0.5;
/** A little more and a little less than half: where these areas leap, pieces all but touch and the answer is moot. */
const NEIGHBOUR_LEVELS = [0.45, 0.55] as const;
const EDGE_STEP_MM = 0.1;
/** Shares of a plateau become comparable with millimetres at this slope. */
const SHARE_TO_MM = 3;

function skinLine(scene: Scene, points: readonly SkinPoint[]): LineOfPairs {
  const { surface, pose } = scene.toe!;
  return points.map((point): PairMm => {
    const [across, down] = pose.toCard(skinToToe(surface, point));
    return [across, down];
  });
}

function gridAround(scene: Scene): Parameters<typeof planeMap>[2] {
  const [across, down] = scene.toe!.pose.origin;
  const half = scene.spec.toe.halfWidthMm + 5;
  return {
    originAcrossMm: across - half,
    originDownMm: down - 3,
    pxPerMm: GRID_PX_PER_MM,
    widthPx: Math.ceil(2 * half * GRID_PX_PER_MM),
    heightPx: Math.ceil(45 * GRID_PX_PER_MM),
  };
}

function combined(length: number, value: (i: number) => number): Float32Array {
  const out = new Float32Array(length);
  for (let i = 0; i < length; i++) out[i] = value(i);
  return out;
}

function reaches(rings: readonly TruthRing[], margin: LineOfPairs, proximal: PairMm): Pick<TruthMeasurements, 'reach' | 'reachP95' | 'proximalReach'> {
  const edge = rings.flatMap(({ ring }) => denseRing(ring, EDGE_STEP_MM));
  if (edge.length === 0) return { reach: null, reachP95: null, proximalReach: null };
  const distances = edge.map((point) => distanceToLineMm(point, margin));
  const away = distances.filter((distance) => distance > AT_MARGIN_MM).sort((a, b) => a - b);
  const along = (point: PairMm): number => point[0] * proximal[0] + point[1] * proximal[1];
  const last = Math.max(...margin.map(along));
  return {
    reach: Math.max(...distances),
    reachP95: away.length === 0 ? null : away[Math.min(away.length - 1, Math.floor(0.95 * away.length))],
    proximalReach: Math.max(0, Math.max(...edge.map(along)) - last),
  };
}

/** The fields of the toe's table on one grid of the plane, cleaned as truth defines them. */
export function truthFields(scene: Scene, map: PlaneMap, level = HALF_PLATEAU): { toe: Float32Array; plate: Float32Array; groove: Float32Array; raw: Float32Array; macerated: Float32Array; redness: Float32Array; erythema: Float32Array } {
  const toe = scene.toe!;
  const plane = (field: Float32Array): Float32Array => onPlane(map, toe, field, -9);
  const inside = plane(toe.fields.insideMm);
  const plate = plane(toe.fields.plateMm);
  const raw = plane(toe.fields.rawMm);
  const wetSkin = plane(toe.fields.maceratedMm);
  const share = plane(toe.fields.rednessShare);
  const hidden = map.underCard;
  const size = inside.length;
  const macerated = combined(size, (i) => (hidden[i] ? -9 : Math.min(wetSkin[i], -raw[i])));
  const redness = combined(size, (i) => (hidden[i] ? -9 : Math.min((share[i] - level) * SHARE_TO_MM, -inside[i])));
  return {
    plate,
    raw,
    macerated,
    redness,
    toe: combined(size, (i) => (map.row[i] < 0 ? -1 : 1)),
    groove: plane(toe.fields.grooveMm),
    erythema: combined(size, (i) => Math.min(redness[i], -raw[i], -macerated[i])),
  };
}

/** Everything that is known about the toe of a scene. */
export function toeTruth(scene: Scene): { outlines: TruthOutlines; measurements: TruthMeasurements } {
  const { surface, pose } = scene.toe!;
  const { nail } = surface;
  const map = planeMap(scene.toe!, scene.card, gridAround(scene));
  const fields = truthFields(scene, map);
  const onMargin = (side: -1 | 1, until: number): SkinPoint[] => Array.from({ length: MARGIN_STEPS + 1 }, (_, i) => nail.marginPoint(side, (until * i) / MARGIN_STEPS));
  const margin = (side: -1 | 1, until: number): LineOfPairs => skinLine(scene, onMargin(side, until));
  const treated = margin(nail.treated, 1);
  const lateral = margin(nail.treated, nail.cornerShare);
  const cutEdge = skinLine(scene, nail.cutLine(MARGIN_STEPS));
  const { joined, satellites } = joinedPieces(zeroOutline(map, fields.erythema), zeroOutline(map, fields.redness), treated);
  const areaAtLevel = (level: number): number => {
    const { erythema, redness } = truthFields(scene, map, level);
    return areaOf(joinedPieces(zeroOutline(map, erythema), zeroOutline(map, redness), treated).joined);
  };
  const widths = lateral.map((point) => distanceToLineMm(point, cutEdge));
  const [px, py] = pose.axes[1];
  const flat = Math.hypot(px, py);
  const raw = zeroOutline(map, fields.raw).flat();
  const macerated = zeroOutline(map, fields.macerated).flat();
  return {
    outlines: {
      toe: zeroOutline(map, fields.toe).flat(),
      nailPlate: zeroOutline(map, fields.plate).flat(),
      groove: zeroOutline(map, fields.groove).flat(),
      nailFoldMargin: treated,
      nailFoldMarginLateral: lateral,
      nailFoldMarginUntreated: margin(nail.treated === 1 ? -1 : 1, 1),
      cutEdge,
      erythema: joined,
      erythemaSatellites: satellites,
      raw,
      macerated,
      shapes: [],
    },
    measurements: {
      erythemaArea: areaOf(joined),
      erythemaAreaAtLevels: Object.fromEntries(NEIGHBOUR_LEVELS.map((level) => [String(level), areaAtLevel(level)])),
      ...reaches(joined, treated, [px / flat, py / flat]),
      ...onSkin(map, scene.toe!, joined, onMargin(nail.treated, 1)),
      grooveWidth: widths.reduce((sum, width) => sum + width, 0) / widths.length,
      grooveWidthMax: Math.max(...widths),
      rawArea: areaOf(raw),
      maceratedArea: areaOf(macerated),
    },
  };
}

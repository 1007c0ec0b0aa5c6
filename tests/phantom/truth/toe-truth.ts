/** Outlines and measurands of a placed toe. Definitions: the project's table of measurands. */
import type { LineOfPairs, PairMm, TruthMeasurements, TruthOutlines, TruthRing } from '../phantom-truth';
import type { Scene } from '../scene/build-scene';
import type { SkinPoint } from '../scene/nail-unit';
import { skinToToe } from '../scene/toe-surface';
import { denseRing, distanceToLineMm } from './line-distance';
import { onPlane, planeMap, type PlaneMap } from './plane-map';
import { areaOf, zeroOutline, type Piece } from './zero-outline';

const GRID_PX_PER_MM = 12;
const SATELLITE_MM = 1;
const AT_MARGIN_MM = 0.25;
const MARGIN_STEPS = 240;
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

/** Even–odd rule over a ring and points of another one that lies within it or elsewhere, but does not cross it. */
function holds(outer: LineOfPairs, ring: LineOfPairs): boolean {
  const votes = ring.filter(([x, y]) => {
    let inside = false;
    for (let i = 0, j = outer.length - 1; i < outer.length; j = i++) {
      const [ax, ay] = outer[j], [bx, by] = outer[i];
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    }
    return inside;
  });
  return votes.length > ring.length / 3;
}

/** Pieces of redness that belong to the treated fold: what hides under raw or soaked skin still joins them to it. */
function joinedPieces(visible: readonly Piece[], whole: readonly Piece[], margin: LineOfPairs): { joined: TruthRing[]; satellites: TruthRing[] } {
  const atFold = whole.filter((piece) => piece[0].ring.some((point) => distanceToLineMm(point, margin) < SATELLITE_MM));
  const joined: TruthRing[] = [];
  const satellites: TruthRing[] = [];
  for (const piece of visible) (atFold.some(([outer]) => holds(outer.ring, piece[0].ring)) ? joined : satellites).push(...piece);
  return { joined, satellites };
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
export function truthFields(scene: Scene, map: PlaneMap): { toe: Float32Array; plate: Float32Array; groove: Float32Array; raw: Float32Array; macerated: Float32Array; redness: Float32Array; erythema: Float32Array } {
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
  const redness = combined(size, (i) => (hidden[i] ? -9 : Math.min((share[i] - 0.5) * SHARE_TO_MM, -inside[i])));
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
  const margin = (side: -1 | 1, until: number): LineOfPairs =>
    skinLine(scene, Array.from({ length: MARGIN_STEPS + 1 }, (_, i) => nail.marginPoint(side, (until * i) / MARGIN_STEPS)));
  const treated = margin(nail.treated, 1);
  const lateral = margin(nail.treated, nail.cornerShare);
  const cutEdge = skinLine(scene, nail.cutLine(MARGIN_STEPS));
  const { joined, satellites } = joinedPieces(zeroOutline(map, fields.erythema), zeroOutline(map, fields.redness), treated);
  const widths = lateral.map((point) => distanceToLineMm(point, cutEdge));
  const [px, py] = pose.axes[1];
  const level = Math.hypot(px, py);
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
      ...reaches(joined, treated, [px / level, py / level]),
      grooveWidth: widths.reduce((sum, width) => sum + width, 0) / widths.length,
      grooveWidthMax: Math.max(...widths),
      rawArea: areaOf(raw),
      maceratedArea: areaOf(macerated),
    },
  };
}

/** The whole truth of a scene. */
import { edgeSpreadPx } from '../camera/blur';
import type { FaultKind, PrintedShape } from '../phantom-spec';
import type { LineOfPairs, PairMm, PhantomTruth, TruthOutlines } from '../phantom-truth';
import type { Scene } from '../scene/build-scene';
import { itaDeg, reflectanceToLab65, type Lab65 } from '../skin/skin-lab65';
import { melaninForIta, RESTING_BLOOD_SHARE, RESTING_SATURATION } from '../skin/skin-class';
import { skinReflectance } from '../skin/skin-reflectance';
import { fitPlane } from './fit-plane';
import { toeTruth } from './toe-truth';
import { ringAreaMm2 } from './zero-outline';

export const RENDERER_VERSION = '1.0.0';

const GATE_OF: Readonly<Record<FaultKind, string>> = {
  noCard: 'cardNotFound', tooFewFiducials: 'tooFewFiducials', wrongCard: 'wrongCard', mirrored: 'mirrored', tilt: 'tilt',
  lowResolution: 'resolution', defocus: 'blur', motion: 'blur', overexposed: 'clipped', tooDark: 'tooDark',
  unevenLight: 'unevenLight', glareNail: 'glare', toeNotInNotch: 'toeNotInNotch', notAPhotograph: 'notAPhotograph',
  captureTime: 'captureTime', duplicate: 'duplicate',
};

/** The gate that has to refuse a photo with these faults. */
export const gateOf = (faults: readonly FaultKind[]): string | null => (faults.length === 0 ? null : GATE_OF[faults[0]]);

const CORNERS = [[-1, -1], [1, -1], [1, 1], [-1, 1]] as const;
const CHECK_POINTS = 7;

/** Where a point of the card's plane is in the upright file: mirrored photos are flipped from side to side. */
function imaged(scene: Scene, [x, y]: PairMm, distorted = true): PairMm {
  const { column, row } = scene.camera.project([x, y, 0], distorted);
  return [scene.spec.faults.includes('mirrored') ? scene.spec.camera.widthPx - 1 - column : column, row];
}

function cardTruth(scene: Scene): PhantomTruth['card'] {
  const { geometry } = scene.face;
  const scale = scene.spec.card?.printScale ?? 1;
  const corners = geometry.fiducials.map(({ centre, sizeMm }) =>
    CORNERS.map(([sx, sy]): PairMm => [(centre.acrossMm + (sx * sizeMm) / 2) * scale, (centre.downMm + (sy * sizeMm) / 2) * scale]),
  );
  const flat = corners.flat();
  const [mx, my] = scene.middleMm;
  const grid = Array.from({ length: CHECK_POINTS * CHECK_POINTS }, (_, i): PairMm => [
    mx + ((i % CHECK_POINTS) - (CHECK_POINTS - 1) / 2) * 3,
    my + (Math.floor(i / CHECK_POINTS) - (CHECK_POINTS - 1) / 2) * 3,
  ]);
  return {
    present: scene.card !== null,
    version: geometry.version,
    homography: fitPlane(flat.map((point) => imaged(scene, point)), flat),
    homographyPinhole: fitPlane(flat.map((point) => imaged(scene, point, false)), flat),
    checkPoints: { imagePx: grid.map((point) => imaged(scene, point)), cardMm: grid },
    fiducialIds: geometry.fiducials.map(({ id }) => id),
    fiducialCornersPx: corners.map((four) => four.map((point) => imaged(scene, point))),
    printScale: scale,
    barReadsMm: 50 * scale,
  };
}

function shapeRing(shape: PrintedShape): { ring: LineOfPairs; areaMm2: number } {
  if (shape.kind === 'polygon') return { ring: shape.cornersMm, areaMm2: ringAreaMm2(shape.cornersMm) };
  const [a, b] = shape.kind === 'disc' ? [shape.radiusMm, shape.radiusMm] : shape.halfAxesMm;
  const turn = shape.kind === 'disc' ? 0 : (shape.turnDeg * Math.PI) / 180;
  const ring = Array.from({ length: 360 }, (_, i): PairMm => {
    const u = a * Math.cos((i * Math.PI) / 180), v = b * Math.sin((i * Math.PI) / 180);
    return [shape.centreMm[0] + u * Math.cos(turn) - v * Math.sin(turn), shape.centreMm[1] + u * Math.sin(turn) + v * Math.cos(turn)];
  });
  return { ring, areaMm2: Math.PI * a * b };
}

function shapesOnly(shapes: readonly PrintedShape[]): TruthOutlines {
  return {
    toe: [], nailPlate: [], nailFoldMargin: [], nailFoldMarginLateral: [], nailFoldMarginUntreated: [], cutEdge: [], erythema: [],
    erythemaSatellites: [], groove: [], raw: [], macerated: [], shapes: shapes.map(shapeRing),
  };
}

const triple = ({ lightness, a, b }: Lab65): readonly [number, number, number] => [lightness, a, b];

function colourTruth(scene: Scene): PhantomTruth['colour'] {
  const { toe, wound, subject } = scene.spec;
  const melaninShare = melaninForIta(toe.skin.itaDeg);
  const labOf = (bloodShare: number): Lab65 => reflectanceToLab65(skinReflectance({ melaninShare, bloodShare, saturation: RESTING_SATURATION }));
  const first = wound.redness.find(({ where }) => where === 'treatedFold') ?? null;
  const added = subject.kind === 'skinPatch' ? subject.addedBloodShare : (first?.addedBloodShare ?? null);
  const resting = labOf(RESTING_BLOOD_SHARE);
  return {
    itaDeg: itaDeg(resting),
    labReferenceD65: triple(resting),
    labPlateauD65: added === null ? null : triple(labOf(RESTING_BLOOD_SHARE + added)),
    addedBloodShare: added,
    edgeWidthMm: first?.edgeMm ?? null,
  };
}

function viewAngleDeg(scene: Scene): number {
  const { pupil } = scene.camera;
  const [x, y] = scene.middleMm;
  return (Math.atan2(Math.hypot(pupil[0] - x, pupil[1] - y), pupil[2]) * 180) / Math.PI;
}

/** What a photo of this scene shows, exactly. */
export function sceneTruth(scene: Scene): PhantomTruth {
  const { spec, camera, pxPerMm } = scene;
  const toe = scene.toe === null ? null : toeTruth(scene);
  const colour = colourTruth(scene);
  const shapes = spec.subject.kind === 'shapes' ? shapesOnly(spec.subject.shapes) : null;
  return {
    rendererVersion: RENDERER_VERSION,
    seed: spec.seed,
    skinClass: spec.toe.skin.skinClass,
    light: spec.light.key === spec.light.ambient ? spec.light.key : `${spec.light.key}+${spec.light.ambient}`,
    faults: spec.faults,
    expectedGate: gateOf(spec.faults),
    treatedSide: spec.wound.side,
    subject: spec.subject.kind,
    image: { width: spec.camera.widthPx, height: spec.camera.heightPx, orientationTag: spec.camera.orientationTag },
    card: cardTruth(scene),
    camera: {
      tiltDeg: spec.camera.tiltDeg,
      azimuthDeg: spec.camera.azimuthDeg,
      rollDeg: spec.camera.rollDeg,
      distanceMm: spec.camera.distanceMm,
      heightMm: camera.pupil[2],
      viewAngleAtNailDeg: viewAngleDeg(scene),
      pxPerMmAtNail: pxPerMm,
      focalPx: camera.focalPx,
      k1: spec.camera.k1,
      k2: spec.camera.k2,
      edgeSpreadMm: edgeSpreadPx(spec.camera) / pxPerMm,
      jpegQuality: spec.camera.jpegQuality,
      captureTime: spec.camera.captureTime,
    },
    heightOffsetMm: spec.pose.heightOffsetMm,
    colour,
    itaDeg: colour.itaDeg,
    measurements: toe?.measurements ?? null,
    outlines: toe?.outlines ?? shapes,
  };
}

/** Everything of one photo put in its place: camera, lamp, card, toe, foot, ground, with colours for this phone and light. */
import { colourResponse, type ColourResponse } from '../camera/colour-response';
import { pinholeCamera, pxPerMmAt, type PinholeCamera } from '../camera/pinhole-camera';
import { lampOf, type Lamp } from '../light/lamp';
import { cardShade, groundShade, toeShade, type Blockers, type ShadeMap } from '../light/shade-maps';
import type { PhantomSpec } from '../phantom-spec';
import { printedFace, type CardFace, type FaceLevel } from './card-face';
import { cardOutline, type CardOutline } from './card-outline';
import { footOf, type Foot } from './foot';
import { groundColour, type GroundColour } from './ground';
import { faceByName } from './own-face';
import { limit } from './smooth';
import { toeFields, type ToeFields } from './toe-fields';
import { toePaint, type ToePaint } from './toe-paint';
import { notchEnd, toePose, type ToePose } from './toe-pose';
import { skinToToe, toeSurface, type ToeSurface } from './toe-surface';
import { toeTracer, type ToeTracer } from './trace-toe';

export interface PlacedToe {
  readonly surface: ToeSurface;
  readonly fields: ToeFields;
  readonly pose: ToePose;
  readonly tracer: ToeTracer;
  /** In the key light and in the ambient light; the same object where both lamps are alike. */
  readonly keyPaint: ToePaint;
  readonly ambientPaint: ToePaint;
  readonly shade: ShadeMap;
  readonly foot: Foot;
}

export interface PlacedCard {
  readonly face: CardFace;
  readonly outline: CardOutline;
  readonly scale: number;
  readonly keyLevel: FaceLevel;
  readonly ambientLevel: FaceLevel;
  readonly shade: ShadeMap;
}

export interface Scene {
  readonly spec: PhantomSpec;
  readonly camera: PinholeCamera;
  readonly pxPerMm: number;
  /** Middle of the nail (or of the notch) on the card's plane. */
  readonly middleMm: readonly [number, number];
  readonly lamp: Lamp;
  readonly keyResponse: ColourResponse;
  readonly ambientResponse: ColourResponse;
  readonly toe: PlacedToe | null;
  readonly card: PlacedCard | null;
  /** The face the card would have, for frames of photos without a card. */
  readonly face: CardFace;
  readonly ground: GroundColour;
  readonly groundHeightMm: number;
  readonly groundShade: ShadeMap;
}

/** Grain of the toe's table: a little finer than the photo, within reason. */
const texelFor = (pxPerMm: number): number => limit(0.85 / pxPerMm, 0.055, 0.1);

function middleOfNail(spec: PhantomSpec, surface: ToeSurface, pose: ToePose): [number, number] {
  const { nail } = spec.toe;
  const [across, down] = pose.toCard(skinToToe(surface, { alongMm: nail.freeEdgeMm + nail.lengthMm / 2, acrossMm: 0 }));
  return [across, down];
}

/** Builds the scene of a spec; `face` replaces the card that the spec names. */
export function buildScene(spec: PhantomSpec, face?: CardFace): Scene {
  const shown = face ?? faceByName(spec.card?.face ?? 'own-L', spec.card?.serialSeed ?? spec.seed);
  const keyResponse = colourResponse(spec.camera.phoneSeed, spec.light.key);
  const ambientResponse = spec.light.ambient === spec.light.key ? keyResponse : colourResponse(spec.camera.phoneSeed, spec.light.ambient);
  const scale = spec.card?.printScale ?? 1;
  const cut = shown.cut.map((point) => ({ acrossMm: point.acrossMm * scale, downMm: point.downMm * scale }));
  const roughPxPerMm = (spec.camera.focal35Mm * Math.hypot(spec.camera.widthPx, spec.camera.heightPx)) / (43.27 * spec.camera.distanceMm);
  const surface = spec.subject.kind === 'toe' ? toeSurface(spec, texelFor(roughPxPerMm)) : null;
  const pose = surface === null ? null : toePose(surface, spec.pose, cut);
  const end = notchEnd(cut);
  const middleMm = surface === null || pose === null ? ([end.acrossMm, end.downMm + 15] as const) : middleOfNail(spec, surface, pose);
  const camera = pinholeCamera(spec.camera, [middleMm[0] + spec.camera.aimMm[0], middleMm[1] + spec.camera.aimMm[1]]);
  const pxPerMm = pxPerMmAt(camera, ...middleMm);
  const lamp = lampOf(spec.light, middleMm);
  const outline = spec.card === null ? null : cardOutline(shown, scale);
  const tracer = surface === null ? null : toeTracer(surface);
  const foot = surface === null ? null : footOf(spec);
  const blockers: Blockers = { lamp, card: outline, toe: tracer === null || pose === null ? null : { tracer, pose }, foot };
  const groundHeightMm = pose === null ? -14 : pose.origin[2] - spec.toe.halfWidthMm * 0.95;

  let toe: PlacedToe | null = null;
  if (surface !== null && pose !== null && tracer !== null && foot !== null) {
    const fields = toeFields(spec, surface);
    const keyPaint = toePaint(spec, surface, fields, keyResponse);
    const ambientPaint = ambientResponse === keyResponse ? keyPaint : toePaint(spec, surface, fields, ambientResponse);
    toe = { surface, fields, pose, tracer, keyPaint, ambientPaint, foot, shade: toeShade(blockers, surface, 4) };
  }
  let card: PlacedCard | null = null;
  if (spec.card !== null && outline !== null) {
    const keyLevel = printedFace(shown, spec.card, keyResponse.paintMatrix, pxPerMm);
    const ambientLevel = ambientResponse === keyResponse ? keyLevel : printedFace(shown, spec.card, ambientResponse.paintMatrix, pxPerMm);
    card = { face: shown, outline, scale, keyLevel, ambientLevel, shade: cardShade(blockers, shown.geometry.widthMm * scale, shown.geometry.heightMm * scale) };
  }
  return {
    spec, camera, pxPerMm, middleMm, lamp, keyResponse, ambientResponse, toe, card, face: shown, groundHeightMm,
    ground: groundColour(spec.ground, spec.seed, spec.groundTone),
    groundShade: groundShade(blockers, groundHeightMm, middleMm),
  };
}

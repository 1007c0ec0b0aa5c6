/** The light from the card, from what lies in its notch when there is no toe, and from the ground. */
import { valueNoise } from '../random/value-noise';
import type { PrintedShape } from '../phantom-spec';
import { melaninForIta, RESTING_BLOOD_SHARE, RESTING_SATURATION } from '../skin/skin-class';
import type { Scene } from './build-scene';
import { faceColourInto } from './card-face';

/** Shades a place of a level surface; coordinates in mm of the card's frame. */
export type ShadeLevel = (out: Float64Array, acrossMm: number, downMm: number) => void;

/** Prepares the shading of the card's face. */
export function shadeCard(scene: Scene): ShadeLevel {
  const { lamp } = scene;
  const card = scene.card!;
  const { scale, keyLevel, ambientLevel, shade } = card;
  const key = new Float64Array(3);
  const ambient = new Float64Array(3);
  const fibre = valueNoise(scene.spec.seed + 71);
  return (out, acrossMm, downMm) => {
    faceColourInto(key, keyLevel, acrossMm / scale, downMm / scale);
    if (ambientLevel === keyLevel) ambient.set(key);
    else faceColourInto(ambient, ambientLevel, acrossMm / scale, downMm / scale);
    const direct = lamp.strength * lamp.toward[2] * shade.lampAt(acrossMm, downMm) * lamp.evenness(acrossMm, downMm);
    const paper = 1 + 0.006 * fibre(acrossMm * 3, downMm * 3);
    for (let k = 0; k < 3; k++) out[k] = paper * (key[k] * direct + ambient[k] * lamp.ambient);
  };
}

/** Prepares the shading of the ground. */
export function shadeGround(scene: Scene): ShadeLevel {
  const { lamp, ground, groundShade } = scene;
  const plain = new Float64Array(3);
  const [key, ambient] = [scene.keyResponse.paintMatrix, scene.ambientResponse.paintMatrix];
  return (out, acrossMm, downMm) => {
    ground(plain, acrossMm, downMm);
    const direct = lamp.strength * lamp.toward[2] * groundShade.lampAt(acrossMm, downMm) * lamp.evenness(acrossMm, downMm);
    const around = lamp.ambient * groundShade.openAt(acrossMm, downMm);
    for (let k = 0; k < 3; k++) {
      const inKey = key[k][0] * plain[0] + key[k][1] * plain[1] + key[k][2] * plain[2];
      const inAmbient = ambient[k][0] * plain[0] + ambient[k][1] * plain[1] + ambient[k][2] * plain[2];
      out[k] = Math.max(0, inKey * direct + inAmbient * around);
    }
  };
}

/** Is a place inside a printed shape? */
export function insideShape(shape: PrintedShape, x: number, y: number): boolean {
  if (shape.kind === 'disc') return Math.hypot(x - shape.centreMm[0], y - shape.centreMm[1]) < shape.radiusMm;
  if (shape.kind === 'ellipse') {
    const turn = (shape.turnDeg * Math.PI) / 180;
    const dx = x - shape.centreMm[0], dy = y - shape.centreMm[1];
    const u = (dx * Math.cos(turn) + dy * Math.sin(turn)) / shape.halfAxesMm[0];
    const v = (-dx * Math.sin(turn) + dy * Math.cos(turn)) / shape.halfAxesMm[1];
    return u * u + v * v < 1;
  }
  let inside = false;
  const corners = shape.cornersMm;
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    const [ax, ay] = corners[j], [bx, by] = corners[i];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

/** What fills the notch of a flat test target: which of two colours is where, and both colours. */
export function notchFilling(scene: Scene): { second(x: number, y: number): boolean; shade(out: Float64Array, second: boolean, x: number, y: number): void } | null {
  const { subject, toe } = scene.spec;
  if (subject.kind !== 'shapes' && subject.kind !== 'skinPatch') return null;
  const colours = new Float32Array(12);
  const responses = [scene.keyResponse, scene.ambientResponse];
  responses.forEach((response, lampIndex) => {
    const at = lampIndex * 6;
    if (subject.kind === 'shapes') {
      colours.set(response.paint([0.8, 0.8, 0.8]), at);
      colours.set(response.paint([0.3, 0.05, 0.06]), at + 3);
    } else {
      const melanin = melaninForIta(toe.skin.itaDeg);
      response.skinInto(colours, at, melanin, RESTING_BLOOD_SHARE, RESTING_SATURATION);
      response.skinInto(colours, at + 3, melanin, RESTING_BLOOD_SHARE + subject.addedBloodShare, RESTING_SATURATION);
    }
  });
  const { lamp, middleMm } = scene;
  return {
    second: (x, y) => (subject.kind === 'shapes' ? subject.shapes.some((shape) => insideShape(shape, x, y)) : x > middleMm[0]),
    shade(out, second, x, y) {
      const at = second ? 3 : 0;
      const direct = lamp.strength * lamp.toward[2] * lamp.evenness(x, y);
      for (let k = 0; k < 3; k++) out[k] = colours[at + k] * direct + colours[6 + at + k] * lamp.ambient;
    },
  };
}

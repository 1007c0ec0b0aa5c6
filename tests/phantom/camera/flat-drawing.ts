/** What a drawing programme would make of the scene: even areas of colour, no light, no noise, no blur. */
import type { Scene } from '../scene/build-scene';
import type { Vector } from '../scene/toe-pose';

const PAPER = [236, 238, 240] as const;
const SKIN = [240, 200, 172] as const;
const NAIL = [252, 226, 214] as const;
const RED = [226, 92, 84] as const;

/** Draws a scene as flat colours, seen from straight above. */
export function flatDrawing(scene: Scene): Uint8Array {
  const { widthPx, heightPx } = scene.spec.camera;
  const { card, toe, middleMm, face } = scene;
  const pxPerMm = Math.min(widthPx, heightPx) / 100;
  const srgb = new Uint8Array(widthPx * heightPx * 3);
  const hit = { row: 0, column: 0 };
  const direction: Vector = toe?.pose.turnToToe([0, 0, -1]) ?? [0, 0, -1];
  for (let row = 0, i = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++, i += 3) {
      const x = middleMm[0] + (column - widthPx / 2) / pxPerMm;
      const y = middleMm[1] + (row - heightPx / 2) / pxPerMm;
      let colour: ArrayLike<number> = PAPER;
      const origin = toe?.pose.toToe([x, y, 30]);
      if (card !== null && card.outline.insideMm(x, y) > 0) {
        const r = Math.min(face.heightPx - 1, Math.floor(y * face.pxPerMm));
        const c = Math.min(face.widthPx - 1, Math.floor(x * face.pxPerMm));
        colour = face.srgb.subarray((r * face.widthPx + c) * 3, (r * face.widthPx + c) * 3 + 3);
      } else if (toe !== null && origin !== undefined && toe.tracer.trace(...origin, ...direction, 60, hit) >= 0) {
        const at = Math.floor(hit.row) * toe.surface.columns + Math.floor(hit.column);
        colour = toe.fields.plateMm[at] > 0 ? NAIL : toe.fields.rednessShare[at] > 0.5 || toe.fields.grooveMm[at] > 0 ? RED : SKIN;
      }
      srgb.set(colour, i);
    }
  }
  return srgb;
}

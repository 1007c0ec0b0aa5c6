import { OWN_CARD } from '../../../lib/card/own-card';
import { erythemaIndex } from '../../../lib/colour/erythema-index';
import { toeGrid } from '../../../lib/rectify/toe-grid';
import type { ToeColours } from '../../../lib/segment/toe-colours';
import { seededRandom } from '../../seeded-random';

/** A map of light from far below the model's floor to far above its ceiling, dark in places and not seen in others. */
export function randomColours(): ToeColours {
  const chance = seededRandom(1);
  const grid = toeGrid(OWN_CARD);
  const pixels = grid.widthPx * grid.heightPx;
  const dark = new Uint8Array(pixels).map(() => (chance() < 0.1 ? 1 : 0));
  const light = () => new Float32Array(pixels).map((_, i) => (dark[i] ? 0 : 10 ** (4 * chance() - 3)));
  const [red, green, blue] = [light(), light(), light()];
  const seen = dark.map((one) => (one || chance() < 0.1 ? 0 : 1));
  return { grid, red, green, blue, seen, erythemaIndex: red.map((value, i) => erythemaIndex(value, green[i])) };
}

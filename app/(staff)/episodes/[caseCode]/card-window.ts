import type { ShownPhoto } from '../../../../lib/server/shown-episode';
import type { CardWindow } from '../../../_components/css-matrix';

const BESIDE_MM = 3;
/** Around the notch of the card, where no toe was found on any photo. */
const NOTCH: CardWindow = { acrossMm: 22, downMm: 6, widthMm: 42, heightMm: 52 };

/** What is looked at: every toe of these photos, with a little around it. */
export function cardWindow(photos: readonly ShownPhoto[]): CardWindow {
  const toes = photos.flatMap(({ lines: { toe } }) => (toe === null ? [] : [toe]));
  if (toes.length === 0) return NOTCH;
  const acrossMm = Math.min(...toes.map(({ from }) => from[0])) - BESIDE_MM;
  const downMm = Math.min(...toes.map(({ from }) => from[1])) - BESIDE_MM;
  const widthMm = Math.max(...toes.map(({ to }) => to[0])) + BESIDE_MM - acrossMm;
  const heightMm = Math.max(...toes.map(({ to }) => to[1])) + BESIDE_MM - downMm;
  return { acrossMm, downMm, widthMm, heightMm };
}

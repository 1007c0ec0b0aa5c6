import type { ShownPhoto } from '../../../../lib/server/shown-episode';
import type { CardWindow } from '../../../_components/css-matrix';

const BESIDE_MM = 2;
/** How much of the toe is shown below the most proximal pen line. */
const BELOW_MM = 9;
/** Around the notch of the card, where no toe was found on any photo. */
const NOTCH: CardWindow = { acrossMm: 22, downMm: 6, widthMm: 42, heightMm: 52 };

/** What is looked at: nail and redness of every toe of these photos, with a little around them. */
export function cardWindow(photos: readonly ShownPhoto[]): CardWindow {
  const toes = photos.flatMap(({ versions: [{ places: { toe, dateAt } }] }) => (toe === null ? [] : [{ from: toe.from, to: [toe.to[0], Math.min(toe.to[1], (dateAt ?? toe.to)[1] + BELOW_MM)] }]));
  if (toes.length === 0) return NOTCH;
  const acrossMm = Math.min(...toes.map(({ from }) => from[0])) - BESIDE_MM;
  const downMm = Math.min(...toes.map(({ from }) => from[1])) - BESIDE_MM;
  const widthMm = Math.max(...toes.map(({ to }) => to[0])) + BESIDE_MM - acrossMm;
  const heightMm = Math.max(...toes.map(({ to }) => to[1])) + BESIDE_MM - downMm;
  return { acrossMm, downMm, widthMm, heightMm };
}

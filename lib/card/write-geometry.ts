import type { CardGeometry } from './card-geometry';
import type { GeometryFile } from './geometry-file';

/**
 * The text of a geometry file. Field names are a contract with other programs: they are added to, never renamed.
 *
 * @param card any card
 * @returns JSON that `parseGeometry` reads back to the same card.
 * @example writeGeometry(OWN_CARD).includes('"version": "FW1"') // true
 */
export function writeGeometry(card: CardGeometry): string {
  const file: GeometryFile = {
    version: card.version,
    widthMm: card.widthMm,
    heightMm: card.heightMm,
    origin: 'top-left',
    anchor: 'centre',
    fiducialAnchor: 'centre',
    dictionary: card.dictionary,
    notch: card.notch.map(({ acrossMm, downMm }) => [acrossMm, downMm]),
    fiducials: card.fiducials.map(({ id, centre, sizeMm }) => ({ id, xMm: centre.acrossMm, yMm: centre.downMm, sizeMm })),
    patches: card.patches.map(({ name, kind, centre, widthMm, heightMm, designSrgb }) => ({
      name,
      kind,
      xMm: centre.acrossMm,
      yMm: centre.downMm,
      wMm: widthMm,
      hMm: heightMm,
      srgb: [...designSrgb],
    })),
    qr: card.qr && { xMm: card.qr.centre.acrossMm, yMm: card.qr.centre.downMm, sizeMm: card.qr.sizeMm },
  };
  return `${JSON.stringify(file, null, 1)}\n`;
}

import jsQr from 'jsqr';
import type { CardGeometry } from '../../card/card-geometry';
import type { UprightPhoto } from '../../photo/upright-photo';
import { greenLightAt } from '../../rectify/edge-profile';
import type { CardFit } from '../../rectify/fit-card';
import { toImage } from '../../rectify/homography';

/** Decoders fail on large pictures: the code is cut out and rectified to a small one first, at a few sizes. */
const SIZES_PX = [120, 180, 100] as const;
/** Quiet zone around the printed code, as a share of its side. */
const QUIET = 0.15;

/** Text of the card's QR code (ISO/IEC 18004), or null where there is none or it cannot be read. */
export function readCardQr(photo: UprightPhoto, fit: CardFit, geometry: CardGeometry): string | null {
  const { qr } = geometry;
  if (!qr) return null;
  for (const sizePx of SIZES_PX) {
    const picture = new Uint8ClampedArray(sizePx * sizePx * 4).fill(255);
    const sideMm = qr.sizeMm * (1 + 2 * QUIET);
    for (let i = 0; i < sizePx * sizePx; i++) {
      const acrossMm = qr.centre.acrossMm + (((i % sizePx) + 0.5) / sizePx - 0.5) * sideMm;
      const downMm = qr.centre.downMm + ((Math.floor(i / sizePx) + 0.5) / sizePx - 0.5) * sideMm;
      const at = toImage(fit.imageFromCard, { acrossMm, downMm });
      const light = greenLightAt(photo, at.row, at.column);
      const code = light === null ? 255 : Math.sqrt(light) * 255;
      picture[4 * i] = picture[4 * i + 1] = picture[4 * i + 2] = code;
    }
    const found = readQr(picture, sizePx);
    if (found) return found;
  }
  return null;
}

/** The library is CommonJS: depending on the loader its function is the default export or a property of it. */
function readQr(picture: Uint8ClampedArray, sizePx: number): string | null {
  const decode = (typeof jsQr === 'function' ? jsQr : (jsQr as unknown as { default: typeof jsQr }).default) as unknown as (
    data: Uint8ClampedArray,
    width: number,
    height: number,
    options: { inversionAttempts: 'dontInvert' },
  ) => { data: string } | null;
  return decode(picture, sizePx, sizePx, { inversionAttempts: 'dontInvert' })?.data ?? null;
}

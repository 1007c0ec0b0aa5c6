import type { CardGeometry } from '../card/card-geometry';
import type { PrintScale } from '../card/print-check';
import { parseCardCode } from '../card/serial';
import type { UprightPhoto } from '../photo/upright-photo';
import { edgeSpreadMm } from '../rectify/edge-spread';
import type { CardFit } from '../rectify/fit-card';
import { pxPerMmAt } from '../rectify/homography';
import { nailPlace, notchFrame } from '../rectify/notch-frame';
import { cardPose } from '../rectify/pose';
import type { SeenCard } from './analysis';
import type { AnalysisPorts } from './ports';

/**
 * Everything that a photo tells about its card besides colours: which one it is, how it leans, how sharp it is.
 *
 * @param photo the upright photo
 * @param fit the card's plane in it
 * @param geometry the card
 * @param print how large it was printed
 * @param ports the reader of its code
 * @example seeCard(photo, fit, OWN_CARD, print, ports).pxPerMm // 11.6
 */
export function seeCard(photo: UprightPhoto, fit: CardFit, geometry: CardGeometry, print: PrintScale, ports: AnalysisPorts): SeenCard {
  const nail = nailPlace(geometry);
  const text = ports.readQr(photo, fit, geometry);
  const code = text === null ? null : parseCardCode(text);
  return {
    version: geometry.version,
    frame: notchFrame(geometry),
    serial: code && 'serial' in code ? code.serial : null,
    fit,
    pose: cardPose(fit.imageFromCard, photo, photo.capture.focalLength35Mm, nail),
    pxPerMm: pxPerMmAt(fit.imageFromCard, nail),
    edgeSpreadMm: edgeSpreadMm(photo, fit),
    print,
  };
}

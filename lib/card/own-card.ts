import type { CardGeometry, Fiducial } from './card-geometry';
import {
  CARD_VERSION,
  FIDUCIAL_MM,
  ID1_HEIGHT_MM,
  ID1_WIDTH_MM,
  NOTCH_WIDTHS_MM,
  QR_MODULES,
  QR_MODULE_MM,
} from './constants';
import { notchOutline } from './notch-outline';
import { OWN_CARD_PATCHES } from './own-card-patches';

const OUTER_MM = 7.5;
const INNER_MM = 18.3;
const TOP_MM = 7.5;
const UPPER_MM = 24.5;
const LOWER_MM = 40.9;
const BOTTOM_MM = ID1_HEIGHT_MM - TOP_MM;

/** Eight ids, from the top left, row by row. */
const IDS = [0, 1, 2, 6, 22, 36, 39, 46] as const;

function fiducial(id: number, acrossMm: number, downMm: number): Fiducial {
  return { id, centre: { acrossMm, downMm }, sizeMm: FIDUCIAL_MM };
}

/**
 * The card this project prints, in millimetres: the one source for the PDF, the SVG, the raster and the detector.
 *
 * Four fiducials stand in the corners and four beside the toe, two at each fold, so that nail and folds lie between
 * them. A finger or the next toe may hide a lower corner and seven are left. The ids differ from one another in at least 5
 * of 16 bits however either is turned or mirrored, from themselves in at least 6 when turned, and their mirror images
 * differ in at least 3 from every marker of the dictionary.
 *
 * `notch` is the **widest** of the three cut lines: outside it there is card for certain, inside it the toe may be. Where
 * a narrower line was cut, a strip of bare paper lies inside `notch` and carries nothing to measure by.
 *
 * `qr.sizeMm` is the code without its quiet zone.
 */
export const OWN_CARD: CardGeometry = {
  version: CARD_VERSION,
  widthMm: ID1_WIDTH_MM,
  heightMm: ID1_HEIGHT_MM,
  notch: notchOutline(NOTCH_WIDTHS_MM.L),
  dictionary: 'DICT_4X4_50',
  fiducials: [
    fiducial(IDS[0], OUTER_MM, TOP_MM),
    fiducial(IDS[1], ID1_WIDTH_MM - OUTER_MM, TOP_MM),
    fiducial(IDS[2], INNER_MM, UPPER_MM),
    fiducial(IDS[3], ID1_WIDTH_MM - INNER_MM, UPPER_MM),
    fiducial(IDS[4], INNER_MM, LOWER_MM),
    fiducial(IDS[5], ID1_WIDTH_MM - INNER_MM, LOWER_MM),
    fiducial(IDS[6], OUTER_MM, BOTTOM_MM),
    fiducial(IDS[7], ID1_WIDTH_MM - OUTER_MM, BOTTOM_MM),
  ],
  patches: OWN_CARD_PATCHES,
  qr: { centre: { acrossMm: 21.3, downMm: 11.3 }, sizeMm: QR_MODULES * QR_MODULE_MM },
};

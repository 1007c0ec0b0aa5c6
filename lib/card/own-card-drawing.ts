import type { Patch } from './card-geometry';
import { cellOutlines } from './cell-outlines';
import {
  BAR_MM,
  BLACK,
  CARD_VERSION,
  FAINT_INK,
  INK_BLUE,
  NOTCH_WIDTHS_MM,
  QR_MODULES,
  QR_MODULE_MM,
  type NotchSize,
} from './constants';
import { dashedLine } from './dashed-line';
import type { InkedShape } from './inked-shape';
import { markerShape } from './marker-shape';
import { notchOutline } from './notch-outline';
import { OWN_CARD } from './own-card';
import { penText, penTextWidthMm } from './pen-text';
import { centredRing, holeOf, rectRing } from './rect-ring';
import { showSerial, type Serial } from './serial';
import { strokeOutline } from './stroke-outline';

/** The bar runs between the upper markers, as near to the edge as a careful cut allows. */
export const BAR_LEFT_MM = 15;
const BAR_TOP_MM = 2.15;
const BAR_THICK_MM = 0.3;
const TICK_WIDE_MM = 0.12;
const HAIRLINE_MM = 0.12;
const CUT_LINE_MM = 0.15;

function patchShape(patch: Patch): InkedShape {
  return { name: `patch ${patch.name}`, ink: patch.designSrgb, rings: [centredRing(patch.centre, patch.widthMm, patch.heightMm)] };
}

/** A hairline round the white end of the grey row, outside the patch, so that the row reads as one. */
function rampFrame(white: Patch): InkedShape {
  const inside = centredRing(white.centre, white.widthMm, white.heightMm);
  const outside = centredRing(white.centre, white.widthMm + 2 * HAIRLINE_MM, white.heightMm + 2 * HAIRLINE_MM);
  return { name: 'frame', ink: FAINT_INK, rings: [outside, holeOf(inside)] };
}

/** The bar is one rectangle of exactly 50 mm; the ticks above it end flush with it. */
function barShapes(): InkedShape[] {
  const bar = rectRing(BAR_LEFT_MM, BAR_TOP_MM, BAR_MM, BAR_THICK_MM);
  const ticks = Array.from({ length: BAR_MM + 1 }, (_, mark) => {
    const tallMm = mark % 10 === 0 ? 1.1 : mark % 5 === 0 ? 0.75 : 0.45;
    const left = BAR_LEFT_MM + (mark / BAR_MM) * (BAR_MM - TICK_WIDE_MM);
    return rectRing(left, BAR_TOP_MM - tallMm, TICK_WIDE_MM, tallMm);
  });
  return [
    { name: 'bar', ink: BLACK, rings: [bar] },
    { name: 'bar ticks', ink: BLACK, rings: ticks },
    penText('50 mm', { acrossMm: BAR_LEFT_MM + BAR_MM - penTextWidthMm('50 mm', 1.5), downMm: 3.1 }, 1.5, INK_BLUE),
  ];
}

function qrShape(modules: readonly (readonly boolean[])[]): InkedShape[] {
  if (OWN_CARD.qr === null) return [];
  const { centre, sizeMm } = OWN_CARD.qr;
  const topLeft = { acrossMm: centre.acrossMm - sizeMm / 2, downMm: centre.downMm - sizeMm / 2 };
  return [{ name: 'qr', ink: BLACK, rings: cellOutlines(modules, topLeft, QR_MODULE_MM) }];
}

function cutLineShapes(size: NotchSize): InkedShape[] {
  const line = notchOutline(NOTCH_WIDTHS_MM[size]);
  const rings = dashedLine(line, 1.2, 0.8).flatMap((dash) => strokeOutline(dash, CUT_LINE_MM));
  const left = line[0].acrossMm;
  return [
    { name: `cut line ${size}`, ink: FAINT_INK, rings },
    penText(size, { acrossMm: left + 0.6, downMm: 52 }, 1.2, FAINT_INK),
  ];
}

/**
 * Everything printed on the face of the card, within its edge. The cut line round the card belongs to the sheet.
 *
 * @param serial of this card, printed in plain letters
 * @param qrModules 21 × 21, true where dark, without the quiet zone: the code that bears version and serial
 * @returns shapes in the card's frame. Refuses a code of another size with a RangeError.
 * @example ownCardDrawing(mintSerial(() => 0), Array(21).fill(Array(21).fill(true))).filter((shape) => shape.name.startsWith('fiducial')).length // 8
 */
export function ownCardDrawing(serial: Serial, qrModules: readonly (readonly boolean[])[]): InkedShape[] {
  if (qrModules.length !== QR_MODULES || qrModules.some((row) => row.length !== QR_MODULES)) {
    throw new RangeError(`ownCardDrawing: the code must have ${QR_MODULES} rows and columns, received ${qrModules.length} rows`);
  }
  const inked = OWN_CARD.patches.filter((patch) => patch.kind !== 'white');
  return [
    ...(['L', 'M', 'S'] as const).flatMap(cutLineShapes),
    ...OWN_CARD.fiducials.map(markerShape),
    ...inked.map(patchShape),
    rampFrame(OWN_CARD.patches[0]),
    ...barShapes(),
    ...qrShape(qrModules),
    penText(`CARD ${CARD_VERSION}`, { acrossMm: 30.6, downMm: 11.9 }, 1.8, INK_BLUE),
    penText(showSerial(serial), { acrossMm: 30.6, downMm: 14.9 }, 1.8, INK_BLUE),
  ];
}

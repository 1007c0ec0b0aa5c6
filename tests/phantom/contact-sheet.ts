/** Pictures side by side in one file, to be looked at. */
import sharp from 'sharp';
import type { Phantom } from './render-phantom';

export interface SheetLayout {
  readonly columns: number;
  readonly cellPx: number;
  /** Half the side of a square around the nail, or null for whole photos. */
  readonly aroundNailMm: number | null;
}

async function cell({ jpeg, truth }: Phantom, { cellPx, aroundNailMm }: SheetLayout): Promise<Buffer> {
  const upright = await sharp(jpeg).autoOrient().toBuffer();
  if (aroundNailMm === null) return sharp(upright).resize(cellPx, cellPx, { fit: 'contain', background: '#222' }).toBuffer();
  const { imagePx } = truth.card.checkPoints;
  const [column, row] = imagePx[(imagePx.length - 1) / 2];
  const side = Math.min(truth.image.width, truth.image.height, Math.round(2 * aroundNailMm * truth.camera.pxPerMmAtNail));
  const within = (middle: number, length: number): number => Math.max(0, Math.min(length - side, Math.round(middle - side / 2)));
  const area = { left: within(column, truth.image.width), top: within(row, truth.image.height), width: side, height: side };
  return sharp(upright).extract(area).resize(cellPx, cellPx).toBuffer();
}

/** The sheet as a JPEG. */
export async function contactSheet(phantoms: readonly Phantom[], layout: SheetLayout): Promise<Buffer> {
  const cells = await Promise.all(phantoms.map((phantom) => cell(phantom, layout)));
  const { columns, cellPx } = layout;
  const placed = cells.map((input, i) => ({ input, left: (i % columns) * cellPx, top: Math.floor(i / columns) * cellPx }));
  const height = Math.ceil(phantoms.length / columns) * cellPx;
  return sharp({ create: { width: columns * cellPx, height, channels: 3, background: '#222' } }).composite(placed).jpeg({ quality: 88 }).toBuffer();
}

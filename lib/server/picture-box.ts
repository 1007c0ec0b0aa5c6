import { readFile } from 'node:fs/promises';
import { cropJpeg } from '../edges/decode/crop-jpeg';
import type { EpisodeRows } from '../edges/db/read-episode-rows';
import { viewPath } from '../edges/files/photo-path';
import { type SheetBox, sheetText } from '../report/sheet-box';
import type { WidthOf } from '../report/wrap-words';
import { wrapWords } from '../report/wrap-words';
import { drawnOn } from './review-photos';
import { newestOutlines } from './seen-outlines';
import type { ReportPicture } from './shown-report';

const WIDTH_MM = 54;
const MOST_HEIGHT_MM = 72;
const MOST_PX = 900;
const CAPTION_PT = 7;
const CAPTION_MM = 3;
/** Pen on paper, and its pattern for each kind of line, so that they are told apart without colour. */
const PEN_MM = 0.28;
const DASHES_MM: Readonly<Record<string, readonly number[] | undefined>> = { nailFoldMargin: [1.4, 0.9], raw: [1.4, 0.6, 0.1, 0.6], erythema: undefined };
const WHITE = [255, 255, 255] as const;
const INK = [20, 33, 61] as const;

/** One photo with its pen lines, cut down to the toe, as a piece of a page; null where there is no picture. */
export async function pictureBox({ title, photo: { id, date, day, size, cardFromView, versions } }: ReportPicture, photos: EpisodeRows['photos'], photoFolder: string, widthOf: WidthOf): Promise<SheetBox | null> {
  const row = photos.find((one) => one.id === id);
  const sha256 = row?.analyses.at(0)?.viewSha256;
  if (!row || !sha256 || size === null) return null;
  const { lines, toe } = drawnOn(newestOutlines(row), cardFromView);
  const [left, top, right, bottom] = cutTo(toe, size);
  const crop = { left, top, widthPx: right - left, heightPx: bottom - top };
  const jpeg = await cropJpeg(new Uint8Array(await readFile(viewPath(photoFolder, { episodeId: row.episodeId, sha256 }))), crop, MOST_PX);
  const mmPerPx = Math.min(WIDTH_MM / crop.widthPx, MOST_HEIGHT_MM / crop.heightPx);
  const [widthMm, heightMm] = [crop.widthPx * mmPerPx, crop.heightPx * mmPerPx];
  const place = { acrossMm: -left * mmPerPx, downMm: -top * mmPerPx, mmPerUnit: mmPerPx };
  const shown = lines.filter(({ name }) => name in DASHES_MM);
  const halo = shown.map(({ path }) => ({ ...place, path, penMm: 2.4 * PEN_MM, ink: WHITE }));
  const pen = shown.map(({ name, path }) => ({ ...place, path, penMm: PEN_MM, ink: INK, dashesMm: DASHES_MM[name] }));
  const words = `${title}: ${date}, day ${day}. ${versions[0].numbers.join('; ')}`;
  const caption = wrapWords(words, WIDTH_MM, (text) => widthOf(text, CAPTION_PT, 'regular')).map((line, at) => sheetText(line, 0, heightMm + (at + 1) * CAPTION_MM, CAPTION_PT));
  return { heightMm: heightMm + (caption.length + 1) * CAPTION_MM, texts: caption, strokes: [...halo, ...pen], pictures: [{ jpeg, acrossMm: 0, downMm: 0, widthMm, heightMm }] };
}

/** Left, top, right and bottom of what is shown, within the picture. */
function cutTo(toe: ReturnType<typeof drawnOn>['toe'], { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number }): [number, number, number, number] {
  if (toe === null) return [0, 0, widthPx, heightPx];
  const [left, top, width, height] = toe;
  return [Math.max(0, left), Math.max(0, top), Math.min(widthPx, left + width), Math.min(heightPx, top + height)];
}

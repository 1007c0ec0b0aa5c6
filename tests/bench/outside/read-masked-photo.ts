import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import { decodePhoto } from '../../../lib/edges/decode/decode-photo';
import { sharedFile } from '../../shared-data';

/** One piece of a mask, as a mask of its own. */
export interface MaskPiece {
  readonly mask: Uint8Array;
  readonly areaPx: number;
  readonly column: number;
  readonly row: number;
}

export interface MaskedPhoto {
  readonly photo: UprightPhoto;
  readonly mask: Uint8Array;
  readonly pieces: readonly MaskPiece[];
}

const MASK_LEVEL = 127;
/** Ringing of compressed masks leaves specks. */
const LEAST_PIECE_PX = 40;

export interface MaskListing {
  readonly image: string;
  readonly mask: string;
}
export const listedMasks = (): readonly MaskListing[] => JSON.parse(readFileSync(sharedFile('skin', 'index.json'), 'utf8')) as MaskListing[];

/** A photo through our own decoder, and its mask cut into pieces, largest first. */
export async function readMaskedPhoto({ image, mask: maskFile }: MaskListing): Promise<MaskedPhoto> {
  const decoded = await decodePhoto(new Uint8Array(readFileSync(sharedFile('skin', image))));
  if (!decoded.decoded) throw new Error(`${image}: ${decoded.refusal.detail}`);
  const { photo } = decoded;
  const grey = await sharp(sharedFile('skin', maskFile)).resize(photo.widthPx, photo.heightPx, { kernel: 'nearest', fit: 'fill' }).greyscale().extractChannel(0).raw().toBuffer();
  const mask = Uint8Array.from(grey, (value) => (value > MASK_LEVEL ? 1 : 0));
  return { photo, mask, pieces: piecesOf(mask, photo.widthPx) };
}

function piecesOf(mask: Uint8Array, widthPx: number): MaskPiece[] {
  const seen = new Uint8Array(mask.length);
  const pieces: MaskPiece[] = [];
  for (let start = 0; start < mask.length; start++) {
    if (mask[start] === 0 || seen[start] === 1) continue;
    const own = new Uint8Array(mask.length);
    const todo = [start];
    seen[start] = 1;
    let [areaPx, columns, rows] = [0, 0, 0];
    for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
      own[at] = 1;
      areaPx++;
      columns += at % widthPx;
      rows += Math.floor(at / widthPx);
      for (const next of neighbours(at, widthPx, mask.length)) {
        if (mask[next] === 0 || seen[next] === 1) continue;
        seen[next] = 1;
        todo.push(next);
      }
    }
    if (areaPx >= LEAST_PIECE_PX) pieces.push({ mask: own, areaPx, column: columns / areaPx, row: rows / areaPx });
  }
  return pieces.sort((a, b) => b.areaPx - a.areaPx);
}

const neighbours = (at: number, widthPx: number, length: number): number[] =>
  [at % widthPx > 0 ? at - 1 : -1, at % widthPx < widthPx - 1 ? at + 1 : -1, at - widthPx, at + widthPx].filter((next) => next >= 0 && next < length);

import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import type { UprightPhoto } from '../../../lib/photo/upright-photo';
import { sharedFile } from '../../shared-data';
import { photoOf } from '../../unit/rectify/photo-of';

export interface Marker {
  readonly id: number;
  /** Column and row of the four corners. */
  readonly corners: readonly (readonly [number, number])[];
}

interface BoardTruth {
  readonly dictionary: string | null;
  readonly geometry: { readonly type: string };
  readonly corners_truth?: readonly Marker[];
  readonly opencv46_reference?: { readonly dictionary: string; readonly markers: readonly Marker[] };
}

export const boardTruth = (): Readonly<Record<string, BoardTruth>> =>
  JSON.parse(readFileSync(sharedFile('markers', 'groundtruth.json'), 'utf8')) as Record<string, BoardTruth>;

/** A photo as stored: the corners published with it refer to the file's own pixels. */
export async function readBoardPhoto(name: string): Promise<UprightPhoto> {
  const { data, info } = await sharp(sharedFile('markers', name)).removeAlpha().toColourspace('srgb').raw().toBuffer({ resolveWithObject: true });
  return photoOf(info.width, info.height, new Uint8Array(data));
}

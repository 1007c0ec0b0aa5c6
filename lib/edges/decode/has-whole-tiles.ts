/**
 * The decoder paints over damage in a HEIC without a word. What can be told before: whether the coded units of every
 * tile follow each other to its exact end (ISO/IEC 14496-15, 8.3: length, then unit; ITU-T H.265, 7.3.1.2: unit
 * header). A file whose tail was lost, overwritten or filled with zeros does not get past this; flipped bits inside one
 * unit do.
 */
import type { HeicItems } from './heic-items';
import { ByteCursor } from './iso-boxes';

const CODED_TILE = 'hvc1';
/** Two bytes: a bit that is zero, six bits of type, six of layer, three of temporal layer, which counts from one. */
const UNIT_HEADER_BYTES = 2;
/** Where `hvcC` keeps the number of length bytes less one, in its two lowest bits (ISO/IEC 14496-15, 8.3.3.1.2). */
const LENGTH_SIZE_AT = 21;

/** `hasWholeTiles(bytes, items)` → false for a file whose second half is zeros. */
export function hasWholeTiles(bytes: Uint8Array, { typeOf, extentOf, properties }: HeicItems): boolean {
  const setup = properties.find(({ type }) => type === 'hvcC')?.content.bytes;
  const lengthBytes = ((setup?.[LENGTH_SIZE_AT] ?? 3) & 3) + 1;
  const tiles = [...typeOf].filter(([, type]) => type === CODED_TILE).map(([id]) => extentOf.get(id));
  return tiles.every((tile) => !tile || hasWholeUnits(bytes.subarray(tile.offset, tile.offset + tile.length), lengthBytes));
}

function hasWholeUnits(tile: Uint8Array, lengthBytes: number): boolean {
  const cursor = new ByteCursor(tile);
  while (cursor.left > 0) {
    if (cursor.left < lengthBytes) return false;
    const length = cursor.number(lengthBytes);
    if (length < UNIT_HEADER_BYTES || length > cursor.left) return false;
    const [first, second] = cursor.take(length);
    if (first >> 7 !== 0 || (second & 7) === 0) return false;
  }
  return tile.length > 0;
}

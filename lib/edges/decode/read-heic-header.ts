/** Reads a HEIC's item tables: size, colour, EXIF block and gain map of the picture, before anything is decoded. */
import { decodeRefusal } from '../../photo/decode-refusals';
import { readCodePoints } from './read-code-points';
import type { ContainerHeader, HeaderResult } from './container-header';
import { hasWholeTiles } from './has-whole-tiles';
import { readHeicItems, type HeicItems } from './heic-items';
import { ByteCursor, findBox, type IsoBox } from './iso-boxes';

/** One picture coded with HEVC, or a grid of such tiles, which is how phones write large pictures. */
const READABLE_ITEMS = new Set(['hvc1', 'grid']);

/** How phones name the item that holds a gain map: Apple's auxiliary picture, or the tone-map item of ISO 21496-1. */
const APPLE_GAIN_MAP = 'urn:com:apple:photo:2020:aux:hdrgainmap';
const TONE_MAP_ITEM = 'tmap';

export function readHeicHeader(bytes: Uint8Array): HeaderResult {
  try {
    const meta = findBox(new ByteCursor(bytes), 'meta');
    return meta ? readPicture(bytes, readHeicItems(meta.content)) : decodeRefusal('corrupt', 'no table of items');
  } catch (error) {
    if (error instanceof RangeError) return decodeRefusal('corrupt', 'the boxes of the file do not fit into each other');
    throw error;
  }
}

function readPicture(bytes: Uint8Array, items: HeicItems): HeaderResult {
  const type = items.typeOf.get(items.primaryId) ?? 'none';
  const types = [...items.typeOf.values()];
  if (!READABLE_ITEMS.has(type) || !types.includes('hvc1')) {
    return decodeRefusal('unsupportedFormat', `picture item of type ${type.replace(/[^\x20-\x7e]/g, '?')}`);
  }
  const own = (items.propertiesOf.get(items.primaryId) ?? []).map((index) => items.properties[index]).filter(Boolean);
  const ends = [...items.extentOf.values()].map(({ offset, length }) => offset + length);
  if (Math.max(0, ...ends) > bytes.length) return decodeRefusal('truncated', 'HEIC ends early');
  if (!hasWholeTiles(bytes, items)) return decodeRefusal('corrupt', 'the coded units of a tile do not fit together');
  // A grid often leaves the colour to its tiles.
  const colour = readColour(own.some(isColour) ? own : items.properties);
  if (colour === 'unsupported') return decodeRefusal('unsupportedColour', 'high dynamic range or unknown primaries');
  const size = largestSize(items.properties, own);
  if (!size) return decodeRefusal('corrupt', 'no picture size');
  return {
    format: 'heic',
    ...size,
    channels: 'rgb',
    bitsPerChannel: 8,
    mayHaveAlpha: false,
    ...colour,
    exif: readExifItem(bytes, items),
    hasGainMap: types.includes(TONE_MAP_ITEM) || items.properties.some(isAppleGainMap),
    picture: bytes,
  };
}

/**
 * The size of the picture; but of any part that is larger, the size of that part, because a decoder would have to hold
 * it. (`ispe`: version and flags, width, height.)
 */
function largestSize(all: readonly IsoBox[], own: readonly IsoBox[]): { widthPx: number; heightPx: number } | null {
  const sizeOf = ({ content }: IsoBox) => {
    const cursor = new ByteCursor(content.bytes);
    cursor.take(4);
    return { widthPx: cursor.number(4), heightPx: cursor.number(4) };
  };
  const area = ({ widthPx, heightPx }: { widthPx: number; heightPx: number }): number => widthPx * heightPx;
  const isSize = (box: IsoBox): boolean => box.type === 'ispe';
  const picture = own.find(isSize);
  if (!picture) return null;
  return all.filter(isSize).map(sizeOf).reduce((most, size) => (area(size) > area(most) ? size : most), sizeOf(picture));
}

/** A profile outranks code points where a picture has both (ISO/IEC 23008-12, 6.5.5). */
function readColour(properties: readonly IsoBox[]): Pick<ContainerHeader, 'icc' | 'codePoints'> | 'unsupported' {
  const colours = properties.filter(isColour).map((box) => new ByteCursor(box.content.bytes));
  let codePoints: ReturnType<typeof readCodePoints> = null;
  for (const cursor of colours) {
    const kind = cursor.letters();
    if (kind === 'prof' || kind === 'rICC') return { icc: cursor.take(cursor.left), codePoints: null };
    if (kind === 'nclx') codePoints = readCodePoints(cursor.number(2), cursor.number(2));
  }
  return codePoints === 'unsupported' ? codePoints : { icc: null, codePoints };
}

/** The Exif item starts with the distance to its TIFF block (ISO/IEC 23008-12, A.2.1). A broken one is left out. */
function readExifItem(bytes: Uint8Array, { typeOf, extentOf }: HeicItems): Uint8Array | null {
  const [id] = [...typeOf].find(([, type]) => type === 'Exif') ?? [];
  const extent = id === undefined ? undefined : extentOf.get(id);
  if (!extent || extent.length < 12) return null;
  const item = bytes.subarray(extent.offset, extent.offset + extent.length);
  return item.subarray(4 + new ByteCursor(item).number(4));
}

const isColour = ({ type }: IsoBox): boolean => type === 'colr';

function isAppleGainMap({ type, content }: IsoBox): boolean {
  return type === 'auxC' && Buffer.from(content.bytes).includes(APPLE_GAIN_MAP, 0, 'latin1');
}

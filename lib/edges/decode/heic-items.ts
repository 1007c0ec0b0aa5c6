/** The item tables of a HEIF file (ISO/IEC 23008-12 over 14496-12): which item is the picture, and what describes it. */
import type { ByteCursor} from './iso-boxes';
import { isoBoxes, type IsoBox } from './iso-boxes';

export interface HeicItems {
  readonly primaryId: number;
  /** Four letters each: `hvc1`, `grid`, `av01`, `Exif` … */
  readonly typeOf: ReadonlyMap<number, string>;
  readonly properties: readonly IsoBox[];
  /** Positions in `properties` (from zero) for every item, in order. */
  readonly propertiesOf: ReadonlyMap<number, readonly number[]>;
  /** Offset and length in the file; only items that lie in one piece in the file itself. */
  readonly extentOf: ReadonlyMap<number, { readonly offset: number; readonly length: number }>;
}

/** `readHeicItems(metaContent)`; throws RangeError where the tables point outside themselves. */
export function readHeicItems(meta: ByteCursor): HeicItems {
  meta.take(4);
  let primaryId = NaN;
  let typeOf = new Map<number, string>();
  let properties: IsoBox[] = [];
  let propertiesOf = new Map<number, number[]>();
  let extentOf = new Map<number, { offset: number; length: number }>();
  for (const { type, content } of isoBoxes(meta)) {
    if (type === 'pitm') primaryId = content.number(readVersion(content).version === 0 ? 2 : 4);
    else if (type === 'iinf') typeOf = readTypes(content);
    else if (type === 'iloc') extentOf = readExtents(content);
    else if (type === 'iprp') {
      for (const part of isoBoxes(content)) {
        if (part.type === 'ipco') properties = [...isoBoxes(part.content)];
        else if (part.type === 'ipma') propertiesOf = readAssociations(part.content);
      }
    }
  }
  return { primaryId, typeOf, properties, propertiesOf, extentOf };
}

function readVersion(content: ByteCursor): { version: number; flags: number } {
  return { version: content.number(1), flags: content.number(3) };
}

function readTypes(iinf: ByteCursor): Map<number, string> {
  const types = new Map<number, string>();
  iinf.number(readVersion(iinf).version === 0 ? 2 : 4);
  for (const { type, content } of isoBoxes(iinf)) {
    if (type !== 'infe') continue;
    const { version } = readVersion(content);
    if (version < 2) continue;
    const id = content.number(version === 2 ? 2 : 4);
    content.take(2);
    types.set(id, content.letters());
  }
  return types;
}

function readAssociations(ipma: ByteCursor): Map<number, number[]> {
  const associations = new Map<number, number[]>();
  const { version, flags } = readVersion(ipma);
  const wide = (flags & 1) === 1;
  const items = ipma.number(4);
  for (let i = 0; i < items; i += 1) {
    const id = ipma.number(version < 1 ? 2 : 4);
    const count = ipma.number(1);
    // The highest bit says "essential"; numbering starts at one.
    associations.set(id, Array.from({ length: count }, () => (ipma.number(wide ? 2 : 1) & (wide ? 0x7fff : 0x7f)) - 1));
  }
  return associations;
}

function readExtents(iloc: ByteCursor): Map<number, { offset: number; length: number }> {
  const extents = new Map<number, { offset: number; length: number }>();
  const { version } = readVersion(iloc);
  const sizes = iloc.number(2);
  const [offsetBytes, lengthBytes, baseBytes] = [sizes >> 12, (sizes >> 8) & 15, (sizes >> 4) & 15];
  const indexBytes = version > 0 ? sizes & 15 : 0;
  const items = iloc.number(version < 2 ? 2 : 4);
  for (let i = 0; i < items; i += 1) {
    const id = iloc.number(version < 2 ? 2 : 4);
    const inFile = version === 0 || (iloc.number(2) & 15) === 0;
    iloc.take(2);
    const base = iloc.number(baseBytes);
    const pieces = iloc.number(2);
    for (let piece = 0; piece < pieces; piece += 1) {
      iloc.take(indexBytes);
      const extent = { offset: base + iloc.number(offsetBytes), length: iloc.number(lengthBytes) };
      if (inFile && pieces === 1) extents.set(id, extent);
    }
  }
  return extents;
}

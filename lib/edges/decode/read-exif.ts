/**
 * Reads the few EXIF fields that matter. Position and serial numbers are not on the list and therefore never read out:
 * the parser does not even follow the pointer to the position block. A damaged block never fails the photo.
 */
import ExifReader from 'exifreader';
import { classifyDevice } from '../../photo/classify-device';
import { parseExifOffset, parseExifTime } from '../../photo/exif-time';
import type { CaptureFacts } from '../../photo/upright-photo';

const FIELDS = [
  'Orientation',
  'DateTimeOriginal',
  'OffsetTimeOriginal',
  'FocalLength',
  'FocalLengthIn35mmFilm',
  'LensModel',
  'DigitalZoomRatio',
  'ColorSpace',
  'Make',
  'Model',
] as const;

export type ExifFacts = Omit<CaptureFacts, 'format' | 'colourSpace' | 'hasGainMap'> & {
  /** EXIF ColorSpace = 1: the camera says sRGB without embedding a profile. */
  readonly statesSrgb: boolean;
};

type Tags = Partial<Record<(typeof FIELDS)[number], { value: unknown }>>;

/** `readExif(tiffBlock).focalLengthMm` → 5.1, or null. */
export function readExif(tiff: Uint8Array | null): ExifFacts {
  const tags = tiff ? parse(tiff) : {};
  const [make, model, lensModel] = [text(tags.Make), text(tags.Model), text(tags.LensModel)];
  const orientation = number(tags.Orientation) ?? 1;
  return {
    localTime: parseExifTime(text(tags.DateTimeOriginal)),
    utcOffset: parseExifOffset(text(tags.OffsetTimeOriginal)),
    focalLengthMm: positive(tags.FocalLength),
    focalLength35Mm: positive(tags.FocalLengthIn35mmFilm),
    lensModel,
    digitalZoom: positive(tags.DigitalZoomRatio),
    deviceClass: classifyDevice([make, model, lensModel]),
    orientationTag: Number.isInteger(orientation) && orientation >= 1 && orientation <= 8 ? orientation : 1,
    statesSrgb: number(tags.ColorSpace) === 1,
  };
}

function parse(tiff: Uint8Array): Tags {
  try {
    // A copy: the parser takes whole buffers only, and would otherwise see the file, or what lies beside it.
    const groups = ExifReader.load(new Uint8Array(tiff).buffer, { expanded: true, includeTags: { exif: [...FIELDS] } });
    return (groups.exif ?? {}) as Tags;
  } catch {
    // The parser throws whatever its offsets lead it to; an unreadable block is the same as none.
    return {};
  }
}

/** Printable characters only: what a device writes into a text field is shown to people later. */
function text(tag: { value: unknown } | undefined): string | null {
  const value = Array.isArray(tag?.value) ? tag.value[0] : tag?.value;
  if (typeof value !== 'string') return null;
  const clean = value.replace(/[^\x20-\x7e]/g, '').trim().slice(0, 100);
  return clean === '' ? null : clean;
}

/** Whole numbers come as such, ratios as [numerator, denominator]. */
function number(tag: { value: unknown } | undefined): number | null {
  const value = tag?.value;
  const [above, below] = Array.isArray(value) ? (value as unknown[]) : [value, 1];
  if (typeof above !== 'number' || (below !== undefined && typeof below !== 'number')) return null;
  const ratio = above / (below ?? 1);
  return Number.isFinite(ratio) ? ratio : null;
}

/** Zero means "not known" in all of these fields (CIPA DC-008). */
function positive(tag: { value: unknown } | undefined): number | null {
  const value = number(tag);
  return value !== null && value > 0 ? value : null;
}

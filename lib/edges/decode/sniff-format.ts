/** Which kind of file this is, by its first bytes and never by its name (a name can say anything). */
export type SniffedFormat =
  | { readonly supported: true; readonly format: 'jpeg' | 'png' | 'webp' | 'heic' }
  | { readonly supported: false; readonly looksLike: string };

const SUPPORTED = [
  { format: 'jpeg', offset: 0, magic: '\xff\xd8\xff' },
  { format: 'png', offset: 0, magic: '\x89PNG\r\n\x1a\n' },
  { format: 'webp', offset: 8, magic: 'WEBP' },
] as const;

const NAMED_ONLY = [
  ['GIF8', 'a GIF'],
  ['%PDF', 'a PDF document'],
  ['II*\0', 'a TIFF or camera raw file'],
  ['MM\0*', 'a TIFF or camera raw file'],
  ['BM', 'a BMP'],
  ['\xff\x0a', 'a JPEG XL'],
  ['\0\0\0\x0cJXL ', 'a JPEG XL'],
  ['\0\0\0\x0cjP  ', 'a JPEG 2000'],
  ['8BPS', 'a layered picture'],
  ['PK\x03\x04', 'a ZIP archive'],
] as const;

/** Brands of still pictures coded with HEVC or undecided (`mif1`); ISO/IEC 23008-12 annex B. */
const HEIC_BRANDS = new Set(['heic', 'heix', 'heim', 'heis', 'mif1']);
const SEQUENCE_BRANDS = new Set(['hevc', 'hevx', 'hevm', 'hevs', 'msf1']);

/** `sniffFormat(bytes)` → `{ supported: true, format: 'png' }` or `{ supported: false, looksLike: 'a GIF' }`. */
export function sniffFormat(bytes: Uint8Array): SniffedFormat {
  const head = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.length, 512)).toString('latin1');
  for (const { format, offset, magic } of SUPPORTED) {
    if (!head.startsWith(magic, offset)) continue;
    if (format === 'webp' && !head.startsWith('RIFF')) continue;
    return { supported: true, format };
  }
  if (head.startsWith('ftyp', 4)) return sniffBrand(head);
  const named = NAMED_ONLY.find(([magic]) => head.startsWith(magic));
  if (named) return { supported: false, looksLike: named[1] };
  const text = head.replace(/^\xef\xbb\xbf/, '').trimStart();
  if (/^<(\?xml|svg|!doctype|html|!--)/i.test(text)) return { supported: false, looksLike: 'a drawing or web page' };
  return { supported: false, looksLike: 'no known picture format' };
}

function sniffBrand(head: string): SniffedFormat {
  const boxEnd = Math.min(head.charCodeAt(2) * 256 + head.charCodeAt(3), head.length);
  const brands = [head.slice(8, 12)];
  for (let at = 16; at + 4 <= boxEnd; at += 4) brands.push(head.slice(at, at + 4));
  if (brands.some((brand) => brand === 'avif' || brand === 'avis')) return { supported: false, looksLike: 'an AVIF' };
  if (SEQUENCE_BRANDS.has(brands[0])) return { supported: false, looksLike: 'a HEIF sequence' };
  if (brands.some((brand) => HEIC_BRANDS.has(brand))) return { supported: true, format: 'heic' };
  return { supported: false, looksLike: 'a film or another ISO media file' };
}

const HEIC_BRANDS = ['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1'];

/** What a file is by its first bytes; the name and the type a phone gives it can be anything. Null: not one we can use. */
export function pictureType(bytes: Uint8Array): 'image/jpeg' | 'image/png' | 'image/heic' | null {
  const text = (from: number, to: number) => String.fromCharCode(...bytes.subarray(from, to));
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg';
  if (text(1, 4) === 'PNG' && bytes[0] === 0x89) return 'image/png';
  return text(4, 8) === 'ftyp' && HEIC_BRANDS.includes(text(8, 12)) ? 'image/heic' : null;
}

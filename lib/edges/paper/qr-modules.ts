import QRCode from 'qrcode';

/**
 * The modules of a QR code (ISO/IEC 18004, version 1) for a short text, without the quiet zone. Error correction Q: a
 * quarter of the code may be lost to glare or a finger.
 */
export const qrModules = (text: string): boolean[][] => cellsOf(QRCode.create(text, { version: 1, errorCorrectionLevel: 'Q' }));

/** The same for an address of any length, as small a code as holds it. Error correction M: paper is folded, not covered. */
export const addressModules = (address: string): boolean[][] => cellsOf(QRCode.create(address, { errorCorrectionLevel: 'M' }));

function cellsOf({ modules }: QRCode.QRCode): boolean[][] {
  return Array.from({ length: modules.size }, (_, row) =>
    Array.from({ length: modules.size }, (_, column) => modules.get(row, column) === 1),
  );
}

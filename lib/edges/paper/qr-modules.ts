import QRCode from 'qrcode';

/**
 * The modules of a QR code (ISO/IEC 18004, version 1) for a short text, without the quiet zone. Error correction Q: a
 * quarter of the code may be lost to glare or a finger.
 */
export function qrModules(text: string): boolean[][] {
  const { modules } = QRCode.create(text, { version: 1, errorCorrectionLevel: 'Q' });
  return Array.from({ length: modules.size }, (_, row) =>
    Array.from({ length: modules.size }, (_, column) => modules.get(row, column) === 1),
  );
}

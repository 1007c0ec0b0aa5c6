/** Small enough to get through on a bad network before it breaks, large enough that a photo is about twenty requests. */
export const PIECE_BYTES = 256 * 1024;

/** Where each piece of a photo begins and ends, in bytes; the last one is as short as it must be. */
export function photoPieces(lengthBytes: number): { from: number; to: number }[] {
  return Array.from({ length: Math.ceil(lengthBytes / PIECE_BYTES) }, (_, at) => ({
    from: at * PIECE_BYTES,
    to: Math.min(lengthBytes, (at + 1) * PIECE_BYTES),
  }));
}

/** What to send next when the server holds so many bytes: which piece, and how many of its bytes it has already. */
export const nextPiece = (receivedBytes: number): { index: number; skipBytes: number } => ({
  index: Math.floor(receivedBytes / PIECE_BYTES),
  skipBytes: receivedBytes % PIECE_BYTES,
});

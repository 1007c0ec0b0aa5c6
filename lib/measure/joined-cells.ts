/**
 * Marked cells of a lattice in pieces that hang together by their sides.
 *
 * @param marked 1 = marked, row by row
 * @param width cells in a row
 * @returns indices, piece by piece
 * @example joinedCells(Uint8Array.of(1, 1, 0, 1), 4) // [[0, 1], [3]]
 */
export function joinedCells(marked: Uint8Array, width: number): number[][] {
  const met = new Uint8Array(marked.length);
  const pieces: number[][] = [];
  for (let start = 0; start < marked.length; start++) {
    if (marked[start] === 0 || met[start] === 1) continue;
    const piece = [start];
    met[start] = 1;
    for (let k = 0; k < piece.length; k++) {
      const cell = piece[k];
      const column = cell % width;
      const sides = [column > 0 ? cell - 1 : -1, column < width - 1 ? cell + 1 : -1, cell - width, cell + width];
      for (const next of sides) {
        if (next < 0 || next >= marked.length || marked[next] === 0 || met[next] === 1) continue;
        met[next] = 1;
        piece.push(next);
      }
    }
    pieces.push(piece);
  }
  return pieces;
}

/** Answers are small; anything larger is no check-in. */
const MOST_BYTES = 64 * 1024;

/** The JSON of a request's body; undefined where there is none, it is too large or it is no JSON. */
export async function readJson(request: Request): Promise<unknown> {
  const pieces: Uint8Array[] = [];
  let bytes = 0;
  for await (const piece of request.body ?? []) {
    bytes += piece.length;
    if (bytes > MOST_BYTES) return undefined;
    pieces.push(piece);
  }
  try {
    return JSON.parse(Buffer.concat(pieces).toString('utf8'));
  } catch {
    return undefined;
  }
}

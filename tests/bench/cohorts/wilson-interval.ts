const Z_95 = 1.959964;

export interface Share {
  readonly hits: number;
  readonly of: number;
  readonly share: number;
  readonly from: number;
  readonly to: number;
}

/** A share with its 95 % interval. Source: Wilson 1927, J Am Stat Assoc 22:209–12. `wilsonInterval(0, 10).to` is 0.278 */
export function wilsonInterval(hits: number, of: number): Share {
  if (of === 0) return { hits, of, share: NaN, from: 0, to: 1 };
  const share = hits / of;
  const z2 = Z_95 ** 2;
  const middle = (share + z2 / (2 * of)) / (1 + z2 / of);
  const half = (Z_95 * Math.sqrt((share * (1 - share)) / of + z2 / (4 * of * of))) / (1 + z2 / of);
  return { hits, of, share, from: Math.max(0, middle - half), to: Math.min(1, middle + half) };
}

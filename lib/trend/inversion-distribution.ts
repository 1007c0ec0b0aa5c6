/**
 * Chance of each number of inversions (pairs in falling order) when n values, some of them equal, stand in random order.
 *
 * @param n number of values, ≥ 1
 * @param ties sizes of the groups of equal values, each ≥ 2, together ≤ n
 * @returns chances for 0, 1, 2 … inversions, up to the number of pairs that differ; they sum to 1
 * The counts are those of the Gaussian multinomial: values are put in group by group, and the places that one group
 * takes among those before it are a partition in a box. Source: MacMahon 1916; Stanley, Enumerative Combinatorics 1, 1.7.
 * @example inversionDistribution(3, []) // [0.16667, 0.33333, 0.33333, 0.16667]
 */
export function inversionDistribution(n: number, ties: readonly number[]): Float64Array {
  const known = ties.length === 0 ? WITHOUT_TIES.get(n) : undefined;
  if (known) return known.slice();
  const chances = countInversions(n, ties);
  if (ties.length === 0) WITHOUT_TIES.set(n, chances.slice());
  return chances;
}

/** Without ties the chances depend on n alone, and thousands of courses ask for the same few. */
const WITHOUT_TIES = new Map<number, Float64Array>();

function countInversions(n: number, ties: readonly number[]): Float64Array {
  const singles = n - ties.reduce((sum, size) => sum + size, 0);
  const groups = [...ties, ...Array<number>(singles).fill(1)];
  let chances: Float64Array = Float64Array.of(1);
  let placed = 0;
  for (const size of groups) {
    chances = convolve(chances, partitionChances(placed, size));
    placed += size;
  }
  return chances;
}

/** Chances of 0 … most · parts inversions as `parts` equal values are put among `most` others: the Gaussian binomial. */
function partitionChances(most: number, parts: number): Float64Array {
  if (parts === 1) return new Float64Array(most + 1).fill(1 / (most + 1));
  // Row `k` holds the chances with k values put in; each new value goes behind or before the ones already there.
  let byPlaced: Float64Array[] = [Float64Array.of(1), ...Array.from({ length: parts }, () => new Float64Array(0))];
  for (let put = 1; put <= parts; put++) byPlaced[put] = Float64Array.of(1);
  for (let others = 1; others <= most; others++) {
    const next: Float64Array[] = [Float64Array.of(1)];
    for (let put = 1; put <= parts; put++) next[put] = lastIsOther(next[put - 1], byPlaced[put], put, others);
    byPlaced = next;
  }
  return byPlaced[parts];
}

/** The last in line is one of the `put` (no inversion with it), or one of the `others` (one with each of the `put`). */
function lastIsOther(onePutFewer: Float64Array, oneOtherFewer: Float64Array, put: number, others: number): Float64Array {
  const chances = new Float64Array(put * others + 1);
  const all = put + others;
  onePutFewer.forEach((chance, at) => (chances[at + others] += (chance * put) / all));
  oneOtherFewer.forEach((chance, at) => (chances[at] += (chance * others) / all));
  return chances;
}

function convolve(a: Float64Array, b: Float64Array): Float64Array {
  const sum = new Float64Array(a.length + b.length - 1);
  for (let i = 0; i < a.length; i++) for (let j = 0; j < b.length; j++) sum[i + j] += a[i] * b[j];
  return sum;
}

/** Park–Miller minimal standard generator (Park and Miller, 1988), 0…1: the same numbers in every run. */
export function park(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

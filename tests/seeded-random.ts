/**
 * The same numbers in [0, 1) every time, in place of `Math.random`.
 * Source: mulberry32, Tommy Ettinger 2017, public domain (from memory).
 * @param seed any whole number
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A normal deviate with mean 0 and standard deviation 1 (Box and Muller 1958). */
export function seededNormal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

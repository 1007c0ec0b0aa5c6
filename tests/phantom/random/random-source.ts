/**
 * A small seeded generator, so that a seed gives the same photo on every machine and every day.
 * Source: mulberry32, Tommy Ettinger 2017 (public domain), from memory; the tests look at its mean and spread.
 */
export interface RandomSource {
  /** 0 ≤ value < 1. */
  next(): number;
  between(low: number, high: number): number;
  /** A whole number, low ≤ value ≤ high. */
  whole(low: number, high: number): number;
  normal(): number;
  chance(probability: number): boolean;
  pick<Item>(items: readonly Item[]): Item;
}

/** The generator of one seed and one purpose: another purpose gives an independent stream of the same seed. */
export function randomSource(seed: number, purpose = ''): RandomSource {
  let state = seed | 0;
  for (let i = 0; i < purpose.length; i++) state = Math.imul(state ^ purpose.charCodeAt(i), 0x01000193) + 0x9e3779b9;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    whole: (low, high) => low + Math.floor((high - low + 1) * next()),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    chance: (probability) => next() < probability,
    pick: (items) => items[Math.floor(next() * items.length)],
  };
}

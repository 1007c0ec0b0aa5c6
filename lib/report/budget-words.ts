import type { CombinedBudget } from '../measure/combine-budget';

const WORDS: Readonly<Record<string, string>> = {
  boundaryCommon: 'where the line lies',
  boundaryLocal: 'where the line lies',
  peakBias: 'where the line lies',
  spike: 'where the line lies',
  linesLocal: 'where the line lies',
  threshold: 'where the line lies',
  margin: 'where the margin lies',
  marginCommon: 'where the margin lies',
  cutEdgeCommon: 'where the plate’s edge lies',
  tracing: 'people who draw the same outline differ',
  model: 'what the program’s own outlines leave over',
  printScale: 'scale of the print',
  homographyResidual: 'the card’s plane',
  lensDistortion: 'the lens',
  nailHeight: 'height of the nail over the card',
  skinSlope: 'slope of the skin',
  toeHeight: 'how the toe bends',
  toeSquareness: 'how the toe bends',
  toeMiddle: 'where the toe’s middle lies',
  toeWidth: 'how wide the toe is',
  grooveStep: 'step from plate to fold',
};
const OTHER = 'the rest';
/** A smaller share of the variance explains nothing. */
const LEAST_SHARE = 0.03;

/**
 * Where an uncertainty comes from, largest share first.
 *
 * @param budget of one measurement
 * @returns shares of the variance in percent; small ones together as the rest
 * @example budgetWords({ terms: { tracing: 3, printScale: 4 }, uCombined: 5, effectiveDof: null }) // 'scale of the print 64 %, people who draw the same outline differ 36 %'
 */
export function budgetWords({ terms, uCombined }: CombinedBudget): string {
  const shares = new Map<string, number>();
  for (const [name, contribution] of Object.entries(terms)) {
    const words = WORDS[name] ?? OTHER;
    shares.set(words, (shares.get(words) ?? 0) + (contribution / uCombined) ** 2);
  }
  const small = [...shares].filter(([words, share]) => share < LEAST_SHARE && words !== OTHER);
  for (const [words, share] of small) {
    shares.delete(words);
    shares.set(OTHER, (shares.get(OTHER) ?? 0) + share);
  }
  const said = [...shares].filter(([, share]) => share >= LEAST_SHARE).sort((a, b) => b[1] - a[1]);
  return said.map(([words, share]) => `${words} ${Math.round(100 * share)} %`).join(', ');
}

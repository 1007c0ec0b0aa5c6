import type { CardGeometry } from '../card/card-geometry';
import type { CardBaseline } from '../colour/card-baseline';
import type { LinearRgb } from '../colour/encodings';
import type { AnalysisJson } from './analysis-json';

/**
 * What an earlier analysis tells of its card, from the JSON that was kept.
 *
 * @param colour of that analysis
 * @param geometry the card's design; patches that it does not have are left out
 * @returns null where the analysis kept no patches, as those before method 0.4.0
 * @example cardBaselineOf(json.colour, OWN_CARD)?.patches.length // 24
 */
export function cardBaselineOf(colour: AnalysisJson['colour'], { patches }: CardGeometry): CardBaseline | null {
  if (!colour?.patches || colour.patches.length === 0) return null;
  const designed = new Map(patches.map((patch) => [patch.name, patch]));
  return {
    kind: colour.cardKind,
    paperLight: lightOf(colour.paperLight),
    patches: colour.patches.flatMap(({ name, light }) => {
      const patch = designed.get(name);
      return patch ? [{ patch, light: lightOf(light) }] : [];
    }),
  };
}

const lightOf = ([red, green, blue]: readonly number[]): LinearRgb => ({ red, green, blue });

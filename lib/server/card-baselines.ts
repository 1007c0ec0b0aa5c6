import { OWN_CARD } from '../card/own-card';
import type { CardBaseline } from '../colour/card-baseline';
import { readCardColours } from '../edges/db/card-colours';
import type { Queries } from '../edges/db/open-database';
import type { AnalysisJson } from '../pipeline/analysis-json';
import { cardBaselineOf } from '../pipeline/card-baseline-of';

/** Each of a person's cards as the first photo that could be measured showed it, be it one from the day of the procedure. */
export async function cardBaselines(queries: Queries, photo: Parameters<typeof readCardColours>[1]): Promise<Map<string, CardBaseline>> {
  const found = new Map<string, CardBaseline>();
  for (const { serial, colour } of await readCardColours(queries, photo)) {
    const baseline = found.has(serial) ? null : cardBaselineOf(JSON.parse(colour) as AnalysisJson['colour'], OWN_CARD);
    if (baseline) found.set(serial, baseline);
  }
  return found;
}

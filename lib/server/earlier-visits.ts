import { readEarlierPhotos } from '../edges/db/earlier-photos';
import type { Queries } from '../edges/db/open-database';
import type { AnalysisJson } from '../pipeline/analysis-json';
import { type EarlierVisit, earlierVisit } from '../pipeline/earlier-visit';
import type { KeptOutlines } from './measure-again';

/** What earlier visits tell about a new photo of the same toe; a margin that a person drew comes before the program's. */
export async function earlierVisits(queries: Queries, photo: Parameters<typeof readEarlierPhotos>[1]): Promise<EarlierVisit[]> {
  const rows = await readEarlierPhotos(queries, photo);
  return rows.flatMap(({ json, drawn }) => {
    if (json === null) return [];
    const { outlines } = JSON.parse(json) as AnalysisJson;
    const person = drawn === null ? null : (JSON.parse(drawn) as KeptOutlines);
    const margin = person?.drawn.nailFoldMargin ? person.outlines.nailFoldMargin : null;
    return earlierVisit({ outlines: outlines && margin ? { ...outlines, nailFoldMargin: margin, marginOrigin: 'confirmed' } : outlines }) ?? [];
  });
}

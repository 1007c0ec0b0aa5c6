import type { Queries } from './open-database';

export interface KeptCardColour {
  readonly serial: string;
  /** JSON of the colour part of the analysis. */
  readonly colour: string;
}

/**
 * Card and colours of the measured photos of an episode that came before one, the earliest first. Only these parts of the
 * analyses are read out of the database: a whole one is fifty times as long.
 */
export function readCardColours(queries: Queries, photo: { readonly episodeId: string; readonly receivedAt: Date }): Promise<KeptCardColour[]> {
  return queries.$queryRaw<KeptCardColour[]>`
    SELECT json_extract(Analysis.json, '$.card.serial') AS serial, json_extract(Analysis.json, '$.colour') AS colour
    FROM Analysis JOIN Photo ON Photo.id = Analysis.photoId
    WHERE Photo.episodeId = ${photo.episodeId} AND Photo.receivedAt < ${photo.receivedAt} AND Analysis.outcome = 'measured'
      AND json_extract(Analysis.json, '$.card.serial') IS NOT NULL AND json_extract(Analysis.json, '$.colour.patches') IS NOT NULL
    ORDER BY Photo.receivedAt, Analysis.finishedAt`;
}

import { EPISODE_PARTS } from './episode-parts';
import type { Queries } from './open-database';
import type { EpisodeRows } from './read-episode-rows';

type WholePhoto = EpisodeRows['photos'][number];
type RulePhoto = Pick<WholePhoto, 'id' | 'kind' | 'clientId' | 'receivedAt'> & {
  /** Their `json` may hold no more than colour and measurements. */
  readonly analyses: readonly Pick<WholePhoto['analyses'][number], 'outcome' | 'gates' | 'json'>[];
  readonly outlines: readonly Pick<WholePhoto['outlines'][number], 'measurements'>[];
};

/** What the rules and the patient's page are made from. A whole episode has all of it, and more. */
export type RuleRows = Omit<EpisodeRows, 'photos'> & { readonly photos: readonly RulePhoto[] };

interface Read {
  readonly analysisId: string;
  readonly json: string | null;
}

/**
 * An episode with that of its photos which the rules read. A whole analysis is thirty times as long, most of it outlines and
 * colours, and the rules are asked about every open episode every two hours and at each check-in.
 */
export async function readRuleRows(queries: Queries, id: string): Promise<RuleRows> {
  const rows = await queries.episode.findUniqueOrThrow({
    where: { id },
    include: {
      ...EPISODE_PARTS,
      photos: {
        orderBy: { receivedAt: 'desc' },
        select: {
          id: true,
          kind: true,
          clientId: true,
          receivedAt: true,
          analyses: { orderBy: { finishedAt: 'desc' }, take: 1, select: { id: true, outcome: true, gates: true } },
          outlines: { orderBy: { number: 'desc' }, take: 1, select: { measurements: true } },
        },
      },
    },
  });
  const jsonOf = await readParts(queries, id);
  const photos = rows.photos.map(({ analyses, ...photo }) => ({ ...photo, analyses: analyses.map((one) => ({ ...one, json: jsonOf.get(one.id) ?? null })) }));
  return { ...rows, photos: photos.reverse() };
}

/** Copied as text: numbers come out digit by digit as they were written. */
async function readParts(queries: Queries, episodeId: string): Promise<ReadonlyMap<string, string | null>> {
  const parts = await queries.$queryRaw<Read[]>`
    SELECT Analysis.id AS analysisId, CASE WHEN Analysis.json IS NULL THEN NULL ELSE json_object(
      'colour', json_object('itaDeg', Analysis.json -> '$.colour.itaDeg', 'contrastToNoise', Analysis.json -> '$.colour.contrastToNoise'),
      'measurements', Analysis.json -> '$.measurements') END AS json
    FROM Analysis JOIN Photo ON Photo.id = Analysis.photoId WHERE Photo.episodeId = ${episodeId}`;
  return new Map(parts.map(({ analysisId, json }) => [analysisId, json]));
}

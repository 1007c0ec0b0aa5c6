import type { Queries } from './open-database';

/** More visits than these add nothing to where a margin lies, and the oldest show the most swelling. */
const MOST_VISITS = 4;

/** The newest measured photos of the same toe that came before one, with the newest outlines that a person drew on each. */
export async function readEarlierPhotos(queries: Queries, photo: { readonly id: string; readonly episodeId: string; readonly receivedAt: Date }) {
  const rows = await queries.photo.findMany({
    where: { episodeId: photo.episodeId, id: { not: photo.id }, kind: 'toe', receivedAt: { lt: photo.receivedAt }, analyses: { some: { outcome: 'measured' } } },
    orderBy: { receivedAt: 'desc' },
    take: MOST_VISITS,
    select: {
      analyses: { where: { outcome: 'measured' }, orderBy: { finishedAt: 'desc' }, take: 1, select: { json: true } },
      outlines: { orderBy: { number: 'desc' }, take: 1, select: { outlines: true } },
    },
  });
  return rows.map(({ analyses, outlines }) => ({ json: analyses.at(0)?.json ?? null, drawn: outlines.at(0)?.outlines ?? null }));
}

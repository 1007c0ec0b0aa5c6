import type { Queries } from './open-database';

const select = {
  id: true,
  episodeId: true,
  sha256: true,
  kind: true,
  episode: { select: { clinicId: true } },
  analyses: { select: { outcome: true, gates: true, viewSha256: true }, orderBy: { finishedAt: 'desc' }, take: 1 },
} as const;

export interface PhotoRow {
  readonly id: string;
  readonly episodeId: string;
  readonly clinicId: string;
  readonly sha256: string;
  readonly kind: string;
  readonly newestAnalysis: { readonly outcome: string; readonly gates: readonly string[]; readonly viewSha256: string | null } | null;
}

type Found = Awaited<ReturnType<typeof byId>>;
const byId = (queries: Queries, id: string) => queries.photo.findUnique({ where: { id }, select });

function rowOf(found: Found): PhotoRow | null {
  if (found === null) return null;
  const { episode, analyses: [newest], ...photo } = found;
  return {
    ...photo,
    clinicId: episode.clinicId,
    newestAnalysis: newest ? { ...newest, gates: JSON.parse(newest.gates) as string[] } : null,
  };
}

export async function findPhoto(queries: Queries, id: string): Promise<PhotoRow | null> {
  return rowOf(await byId(queries, id));
}

/** The newest photo of a check-in, or the one with this hash. */
export async function findPhotoOf(queries: Queries, episodeId: string, clientId: string, sha256: string | null): Promise<PhotoRow | null> {
  const where = { episodeId, clientId, ...(sha256 === null ? {} : { sha256 }) };
  return rowOf(await queries.photo.findFirst({ where, orderBy: { receivedAt: 'desc' }, select }));
}

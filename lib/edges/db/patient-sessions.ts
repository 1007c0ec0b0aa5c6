import type { Queries } from './open-database';

export interface PatientSessionRow {
  readonly episodeId: string;
  readonly clinicId: string;
  readonly birthYearOwed: boolean;
}

/** The session of a cookie, if it still runs and its episode's link does. */
export async function findPatientSession(queries: Queries, tokenHash: string, now: Date): Promise<PatientSessionRow | null> {
  const session = await queries.patientSession.findUnique({
    where: { tokenHash, endsAt: { gt: now }, episode: { linkEndsAt: { gt: now } } },
    select: { birthYearOkAt: true, episode: { select: { id: true, clinicId: true, birthYear: true, clinic: { select: { asksBirthYear: true } } } } },
  });
  if (session === null) return null;
  const { episode, birthYearOkAt } = session;
  const birthYearOwed = episode.clinic.asksBirthYear && episode.birthYear !== null && birthYearOkAt === null;
  return { episodeId: episode.id, clinicId: episode.clinicId, birthYearOwed };
}

export async function startPatientSession(queries: Queries, session: { tokenHash: string; episodeId: string; startedAt: Date; endsAt: Date }): Promise<void> {
  await queries.patientSession.create({ data: { ...session, birthYearOkAt: null, birthYearTries: 0 } });
}

export async function endPatientSession(queries: Queries, tokenHash: string): Promise<void> {
  await queries.patientSession.deleteMany({ where: { tokenHash } });
}

/** How often a year of birth was tried for this episode since a moment, over all sessions: a new session is no new try. */
export async function countBirthYearTries(queries: Queries, episodeId: string, since: Date): Promise<number> {
  const { _sum } = await queries.patientSession.aggregate({ where: { episodeId, startedAt: { gt: since } }, _sum: { birthYearTries: true } });
  return _sum.birthYearTries ?? 0;
}

/** Counts one try; `okAt` where it was right. */
export async function noteBirthYearTry(queries: Queries, tokenHash: string, okAt: Date | null): Promise<void> {
  await queries.patientSession.updateMany({
    where: { tokenHash },
    data: { birthYearTries: { increment: 1 }, ...(okAt === null ? {} : { birthYearOkAt: okAt }) },
  });
}

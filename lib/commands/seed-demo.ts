import { createHash, randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { keepCheckIn } from '../edges/db/keep-check-in';
import { keepPhotoRow } from '../edges/db/keep-photo-row';
import type { Database } from '../edges/db/open-database';
import { startClinic } from '../edges/db/start-clinic';
import { startEpisode } from '../edges/db/start-episode';
import { startStaff } from '../edges/db/start-staff';
import { keepWhole } from '../edges/files/keep-whole';
import { photoPath } from '../edges/files/photo-path';
import { hashSecret, newSecret } from '../edges/session/secret';
import { hashPassword } from '../edges/session/staff-password';
import { DEMO_CASES, DEMO_CLINIC, DEMO_PASSWORD, DEMO_STAFF, type DemoCase, type DemoVisit } from './demo-cases';
import { redatePhoto } from './redate-photo';

const DAY_MS = 86_400_000;
const SAMPLES = path.resolve(import.meta.dirname, '..', '..', 'sample-images');

export interface DemoLink {
  readonly caseCode: string;
  readonly about: string;
  readonly secret: string;
}

/** Fills an empty database with the demo clinic. @returns the personal links, whose secrets are kept nowhere else */
export async function seedDemo(database: Database, photoFolder: string, now: Date): Promise<DemoLink[]> {
  const timeZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const clinicId = await startClinic(database, { ...DEMO_CLINIC, timeZone }, now);
  const passwordHash = await hashPassword(DEMO_PASSWORD);
  for (const one of DEMO_STAFF) await startStaff(database, { ...one, clinicId, passwordHash }, now);
  const links: DemoLink[] = [];
  for (const one of DEMO_CASES) links.push(await seedCase(one, { database, photoFolder, clinicId, timeZone, now }));
  return links;
}

interface Place {
  readonly database: Database;
  readonly photoFolder: string;
  readonly clinicId: string;
  readonly timeZone: string;
  readonly now: Date;
}

const before = (now: Date, daysAgo: number): Date => new Date(now.getTime() - daysAgo * DAY_MS);

async function seedCase(one: DemoCase, place: Place): Promise<DemoLink> {
  const { database, clinicId, timeZone, now } = place;
  const { caseCode, language, procedure, risks, cardSerial, procedureDaysAgo, antibioticDaysAgo } = one;
  const secret = newSecret();
  const at = before(now, procedureDaysAgo);
  const words = {
    clinicId,
    caseCode,
    timeZone,
    language,
    risks,
    birthYear: null,
    antibioticStartedAt: antibioticDaysAgo === undefined ? null : before(now, antibioticDaysAgo),
    procedure: { ...procedure, at: at.toISOString() },
    plan: { checkInEveryHours: 24, graceHours: 36, dressingStaysHours: 24, soaksPerDay: 2, soakMinutes: 10, soakDays: 14, coverBetweenSoaks: true },
    cards: cardSerial === null ? [] : [{ serial: cardSerial, barReadsMm: 50 }],
    linkTokenHash: hashSecret(secret) ?? '',
    linkEndsAt: before(now, -120),
  };
  const episodeId = await database.$transaction((queries) => startEpisode(queries, words, at));
  for (const visit of one.visits) await seedVisit(visit, episodeId, place);
  await database.episode.update({ where: { id: episodeId }, data: { assessAt: now } });
  return { caseCode, about: one.about, secret };
}

async function seedVisit({ daysAgo, photo, answers }: DemoVisit, episodeId: string, { database, photoFolder, now }: Place): Promise<void> {
  const receivedAt = before(now, daysAgo);
  const clientId = randomUUID();
  const json = JSON.stringify(answers);
  const words = { episodeId, clientId, kind: 'daily', at: receivedAt.toISOString(), answers: json, worry: null, hasPhoto: photo !== null };
  const bodySha256 = createHash('sha256').update(JSON.stringify(words)).digest('hex');
  const bytes = photo === null ? null : redatePhoto(await readFile(path.join(SAMPLES, photo)), receivedAt);
  const sha256 = bytes && createHash('sha256').update(bytes).digest('hex');
  if (bytes && sha256) await keepWhole(photoPath(photoFolder, { episodeId, sha256 }), sha256, once(bytes));
  await database.$transaction(async (queries) => {
    await keepCheckIn(queries, { ...words, bodySha256 }, receivedAt, false);
    if (bytes && sha256) await keepPhotoRow(queries, { episodeId, clientId, sha256, kind: 'toe', lengthBytes: bytes.length }, receivedAt);
  });
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

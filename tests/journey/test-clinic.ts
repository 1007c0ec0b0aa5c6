/** A clinic with one patient, in a folder of its own, for tests that go the whole way from the phone to the findings. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { redatePhoto } from '../../lib/commands/redate-photo';
import { hashSecret, newSecret } from '../../lib/edges/session/secret';
import { ROOT } from '../architecture/source-tree';
import { type TestDatabase, testClinic as startTestClinic, testDatabase, testEpisode } from '../edges/db/test-database';

const DAY_MS = 86_400_000;
export const ORIGIN = 'http://clinic.test';

export interface TestPatient {
  readonly episodeId: string;
  /** Of the personal link. */
  readonly secret: string;
}

export interface TestClinic extends TestDatabase {
  readonly clinicId: string;
  /** A patient who was operated so many days ago. */
  readonly patient: (caseCode: string, daysAgo: number, cards?: readonly string[]) => Promise<TestPatient>;
}

export async function testClinic(): Promise<TestClinic> {
  const test = await testDatabase();
  const clinicId = await startTestClinic(test.database);
  const patient = async (caseCode: string, daysAgo: number, cards: readonly string[] = []) => {
    const secret = newSecret();
    const episodeId = await testEpisode(test.database, clinicId, caseCode, {
      procedureAt: new Date(Date.now() - daysAgo * DAY_MS),
      linkTokenHash: hashSecret(secret) ?? '',
      cards: cards.map((serial) => ({ serial, barReadsMm: 50 })),
    });
    return { episodeId, secret };
  };
  return { ...test, clinicId, patient };
}

/** A sample photo as if it were taken so many seconds ago: each number makes another file. */
export const samplePhoto = (name: string, secondsAgo = 60): Uint8Array =>
  redatePhoto(readFileSync(path.join(ROOT, 'sample-images', name)), new Date(Date.now() - secondsAgo * 1000));

export const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

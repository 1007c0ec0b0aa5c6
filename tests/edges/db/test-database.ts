import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { migrateDatabase } from '../../../lib/edges/db/migrate-database';
import { type Database, openDatabase } from '../../../lib/edges/db/open-database';
import { startClinic } from '../../../lib/edges/db/start-clinic';
import { startEpisode } from '../../../lib/edges/db/start-episode';
import { ROOT } from '../../architecture/source-tree';

export const MIGRATIONS = path.join(ROOT, 'prisma', 'migrations');

export interface TestDatabase {
  readonly folder: string;
  readonly file: string;
  readonly database: Database;
  /** Another connection to the same file; closed with the rest. */
  readonly open: (giveUpAfterMs?: number) => Promise<Database>;
  readonly close: () => Promise<void>;
}

/** An empty database with today's schema, in a folder that goes when it is closed. */
export async function testDatabase(): Promise<TestDatabase> {
  const folder = mkdtempSync(path.join(tmpdir(), 'foldwatch-db-'));
  const file = path.join(folder, 'foldwatch.sqlite');
  await migrateDatabase(file, MIGRATIONS);
  const opened: Database[] = [];
  const open = async (giveUpAfterMs?: number) => {
    const database = await openDatabase(file, giveUpAfterMs);
    opened.push(database);
    return database;
  };
  const close = async () => {
    await Promise.all(opened.map((one) => one.$disconnect()));
    rmSync(folder, { recursive: true, force: true });
  };
  return { folder, file, database: await open(), open, close };
}

export const MADE_AT = new Date('2026-03-01T09:00:00Z');

/** A clinic of the test's own. */
export const testClinic = (database: Database, more: { asksBirthYear?: boolean; name?: string } = {}): Promise<string> =>
  startClinic(
    database,
    {
      name: 'Harbour Foot Clinic',
      phone: '01632 960123',
      emergencyPhone: '999',
      openingHours: 'Mon to Fri',
      timeZone: 'Europe/London',
      language: 'en',
      asksBirthYear: false,
      reviewLimits: { now: 15 },
      ...more,
    },
    MADE_AT,
  );

interface EpisodeMore {
  readonly procedureAt?: Date;
  readonly birthYear?: number;
  readonly cards?: { serial: string; barReadsMm: number | null }[];
  readonly linkTokenHash?: string;
  readonly linkEndsAt?: Date;
}

/** An episode of that clinic; its link never ends unless told. */
export const testEpisode = (database: Database, clinicId: string, caseCode: string, more: EpisodeMore = {}): Promise<string> =>
  database.$transaction((queries) =>
    startEpisode(
      queries,
      {
        clinicId,
        caseCode,
        timeZone: 'Europe/London',
        language: 'en',
        birthYear: more.birthYear ?? null,
        risks: [],
        procedure: { at: (more.procedureAt ?? MADE_AT).toISOString(), matricectomy: 'phenol60' },
        plan: {},
        cards: more.cards ?? [],
        linkTokenHash: more.linkTokenHash ?? `hash of ${caseCode}`,
        linkEndsAt: more.linkEndsAt ?? new Date('2126-01-01T00:00:00Z'),
      },
      more.procedureAt ?? MADE_AT,
    ),
  );

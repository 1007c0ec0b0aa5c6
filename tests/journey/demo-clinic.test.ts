/** The demonstration's clinic, worked off by the real worker: there is something to see of every rule, and always a "today". */
import { mkdtempSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_CASES } from '../../lib/commands/demo-cases';
import { seedDemo } from '../../lib/commands/seed-demo';
import { ALL_RULES } from '../../lib/decide/all-rules';
import { analysisPorts } from '../../lib/edges/analysis-ports';
import { newId } from '../../lib/edges/db/new-id';
import { migrateDatabase } from '../../lib/edges/db/migrate-database';
import { closeStore, type Store, store } from '../../lib/server/store';
import { workOnAssessment } from '../../lib/server/work-on-assessment';
import { workOnPhoto } from '../../lib/server/work-on-photo';
import { ROOT } from '../architecture/source-tree';

const WORKING_OFF_MS = 300_000;

describe('the demo clinic', () => {
  const data = mkdtempSync(path.join(tmpdir(), 'foldwatch-demo-'));
  let open: Store;

  beforeAll(async () => {
    process.env.FOLDWATCH_DATA = data;
    await migrateDatabase(path.join(data, 'foldwatch.sqlite'), path.join(ROOT, 'prisma', 'migrations'));
    open = await store();
    await seedDemo(open.database, open.settings.photoFolder, new Date());
    const worker = { id: newId(), leaseMs: 60_000, ports: await analysisPorts() };
    while (await workOnPhoto(open, worker));
    while (await workOnAssessment(open));
  }, WORKING_OFF_MS);
  afterAll(async () => {
    await closeStore();
    delete process.env.FOLDWATCH_DATA;
    await rm(data, { recursive: true, force: true });
  });

  it('has twelve cases or more, and a finding of every rule of the book', async () => {
    expect(DEMO_CASES.length).toBeGreaterThanOrEqual(12);
    const found = new Set((await open.database.finding.findMany()).map(({ rule }) => rule));
    expect(ALL_RULES.map(({ id }) => id).filter((id) => !found.has(id))).toEqual([]);
  });

  it('has cases at every level, and some on which nothing is open', async () => {
    const ranks = (await open.database.openCase.findMany()).map(({ levelRank }) => levelRank);
    expect([...new Set(ranks)].sort()).toEqual([0, 1, 2, 3]);
    expect(ranks.length).toBeLessThan(DEMO_CASES.length);
  });

  it('has photos of today or yesterday by any clock', async () => {
    const newest = await open.database.photo.findFirstOrThrow({ orderBy: { receivedAt: 'desc' } });
    expect(Date.now() - newest.receivedAt.getTime()).toBeLessThan(2 * 86_400_000);
  });
});

/** A photo from before the procedure: measured by the worker like any other, shown as what was there already, and no part of the course. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Actor } from '../../lib/access/actor';
import { analysisPorts } from '../../lib/edges/analysis-ports';
import { newId } from '../../lib/edges/db/new-id';
import { commandKeepProcedurePhoto } from '../../lib/server/command-keep-procedure-photo';
import { loadEpisode } from '../../lib/server/load-episode';
import { loadHandOut } from '../../lib/server/load-hand-out';
import { closeStore, type Store, store } from '../../lib/server/store';
import { workOnAssessment } from '../../lib/server/work-on-assessment';
import { workOnPhoto } from '../../lib/server/work-on-photo';
import { samplePhoto, sha256Of, type TestClinic, testClinic, type TestPatient } from './test-clinic';

/** Printed on the card of this sample photo. */
const CARD = '7SEWNTDQQGS';
const DAY_S = 86_400;

let clinic: TestClinic;
let open: Store;
let nurse: Actor;
let patient: TestPatient;

async function once(patientOf: TestPatient, kind: 'before' | 'after'): Promise<void> {
  // Taken a day before the procedure of one day ago.
  const photo = samplePhoto('measured/light-shade.jpg', 2 * DAY_S);
  const headers = new Headers({ 'x-photo-sha256': sha256Of(photo), 'x-photo-length': String(photo.length) });
  async function* body() {
    yield photo;
  }
  expect((await commandKeepProcedurePhoto(nurse, patientOf.episodeId, { kind, headers, body: body() })).status).toBe(200);
  const ports = await analysisPorts();
  while (await workOnPhoto(open, { id: newId(), leaseMs: 60_000, ports }));
  while (await workOnAssessment(open));
}

beforeAll(async () => {
  clinic = await testClinic();
  process.env.FOLDWATCH_DATA = clinic.folder;
  open = await store();
  nurse = { role: 'nurse', staffId: 's1', clinicId: clinic.clinicId };
  patient = await clinic.patient('one', 1, ['FNDC62CQRK7']);
});
afterAll(async () => {
  await closeStore();
  delete process.env.FOLDWATCH_DATA;
  await clinic.close();
});

describe('a photo from before the procedure', () => {
  it('is measured, with a card of the clinic’s own too, and shown as redness that was there', async () => {
    await once(patient, 'before');
    expect(await clinic.database.analysis.findMany()).toMatchObject([{ outcome: 'measured' }]);
    const found = await loadEpisode(nurse, 'one');
    expect('page' in found && found.page.facts.at(-1)).toMatchObject({ name: 'Redness before', words: expect.stringMatching(/^reach [\d.]+ ± [\d.]+ mm, area /) });
    const handed = await loadHandOut(nurse, 'one');
    expect('handOut' in handed && handed.handOut.photos).toMatchObject([{ kind: 'before', state: expect.stringMatching(/^reach /) }]);
  });

  it('is no visit of the course: it makes no finding, no point of a trend and no row of the days', async () => {
    const found = await loadEpisode(nurse, 'one');
    if (!('page' in found)) throw new Error('the case does not open');
    expect(found.page.days).toEqual([]);
    expect(found.page.plots.flatMap(({ rows }) => rows)).toEqual([]);
    expect(await clinic.database.finding.count()).toBe(0);
  });

  it('is held where the card in it is somebody else’s', async () => {
    await clinic.patient('two', 1, [CARD]);
    const third = await clinic.patient('three', 1, []);
    await once(third, 'after');
    expect(await clinic.database.analysis.findFirst({ where: { photo: { episodeId: third.episodeId } } })).toMatchObject({ outcome: 'held', gates: '["wrongCard"]' });
  });
});

/** An outline drawn anew: laid along the photo's edges, measured again, kept beside what was there, and used by course and rules. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Actor, StaffRole } from '../../lib/access/actor';
import { analysisPorts } from '../../lib/edges/analysis-ports';
import { newId } from '../../lib/edges/db/new-id';
import { keepCheckIn } from '../../lib/edges/db/keep-check-in';
import { keepPhotoRow } from '../../lib/edges/db/keep-photo-row';
import { keepWhole } from '../../lib/edges/files/keep-whole';
import { photoPath } from '../../lib/edges/files/photo-path';
import type { AnalysisJson } from '../../lib/pipeline/analysis-json';
import { isMeasured } from '../../lib/result';
import { commandKeepOutline } from '../../lib/server/command-keep-outline';
import { commandSnapOutline, type SnappedOutline } from '../../lib/server/command-snap-outline';
import { loadEpisode } from '../../lib/server/load-episode';
import { loadReviewCase } from '../../lib/server/load-review-case';
import type { ShownPhoto } from '../../lib/server/shown-episode';
import { closeStore, type Store, store } from '../../lib/server/store';
import { workOnAssessment } from '../../lib/server/work-on-assessment';
import { workOnPhoto } from '../../lib/server/work-on-photo';
import { samplePhoto, sha256Of, type TestClinic, testClinic } from './test-clinic';

/** Printed on the card of this sample photo. */
const CARD = 'ZJDH7GKVYVA';

let clinic: TestClinic;
let open: Store;
let photoId: string;
let episodeId: string;
let own: AnalysisJson;
const as = (role: StaffRole, clinicId = clinic.clinicId): Actor => ({ role, staffId: 's1', clinicId });

beforeAll(async () => {
  clinic = await testClinic();
  process.env.FOLDWATCH_DATA = clinic.folder;
  open = await store();
  ({ episodeId } = await clinic.patient('one', 3, [CARD]));
  const photo = samplePhoto('series/day-12.jpg');
  const sha256 = sha256Of(photo);
  const receivedAt = new Date();
  const clientId = '00000000-0000-4000-8000-000000000001';
  async function* bytes() {
    yield photo;
  }
  await keepWhole(photoPath(open.settings.photoFolder, { episodeId, sha256 }), sha256, bytes());
  await clinic.database.$transaction(async (queries) => {
    await keepCheckIn(queries, { episodeId, clientId, kind: 'daily', at: receivedAt.toISOString(), answers: '{}', worry: null, hasPhoto: true, bodySha256: 'one' }, receivedAt, false);
    await keepPhotoRow(queries, { episodeId, clientId, sha256, kind: 'toe', lengthBytes: photo.length }, receivedAt);
  });
  const ports = await analysisPorts();
  while (await workOnPhoto(open, { id: newId(), leaseMs: 60_000, ports }));
  while (await workOnAssessment(open));
  const analysis = await clinic.database.analysis.findFirstOrThrow();
  photoId = analysis.photoId;
  own = JSON.parse(analysis.json ?? '') as AnalysisJson;
});
afterAll(async () => {
  await closeStore();
  delete process.env.FOLDWATCH_DATA;
  await clinic.close();
});

/** Eight points on the program's own redness, as a person would set them who sees nearly the same. */
function points(shiftMm = 0) {
  const ring = own.outlinesAsSeen?.erythema?.[0].ring ?? [];
  return Array.from({ length: 16 }, (_, i) => ring[Math.round((i * (ring.length - 1)) / 16)]).map(([acrossMm, downMm]) => ({ acrossMm: acrossMm + shiftMm, downMm, held: shiftMm !== 0 }));
}
const snap = async (body: unknown, actor = as('clinician')) => commandSnapOutline(actor, photoId, body);
const keep = async (more: object, actor = as('clinician')) => commandKeepOutline(actor, photoId, { outline: 'erythema', points: points(), reason: 'The shadow was taken for redness.', from: 0, ...more });
const versions = () => clinic.database.outlineVersion.findMany({ orderBy: { number: 'asc' } });
async function shownPhoto(): Promise<ShownPhoto> {
  const found = await loadEpisode(as('clinician'), 'one');
  if (!('page' in found)) throw new Error('the clinician may look');
  return found.page.photos[0];
}
async function reachOfCourse(): Promise<string | undefined> {
  const found = await loadEpisode(as('clinician'), 'one');
  return 'page' in found ? found.page.plots.find(({ id }) => id === 'erythemaArea')?.rows.at(-1)?.value : undefined;
}

describe('a line that is laid', () => {
  it('follows the photo’s edges and comes with the numbers it would give, and nothing is kept', async () => {
    const { status, json } = await snap({ outline: 'erythema', points: points() });
    expect(status).toBe(200);
    const { line, numbers, because } = json as SnappedOutline;
    expect(line?.length).toBeGreaterThan(50);
    expect(numbers[1]).toMatch(/^redness area [\d.]+ ± [\d.]+ mm²$/);
    expect(because).toMatch(/where the line lies \d+ %/);
    expect(await versions()).toEqual([]);
  });

  it('is refused to whoever may not draw, and answered as if the photo were not there', async () => {
    for (const actor of [as('nurse'), as('admin'), as('clinician', 'another clinic')]) expect((await snap({ outline: 'raw', points: null }, actor)).status).toBe(404);
    expect((await snap({ outline: 'raw', points: null }, { role: 'anonymous' })).status).toBe(401);
  });

  it('asks for more points, and takes nothing that it does not know', async () => {
    expect(await snap({ outline: 'erythema', points: points().slice(0, 2) })).toMatchObject({ status: 409, json: { problem: 'tooFewPoints' } });
    for (const body of [{}, { outline: 'toe', points: null }, { outline: 'raw', points: [{ acrossMm: 1e9, downMm: 0, held: false }] }, { outline: 'raw', points: null, more: 1 }]) expect((await snap(body)).status).toBe(400);
  });
});

describe('a version that is kept', () => {
  it('asks why', async () => {
    expect(await keep({ reason: ' ' })).toMatchObject({ status: 400, json: { problem: 'notComplete' } });
  });

  it('stands beside the program’s own, with who, when and why, and the rules are asked again', async () => {
    const before = await reachOfCourse();
    await clinic.database.episode.update({ where: { id: episodeId }, data: { assessAt: new Date('2126-01-01T00:00:00Z') } });
    // Two millimetres nearer to the nail: another area.
    expect(await keep({ points: points(2) })).toMatchObject({ status: 200, json: { number: 1 } });
    expect(await versions()).toMatchObject([{ number: 1, photoId, madeBy: 'clinician:s1', reason: 'The shadow was taken for redness.' }]);
    expect((await clinic.database.episode.findUniqueOrThrow({ where: { id: episodeId } })).assessAt.getTime()).toBeLessThanOrEqual(Date.now());
    expect(await reachOfCourse()).not.toBe(before);
    expect(await clinic.database.auditEvent.findFirst({ where: { action: 'outline.redraw erythema' } })).toMatchObject({ actor: 'clinician:s1', rule: 'clinician may outline.redraw (clinic)' });
  });

  it('is shown as what counts, and the older ones can be looked at', async () => {
    const { versions: shown } = await shownPhoto();
    expect(shown.map(({ number }) => number)).toEqual([1, 0]);
    expect(shown[0].words).toMatch(/^Version 1, redness drawn by hand: .*Why: The shadow was taken for redness\.$/);
    expect(shown[1].words).toBe('Outlines and numbers: by the program');
    const path = (at: number, name: string) => shown[at].lines.find((one) => one.name === name)?.path;
    expect(path(0, 'erythema')).not.toBe(path(1, 'erythema'));
    expect(path(0, 'nailFoldMargin')).toBe(path(1, 'nailFoldMargin'));
    const found = await loadEpisode(as('nurse'), 'one');
    expect('page' in found && found.page.plots.find(({ id }) => id === 'reach')?.rows.at(-1)?.note).toBe('outlines: version 1, by hand');
    expect('page' in found && found.page.mayRedraw).toBe(false);
  });

  it('is what the list beside shows too', async () => {
    const { json } = await loadReviewCase(as('nurse'), episodeId);
    expect((json as { photos: { numbers: string[] }[] }).photos[0].numbers.at(-1)).toMatch(/^Version 1, redness drawn by hand/);
  });

  it('is taken into the next assessment', async () => {
    const before = await clinic.database.assessment.count();
    while (await workOnAssessment(open));
    const newest = await clinic.database.assessment.findFirstOrThrow({ orderBy: { madeAt: 'desc' } });
    expect(await clinic.database.assessment.count()).toBe(before + 1);
    const [{ measurements }] = await versions();
    const { erythemaArea } = JSON.parse(measurements) as AnalysisJson['measurements'];
    if (!isMeasured(erythemaArea)) throw new Error('it has an area');
    expect(JSON.stringify(JSON.parse(newest.trend))).toContain(String(erythemaArea.value));
  });

  it('is not laid over what somebody else drew meanwhile', async () => {
    expect(await keep({ from: 0 })).toMatchObject({ status: 409, json: { problem: 'changed' } });
    expect(await versions()).toHaveLength(1);
  });

  it('keeps what was drawn before when another outline is drawn, and gives the program its own line again on request', async () => {
    const margin = (own.outlinesAsSeen?.nailFoldMargin ?? []).filter((_, at) => at % 20 === 0).map(([acrossMm, downMm]) => ({ acrossMm, downMm, held: false }));
    expect((await keep({ outline: 'nailFoldMargin', points: margin, from: 1 })).status).toBe(200);
    expect((await shownPhoto()).versions[0].words).toMatch(/^Version 2, redness and nail-fold margin drawn by hand/);
    for (const [outline, from] of [['erythema', 2], ['nailFoldMargin', 3]] as const) expect((await keep({ outline, points: null, from })).status).toBe(200);
    const { erythemaArea } = JSON.parse((await versions())[3].measurements) as AnalysisJson['measurements'];
    expect(erythemaArea).toEqual(own.measurements.erythemaArea);
    expect((await shownPhoto()).versions.map(({ number }) => number)).toEqual([4, 3, 2, 1, 0]);
  });
});

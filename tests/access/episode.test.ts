/** The page of one case: who may open it, that a look is noted, and that it shows all there is and nothing else. */
import { PDFDocument } from 'pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Actor, StaffRole } from '../../lib/access/actor';
import { addFindings } from '../../lib/edges/db/add-finding';
import { finishJob } from '../../lib/edges/db/finish-job';
import { keepCheckIn } from '../../lib/edges/db/keep-check-in';
import { keepPhotoRow } from '../../lib/edges/db/keep-photo-row';
import { startStaff } from '../../lib/edges/db/start-staff';
import type { Finding } from '../../lib/decide/finding';
import { loadEpisode } from '../../lib/server/load-episode';
import { loadEpisodeCsv } from '../../lib/server/load-episode-csv';
import { loadFhir } from '../../lib/server/load-fhir';
import { loadReport } from '../../lib/server/load-report';
import { loadReportPdf } from '../../lib/server/load-report-pdf';
import type { EpisodeReport } from '../../lib/server/shown-report';
import type { EpisodePage } from '../../lib/server/shown-episode';
import { closeStore } from '../../lib/server/store';
import { MADE_AT, type TestDatabase, testClinic, testDatabase, testEpisode } from '../edges/db/test-database';

const afterDays = (days: number): Date => new Date(MADE_AT.getTime() + days * 86_400_000);

/** A finding of an older rule book that today's rules do not make. */
const OLD: Finding = {
  rule: 'bleeding',
  level: 'today',
  at: afterDays(1).toISOString(),
  sentence: 'Blood kept coming.',
  evidence: { numbers: [], photos: [], checkIns: [] },
  ruleBookVersion: '2025.1',
  raisedForRisk: false,
  closed: null,
};

let test: TestDatabase;
let clinicId: string;
let episodeId: string;
let staffId: string;

const as = (role: StaffRole, clinic = clinicId): Actor => ({ role, staffId, clinicId: clinic });

async function checkIn(day: number, answers: object, worry: string | null = null, measurements: object | null = null): Promise<void> {
  const clientId = `00000000-0000-4000-8000-00000000000${day}`;
  const at = afterDays(day);
  const words = { episodeId, clientId, kind: 'daily', at: at.toISOString(), answers: JSON.stringify(answers), worry, hasPhoto: measurements !== null, bodySha256: `${day}` };
  await keepCheckIn(test.database, words, at, false);
  if (measurements === null) return;
  const sha256 = String(day).repeat(64);
  await keepPhotoRow(test.database, { episodeId, clientId, sha256, kind: 'toe', lengthBytes: 1 }, at);
  const { id } = await test.database.photo.findFirstOrThrow({ where: { sha256 } });
  const refused = Object.keys(measurements).length === 0;
  const json = { measured: !refused, reasons: [], card: null, colour: null, measurements, outlines: null };
  await finishJob(test.database, { id, episodeId }, { methodVersion: 'test', outcome: refused ? 'retake' : 'measured', gates: refused ? ['blur'] : [], json, viewSha256: null, findings: [] }, at);
}

const reach = (value: number) => ({
  reach: { value, u: 0.5, U: 1, unit: 'mm' },
  erythemaArea: { notMeasured: 'contrastTooLow' },
  rawArea: { value: 10, u: 1, U: 2, unit: 'mm2' },
  grooveWidth: { value: 2, u: 0.3, U: 0.6, unit: 'mm' },
});

async function opened(caseCode = 'HF-1'): Promise<EpisodePage> {
  const found = await loadEpisode(as('clinician'), caseCode);
  if (!('page' in found)) throw new Error('the clinician may not open it');
  return found.page;
}

beforeAll(async () => {
  test = await testDatabase();
  process.env.FOLDWATCH_DATA = test.folder;
  clinicId = await testClinic(test.database);
  episodeId = await testEpisode(test.database, clinicId, 'HF-1');
  staffId = await startStaff(test.database, { clinicId, name: 'Ada Reed', role: 'nurse', email: 'ada@clinic.test', passwordHash: 'none' }, MADE_AT);
  await checkIn(1, { pain: 5 }, null, reach(3));
  await checkIn(2, { wetness: 'wet' }, '=cmd()', {});
  await checkIn(3, { pain: 4 }, null, reach(4));
  await addFindings(test.database, episodeId, [OLD, { ...OLD, rule: 'dusky-toe', sentence: 'The toe was grey.' }], afterDays(1));
  // As a resolution on two open rules is kept: a word on each, at one moment, by role and id.
  const word = { episodeId, findingId: null, action: 'called', reason: 'Seen by phone.', outcome: null, by: `nurse:${staffId}`, at: afterDays(1.5) };
  await test.database.resolution.createMany({ data: ['dusky-toe', 'late'].map((rule) => ({ ...word, id: rule, rule })) });
});
afterAll(async () => {
  await closeStore();
  delete process.env.FOLDWATCH_DATA;
  await test.close();
});

describe('who may open a case', () => {
  it.each(['nurse', 'clinician', 'lead'] as const)('a %s of its clinic may', async (role) => {
    expect(await loadEpisode(as(role), 'HF-1')).toHaveProperty('page.caseCode', 'HF-1');
  });

  it('nobody else may, and is told no more than that it is not there', async () => {
    const patient: Actor = { role: 'patient', episodeId, clinicId, birthYearOwed: false };
    for (const actor of [patient, as('admin'), as('nurse', 'another clinic')]) {
      expect(await loadEpisode(actor, 'HF-1')).toMatchObject({ refused: { status: 404 } });
      expect(await loadEpisodeCsv(actor, 'HF-1')).toMatchObject({ status: 404 });
    }
    expect(await loadEpisode(as('nurse'), 'HF-2')).toMatchObject({ refused: { status: 404 } });
    expect(await loadEpisode({ role: 'anonymous' }, 'HF-1')).toMatchObject({ refused: { status: 401 } });
  });

  it('each look and each download is noted with who and by which rule', async () => {
    await opened();
    await loadEpisodeCsv(as('lead'), 'HF-1');
    const notes = await test.database.auditEvent.findMany({ where: { episodeId } });
    expect(notes).toContainEqual(expect.objectContaining({ actor: `clinician:${staffId}`, action: 'episode.read', rule: 'clinician may episode.read (clinic)' }));
    expect(notes).toContainEqual(expect.objectContaining({ actor: `lead:${staffId}`, action: 'episode.csv' }));
  });
});

describe('the page of a case', () => {
  it('has the same in each table as in its plot: every value, every gap', async () => {
    for (const { id, plot, rows } of (await opened()).plots) {
      expect(rows.filter(({ value }) => value !== 'none'), id).toHaveLength(plot.points.length);
      expect(rows.filter(({ value }) => value === 'none'), id).toHaveLength(plot.gapsMm.length);
      expect(rows.length, id).toBe(3);
    }
  });

  it('says why there is no value, and has no zero in its place', async () => {
    const area = (await opened()).plots.find(({ id }) => id === 'erythemaArea');
    expect(area?.rows.map(({ value, note }) => [value, note])).toEqual([
      ['none', 'contrast too low'],
      ['none', 'blur'],
      ['none', 'contrast too low'],
    ]);
  });

  it('does not join the reaches on either side of a refused photo', async () => {
    const seen = (await opened()).plots.find(({ id }) => id === 'reach');
    expect(seen?.plot).toMatchObject({ lines: [], points: [expect.anything(), expect.anything()], gapsMm: [expect.any(Number)] });
    expect(seen?.sentences[1]).toBe('Too few photos for a trend: 2 of the 4 that it takes.');
  });

  it('takes a check-in without a word on pain for a gap', async () => {
    const pain = (await opened()).plots.find(({ id }) => id === 'pain');
    expect(pain?.rows.map(({ value }) => value)).toEqual(['5 of 10', 'none', '4 of 10']);
  });

  it('keeps a finding open that the rules no longer make, and shows who closed another and why', async () => {
    const { open, closed } = await opened();
    expect(open.map(({ sentence }) => sentence)).toContain(OLD.sentence);
    expect(closed.find(({ sentence }) => sentence === 'The toe was grey.')?.closed).toMatch(/by Ada Reed: Seen by phone\.$/);
  });

  it('keeps a finding open while the clinician has only been asked, one of the rules and one of before; the next word closes it', async () => {
    const asked = await testEpisode(test.database, clinicId, 'HF-3');
    const words = { episodeId: asked, clientId: '00000000-0000-4000-8000-0000000000aa', kind: 'daily', at: afterDays(1).toISOString(), answers: '{"streaks":true}', worry: null, hasPhoto: false, bodySha256: 'aa' };
    await keepCheckIn(test.database, words, afterDays(1), false);
    await addFindings(test.database, asked, [OLD], afterDays(1));
    const keep = (id: string, action: string, day: number, reason: string) =>
      test.database.resolution.createMany({ data: ['streak-or-fever', 'bleeding'].map((rule) => ({ id: `${id} ${rule}`, rule, episodeId: asked, findingId: null, action, reason, outcome: null, by: `nurse:${staffId}`, at: afterDays(day) })) });
    await keep('q', 'askClinician', 1.2, 'Is this a streak?');
    expect((await opened('HF-3')).open.map(({ sentence }) => sentence)).toEqual(expect.arrayContaining(['Reported: a red streak.', OLD.sentence]));
    await keep('c', 'called', 1.3, 'Sent on.');
    const page = await opened('HF-3');
    expect(page.open.filter(({ sentence }) => /streak|Blood/.test(sentence))).toEqual([]);
    const said = page.closed.filter(({ sentence }) => /streak|Blood/.test(sentence)).map(({ closed }) => closed ?? '');
    expect(said).toHaveLength(2);
    for (const one of said) expect(one).toMatch(/by Ada Reed: Sent on\.$/);
  });

  it('marks the call on the days of every plot and says it in words', async () => {
    const { plots, events, resolutions } = await opened();
    expect(plots.every(({ plot }) => plot.events.some(({ letter }) => letter === 'C'))).toBe(true);
    expect(events).toEqual([{ letter: 'C', words: 'called', when: 'day 1.5' }]);
    const word = { by: 'Ada Reed', action: 'called', reason: 'Seen by phone.' };
    expect(resolutions).toMatchObject([
      { ...word, rule: 'Black, grey or cold toe' },
      { ...word, rule: 'Not dry when it could be' },
    ]);
  });

  it('shows what they wrote as they wrote it', async () => {
    expect((await opened()).days.map(({ worry, photo }) => [worry, photo])).toEqual([
      ['', 'measured'],
      ['=cmd()', 'not measured: blur'],
      ['', 'measured'],
    ]);
  });
});

it('writes one line of numbers for each check-in, with units and reasons', async () => {
  const { bytes, headers } = await loadEpisodeCsv(as('nurse'), 'HF-1');
  const [head, ...lines] = new TextDecoder().decode(bytes).trimEnd().split('\r\n').map((line) => line.split(','));
  const column = (name: string) => lines.map((line) => line[head.indexOf(name)]);
  expect(headers).toMatchObject({ 'content-disposition': 'attachment; filename="HF-1.csv"' });
  expect(column('reach')).toEqual(['3', '', '4']);
  expect(column('reach_unit')).toEqual(['mm', '', 'mm']);
  expect(column('erythemaArea_notMeasured')[0]).toBe('contrastTooLow');
  expect(column('photoRefusedFor')).toEqual(['', 'blur', '']);
});

describe('the report of a case', () => {
  async function report(): Promise<EpisodeReport> {
    const found = await loadReport(as('clinician'), 'HF-1');
    if (!('report' in found)) throw new Error('the clinician may not read it');
    return found.report;
  }

  it('is for those who may open the case, in each of its forms, and each is noted', async () => {
    const patient: Actor = { role: 'patient', episodeId, clinicId, birthYearOwed: false };
    for (const actor of [patient, as('admin'), as('nurse', 'another clinic')]) {
      expect(await loadReport(actor, 'HF-1')).toMatchObject({ refused: { status: 404 } });
      expect(await loadReportPdf(actor, 'HF-1')).toMatchObject({ status: 404 });
      expect(await loadFhir(actor, 'HF-1')).toMatchObject({ status: 404 });
    }
    for (const load of [loadReport, loadReportPdf, loadFhir]) await load(as('nurse'), 'HF-1');
    const notes = await test.database.auditEvent.findMany({ where: { episodeId, actor: `nurse:${staffId}` } });
    expect(notes.map(({ action }) => action)).toEqual(expect.arrayContaining(['episode.report', 'episode.report.pdf', 'episode.fhir']));
  });

  it('has every visit, those without a measurement with the reason, and no zero in its place', async () => {
    const { visits, methodVersions } = await report();
    expect(methodVersions).toEqual(['test']);
    expect(visits.map(({ day, photo, numbers }) => [day, photo, ...numbers])).toEqual([
      ['1.0', 'measured', '3 ± 1', 'none: contrast too low', '10 ± 2', '2 ± 0.6'],
      ['2.0', 'not measured: blur', '', '', '', ''],
      ['3.0', 'measured', '4 ± 1', 'none: contrast too low', '10 ± 2', '2 ± 0.6'],
    ]);
  });

  it('goes out as a PDF in the clinic’s paper', async () => {
    const { bytes, headers } = await loadReportPdf(as('lead'), 'HF-1');
    expect(headers).toMatchObject({ 'content-type': 'application/pdf', 'content-disposition': 'attachment; filename="HF-1-report.pdf"' });
    const document = await PDFDocument.load(bytes ?? new Uint8Array());
    expect(document.getTitle()).toBe('Report of case HF-1');
    // ISO 216: A4 is 210 × 297 mm.
    const { width, height } = document.getPage(0).getSize();
    expect([(width * 25.4) / 72, (height * 25.4) / 72].map(Math.round)).toEqual([210, 297]);
  });

  it('goes out as FHIR with what was measured and what was not', async () => {
    const { bytes, headers } = await loadFhir(as('lead'), 'HF-1');
    expect(headers).toMatchObject({ 'content-type': 'application/fhir+json; charset=utf-8' });
    const { entry } = JSON.parse(new TextDecoder().decode(bytes)) as { entry: { resource: { resourceType: string; valueQuantity?: { value: number }; dataAbsentReason?: { text: string }; derivedFrom?: unknown } }[] };
    const onPhotos = entry.filter(({ resource }) => resource.derivedFrom).map(({ resource }) => resource.valueQuantity?.value ?? resource.dataAbsentReason?.text);
    expect(onPhotos).toHaveLength(15);
    expect(onPhotos).toEqual(expect.arrayContaining([3, 4, 10, 2, 'contrast too low', 'blur']));
    expect(onPhotos).not.toContain(0);
  });
});

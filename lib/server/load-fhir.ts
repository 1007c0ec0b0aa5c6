import { createHash } from 'node:crypto';
import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import type { Measurement } from '../result';
import type { Course, Entry } from '../decide/course';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { findEpisodeByCase, readStory, type Story } from '../edges/db/read-story';
import { METHOD_VERSION } from '../pipeline/method-version';
import { fhirBundle, type FhirFacts, type FhirMeasured } from '../report/fhir-bundle';
import { MEASURED_CODES } from '../report/fhir-codes';
import { procedureWords } from '../report/procedure-words';
import { gapReasonWords } from '../report/trend-words';
import { aboutRule } from './about-rule';
import { type Answer, refusedBy } from './answer';
import { assessRows } from './assess-rows';
import { courseOf } from './episode-page';
import { store } from './store';

const MEASURANDS = Object.keys(MEASURED_CODES) as (keyof typeof MEASURED_CODES)[];
const STATE: Readonly<Record<string, string>> = { measured: 'measured', held: 'held: another card is in the picture', unread: 'could not be opened as a photo', kept: 'a dressing, not measured', retake: 'not measured' };

/** The episode for another program, as FHIR R4. That somebody took it is noted. */
export async function loadFhir(actor: Actor, caseCode: string): Promise<Answer> {
  const { database } = await store();
  const episode = 'staffId' in actor ? await findEpisodeByCase(database, actor.clinicId, caseCode) : null;
  const may = guard(actor, 'episode.read', episode);
  if (!may.allowed) return refusedBy(may);
  const moment = now();
  const story = await readStory(database, may.episodeId);
  await noteAudit(database, { clinicId: story.episode.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: 'episode.fhir', rule: may.rule, at: moment });
  const bundle = fhirBundle(factsOf(story, moment), (name) => uuidFrom(`${may.episodeId} ${name}`));
  const name = story.episode.caseCode.replace(/[^\w-]/g, '_');
  const headers = { 'content-type': 'application/fhir+json; charset=utf-8', 'content-disposition': `attachment; filename="${name}.fhir.json"` };
  return { status: 200, bytes: new TextEncoder().encode(`${JSON.stringify(bundle, null, 1)}\n`), headers };
}

/** The same name has the same UUID in every export (RFC 9562, 5.8: a UUID of our own making, from a hash). */
function uuidFrom(name: string): string {
  const hex = createHash('sha256').update(name).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

function factsOf(story: Story, moment: Date): FhirFacts {
  const { episode } = story;
  const course = courseOf(story, moment);
  const { procedure } = course.episode;
  const facts = procedureWords(procedure);
  return {
    caseCode: episode.caseCode,
    writtenAt: moment.toISOString(),
    softwareVersion: METHOD_VERSION,
    procedure: { at: procedure.at, words: facts.map(({ name, words }) => `${name}: ${words}`).join('. '), site: `Great toe, ${facts[0].words}` },
    photos: episode.photos.map(({ id, receivedAt, sha256, analyses: [analysis] }) => ({ id, at: receivedAt.toISOString(), sha256, state: analysis ? (STATE[analysis.outcome] ?? analysis.outcome) : 'not measured yet' })),
    measured: measuredOf(story, course),
    said: saidOf(course),
    findings: assessRows(episode, moment).findings.map(({ rule, level, at, sentence, closed }) => ({
      key: `${rule} ${level} ${at}`,
      at,
      name: aboutRule(rule),
      detail: sentence,
      closed: closed && { at: closed.at, words: closed.reason },
    })),
  };
}

function measuredOf({ episode }: Story, { entries }: Course): FhirMeasured[] {
  const rowOf = new Map(episode.photos.map((photo) => [photo.id, photo]));
  return entries.flatMap(({ at, photo }) => {
    if (photo === null) return [];
    const row = rowOf.get(photo.name);
    const redrawn = row?.outlines.at(0);
    const method = `Foldwatch ${redrawn?.methodVersion ?? row?.analyses.at(0)?.methodVersion ?? METHOD_VERSION}${redrawn ? `, outlines drawn by hand, version ${redrawn.number}` : ''}`;
    return MEASURANDS.map((measurand) => ({ photoId: photo.name, at, measurand, method, amended: redrawn !== undefined, found: foundOn(photo, measurand) }));
  });
}

function foundOn(photo: NonNullable<Entry['photo']>, measurand: keyof typeof MEASURED_CODES): FhirMeasured['found'] {
  if (!photo.usable) return { notMeasured: photo.reasons.map(gapReasonWords).join(', ') || 'the photo could not be used' };
  const found = photo.measurements[measurand] as Measurement | undefined;
  if (found === undefined) return { notMeasured: 'not measured by this method' };
  return 'notMeasured' in found ? { notMeasured: gapReasonWords(found.notMeasured) } : found;
}

function saidOf({ entries }: Course): FhirFacts['said'] {
  return entries.flatMap(({ at, answers }, place) => {
    const { pain, feverC } = answers;
    const key = `${at} ${place}`;
    return [...(pain === undefined ? [] : [{ key, at, what: 'pain', value: pain } as const]), ...(feverC === undefined ? [] : [{ key, at, what: 'temperature', value: feverC } as const])];
  });
}

import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import type { Answers } from '../care/answers';
import { parseEpisode } from '../care/parse-episode';
import type { Procedure } from '../care/procedure';
import { scheduleDaysSince } from '../care/schedule-day';
import type { Finding } from '../decide/finding';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import type { Queries } from '../edges/db/open-database';
import { reachOf } from '../edges/db/open-case';
import { openFindings } from '../edges/db/open-findings';
import { type EpisodeRows, readEpisodeRows } from '../edges/db/read-episode-rows';
import { findingWords, readClinic } from '../edges/db/review-rows';
import type { GateId } from '../photo/reasons';
import { answerWords } from '../report/answer-words';
import { procedureWords } from '../report/procedure-words';
import { ruleWords } from '../report/rule-words';
import { bookOfVersion } from '../review/book-of-version';
import { ACTION_WORDS, LEVEL_WORDS, RESOLUTION_ACTIONS, type ResolutionAction } from '../review/constants';
import { orderFindings, type OpenFinding } from '../review/place-case';
import { aboutRule } from './about-rule';
import { type Answer, answer, refusal, refusedBy } from './answer';
import { type EpisodeClock, episodeClock } from './episode-clock';
import { actionWords } from './episode-events';
import { episodeJson } from './episode-json';
import { findResource } from './find-resource';
import { reachTrend, staffName, whyNotMeasured } from './load-review';
import type { ReviewCase, ReviewCheckIn, ReviewFinding } from './review-case';
import { MOST_PHOTOS, reviewPhotos } from './review-photos';
import { store } from './store';

/** The newest check-ins answer why somebody looks now. */
const MOST_CHECK_INS = 3;
const MOST_EARLIER = 6;

/** One case for the panel beside the list. Every look is noted. */
export async function loadReviewCase(actor: Actor, episodeId: string): Promise<Answer> {
  const { database, settings } = await store();
  const may = guard(actor, 'review.read', await findResource(database, episodeId));
  if (!may.allowed || !('staffId' in actor)) return may.allowed ? refusal(404, 'notFound') : refusedBy(may);
  const at = now();
  await noteAudit(database, { clinicId: actor.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: 'review.open', rule: may.rule, at });
  return answer(await reviewCase(database, await readEpisodeRows(database, may.episodeId, MOST_PHOTOS), settings.photoFolder, at));
}

async function reviewCase(queries: Queries, rows: EpisodeRows, photoFolder: string, moment: Date): Promise<ReviewCase> {
  // Its procedure and its risks; what photos and answers say comes from the findings and from the rows.
  const parsed = parseEpisode(episodeJson({ ...rows, checkIns: [], photos: [] }, moment.toISOString()));
  if ('problem' in parsed) throw new Error(`Episode ${rows.id} cannot be shown. ${parsed.problem}`);
  const { procedure, risks } = parsed.episode;
  const clock = episodeClock(new Date(procedure.at), rows.clinic.timeZone);
  const all = await openFindings(queries, rows.id, moment);
  const open = orderFindings(all);
  const reach = await reachOf(queries, rows.id);
  const { staff } = await readClinic(queries, rows.clinicId);
  const nameOf = new Map(staff.map(({ id, name }) => [id, name]));
  return {
    episodeId: rows.id,
    caseCode: rows.caseCode,
    day: scheduleDaysSince(procedure.at, moment.toISOString(), rows.timeZone),
    facts: procedureWords(procedure),
    risks,
    findings: await findingsOf(queries, open, { rows, procedure, clock }),
    photos: await reviewPhotos(rows, { photoFolder, clock, nameOf: (by) => staffName(by, nameOf) }),
    checkIns: checkInsOf(rows, clock),
    reach: reachTrend(reach, clock.dayOf(moment)),
    earlier: earlierOf(rows, clock, nameOf),
    seen: all.map(({ id }) => id),
    asksDryness: open.some(({ rule }) => rule === 'dry'),
    actions: RESOLUTION_ACTIONS.map((action) => ({ action, words: ACTION_WORDS[action].words, noteAsks: ACTION_WORDS[action].noteAsks })),
  };
}

interface About {
  readonly rows: EpisodeRows;
  readonly procedure: Procedure;
  readonly clock: EpisodeClock;
}

async function findingsOf(queries: Queries, open: readonly OpenFinding[], { rows, procedure, clock }: About): Promise<ReviewFinding[]> {
  const words = new Map((await findingWords(queries, open.map(({ id }) => id))).map(({ id, json }) => [id, JSON.parse(json) as Finding]));
  return open.map(({ id, rule, level, at }) => {
    const known = { id, level, levelWords: LEVEL_WORDS[level], since: clock.at(new Date(at)) };
    const finding = words.get(id);
    if (finding === undefined) {
      const gates = rows.photos.find((photo) => photo.id === id)?.analyses.at(0)?.gates ?? '[]';
      const sentence = whyNotMeasured(JSON.parse(gates) as GateId[]);
      return { ...known, name: aboutRule(rule), sentence, limits: [], ruleBookVersion: '', raisedForRisk: false };
    }
    const { sentence, ruleBookVersion, raisedForRisk } = finding;
    const said = ruleWords(rule, bookOfVersion(ruleBookVersion), procedure.matricectomy);
    return { ...known, name: said.name, sentence, limits: said.limits, ruleBookVersion, raisedForRisk };
  });
}

function checkInsOf({ checkIns }: EpisodeRows, clock: EpisodeClock): ReviewCheckIn[] {
  return checkIns.slice(-MOST_CHECK_INS).reverse().map(({ receivedAt, answers, worry }) => {
    const { pain, signs, discharge, wetness, temperature, smell } = answerWords(JSON.parse(answers) as Answers);
    const told = [
      ['Signs', signs],
      ['Temperature', temperature],
      ['Pain', pain === '' ? '' : `${pain} of 10`],
      ['Dressing', wetness],
      ['Discharge', discharge],
      ['Smell', smell],
    ];
    return { at: clock.at(receivedAt), worry, answers: told.flatMap(([name, words]) => (words === '' ? [] : [{ name, words }])) };
  });
}

function earlierOf({ resolutions }: EpisodeRows, clock: EpisodeClock, nameOf: ReadonlyMap<string, string>): ReviewCase['earlier'] {
  return resolutions.slice(-MOST_EARLIER).reverse().map(({ at, by, action, rule, reason }) => ({
    at: clock.at(at),
    by: staffName(by, nameOf),
    action: ACTION_WORDS[action as ResolutionAction]?.words ?? actionWords(action),
    about: aboutRule(rule),
    reason,
  }));
}

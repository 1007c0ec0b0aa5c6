import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { OWN_CARD } from '../card/own-card';
import { printCheck, type PrintScale } from '../card/print-check';
import type { Procedure } from '../care/procedure';
import { sideInPicture } from '../care/side-in-picture';
import { now } from '../edges/clock/now';
import { cameBefore, cardOwner } from '../edges/db/card-owner';
import { claimJob, type ClaimedPhoto } from '../edges/db/claim-job';
import { type AnalysisWords, finishJob, returnJob } from '../edges/db/finish-job';
import { encodeView } from '../edges/decode/encode-view';
import { keepWhole } from '../edges/files/keep-whole';
import { mapPath, photoPath, viewPath } from '../edges/files/photo-path';
import { pressMap } from '../edges/files/press-map';
import { errorFacts, logEvent } from '../edges/log/log-event';
import type { ToldSide } from '../segment/segmentation';
import type { UprightPhoto } from '../photo/upright-photo';
import { analysePhoto } from '../pipeline/analyse-photo';
import { analysisToJson } from '../pipeline/analysis-json';
import { type Analysis, isMeasuredAnalysis } from '../pipeline/analysis';
import { METHOD_VERSION } from '../pipeline/method-version';
import { packRedrawMap } from '../pipeline/pack-redraw-map';
import type { AnalysisPorts } from '../pipeline/ports';
import { redrawMap } from '../pipeline/redraw-map';
import { askPerson } from './ask-person';
import { cardBaselines } from './card-baselines';
import { earlierVisits } from './earlier-visits';
import { gatesOfRefusal } from './gates-of-refusal';
import type { Store } from './store';

/** A third start may be bad luck (the machine was switched off twice). A photo that ends its worker each time must not do so for ever. */
const MOST_ATTEMPTS = 3;
const VIEW = { maxLongEdgePx: 1600, quality: 82 };

export interface Worker {
  readonly id: string;
  readonly leaseMs: number;
  readonly ports: AnalysisPorts;
}

/**
 * Claims one photo, analyses it and keeps what was found. Nothing is kept before the end, so a worker that dies on the
 * way leaves a job that another one takes up.
 * @returns false where there was nothing to do
 */
export async function workOnPhoto(store: Store, worker: Worker): Promise<boolean> {
  const { database } = store;
  const claimed = await claimJob(database, { workerId: worker.id, leaseMs: worker.leaseMs, now: now() });
  if (claimed === null) return false;
  const { photo, attempts } = claimed;
  if (attempts > MOST_ATTEMPTS) {
    logEvent('photoGivenUp', { photoId: photo.id });
    await finishJob(database, photo, givenUpWords(photo), now());
    return true;
  }
  try {
    await finishJob(database, photo, await analyse(photo, store, worker.ports), now());
  } catch (error) {
    const facts = errorFacts(error);
    logEvent('photoFailed', { photoId: photo.id, ...facts });
    await returnJob(database, photo.id, worker.id, facts.error);
  }
  return true;
}

async function analyse(photo: ClaimedPhoto, store: Store, ports: AnalysisPorts): Promise<AnalysisWords> {
  const file = new Uint8Array(await readFile(photoPath(store.settings.photoFolder, photo)));
  if (createHash('sha256').update(file).digest('hex') !== photo.sha256) throw new Error('The stored file is not the one that was received.');
  return photo.kind === 'dressing' ? keepDressing(file, photo, store, ports) : measureToe(file, photo, store, ports);
}

const known = { methodVersion: METHOD_VERSION, json: null, findings: [] } as const;

/** For a person's eyes only. */
async function keepDressing(file: Uint8Array, photo: ClaimedPhoto, store: Store, ports: AnalysisPorts): Promise<AnalysisWords> {
  const read = await ports.decodePhoto(file);
  if (!read.decoded) return { ...known, outcome: 'unread', gates: [], viewSha256: null, findings: [askPerson('unread', photo)] };
  return { ...known, outcome: 'kept', gates: [], viewSha256: await keepView(file, read.photo, photo, store) };
}

async function measureToe(file: Uint8Array, photo: ClaimedPhoto, store: Store, ports: AnalysisPorts): Promise<AnalysisWords> {
  const isKnown = await cameBefore(store.database, photo);
  const context = {
    receivedAt: photo.receivedAt.toISOString(),
    // Taken before it, or minutes after by another clock.
    procedureAt: isOfTheDay(photo) ? null : (photo.episode.procedure?.at.toISOString() ?? null),
    knownSha256: new Set(isKnown ? [photo.sha256] : []),
  };
  const earlier = isOfTheDay(photo) ? [] : await earlierVisits(store.database, photo);
  const baselines = await cardBaselines(store.database, photo);
  const result = await analysePhoto(file, { geometry: OWN_CARD, print: printOf(photo), context, earlier, baselines, treatedSide: treatedSideOf(photo) }, ports);
  if (!result.analysed) {
    const gates = gatesOfRefusal(result.refusal.id);
    return { ...known, outcome: 'unread', gates, viewSha256: null, findings: gates.length > 0 ? [] : [askPerson('unread', photo)] };
  }
  const { analysis } = result;
  const viewSha256 = await keepView(file, analysis.photo, photo, store);
  const json = analysisToJson(analysis, photo.id);
  const gates = json.reasons.map(({ gate }) => gate);
  const serial = analysis.card?.serial ?? null;
  if (serial !== null && !(await isOwnCard(serial, photo, store))) {
    return { ...known, json, viewSha256, outcome: 'held', gates: ['wrongCard'], findings: [askPerson('held', photo)] };
  }
  const mapSha256 = await keepMap(analysis, photo, store);
  return { ...known, json, viewSha256, mapSha256, outcome: isMeasuredAnalysis(analysis) ? 'measured' : 'retake', gates };
}

function treatedSideOf({ episode: { procedure } }: ClaimedPhoto): ToldSide | null {
  return procedure && sideInPicture({ foot: procedure.foot as Procedure['foot'], treatedSides: JSON.parse(procedure.treatedSides) as Procedure['treatedSides'] });
}

/** Taken by staff on the day of the procedure, perhaps with a card of the clinic's own. */
const isOfTheDay = ({ kind }: ClaimedPhoto): boolean => kind === 'before' || kind === 'after';

/** A card that belongs to somebody else, or is none of those given to this person, shows somebody else's toe or an old print. */
async function isOwnCard(serial: string, photo: ClaimedPhoto, { database }: Store): Promise<boolean> {
  const { episodeId, episode } = photo;
  if (episode.cards.some((card) => card.serial === serial)) return true;
  return (episode.cards.length === 0 || isOfTheDay(photo)) && [null, episodeId].includes(await cardOwner(database, serial));
}

/** As somebody read it off the printed bar; unread, the scale is taken as uncertain. */
function printOf(photo: ClaimedPhoto): PrintScale {
  const unread = { scale: 1, relativeU: 0.03, confirmed: false };
  // On the day of the procedure it may be any card.
  const barReadsMm = isOfTheDay(photo) ? null : (photo.episode.cards[0]?.barReadsMm ?? null);
  const check = printCheck({ barReadsMm, bankCardFits: null });
  return 'problem' in check ? unread : check;
}

async function keepView(file: Uint8Array, picture: UprightPhoto, { episodeId }: ClaimedPhoto, { settings }: Store): Promise<string> {
  const jpeg = await encodeView(file, picture, VIEW);
  const sha256 = createHash('sha256').update(jpeg).digest('hex');
  await keepWhole(viewPath(settings.photoFolder, { episodeId, sha256 }), sha256, once(jpeg));
  return sha256;
}

/** What a person needs to draw its outlines anew, so that no page ever has to open a photo. */
async function keepMap(analysis: Analysis, { episodeId }: ClaimedPhoto, { settings }: Store): Promise<string | null> {
  const map = redrawMap(analysis);
  if (map === null) return null;
  const packed = await pressMap(packRedrawMap(map));
  const sha256 = createHash('sha256').update(packed).digest('hex');
  await keepWhole(mapPath(settings.photoFolder, { episodeId, sha256 }), sha256, once(packed));
  return sha256;
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

const givenUpWords = (photo: ClaimedPhoto): AnalysisWords => ({
  ...known,
  outcome: 'unread',
  gates: [],
  viewSha256: null,
  findings: [askPerson('givenUp', photo)],
});

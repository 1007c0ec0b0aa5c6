/** `npm run -s measure -- PHOTO…`: from photo to millimetres. */
import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { OWN_CARD } from '../card/own-card';
import { parseGeometry } from '../card/parse-geometry';
import { printCheck } from '../card/print-check';
import { parseClinicCard } from '../colour/parse-clinic-card';
import { analysisPorts } from '../edges/analysis-ports';
import { type FileToWrite, NotWritten, writeTogether } from '../edges/paper/write-together';
import { analysePhoto, type AnalysisRequest } from '../pipeline/analyse-photo';
import type { Analysis } from '../pipeline/analysis';
import { type AnalysisJson, analysisToJson } from '../pipeline/analysis-json';
import { compareSkin, type SkinDifference } from '../pipeline/compare-skin';
import { type EarlierVisit, earlierVisit, type SkinMap } from '../pipeline/earlier-visit';
import { skinMap } from '../pipeline/skin-map';
import { compareVisits, type VisitChange } from '../pipeline/compare-visits';
import type { AnalysisPorts } from '../pipeline/ports';
import { CAUTION } from './caution';
import { drawOverlay } from './draw-overlay';
import { MEASURE_USAGE, type MeasureArguments, readMeasureArguments } from './measure-arguments';
import { summaryText } from './summary-text';
import { tableText, type UnreadPhoto } from './table-text';

const EXIT = { measured: 0, unreadable: 2, notMeasured: 3 } as const;
const PHOTO_NAMES = /\.(jpe?g|png|webp|hei[cf])$/i;

/** A sentence for the person at the terminal; everything else that is thrown is a bug. */
class WrongUse extends Error {}

interface Outcome {
  readonly json: AnalysisJson | UnreadPhoto;
  readonly analysis: Analysis | null;
  /** Of an earlier visit, for comparing with. */
  readonly skin?: SkinMap | null;
  readonly differences?: readonly SkinDifference[];
}

async function main(words: readonly string[]): Promise<number> {
  const args = readMeasureArguments(words);
  if (args === 'help') {
    console.log(MEASURE_USAGE);
    return EXIT.measured;
  }
  if ('problem' in args) throw new WrongUse(`${args.problem} Try --help.`);
  const photos = (await Promise.all(args.photos.map(listPhotos))).flat();
  if (photos.length === 0) throw new WrongUse(`No photos are in ${args.photos.join(', ')}.`);
  if (args.overlay && photos.length > 1) throw new WrongUse('--overlay takes one photo at a time.');
  const request = await readRequest(args);
  const ports = await analysisPorts();
  const baseline = args.baseline ? await readBaseline(args.baseline, request, ports) : null;
  const known = new Set<string>();
  const measure = (photo: string, visits: readonly EarlierVisit[] = []) => measureOne(photo, { ...request, baseline, earlier: visits, context: { ...request.context, knownSha256: known } }, ports, known);

  const earlier = await eachInTurn(args.earlier, async (photo) => withSkin(await measure(photo)));
  const visits = earlier.flatMap(asVisit);
  const outcomes = await eachInTurn(photos, (photo) => measure(photo, visits));
  const changes = outcomes.map((outcome) => changesSince(outcome, earlier));
  const json = jsonText(outcomes, changes);
  await writeResults([...(args.overlay ? await overlayFile(args.overlay, outcomes[0].analysis) : []), ...(args.json && args.json !== '-' ? [{ path: args.json, content: `${json}\n` }] : [])]);
  if (args.json === '-') console.log(json);
  else report(outcomes, changes);
  return exitCode(outcomes);
}

async function listPhotos(name: string): Promise<string[]> {
  const found = await stat(name).catch(() => null);
  if (!found) throw new WrongUse(`There is no file or folder ${name}.`);
  if (!found.isDirectory()) return [name];
  const names = await readdir(name);
  return names.filter((one) => PHOTO_NAMES.test(one)).sort().map((one) => path.join(name, one));
}

async function readRequest(args: MeasureArguments): Promise<AnalysisRequest> {
  const read = args.geometry ? parseGeometry(await readText(args.geometry)) : { geometry: OWN_CARD };
  if ('problem' in read) throw new WrongUse(`${args.geometry}: ${read.problem}`);
  const print = printCheck({ barReadsMm: args.barMm, bankCardFits: null });
  if ('problem' in print) throw new WrongUse(print.problem);
  const knowledge = args.clinicCard ? parseClinicCard(await readText(args.clinicCard), read.geometry.patches) : undefined;
  if (knowledge && 'refused' in knowledge) {
    throw new WrongUse(`${args.clinicCard}${knowledge.line ? `, line ${knowledge.line}` : ''}: ${knowledge.refused}, received “${knowledge.received}”.`);
  }
  return { geometry: read.geometry, print, knowledge, context: { receivedAt: new Date().toISOString(), knownSha256: new Set() } };
}

async function readText(name: string): Promise<string> {
  return readFile(name, 'utf8').catch(() => {
    throw new WrongUse(`The file ${name} cannot be read.`);
  });
}

async function readBaseline(photo: string, request: AnalysisRequest, ports: AnalysisPorts) {
  const outcome = await measureOne(photo, request, ports, new Set());
  const colour = outcome.analysis?.colour;
  if (!colour) throw new WrongUse(`No card could be read on the baseline photo ${photo}.`);
  return colour;
}

async function measureOne(photo: string, request: AnalysisRequest, ports: AnalysisPorts, known: Set<string>): Promise<Outcome> {
  const bytes = await readFile(photo).catch(() => {
    throw new WrongUse(`The file ${photo} cannot be read.`);
  });
  const result = await analysePhoto(bytes, request, ports);
  if (!result.analysed) return { json: { photo: path.basename(photo), unread: result.refusal }, analysis: null };
  known.add(result.analysis.photo.sha256);
  const json = analysisToJson(result.analysis, path.basename(photo));
  return { json, analysis: result.analysis, differences: compareSkin(result.analysis, request.earlier ?? []) };
}

const withSkin = (outcome: Outcome): Outcome => ({ ...outcome, skin: outcome.analysis && skinMap(outcome.analysis) });

function asVisit({ json, skin }: Outcome): EarlierVisit[] {
  const visit = 'unread' in json ? null : earlierVisit(json);
  return visit ? [{ ...visit, photo: json.photo, skin }] : [];
}

/** One photo at a time: memory stays that of one. A progress line where a person is watching. */
async function eachInTurn(photos: readonly string[], measure: (photo: string) => Promise<Outcome>): Promise<Outcome[]> {
  const outcomes: Outcome[] = [];
  for (const photo of photos) {
    if (process.stderr.isTTY && photos.length > 1) process.stderr.write(`\r\x1b[K${outcomes.length + 1} of ${photos.length}  ${path.basename(photo)}`);
    const outcome = await measure(photo);
    // Of many photos only the numbers are kept: the pictures would fill the memory.
    outcomes.push(photos.length > 1 ? { ...outcome, analysis: null } : outcome);
  }
  if (process.stderr.isTTY && photos.length > 1) process.stderr.write('\r\x1b[K');
  return outcomes;
}

function changesSince(now: Outcome, earlier: readonly Outcome[]): VisitChange[] {
  const { json } = now;
  if ('unread' in json) return [];
  return earlier.flatMap((one) => ('unread' in one.json ? [] : compareVisits(json, one.json)));
}

async function overlayFile(path: string, analysis: Analysis | null): Promise<FileToWrite[]> {
  const png = analysis && (await drawOverlay(analysis));
  if (png) return [{ path, content: png }];
  process.stderr.write(`No overlay was drawn: without a card there are no millimetres to draw on.\n`);
  return [];
}

async function writeResults(files: readonly FileToWrite[]): Promise<void> {
  await writeTogether(files).catch((error: unknown) => {
    if (!(error instanceof NotWritten)) throw error;
    throw new WrongUse(`Cannot write ${error.path} (${error.why.code ?? error.why.message}): name a file in a folder that is there.`);
  });
}

function jsonText(outcomes: readonly Outcome[], changes: readonly VisitChange[][]): string {
  const full = outcomes.map(({ json, differences }, i) => ('unread' in json ? json : { ...json, changes: changes[i], differences }));
  return JSON.stringify(full.length === 1 ? full[0] : full, null, 1);
}

function report(outcomes: readonly Outcome[], changes: readonly VisitChange[][]): void {
  const [{ json, differences = [] }] = outcomes;
  if (outcomes.length > 1) console.log(tableText(outcomes.map((outcome) => outcome.json)));
  else if ('unread' in json) console.log(`${json.photo}: ${json.unread.sentence}`);
  else console.log(summaryText(json, changes[0], differences));
  console.log(CAUTION);
}

function exitCode(outcomes: readonly Outcome[]): number {
  if (outcomes.some(({ json }) => 'unread' in json)) return EXIT.unreadable;
  return outcomes.every(({ json }) => 'measured' in json && json.measured) ? EXIT.measured : EXIT.notMeasured;
}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    if (!(error instanceof WrongUse)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = EXIT.unreadable;
  },
);

import { OWN_CARD } from '../../../lib/card/own-card';
import { parseGeometry } from '../../../lib/card/parse-geometry';
import { printCheck } from '../../../lib/card/print-check';
import { analysisPorts } from '../../../lib/edges/analysis-ports';
import { analysePhoto } from '../../../lib/pipeline/analyse-photo';
import { analysisToJson, type AnalysisJson } from '../../../lib/pipeline/analysis-json';
import type { Analysis } from '../../../lib/pipeline/analysis';
import type { CardGeometry } from '../../../lib/card/card-geometry';
import type { BenchPhoto } from './bench-photos';
import { type PhotoScore, scorePhoto } from './score-photo';

export interface ScoredPhoto {
  readonly score: PhotoScore;
  readonly json: AnalysisJson;
}

/** The whole chain from the file, for every photo; `look` is shown each analysis while it is in memory. */
export async function runAccuracy(
  photos: AsyncIterable<BenchPhoto>,
  geometry: CardGeometry,
  look: (photo: BenchPhoto, analysis: Analysis) => Promise<void> = async () => {},
): Promise<ScoredPhoto[]> {
  const ports = await analysisPorts();
  const known = new Set<string>();
  const scored: ScoredPhoto[] = [];
  for await (const photo of photos) {
    const print = printCheck({ barReadsMm: photo.truth.barReadsMm, bankCardFits: null });
    if ('problem' in print) throw new Error(`${photo.name}: ${print.problem}`);
    const context = { receivedAt: new Date().toISOString(), knownSha256: known };
    const result = await analysePhoto(photo.file, { geometry, print, context }, ports);
    if (!result.analysed) throw new Error(`${photo.name} was not decoded: ${result.refusal.id}`);
    known.add(result.analysis.photo.sha256);
    const json = analysisToJson(result.analysis, photo.name);
    scored.push({ score: scorePhoto(photo.truth, json), json });
    await look(photo, result.analysis);
  }
  return scored;
}

/** The project's card, or the one in a geometry file. */
export function geometryFrom(text: string | null): CardGeometry {
  if (text === null) return OWN_CARD;
  const read = parseGeometry(text);
  if ('problem' in read) throw new Error(read.problem);
  return read.geometry;
}

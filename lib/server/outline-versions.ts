import type { EpisodeRows } from '../edges/db/read-episode-rows';
import type { AnalysisJson, OutlinesJson } from '../pipeline/analysis-json';
import { linePlaces } from '../report/line-places';
import { numberWords } from '../report/number-words';
import { penLines } from '../report/pen-lines';
import type { DrawnOutline } from '../segment/edge-cost';
import type { KeptOutlines } from './measure-again';
import type { EpisodeClock } from './episode-clock';
import { seenOutlines } from './seen-outlines';
import type { FlatLines, ShownVersion } from './shown-episode';

type PhotoRows = EpisodeRows['photos'][number];

const OUTLINE_WORDS: Readonly<Record<DrawnOutline, string>> = { erythema: 'redness', nailFoldMargin: 'nail-fold margin', raw: 'raw area' };

interface Words {
  readonly clock: EpisodeClock;
  readonly nameOf: (by: string) => string;
}

/** All outlines of a photo, newest first: what people drew, and under it what the program drew. */
export function outlineVersions({ outlines, analyses }: PhotoRows, json: AnalysisJson | null, words: Words): ShownVersion[] {
  const own = json && seenOutlines(json);
  const numbers = analyses.at(0)?.outcome === 'measured' && json ? numberWords(json.measurements) : [];
  const byProgram = { number: 0, words: 'Outlines and numbers: by the program', ...shownLines(own), flat: flatOf(json?.outlines ?? null), numbers, points: {} };
  return [...outlines.map((row) => drawnVersion(row, own, words)), byProgram];
}

function drawnVersion({ number, outlines, measurements, madeBy, madeAt, reason }: PhotoRows['outlines'][number], own: OutlinesJson | null, { clock, nameOf }: Words): ShownVersion {
  const { drawn, outlinesAsSeen, outlines: straight } = JSON.parse(outlines) as KeptOutlines;
  const names = Object.keys(drawn) as DrawnOutline[];
  const what = names.length > 0 ? `${names.map((name) => OUTLINE_WORDS[name]).join(' and ')} drawn by hand` : 'the program’s own outlines again';
  return {
    number,
    words: `Version ${number}, ${what}: ${nameOf(madeBy)}, ${clock.at(madeAt)}. Why: ${reason}`,
    ...shownLines(own && { ...own, ...outlinesAsSeen }),
    flat: flatOf(straight),
    numbers: numberWords(JSON.parse(measurements)),
    points: Object.fromEntries(names.map((name) => [name, drawn[name]?.points ?? []])),
  };
}

const flatOf = (lines: FlatLines | null): FlatLines => ({ erythema: lines?.erythema ?? null, nailFoldMargin: lines?.nailFoldMargin ?? null, raw: lines?.raw ?? null });

const shownLines = (seen: OutlinesJson | null): Pick<ShownVersion, 'lines' | 'places'> => ({ lines: penLines(seen), places: linePlaces(seen) });

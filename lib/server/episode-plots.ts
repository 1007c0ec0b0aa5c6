import { HOURS_PER_DAY } from '../care/instant';
import type { Course } from '../decide/course';
import { trendPlot } from '../report/trend-plot';
import { gapReasonWords, trendNumberWords, trendWords } from '../report/trend-words';
import { type DescribedSeries, describeSeries } from '../trend/describe-series';
import { buildSeries, type ReadPhoto } from '../trend/series';
import type { ShownPlot } from './shown-episode';

const PAIN_TOP = 10;

interface Place {
  /** Photos with outlines drawn by hand, and which version of them counts. */
  readonly versionOf: ReadonlyMap<string, number>;
  readonly lastDay: number;
  readonly events: readonly { readonly day: number; readonly letter: string }[];
}

interface Followed {
  readonly id: string;
  readonly title: string;
  /** As people write it. */
  readonly unit: string;
  readonly of: 'photo' | 'report';
  readonly series: DescribedSeries;
  readonly leastTop: number;
}

/** Both readings of reach: around the toe has the wider band, as seen is short of it where skin turns away. */
const MEASURED = [
  ['erythemaArea', 'Redness area', 'mm2', 'mm²'],
  ['reach', 'Reach, as seen', 'mm', 'mm'],
  ['unrolledReach', 'Reach, around the toe', 'mm', 'mm'],
  ['grooveWidth', 'Groove width', 'mm', 'mm'],
  ['rawArea', 'Raw area', 'mm2', 'mm²'],
] as const;

/** The plots of the page: what is followed on photos, and pain as it was said. */
export function episodePlots(course: Course, place: Place): ShownPlot[] {
  const photos = photosOf(course);
  const measured = MEASURED.map(([id, title, code, unit]): Followed => ({ id, title, unit, of: 'photo', series: describeSeries(buildSeries(photos, id, code)), leastTop: 0 }));
  const pain: Followed = { id: 'pain', title: 'Pain', unit: 'of 10', of: 'report', series: painOf(course), leastTop: PAIN_TOP };
  return [...measured, pain].map((one) => shownPlot(one, place));
}

function photosOf({ entries }: Course): ReadPhoto[] {
  return entries.flatMap(({ hours, photo }) => (photo === null ? [] : [{ ...photo, day: hours / HOURS_PER_DAY, photo: photo.name }]));
}

/** A check-in in which pain was not said is a gap; a photo by itself is no check-in. */
function painOf({ entries }: Course): DescribedSeries {
  const said = entries.filter(({ answers }) => Object.keys(answers).length > 0).map(({ hours, at, answers }) => ({ day: hours / HOURS_PER_DAY, photo: at, pain: answers.pain }));
  return describeSeries({
    unit: '/10',
    points: said.flatMap(({ day, photo, pain }) => (pain === undefined ? [] : [{ day, photo, value: pain, u: 0 }])),
    gaps: said.flatMap(({ day, photo, pain }) => (pain === undefined ? [{ day, photo, reason: 'notSaid' }] : [])),
  });
}

function shownPlot({ id, title, unit, of, series, leastTop }: Followed, { lastDay, events, versionOf }: Place): ShownPlot {
  const points = series.points.map(({ day, value, u, photo }) => ({ day, value, U: of === 'photo' ? 2 * u : null, note: noteOf(versionOf.get(photo)) }));
  const values = points.map(({ day, value, U, note }) => ({ day, value: `${trendNumberWords(value)} ${unit}`, U: U === null ? 'as said' : `± ${trendNumberWords(U)}`, note }));
  const gaps = series.gaps.map(({ day, reason }) => ({ day, value: 'none', U: '', note: gapReasonWords(reason) }));
  const rows = [...values, ...gaps].sort((a, b) => a.day - b.day).map((row) => ({ ...row, day: row.day.toFixed(1) }));
  const plot = trendPlot({ points, stretches: series.stretches, gapDays: series.gaps.map(({ day }) => day), lastDay, leastTop, events });
  const { said, more } = trendWords(series, { unit, of });
  return { id, title, unit, plot, sentences: said, more, rows };
}

const noteOf = (version: number | undefined): string => (version === undefined ? '' : `outlines: version ${version}, by hand`);

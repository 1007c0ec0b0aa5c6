import { HOURS_PER_DAY } from '../care/instant';
import type { Entry } from '../decide/course';
import type { Story } from '../edges/db/read-story';
import { answerWords } from '../report/answer-words';
import { gapReasonWords, trendNumberWords } from '../report/trend-words';
import { episodeClock, type EpisodeClock } from './episode-clock';
import { courseOf } from './episode-page';
import { type EpisodeReport, REPORT_MEASURED, type ReportPicture, type ReportVisit } from './shown-report';
import type { EpisodePage, ShownPhoto } from './shown-episode';

/** The report of a case, from its page: every visit in one table, and the pictures that show the course. */
export function episodeReport(story: Story, page: EpisodePage, moment: Date): EpisodeReport {
  const { episode } = story;
  const { entries } = courseOf(story, moment);
  const clock = episodeClock(episode.procedure?.at ?? episode.madeAt, episode.clinic.timeZone);
  return {
    page,
    methodVersions: [...new Set(episode.photos.flatMap(({ analyses }) => analyses.map(({ methodVersion }) => methodVersion)))],
    visits: visitsOf(entries, page.photos, clock),
    redrawn: page.photos.flatMap(({ id, date, versions }) =>
      [...versions].reverse().flatMap(({ number, words, numbers }) => (number === 0 ? [] : [{ key: `${id} ${number}`, photo: date, words, numbers: numbers.join('; ') }])),
    ),
    pictures: picturesOf(entries, page.photos),
  };
}

function visitsOf(entries: readonly Entry[], photos: readonly ShownPhoto[], clock: EpisodeClock): ReportVisit[] {
  const told = new Set(entries.map(({ photo }) => photo?.name));
  const alone = photos.filter(({ id }) => !told.has(id)).map(({ id, day, at, state }) => ({ key: id, day, at, photo: state, numbers: REPORT_MEASURED.map(() => ''), pain: '', signs: '' }));
  const visits = entries.map(({ hours, at, answers, photo }, place) => {
    const { pain, signs } = answerWords(answers);
    return {
      key: `${at} ${place}`,
      day: (hours / HOURS_PER_DAY).toFixed(1),
      at: clock.at(new Date(at)),
      photo: photoWords(photo),
      numbers: REPORT_MEASURED.map(([key]) => (photo?.usable ? numberOf(photo.measurements[key]) : '')),
      pain: pain === '' ? '' : `${pain} of 10`,
      signs,
    };
  });
  return [...visits, ...alone].sort((a, b) => Number(a.day) - Number(b.day));
}

function photoWords(photo: Entry['photo']): string {
  if (photo === null) return 'no photo';
  return photo.usable ? 'measured' : `not measured: ${photo.reasons.map(gapReasonWords).join(', ')}`;
}

function numberOf(found: NonNullable<Entry['photo']>['measurements']['reach']): string {
  if (found === undefined) return 'none';
  return 'notMeasured' in found ? `none: ${gapReasonWords(found.notMeasured)}` : `${trendNumberWords(found.value)} ± ${trendNumberWords(2 * found.u)}`;
}

/** The first, the one on which redness reached farthest, and the newest; one that is several of these is there once. */
function picturesOf(entries: readonly Entry[], photos: readonly ShownPhoto[]): ReportPicture[] {
  const shown = photos.filter(({ picture, cardFromView }) => picture !== null && cardFromView !== null);
  const reachOf = new Map(entries.flatMap(({ photo }) => (photo?.usable && photo.measurements.reach && 'value' in photo.measurements.reach ? [[photo.name, photo.measurements.reach.value]] : [])));
  const farthest = shown.filter(({ id }) => reachOf.has(id)).sort((a, b) => (reachOf.get(b.id) ?? 0) - (reachOf.get(a.id) ?? 0));
  const titles = new Map<ShownPhoto, string[]>();
  const chosen: [string, ShownPhoto | undefined][] = [['First', shown[0]], ['Redness reached farthest', farthest[0]], ['Newest', shown.at(-1)]];
  for (const [title, photo] of chosen) if (photo) titles.set(photo, [...(titles.get(photo) ?? []), title]);
  return shown.flatMap((photo) => (titles.has(photo) ? [{ title: (titles.get(photo) ?? []).join(', ').replace(/, (\w)/g, (_, letter: string) => `, ${letter.toLowerCase()}`), photo }] : []));
}

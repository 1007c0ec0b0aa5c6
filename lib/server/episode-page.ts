import { parseEpisode } from '../care/parse-episode';
import { scheduleDaysSince } from '../care/schedule-day';
import { type Course, prepareCourse } from '../decide/course';
import type { Story } from '../edges/db/read-story';
import { planWords, procedureWords } from '../report/procedure-words';
import { rawWords } from '../report/raw-words';
import { ruleWords } from '../report/rule-words';
import type { Trend } from '../trend/describe-trend';
import type { OpenFinding } from '../review/place-case';
import { assessRows, ruleBookOf } from './assess-rows';
import { beforeProcedure } from './before-procedure';
import { episodeClosing } from './episode-closing';
import { episodeClock } from './episode-clock';
import { episodeDays } from './episode-days';
import { actionWords, episodeEvents } from './episode-events';
import { episodeFindings } from './episode-findings';
import { episodeJson } from './episode-json';
import { episodePhotos } from './episode-photos';
import { episodePlots } from './episode-plots';
import type { EpisodePage } from './shown-episode';

export type { EpisodePage };

/** An episode on its own clock, as the rules read it. */
export function courseOf({ episode }: Story, at: Date): Course {
  const parsed = parseEpisode(episodeJson(episode, at.toISOString()));
  if ('problem' in parsed) throw new Error(`Episode ${episode.id} cannot be shown. ${parsed.problem}`);
  return prepareCourse(parsed.episode);
}

interface Looking {
  /** Open now, as the review list has it. */
  readonly open: readonly OpenFinding[];
  readonly mayClose: boolean;
  readonly photoFolder: string;
  readonly mayRedraw: boolean;
}

/** The page of one episode at one moment. Only the sizes of its pictures are read from the disk. */
export async function episodePage(story: Story, moment: Date, { photoFolder, mayRedraw, mayClose, open }: Looking): Promise<EpisodePage> {
  const { episode } = story;
  const course = courseOf(story, moment);
  const { procedure, plan, risks } = course.episode;
  const clock = episodeClock(new Date(procedure.at), episode.clinic.timeZone);
  const { findings, trend, ruleBookVersion } = assessRows(episode, moment);
  const nameOf = nameOfIn(story);
  const words = { book: ruleBookOf(episode), matricectomy: procedure.matricectomy, clock, nameOf };
  const events = episodeEvents(episode, plan, clock.dayOf);
  const photos = await episodePhotos(episode, { photoFolder, clock, nameOf, dayOf: daysOf(trend) });
  return {
    caseCode: episode.caseCode,
    clinic: episode.clinic.name,
    day: scheduleDaysSince(procedure.at, moment.toISOString(), episode.clinic.timeZone),
    madeAt: clock.at(moment),
    procedureAt: clock.at(new Date(procedure.at)),
    closedAt: episode.closedAt && clock.at(episode.closedAt),
    closing: episodeClosing(story, open, { clock, nameOf, mayClose }),
    facts: [...procedureWords(procedure), ...beforeProcedure(episode)],
    risks,
    plan: planWords(plan),
    ruleBookVersion,
    ...episodeFindings(story, findings, words),
    plots: episodePlots(course, { lastDay: clock.dayOf(moment), events, versionOf: versionsOf(story) }),
    mayRedraw,
    events: events.map(({ day, letter, words }) => ({ letter, words, when: `day ${day.toFixed(1)}` })),
    raw: rawWords(trend),
    photos,
    days: episodeDays(episode, photos, clock),
    messages: episode.messages.map(({ at, by, text }) => ({ at: clock.at(at), by: nameOf(by), text })),
    resolutions: episode.resolutions.map(({ at, by, rule, action, reason }) => ({ at: clock.at(at), by: nameOf(by), rule: ruleWords(rule, words.book, words.matricectomy).name, action: actionWords(action), reason })),
  };
}

/** Staff are written down by their id, alone or behind their role; rules and the case by their own name. */
const nameOfIn = ({ nameOf }: Story) => (by: string): string => nameOf.get(by) ?? nameOf.get(by.slice(by.indexOf(':') + 1)) ?? by;

/** Photos whose newest outlines a person drew, with the number of that version. */
const versionsOf = ({ episode }: Story): Map<string, number> => new Map(episode.photos.flatMap(({ id, outlines }) => (outlines.length > 0 ? [[id, outlines[0].number]] : [])));

/** Every photo of the course is a point or a gap of each series. */
function daysOf({ series }: Trend): Map<string, number> {
  return new Map([...series.reach.points, ...series.reach.gaps].map(({ photo, day }) => [photo, day]));
}

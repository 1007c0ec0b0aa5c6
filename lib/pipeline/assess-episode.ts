import { askEveryTime, type AskedEveryTime } from '../care/ask-every-time';
import type { Episode } from '../care/episode';
import { HOURS_PER_DAY } from '../care/instant';
import { type Course, prepareCourse } from '../decide/course';
import { evaluate } from '../decide/evaluate';
import type { Finding } from '../decide/finding';
import { DEFAULT_RULE_BOOK, type RuleBook } from '../decide/rule-book';
import { describeTrend, type Trend } from '../trend/describe-trend';
import type { ReadPhoto } from '../trend/series';

export interface Assessment {
  readonly id?: string;
  readonly ruleBookVersion: string;
  /** Every finding ever raised, oldest first; closed ones say by whom and why. */
  readonly findings: readonly Finding[];
  readonly trend: Trend;
  /** Questions that may not be left out for this person. */
  readonly askEveryTime: readonly AskedEveryTime[];
}

/**
 * The second half of the journey: from measured photos and answers to a trend and findings. A person decides.
 *
 * @param episode one toe, as parsed by `parseEpisode`
 * @param ruleBook the clinic's limits; the defaults where it has none of its own
 * @returns plain data; the same episode and book always give the same
 * @example assessEpisode(episode).findings.length // 0
 */
export function assessEpisode(episode: Episode, ruleBook: RuleBook = DEFAULT_RULE_BOOK): Assessment {
  const course = prepareCourse(episode);
  return {
    ...(episode.id === undefined ? {} : { id: episode.id }),
    ruleBookVersion: ruleBook.version,
    findings: evaluate(episode, ruleBook),
    trend: describeTrend(photosOf(course)),
    askEveryTime: askEveryTime(newestItaDeg(course), episode.risks),
  };
}

function photosOf({ entries }: Course): ReadPhoto[] {
  return entries.flatMap(({ hours, photo }) => {
    if (!photo) return [];
    const { name, usable, reasons, measurements } = photo;
    return [{ day: hours / HOURS_PER_DAY, photo: name, usable, reasons, measurements }];
  });
}

function newestItaDeg({ entries }: Course): number | null {
  return entries.findLast(({ photo }) => photo !== null && photo.usable && photo.itaDeg !== null)?.photo?.itaDeg ?? null;
}

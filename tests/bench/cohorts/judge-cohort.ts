import { hoursBetweenInstants } from '../../../lib/care/instant';
import { parseEpisode } from '../../../lib/care/parse-episode';
import { LIMITS } from '../../../lib/decide/constants';
import { evaluate } from '../../../lib/decide/evaluate';
import type { Finding, RuleId } from '../../../lib/decide/finding';
import { DEFAULT_RULE_BOOK, type RuleBook } from '../../../lib/decide/rule-book';
import type { Episode } from '../../../lib/care/episode';
import type { CourseKind } from './course-truth';
import { drawEpisode, type InventedEpisode } from './draw-episode';

/** A finding with its hour after the procedure. */
export interface TimedFinding extends Finding {
  readonly hours: number;
}

export interface JudgedEpisode {
  readonly invented: InventedEpisode;
  readonly findings: readonly TimedFinding[];
  /** Hours at which a photo was there that could be used, and at which redness had a reach. */
  readonly usableHours: readonly number[];
  readonly reachHours: readonly number[];
}

/** Invents and judges one episode. */
export function judgeEpisode(kind: CourseKind, place: number, seed: number, book = DEFAULT_RULE_BOOK): JudgedEpisode {
  const invented = drawEpisode(kind, place, seed);
  const parsed = parseEpisode(invented.json);
  if ('problem' in parsed) throw new Error(`The generator wrote an episode that is refused: ${parsed.problem}`);
  const start = parsed.episode.procedure.at;
  const findings = judgeWithLooks(parsed.episode, invented, book);
  const photos = parsed.episode.checkIns.flatMap(({ at, photo }) => (photo?.measured ? [{ hours: hoursBetweenInstants(start, at), photo }] : []));
  const hasReach = ({ photo }: (typeof photos)[number]) => photo.measurements.unrolledReach !== undefined && 'value' in photo.measurements.unrolledReach;
  return {
    invented,
    findings: findings.map((finding) => ({ ...finding, hours: hoursBetweenInstants(start, finding.at) })),
    usableHours: photos.map(({ hours }) => hours),
    reachHours: photos.filter(hasReach).map(({ hours }) => hours),
  };
}

/** A person looks at whatever is raised before the trouble begins, each time, and says so: else it would hide what comes after. */
function judgeWithLooks(episode: Episode, { truth }: InventedEpisode, book: RuleBook): Finding[] {
  const eventMs = truth.eventDay === null ? -Infinity : Date.parse(episode.procedure.at) + truth.eventDay * 86_400_000;
  const resolutions: Episode['resolutions'][number][] = [];
  for (;;) {
    const findings = evaluate({ ...episode, resolutions }, book);
    const isLookedAt = (at: string) => resolutions.some((one) => Date.parse(one.at) >= Date.parse(at));
    const early = findings.find(({ rule, at }) => rule === truth.kind && Date.parse(at) < eventMs && !isLookedAt(at));
    if (early === undefined) return findings;
    const looked = new Date(Math.min(eventMs, Date.parse(early.at) + 7_200_000)).toISOString();
    resolutions.push({ rule: early.rule, at: looked, by: 'clinic', reason: 'A person looked.' });
  }
}

export const RED_RULES: readonly RuleId[] = ['reach-moderate', 'reach-mild', 'spreading', 'spreading-proximal', 'antibiotic-no-better', 'relapse'];
/** True whenever they are raised: they state what did or did not arrive. */
export const ADMINISTRATIVE: readonly RuleId[] = ['silent', 'cannot-judge'];

/** Is this finding false in a clean course? Dryness and lateness are measured against the true day. */
export function isFalseInClean({ invented: { truth } }: JudgedEpisode, { rule, hours }: TimedFinding): boolean {
  if (ADMINISTRATIVE.includes(rule)) return false;
  if (rule === 'dry') return hours / 24 < truth.dryDay - 1;
  if (rule === 'late') return truth.dryDay < LIMITS[`slow.${truth.matricectomy}`].value - 2;
  return true;
}

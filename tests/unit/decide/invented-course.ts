/** Courses for tests, written in hours after the procedure. */
import type { Answers } from '../../../lib/care/answers';
import type { EpisodeJson } from '../../../lib/care/episode';
import { FOLLOWED_UNIT, type Followed } from '../../../lib/care/measurement-schema';
import { parseEpisode } from '../../../lib/care/parse-episode';
import { evaluate } from '../../../lib/decide/evaluate';
import type { Finding, RuleId } from '../../../lib/decide/finding';
import { DEFAULT_RULE_BOOK, type RuleBook } from '../../../lib/decide/rule-book';

const START_MS = Date.parse('2026-03-02T09:00:00Z');

/** ISO time of an hour of the course. */
export const at = (hours: number): string => new Date(START_MS + Math.round(hours * 3_600_000)).toISOString();

type PhotoJson = NonNullable<EpisodeJson['checkIns'][number]['photo']>;
export type Numbers = Partial<Record<Followed, number | readonly [value: number, u: number] | string>>;

/** A usable photo; a number alone has u = 0.4 mm or 6 %, a word is a reason. */
export function photo(numbers: Numbers, more: Partial<PhotoJson> = {}): PhotoJson {
  const measurements = Object.fromEntries(
    (Object.keys(numbers) as Followed[]).map((name) => {
      const given = numbers[name] ?? 'notGiven';
      if (typeof given === 'string') return [name, { notMeasured: given }];
      const unit = FOLLOWED_UNIT[name];
      const [value, u] = typeof given === 'number' ? [given, unit === 'mm' ? 0.4 : Math.abs(given) * 0.06] : given;
      return [name, { value, u, unit }];
    }),
  );
  return { measured: true, reasons: [], itaDeg: 35, contrastToNoise: 8, measurements, ...more };
}

/** A photo that failed a gate. */
export const refused = (gate = 'blur'): PhotoJson => ({ measured: false, reasons: [gate], measurements: {} });

export interface CheckInSketch {
  readonly hours: number;
  readonly answers?: Partial<Answers>;
  readonly photo?: PhotoJson;
}

export const checkIn = ({ hours, answers, photo: taken }: CheckInSketch): EpisodeJson['checkIns'][number] => ({ at: at(hours), answers: answers ?? {}, photo: taken });

type More = Partial<Omit<EpisodeJson, 'procedure' | 'now' | 'checkIns'>> & { readonly procedure?: Partial<EpisodeJson['procedure']>; readonly nowHours?: number };

/** An episode, judged right after its last check-in where no other moment is given. */
export function episodeJson(sketches: readonly CheckInSketch[], { procedure, nowHours, ...more }: More = {}): EpisodeJson {
  const last = Math.max(0, ...sketches.map(({ hours }) => hours));
  return { procedure: { at: at(0), matricectomy: 'none', edge: 'whole', ...procedure }, now: at(nowHours ?? last), checkIns: sketches.map(checkIn), ...more };
}

export function judgeJson(json: EpisodeJson, book: RuleBook = DEFAULT_RULE_BOOK): Finding[] {
  const parsed = parseEpisode(json);
  if ('problem' in parsed) throw new Error(parsed.problem);
  return evaluate(parsed.episode, book);
}

export const judge = (sketches: readonly CheckInSketch[], more: More = {}, book?: RuleBook): Finding[] => judgeJson(episodeJson(sketches, more), book);

/** Levels at which a rule was raised, in order. */
export const levelsOf = (rule: RuleId, findings: readonly Finding[]): string[] => findings.filter((one) => one.rule === rule).map(({ level }) => level);

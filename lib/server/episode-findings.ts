import type { Matricectomy } from '../care/procedure';
import type { Finding } from '../decide/finding';
import { levelRank } from '../decide/raise-level';
import type { RuleBook } from '../decide/rule-book';
import type { Story } from '../edges/db/read-story';
import { LEVEL_WORDS, ruleWords } from '../report/rule-words';
import type { EpisodeClock } from './episode-clock';
import type { ShownFinding } from './shown-episode';

interface Words {
  readonly book: RuleBook;
  readonly matricectomy: Matricectomy;
  readonly clock: EpisodeClock;
  readonly nameOf: (by: string) => string;
}

type Resolution = Story['episode']['resolutions'][number];

const keyOf = ({ rule, level, at }: Pick<Finding, 'rule' | 'level' | 'at'>): string => `${rule} ${level} ${at}`;

/**
 * What the rules say now, and what was found before and is kept: a finding that a newer assessment no longer makes
 * stays until a person closes it.
 */
export function episodeFindings(story: Story, said: readonly Finding[], words: Words): { open: ShownFinding[]; closed: ShownFinding[] } {
  const known = new Set(said.map(keyOf));
  const kept = story.findings.filter((row) => !known.has(keyOf(JSON.parse(row.json) as Finding))).map((row) => closedByPerson(row, story));
  const all = [...said.map((finding) => openWhileAsked(finding, story)), ...kept].sort((a, b) => levelRank(b.level) - levelRank(a.level) || Date.parse(b.at) - Date.parse(a.at));
  const shown = (open: boolean) => all.filter(({ closed }) => (closed === null) === open).map((one) => shownFinding(one, words));
  return { open: shown(true), closed: shown(false) };
}

/** A question to the clinician closes nothing: the next word does. */
const closes = ({ action }: Resolution): boolean => action !== 'askClinician';

/** To the rules a question is a word like any other, so that they speak again of what comes later; on the page it waits for its answer. */
function openWhileAsked(finding: Finding, { episode: { resolutions } }: Story): Finding {
  const { rule, closed } = finding;
  const closedMs = Date.parse(closed?.at ?? '');
  const onRule = resolutions.filter((one) => one.rule === rule && one.at.getTime() >= closedMs);
  if (!onRule.some((one) => one.at.getTime() === closedMs && !closes(one))) return finding;
  return closedBy(finding, onRule.find(closes));
}

/** A word on this finding, or a later one on its rule. */
function closedByPerson({ id, json, foundAt }: Story['findings'][number], { episode }: Story): Finding {
  const finding = JSON.parse(json) as Finding;
  return closedBy(finding, episode.resolutions.find((one) => closes(one) && (one.findingId === id || (one.rule === finding.rule && one.at >= foundAt))));
}

function closedBy(finding: Finding, word: Resolution | undefined): Finding {
  return word ? { ...finding, closed: { at: word.at.toISOString(), by: word.by, reason: word.reason } } : { ...finding, closed: null };
}

function shownFinding(finding: Finding, { book, matricectomy, clock, nameOf }: Words): ShownFinding {
  const { rule, level, at, sentence, raisedForRisk, ruleBookVersion, closed } = finding;
  return {
    key: keyOf(finding),
    // What stands on a file alone rests on no limit of the book.
    ...(ruleBookVersion === 'no rule' ? { name: ruleWords(rule, book, matricectomy).name, limits: [] } : ruleWords(rule, book, matricectomy)),
    level: LEVEL_WORDS[level],
    sentence,
    since: `${clock.at(new Date(at))}, day ${clock.dayOf(new Date(at)).toFixed(1)}`,
    raisedForRisk,
    ruleBookVersion,
    closed: closed && `${clock.at(new Date(closed.at))} by ${nameOf(closed.by)}: ${closed.reason}`,
  };
}

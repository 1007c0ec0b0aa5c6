import type { Finding } from '../decide/finding';
import type { Story } from '../edges/db/read-story';
import { LEVEL_WORDS } from '../report/rule-words';
import { orderFindings, type OpenFinding } from '../review/place-case';
import { aboutRule } from './about-rule';
import type { EpisodeClock } from './episode-clock';
import type { ShownClosing } from './shown-episode';

interface Words {
  readonly clock: EpisodeClock;
  readonly nameOf: (by: string) => string;
  readonly mayClose: boolean;
}

/** How a case was closed and opened again, and what somebody who closes it now has to say a word on. */
export function episodeClosing({ episode, findings, closings }: Story, open: readonly OpenFinding[], { clock, nameOf, mayClose }: Words): ShownClosing {
  const sentenceOf = new Map(findings.map(({ id, json }) => [id, (JSON.parse(json) as Finding).sentence]));
  const ordered = orderFindings(open);
  const rules = [...new Set(ordered.map(({ rule }) => rule))];
  return {
    episodeId: episode.id,
    mayClose,
    seen: open.map(({ id }) => id),
    open: rules.map((rule) => {
      const own = ordered.filter((one) => one.rule === rule);
      return { rule, name: aboutRule(rule), level: LEVEL_WORDS[own[0].level], sentences: own.flatMap(({ id }) => sentenceOf.get(id) ?? []) };
    }),
    record: closings.map(({ id, step, at, by, words, leftOpen }) => ({
      key: id,
      closed: step === 'closed',
      at: clock.at(at),
      by: nameOf(by),
      words,
      leftOpen: (JSON.parse(leftOpen) as { rule: string; note: string }[]).map(({ rule, note }) => `${aboutRule(rule)}: ${note}`),
    })),
  };
}

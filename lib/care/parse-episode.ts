import type { z } from 'zod';
import { MOST_CLOCK_ERROR_HOURS } from './constants';
import { type Episode, episodeSchema } from './episode';
import { hoursBetweenInstants } from './instant';

type ZodIssue = z.core.$ZodIssue;

export type ParsedEpisode = { readonly episode: Episode } | { readonly problem: string };

/**
 * Reads an episode from plain data; what is unknown, in a wrong unit or impossible is refused by name.
 *
 * @param data what `JSON.parse` gave
 * @returns the episode, or one sentence that says where it is wrong and what was expected
 * @example parseEpisode({ note: 1 }) // { problem: 'procedure: expected object, and this is missing. There is more to mend.' }
 */
export function parseEpisode(data: unknown): ParsedEpisode {
  const parsed = episodeSchema.safeParse(data);
  if (!parsed.success) {
    const [first, ...others] = parsed.error.issues;
    return { problem: `${issueSentence(first)}${others.length > 0 ? ' There is more to mend.' : ''}` };
  }
  const problem = wrongTime(parsed.data);
  return problem === null ? { episode: parsed.data } : { problem };
}

/** `checkIns[3].answers.feverC` */
const placeOf = (path: readonly PropertyKey[]): string =>
  path.map((part, at) => (typeof part === 'number' ? `[${part}]` : `${at > 0 ? '.' : ''}${String(part)}`)).join('') || 'the episode';

function issueSentence(issue: ZodIssue, within: readonly PropertyKey[] = []): string {
  const path = [...within, ...issue.path];
  if (issue.code === 'invalid_union') {
    // The branch with the fewest objections is the one that was meant.
    const [meant] = [...issue.errors].sort((a, b) => a.length - b.length);
    if (meant?.length) return issueSentence(meant[0], path);
  }
  if (issue.code === 'unrecognized_keys') return `${placeOf(path)}: unknown field ${issue.keys.map((key) => `“${key}”`).join(', ')}.`;
  const message = issue.message.replace(/^Invalid (input|option): /, '').replace(', received undefined', ', and this is missing');
  return `${placeOf(path)}: ${message}${/[.?]$/.test(message) ? '' : '.'}`;
}

/** Times that no order of events explains. A phone's clock may be hours off; days off is a wrong date. */
function wrongTime({ procedure, now, checkIns }: Episode): string | null {
  if (Date.parse(now) < Date.parse(procedure.at)) return `now: ${now} lies before the procedure, ${procedure.at}.`;
  for (const [place, { at }] of checkIns.entries()) {
    const [early, ahead] = [hoursBetweenInstants(at, procedure.at), hoursBetweenInstants(now, at)];
    if (early > MOST_CLOCK_ERROR_HOURS) return `checkIns[${place}].at: ${at} lies before the procedure, ${procedure.at}. Is the date right?`;
    if (ahead > MOST_CLOCK_ERROR_HOURS) return `checkIns[${place}].at: ${at} lies after now, ${now}. Is the date right?`;
  }
  return null;
}

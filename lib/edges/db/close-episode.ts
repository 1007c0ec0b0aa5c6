import type { EnteredClosing } from '../../review/check-closing';
import type { OpenFinding } from '../../review/place-case';
import { newId } from './new-id';
import { renewOpenCase } from './open-case';
import type { Queries } from './open-database';

export interface ClosingTimes {
  readonly at: Date;
  /** Until when the personal link still opens the page that says whom to call. */
  readonly linkEndsAt: Date;
}

/** Is a photo of this case still to be worked on? */
export async function hasWaitingPhoto(queries: Queries, episodeId: string): Promise<boolean> {
  return (await queries.job.findFirst({ where: { state: { in: ['waiting', 'running'] }, photo: { episodeId } }, select: { photoId: true } })) !== null;
}

/**
 * Closes a case: a word on every rule that is open, what was found, and an earlier end for the personal link. Call within
 * a transaction.
 */
export async function closeEpisode(queries: Queries, episodeId: string, open: readonly OpenFinding[], { found, answers }: EnteredClosing, by: string, { at, linkEndsAt }: ClosingTimes): Promise<void> {
  const known = await queries.finding.findMany({ where: { id: { in: open.map(({ id }) => id) } }, select: { id: true } });
  const isFinding = new Set(known.map(({ id }) => id));
  for (const { rule, step, note } of answers) {
    const findingId = open.findLast((finding) => finding.rule === rule && isFinding.has(finding.id))?.id ?? null;
    const outcome = rule === 'dry' ? (step === 'settled' ? 'confirmed' : 'dismissed') : null;
    await queries.resolution.create({ data: { id: newId(), episodeId, findingId, rule, action: step, reason: note, outcome, by, at } });
  }
  const leftOpen = answers.filter(({ step }) => step === 'leftOpen').map(({ rule, note }) => ({ rule, note }));
  await queries.closing.create({ data: { id: newId(), episodeId, step: 'closed', words: found, leftOpen: JSON.stringify(leftOpen), by, at } });
  await queries.episode.updateMany({ where: { id: episodeId, linkEndsAt: { gt: linkEndsAt } }, data: { linkEndsAt } });
  await queries.episode.updateMany({ where: { id: episodeId }, data: { closedAt: at, assessAt: at } });
  await renewOpenCase(queries, episodeId, at);
}

/** Opens a closed case again. A link that still opens goes on; one that has ended stays ended. Call within a transaction. */
export async function reopenEpisode(queries: Queries, episodeId: string, words: string, by: string, { at, linkEndsAt }: ClosingTimes): Promise<void> {
  await queries.closing.create({ data: { id: newId(), episodeId, step: 'reopened', words, leftOpen: '[]', by, at } });
  await queries.episode.updateMany({ where: { id: episodeId, linkEndsAt: { gt: at } }, data: { linkEndsAt } });
  await queries.episode.updateMany({ where: { id: episodeId }, data: { closedAt: null, assessAt: at } });
  await renewOpenCase(queries, episodeId, at);
}

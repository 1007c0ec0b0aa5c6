import type { Plan } from '../../care/plan';
import type { Procedure } from '../../care/procedure';
import type { Risk } from '../../care/risks';
import { newId } from './new-id';
import type { Queries } from './open-database';

export interface EpisodeWords {
  readonly clinicId: string;
  readonly caseCode: string;
  readonly timeZone: string;
  readonly language: string;
  readonly birthYear: number | null;
  readonly risks: readonly Risk[];
  readonly antibioticStartedAt?: Date | null;
  readonly procedure: Procedure;
  readonly plan: Partial<Plan>;
  /** Serials of the cards that were printed for this person. */
  readonly cards: readonly { readonly serial: string; readonly barReadsMm: number | null }[];
  readonly linkTokenHash: string;
  readonly linkEndsAt: Date;
}

/** Call within a transaction. @returns its id, which is the given one where there is one */
export async function startEpisode(queries: Queries, words: EpisodeWords, madeAt: Date, id: string = newId()): Promise<string> {
  const { procedure, plan, cards, risks, ...episode } = words;
  const { at, treatedSides = [], stripMm = null, edge = null, pusSeen = null, boneFelt = null, anaestheticAt, matricectomy, foot = null, ifItFails = null } = procedure;
  await queries.episode.create({ data: { id, ...episode, risks: JSON.stringify(risks), madeAt, assessAt: madeAt } });
  await queries.procedure.create({
    data: {
      episodeId: id,
      at: new Date(at),
      matricectomy,
      treatedSides: JSON.stringify(treatedSides),
      stripMm,
      edge,
      pusSeen,
      boneFelt,
      anaestheticAt: anaestheticAt ? new Date(anaestheticAt) : null,
      foot,
      ifItFails,
      recordedAt: madeAt,
    },
  });
  await queries.plan.create({ data: { id: newId(), episodeId: id, number: 1, json: JSON.stringify(plan), madeAt } });
  for (const card of cards) await queries.card.create({ data: { ...card, episodeId: id, madeAt } });
  return id;
}

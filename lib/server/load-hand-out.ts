import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { episodeCards } from '../edges/db/episode-cards';
import { noteAudit } from '../edges/db/note-audit';
import { readRuleRows } from '../edges/db/read-rule-rows';
import { findEpisodeByCase } from '../edges/db/read-story';
import { type Answer, refusedBy } from './answer';
import { measuredWords } from './before-procedure';
import { episodeClock } from './episode-clock';
import { store } from './store';

export interface HandOut {
  readonly episodeId: string;
  readonly caseCode: string;
  /** Until when the link opens, in words; null once it has ended. */
  readonly linkUntil: string | null;
  readonly cards: readonly HandedCard[];
  readonly photos: readonly { readonly kind: string; readonly at: string; readonly state: string }[];
}

export interface HandedCard {
  readonly serial: string;
  readonly madeAt: string;
  readonly barReadsMm: number | null;
  readonly retiredAt: string | null;
}

const STATE: Readonly<Record<string, string>> = { measured: 'measured', held: 'held: somebody else’s card is in the picture', retake: 'could not be measured', unread: 'could not be opened as a photo' };

const stateOf = (outcome: string | undefined): string => (outcome === undefined ? 'not measured yet' : (STATE[outcome] ?? outcome));

/** What a person of this case holds in their hands: link, cards, and the photos of the day. */
export async function loadHandOut(actor: Actor, caseCode: string): Promise<{ readonly handOut: HandOut } | { readonly refused: Answer }> {
  const { database } = await store();
  const episode = 'staffId' in actor ? await findEpisodeByCase(database, actor.clinicId, caseCode) : null;
  const may = guard(actor, 'episode.handOut', episode);
  if (!may.allowed || episode === null) return { refused: may.allowed ? { status: 404 } : refusedBy(may) };
  const at = now();
  const rows = await readRuleRows(database, may.episodeId);
  await noteAudit(database, { clinicId: rows.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: 'handOut.read', rule: may.rule, at });
  const clock = episodeClock(rows.procedure?.at ?? rows.madeAt, rows.clinic.timeZone);
  const cards = await episodeCards(database, may.episodeId);
  return {
    handOut: {
      episodeId: rows.id,
      caseCode: rows.caseCode,
      linkUntil: rows.linkEndsAt > at ? clock.at(rows.linkEndsAt) : null,
      cards: cards.map(({ serial, barReadsMm, madeAt, retiredAt }) => ({ serial, barReadsMm, madeAt: clock.at(madeAt), retiredAt: retiredAt && clock.at(retiredAt) })),
      photos: rows.photos
        .filter(({ kind }) => kind === 'before' || kind === 'after')
        .map((photo) => ({ kind: photo.kind, at: clock.at(photo.receivedAt), state: measuredWords(photo) ?? stateOf(photo.analyses.at(0)?.outcome) })),
    },
  };
}

import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { openFindings } from '../edges/db/open-findings';
import { findEpisodeByCase, readStory } from '../edges/db/read-story';
import { type Answer, refusedBy } from './answer';
import { type EpisodePage, episodePage } from './episode-page';
import { store } from './store';

/** Everything about one case, for the member of staff who opens it. That somebody looked is noted. */
export async function loadEpisode(actor: Actor, caseCode: string): Promise<{ readonly page: EpisodePage } | { readonly refused: Answer }> {
  const { database, settings } = await store();
  const episode = 'staffId' in actor ? await findEpisodeByCase(database, actor.clinicId, caseCode) : null;
  const may = guard(actor, 'episode.read', episode);
  if (!may.allowed) return { refused: refusedBy(may) };
  const story = await readStory(database, may.episodeId);
  await noteAudit(database, { clinicId: story.episode.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: 'episode.read', rule: may.rule, at: now() });
  const moment = now();
  const allowed = { mayRedraw: guard(actor, 'outline.redraw', episode).allowed, mayClose: guard(actor, 'episode.close', episode).allowed };
  const open = await openFindings(database, may.episodeId, moment);
  return { page: await episodePage(story, moment, { photoFolder: settings.photoFolder, open, ...allowed }) };
}

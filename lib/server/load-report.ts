import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { openFindings } from '../edges/db/open-findings';
import { findEpisodeByCase, readStory } from '../edges/db/read-story';
import { type Answer, refusedBy } from './answer';
import { episodePage } from './episode-page';
import { episodeReport } from './episode-report';
import type { EpisodeReport } from './shown-report';
import { store } from './store';

/** The report of one case, to read and to print. That somebody looked is noted. */
export async function loadReport(actor: Actor, caseCode: string): Promise<{ readonly report: EpisodeReport } | { readonly refused: Answer }> {
  const { database, settings } = await store();
  const episode = 'staffId' in actor ? await findEpisodeByCase(database, actor.clinicId, caseCode) : null;
  const may = guard(actor, 'episode.read', episode);
  if (!may.allowed) return { refused: refusedBy(may) };
  const moment = now();
  const story = await readStory(database, may.episodeId);
  await noteAudit(database, { clinicId: story.episode.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: 'episode.report', rule: may.rule, at: moment });
  const open = await openFindings(database, may.episodeId, moment);
  const page = await episodePage(story, moment, { photoFolder: settings.photoFolder, open, mayRedraw: false, mayClose: false });
  return { report: episodeReport(story, page, moment) };
}

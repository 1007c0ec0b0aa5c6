import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import type { Paper } from '../card/sheet-layout';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { openFindings } from '../edges/db/open-findings';
import { findEpisodeByCase, readStory } from '../edges/db/read-story';
import { printedWidths, sheetPdf } from '../edges/paper/sheet-pdf';
import { flowBoxes } from '../report/flow-boxes';
import { layPages } from '../report/lay-pages';
import { type Answer, refusedBy } from './answer';
import { episodePage } from './episode-page';
import { episodeReport } from './episode-report';
import { loadMethod } from './load-method';
import { methodBlocks } from './method-blocks';
import { pictureBox } from './picture-box';
import { reportBlocks } from './report-blocks';
import { store } from './store';

/** The report as one PDF, in the clinic's paper. That somebody took it is noted. */
export async function loadReportPdf(actor: Actor, caseCode: string): Promise<Answer> {
  const { database, settings } = await store();
  const episode = 'staffId' in actor ? await findEpisodeByCase(database, actor.clinicId, caseCode) : null;
  const may = guard(actor, 'episode.read', episode);
  if (!may.allowed) return refusedBy(may);
  const moment = now();
  const story = await readStory(database, may.episodeId);
  await noteAudit(database, { clinicId: story.episode.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: 'episode.report.pdf', rule: may.rule, at: moment });
  const { photoFolder } = settings;
  const page = await episodePage(story, moment, { photoFolder, open: await openFindings(database, may.episodeId, moment), mayRedraw: false, mayClose: false });
  const report = episodeReport(story, page, moment);
  const widthOf = await printedWidths();
  const pictures = await Promise.all(report.pictures.map((one) => pictureBox(one, story.episode.photos, photoFolder, widthOf)));
  const told = await loadMethod(actor);
  const blocks = [...reportBlocks(report, pictures.filter((box) => box !== null)), ...('method' in told ? methodBlocks(told.method) : [])];
  const words = { title: `Report of case ${page.caseCode}`, foot: `Case ${page.caseCode}, ${page.clinic}, ${page.madeAt}. Not a diagnosis and not a medical device.` };
  const bytes = Uint8Array.from(await sheetPdf(...layPages(flowBoxes(blocks, widthOf), story.episode.clinic.paper as Paper, words)));
  const name = page.caseCode.replace(/[^\w-]/g, '_');
  return { status: 200, bytes, headers: { 'content-type': 'application/pdf', 'content-disposition': `attachment; filename="${name}-report.pdf"` } };
}

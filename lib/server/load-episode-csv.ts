import { type Actor, actorName } from '../access/actor';
import { guard } from '../access/guard';
import type { Measurement } from '../result';
import { HOURS_PER_DAY } from '../care/instant';
import { now } from '../edges/clock/now';
import { noteAudit } from '../edges/db/note-audit';
import { findEpisodeByCase, readStory } from '../edges/db/read-story';
import { answerWords } from '../report/answer-words';
import { type CsvCell, episodeCsv } from '../report/episode-csv';
import type { Entry } from '../decide/course';
import { type Answer, refusedBy } from './answer';
import { courseOf } from './episode-page';
import { store } from './store';

const MEASURED = ['reach', 'unrolledReach', 'proximalReach', 'erythemaArea', 'rawArea', 'grooveWidth'] as const;
const ANSWERED = ['pain', 'wetness', 'discharge', 'smell', 'temperature', 'signs'] as const;

const HEADER = [
  'daysSinceProcedure',
  'at',
  ...ANSWERED,
  'photo',
  'photoUsable',
  'photoRefusedFor',
  ...MEASURED.flatMap((name) => [name, `${name}_u`, `${name}_unit`, `${name}_notMeasured`]),
];

/** One line for each check-in of the course, with what was measured on its photo; `_u` is one standard uncertainty. */
export async function loadEpisodeCsv(actor: Actor, caseCode: string): Promise<Answer> {
  const { database } = await store();
  const episode = 'staffId' in actor ? await findEpisodeByCase(database, actor.clinicId, caseCode) : null;
  const may = guard(actor, 'episode.read', episode);
  if (!may.allowed) return refusedBy(may);
  const story = await readStory(database, may.episodeId);
  await noteAudit(database, { clinicId: story.episode.clinicId, episodeId: may.episodeId, actor: actorName(actor), action: 'episode.csv', rule: may.rule, at: now() });
  const name = story.episode.caseCode.replace(/[^\w-]/g, '_');
  const headers = { 'content-type': 'text/csv; charset=utf-8', 'content-disposition': `attachment; filename="${name}.csv"` };
  return { status: 200, bytes: new TextEncoder().encode(episodeCsv(HEADER, courseOf(story, now()).entries.map(rowOf))), headers };
}

function rowOf({ hours, at, answers, photo }: Entry): CsvCell[] {
  const said = answerWords(answers);
  return [
    Number((hours / HOURS_PER_DAY).toFixed(3)),
    at,
    ...ANSWERED.map((key) => said[key] || null),
    photo?.name ?? null,
    photo ? (photo.usable ? 'yes' : 'no') : null,
    photo && photo.reasons.length > 0 ? photo.reasons.join(' ') : null,
    ...MEASURED.flatMap((key) => measuredCells(photo?.measurements[key] as Measurement | undefined)),
  ];
}

function measuredCells(found: Measurement | undefined): CsvCell[] {
  if (found === undefined) return [null, null, null, null];
  return 'notMeasured' in found ? [null, null, null, found.notMeasured] : [found.value, found.u, found.unit, null];
}

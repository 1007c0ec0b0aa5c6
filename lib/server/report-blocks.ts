import type { FlowBlock } from '../report/flow-boxes';
import { plotBox } from '../report/plot-box';
import type { SheetBox } from '../report/sheet-box';
import type { ShownFinding } from './shown-episode';
import { type EpisodeReport, REPORT_CAUTIONS, REPORT_MEASURED, REPORT_METHOD } from './shown-report';

const heading = (words: string): FlowBlock => ({ kind: 'heading', words });
const text = (words: string): FlowBlock => ({ kind: 'text', words });
const small = (words: string): FlowBlock => ({ kind: 'small', words });
const listed = (words: string): FlowBlock => ({ kind: 'listed', words });
/** What there is, or one sentence that there is none. */
const orNone = (blocks: readonly FlowBlock[], none: string): readonly FlowBlock[] => (blocks.length > 0 ? blocks : [text(none)]);

const PLOT_STEP_MM = 85;
const PICTURE_STEP_MM = 56;
const VISIT_COLUMNS = [
  { title: 'Day', widthMm: 9 },
  { title: 'When', widthMm: 25 },
  { title: 'Photo', widthMm: 26 },
  ...REPORT_MEASURED.map(([, name, unit]) => ({ title: `${name}, ${unit}`, widthMm: 19 })),
  { title: 'Pain', widthMm: 12 },
  { title: 'Signs', widthMm: 22 },
];

/** The report in the order in which it is read; the same words as on its page. */
export function reportBlocks({ page, methodVersions, visits, redrawn }: EpisodeReport, pictures: readonly SheetBox[]): FlowBlock[] {
  const { caseCode, clinic, madeAt, day, closedAt, procedureAt, facts, risks, plan, plots, events, raw, resolutions, closing } = page;
  return [
    { kind: 'title', words: `Report of case ${caseCode}` },
    text(`${clinic}. Written on ${madeAt}, day ${day} since the procedure. ${closedAt === null ? 'The follow-up goes on.' : `The follow-up was closed on ${closedAt}.`}`),
    text(`Rule book ${page.ruleBookVersion}. ${methodVersions.length > 0 ? `Measured with method ${methodVersions.join(' and ')}.` : 'No photo has been measured yet.'}`),
    heading('Before you rely on this report'),
    ...REPORT_CAUTIONS.map(listed),
    heading('What was done'),
    text([`Procedure: ${procedureAt}`, ...facts.map(({ name, words }) => `${name}: ${words}`), `At risk: ${risks.length > 0 ? risks.join(', ') : 'nothing recorded'}`, `Plan: ${plan}`].join('. ')),
    heading('Sign-off'),
    ...orNone(
      closing.record.map(({ closed, at, by, words, leftOpen }) => listed(`${closed ? 'Closed' : 'Opened again'} on ${at} by ${by}. ${words} ${closed ? (leftOpen.length > 0 ? `Left open: ${leftOpen.join('; ')}` : 'Nothing was left open.') : ''}`)),
      'This follow-up has not been closed.',
    ),
    heading('Open findings'),
    ...orNone(page.open.flatMap(findingBlocks), 'None. Photos and answers raise findings; that none is open says no more than that.'),
    heading('Closed findings'),
    ...orNone(page.closed.flatMap(findingBlocks), 'None.'),
    heading('The course'),
    { kind: 'drawings', stepMm: PLOT_STEP_MM, boxes: plots.map(({ title, unit, plot }) => plotBox(`${title}, ${unit}`, plot)) },
    small('Across: days since the procedure. Bars: uncertainty, k = 2. Crosses under the line: photos or reports without a value; no line is drawn across them. There is no published norm for a toe after this procedure: each toe is its own control.'),
    ...plots.map(({ title, sentences }) => small(`${title}. ${sentences.join(' ')}`)),
    ...(events.length > 0 ? [small(`Letters: ${events.map(({ letter, words, when }) => `${letter} ${words}, ${when}`).join('; ')}.`)] : []),
    ...raw.map(small),
    heading('Pictures'),
    ...(pictures.length > 0 ? [{ kind: 'drawings', stepMm: PICTURE_STEP_MM, boxes: pictures } as const] : [text('There is no picture on which the card was found.')]),
    small('Full line: edge of the redness. Dashes: nail-fold margin. Dashes and dots: raw area.'),
    heading('Every visit'),
    small('Messages and photos, oldest first, each number ± its uncertainty (k = 2).'),
    { kind: 'table', columns: VISIT_COLUMNS, rows: visits.map((visit) => [visit.day, visit.at, visit.photo, ...visit.numbers, visit.pain, visit.signs]) },
    heading('Outlines drawn by people'),
    ...orNone(redrawn.map(({ photo, words, numbers }) => listed(`Photo of ${photo}. ${words} ${numbers}`)), 'None: all outlines are the program’s own.'),
    heading('Calls and decisions'),
    ...orNone(resolutions.map(({ at, by, rule, action, reason }) => listed(`${at}, ${by}: ${rule}, ${action}. ${reason}`)), 'None is on record.'),
    heading('How this was measured'),
    ...REPORT_METHOD.map(text),
  ];
}

function findingBlocks({ name, level, sentence, since, limits, ruleBookVersion, closed }: ShownFinding): FlowBlock[] {
  const rests = limits.length > 0 ? `It rests on: ${limits.join('; ')}; rule book ${ruleBookVersion}.` : 'It rests on the file itself, on no limit.';
  return [listed(`${name} (${level}). ${sentence}`), { kind: 'source', words: `Since ${since}. ${rests}${closed === null ? '' : ` Closed ${closed}`}` }];
}

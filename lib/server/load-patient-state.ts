import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { askEveryTime } from '../care/ask-every-time';
import { DEFAULT_DRESSING_STAYS_HOURS } from '../care/constants';
import { type PatientState, patientStateSchema } from '../care/patient-contract';
import { planSchema } from '../care/plan';
import { now } from '../edges/clock/now';
import { readRuleRows, type RuleRows } from '../edges/db/read-rule-rows';
import type { AnalysisJson } from '../pipeline/analysis-json';
import { type Answer, answer, refusedBy } from './answer';
import { ownEpisode } from './own-episode';
import { store } from './store';

/** A plan without a length of soak has the common one. Common practice. */
const SOAK_MINUTES = 10;

/** All that today's page shows. */
export async function loadPatientState(actor: Actor): Promise<Answer> {
  const may = guard(actor, 'state.read', ownEpisode(actor));
  if (!may.allowed) return refusedBy(may);
  return answer(await patientState(may.episodeId));
}

/** The same for other answers to the patient; whoever asks has been let in. */
export async function patientState(episodeId: string): Promise<PatientState> {
  const { database } = await store();
  return patientStateSchema.parse(stateOf(await readRuleRows(database, episodeId)));
}

function stateOf(rows: RuleRows): PatientState {
  const { name, phone, emergencyPhone, openingHours } = rows.clinic;
  return {
    clinic: { name, phone, emergencyPhone, openingHours },
    language: rows.language as PatientState['language'],
    timeZone: rows.timeZone,
    now: now().toISOString(),
    procedureAt: rows.procedure?.at.toISOString() ?? '',
    plan: planOf(rows),
    received: receivedOf(rows),
    messages: rows.messages.map(({ at, text }) => ({ at: at.toISOString(), text })),
    askEveryTime: askEveryTime(newestItaDeg(rows), JSON.parse(rows.risks)),
    closed: rows.closedAt !== null,
  };
}

function planOf({ plans }: RuleRows): PatientState['plan'] {
  const plan = planSchema.parse(plans.length > 0 ? JSON.parse(plans[0].json) : {});
  return {
    dressingStaysHours: plan.dressingStaysHours ?? DEFAULT_DRESSING_STAYS_HOURS,
    soaksPerDay: plan.soaksPerDay ?? 0,
    soakMinutes: plan.soakMinutes ?? SOAK_MINUTES,
    coverBetweenSoaks: plan.coverBetweenSoaks ?? true,
    checkInEveryHours: plan.checkInEveryHours,
    graceHours: plan.graceHours,
    notes: plan.notes ?? '',
  };
}

/** Newest first; a check-in that came twice with other words is one. */
function receivedOf({ checkIns }: RuleRows): PatientState['received'] {
  const byClientId = new Map(checkIns.map((row) => [row.clientId, row]));
  return [...byClientId.values()]
    .sort((a, b) => b.receivedAt.getTime() - a.receivedAt.getTime())
    .map(({ clientId, receivedAt, kind }) => ({ clientId, at: receivedAt.toISOString(), kind: kind as 'daily' | 'firstDay' }));
}

function newestItaDeg({ photos }: RuleRows): number | null {
  const measured = photos.findLast(({ analyses: [analysis] }) => analysis?.outcome === 'measured');
  const json = measured?.analyses[0].json;
  return json ? ((JSON.parse(json) as AnalysisJson).colour?.itaDeg ?? null) : null;
}

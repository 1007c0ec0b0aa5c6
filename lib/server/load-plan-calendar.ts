import type { Actor } from '../access/actor';
import { guard } from '../access/guard';
import { planCalendar } from '../report/plan-calendar';
import { CALENDAR_WORDS } from '../report/plan-calendar-words';
import { type Answer, refusedBy } from './answer';
import { ownEpisode } from './own-episode';
import { patientState } from './load-patient-state';

/** The days of the plan for the patient's own calendar; 204 where none is left to come. */
export async function loadPlanCalendar(actor: Actor): Promise<Answer> {
  const may = guard(actor, 'state.read', ownEpisode(actor));
  if (!may.allowed) return refusedBy(may);
  const state = await patientState(may.episodeId);
  if (state.closed) return { status: 204 };
  const text = planCalendar(state, CALENDAR_WORDS[state.language], (name) => `${name}.${may.episodeId}@foldwatch`);
  if (text === null) return { status: 204 };
  return { status: 200, bytes: new TextEncoder().encode(text), headers: { 'content-type': 'text/calendar; charset=utf-8', 'content-disposition': 'attachment; filename="toe-days.ics"' } };
}

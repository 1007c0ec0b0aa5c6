import { now } from '../edges/clock/now';
import { dueAssessment, keepDueAssessment } from '../edges/db/due-assessment';
import { errorFacts, logEvent } from '../edges/log/log-event';
import { assessRows } from './assess-rows';
import type { Store } from './store';

const HOUR_MS = 3_600_000;
/** Visits close, and people fall silent, without anything coming in. */
const ASK_AGAIN_MS = 2 * HOUR_MS;
/** A closed case changes only through a person, which makes it due at once. */
const ASK_AGAIN_CLOSED_MS = 30 * 24 * HOUR_MS;

/** Asks the rules about the episode that waits longest. @returns false where none is due */
export async function workOnAssessment({ database }: Store): Promise<boolean> {
  const moment = now();
  const rows = await dueAssessment(database, moment);
  if (rows === null) return false;
  const next = new Date(moment.getTime() + (rows.closedAt === null ? ASK_AGAIN_MS : ASK_AGAIN_CLOSED_MS));
  try {
    await keepDueAssessment(database, rows, assessRows(rows, moment), { now: moment, next });
  } catch (error) {
    // The others are not to wait behind it.
    logEvent('rulesFailed', { episodeId: rows.id, ...errorFacts(error) });
    await keepDueAssessment(database, rows, null, { now: moment, next });
  }
  return true;
}

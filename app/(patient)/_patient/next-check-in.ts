import type { PatientState } from '../../../lib/care/patient-contract';
import { MS_PER_HOUR } from '../../../lib/care/instant';

/** The moment on whose day the next check-in is due: so many hours after the newest one, or after the procedure. */
export function nextCheckInMs({ received, procedureAt, plan }: Pick<PatientState, 'received' | 'procedureAt' | 'plan'>): number {
  const newest = Math.max(...[procedureAt, ...received.map(({ at }) => at)].map((at) => Date.parse(at)));
  return newest + plan.checkInEveryHours * MS_PER_HOUR;
}

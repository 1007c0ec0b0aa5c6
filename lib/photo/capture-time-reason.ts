import { MAX_CAPTURE_AGE_DAYS, ZONE_SLACK_HOURS } from './constants';
import { gateReason, type GateReason } from './reasons';
import type { CaptureFacts } from './upright-photo';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

export interface CaptureTimeContext {
  /** The instant at which the file arrived, ISO 8601 with a zone; null where it is not known. */
  readonly receivedAt: string | null;
  /** The instant of the procedure, ISO 8601; absent or null where it is not known. */
  readonly procedureAt?: string | null;
}

/**
 * Whether the file's own date can be right: not in the future, not from before the procedure, not older than any course
 * of healing. The day of a photo is never derived from this date; it is only held against what is known.
 * @param capture the camera's wall clock and, where stated, its zone; without a zone it is read as UTC ± 26 h
 * @param context the instants to hold it against; throws RangeError where one is no instant
 * @returns null when it can be right or is absent; otherwise the gate with the photo's age at receipt in days and the
 * age that it would have had at the limit (negative: in the future)
 * @example captureTimeReason({ localTime: '2019-01-05T10:00:00', utcOffset: null }, { receivedAt: '2026-11-25T08:00:00Z' })?.limit // 400
 */
export function captureTimeReason(
  { localTime, utcOffset }: Pick<CaptureFacts, 'localTime' | 'utcOffset'>,
  { receivedAt, procedureAt = null }: CaptureTimeContext,
): GateReason | null {
  if (localTime === null) return null;
  const taken = instant('localTime', `${localTime}${utcOffset ?? 'Z'}`);
  const received = receivedAt === null ? null : instant('receivedAt', receivedAt);
  const procedure = procedureAt === null ? null : instant('procedureAt', procedureAt);
  const slack = ZONE_SLACK_HOURS * HOUR_MS;
  const fails = (limit: number): GateReason =>
    received === null
      ? gateReason('captureTime', null, null)
      : gateReason('captureTime', (received - taken) / DAY_MS, (received - limit) / DAY_MS);
  if (received !== null && taken > received + slack) return fails(received + slack);
  if (procedure !== null && taken < procedure - slack) return fails(procedure - slack);
  const oldest = received === null ? -Infinity : received - MAX_CAPTURE_AGE_DAYS * DAY_MS;
  return taken < oldest ? fails(oldest) : null;
}

function instant(name: string, text: string): number {
  const milliseconds = Date.parse(text);
  if (Number.isNaN(milliseconds)) throw new RangeError(`${name}: an ISO 8601 instant is needed, received ${text}`);
  return milliseconds;
}

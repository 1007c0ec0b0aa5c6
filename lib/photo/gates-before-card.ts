/** The gates that need no card: they are asked first, because they are cheap and because no card can mend them. */
import { captureTimeReason, type CaptureTimeContext } from './capture-time-reason';
import { MAX_PLAIN_SHARE } from './constants';
import { plainShare } from './plain-share';
import { gateReason, type GateReason } from './reasons';
import type { UprightPhoto } from './upright-photo';
import { wholeOf } from './whole-of';

export interface BeforeCardContext extends CaptureTimeContext {
  /** SHA-256 of the files received earlier for the same person, lower-case hexadecimal. */
  readonly knownSha256: ReadonlySet<string>;
}

/**
 * Why this photo cannot be used, before any card is looked for.
 * @param photo the upright photo at full resolution
 * @param context when it came, when the procedure was, and which files came earlier
 * @throws NotDecoded where the part that was decoded cannot tell whether it is a photograph
 * @returns every failed gate of notAPhotograph, captureTime and duplicate, in that order; empty when none failed
 * @example gatesBeforeCard(photo, { receivedAt: null, knownSha256: new Set([photo.sha256]) }).at(-1)?.gate // 'duplicate'
 */
export function gatesBeforeCard(photo: UprightPhoto, context: BeforeCardContext): GateReason[] {
  const plain = plainShare(photo);
  // Of a part only the most it can be is known: nothing is refused for that.
  if (plain > MAX_PLAIN_SHARE) wholeOf(photo);
  const captureTime = captureTimeReason(photo.capture, context);
  return [
    ...(plain > MAX_PLAIN_SHARE ? [gateReason('notAPhotograph', plain, MAX_PLAIN_SHARE)] : []),
    ...(captureTime ? [captureTime] : []),
    ...(context.knownSha256.has(photo.sha256) ? [gateReason('duplicate', null, null)] : []),
  ];
}

/**
 * The closed list of reasons why a photo, or one number from it, is not measured, each with one plain sentence for
 * the person who took the photo. Nothing else may refuse.
 */
import type { NotMeasuredReason } from '../result';

export type GateId =
  | 'cardNotFound'
  | 'tooFewFiducials'
  | 'wrongCard'
  | 'mirrored'
  | 'tilt'
  | 'resolution'
  | 'blur'
  | 'clipped'
  | 'tooDark'
  | 'unevenLight'
  | 'glare'
  | 'toeNotInNotch'
  | 'notAPhotograph'
  | 'captureTime'
  | 'duplicate';

/** One failed gate: what was measured, the limit, and what to do differently. */
export interface GateReason {
  readonly gate: GateId;
  /** In the gate's own unit; null where the gate has no number (no card at all). */
  readonly measured: number | null;
  readonly limit: number | null;
  readonly advice: string;
}

export const GATE_ADVICE: Readonly<Record<GateId, string>> = {
  cardNotFound: 'The card cannot be seen. Lay it flat around the toe, printed side up, and take the photo again.',
  tooFewFiducials: 'Part of the card is covered. Keep fingers, cloth and shadow off its black squares and try again.',
  wrongCard: 'This is not the card that belongs to this toe. Use the card from your own sheet.',
  mirrored: 'The picture is mirrored. Use the camera on the back of the phone, not the selfie camera.',
  tilt: 'The phone leans too far over. Hold it level, straight above the nail.',
  resolution: 'The toe is too small in the picture. Move closer, about a hand’s length (25 cm) away.',
  blur: 'The picture is not sharp. Hold the phone still, tap the nail on the screen, and wait until it is sharp.',
  clipped: 'The picture is too bright. Move away from the lamp or the sun, and switch the flash off.',
  tooDark: 'The picture is too dark. Go to a window or switch more light on.',
  unevenLight: 'A shadow falls across the card. Turn so that the light falls evenly on toe and card.',
  glare: 'The nail shines. Turn a little away from the lamp, and pat the toe dry.',
  toeNotInNotch: 'The toe is not in the gap of the card. Push the card around the toe so that the gap holds it.',
  notAPhotograph: 'This does not look like a photo taken with a camera. Please take a new photo of the toe.',
  captureTime: 'The date of this photo cannot be right. Please take a new photo now; check the phone’s clock.',
  duplicate: 'This photo was sent before. Please take a new one.',
};

export const NOT_MEASURED_SENTENCE: Readonly<Record<NotMeasuredReason, string>> = {
  gateFailed: 'The photo could not be measured; its reasons stand beside it.',
  noRegionFound: 'No region stood out from the reference skin. That does not show that there is none.',
  contrastTooLow: 'Redness cannot be judged from this photo at this skin tone and light. A person has to look.',
  evidenceTooWeak: 'Something was found, but the picture does not support it well enough. A person has to look.',
  foldHidden: 'The fold cannot be seen well enough from where the phone was held.',
  plateNotFound: 'The nail plate was not found with enough certainty.',
  marginNotFound: 'The nail-fold margin was not found with enough certainty.',
  toeNotFound: 'The toe was not found with enough certainty.',
  outOfView: 'The region reaches past the part of the toe that the photo shows.',
  toeShapeUnknown: 'How the side of the toe bends cannot be told well enough from this photo.',
};

/**
 * A reason with the sentence that belongs to it.
 * @param gate one of the closed list
 * @param measuredValue what was measured, in the gate's own unit; null where the gate has no number
 * @param limit the limit in the same unit
 * @returns the failed gate as data; nothing is thrown
 * @example gateReason('tilt', 41, 35).limit // 35
 */
export function gateReason(gate: GateId, measuredValue: number | null, limit: number | null): GateReason {
  return { gate, measured: measuredValue, limit, advice: GATE_ADVICE[gate] };
}

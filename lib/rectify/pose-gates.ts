import { type GateReason, gateReason } from '../photo/reasons';
import { BLUR_LIMIT_MM, RESOLUTION_LIMIT_PX_PER_MM, TILT_LIMIT_DEG } from './constants';

/**
 * The gates of how the photo was taken: phone too far over, toe too small, picture not sharp.
 *
 * @param tiltDeg angle between the card's normal and the camera's axis
 * @param pxPerMm what the photo resolves at the nail
 * @param edgeSpreadMm 10–90 % distance of the fiducials' edges; null = no edge was clear enough, which is blur
 * @example poseGates(12, 9, 0.2) // []
 */
export function poseGates(tiltDeg: number, pxPerMm: number, edgeSpreadMm: number | null): GateReason[] {
  const failed: GateReason[] = [];
  if (tiltDeg > TILT_LIMIT_DEG) failed.push(gateReason('tilt', tiltDeg, TILT_LIMIT_DEG));
  if (pxPerMm < RESOLUTION_LIMIT_PX_PER_MM) failed.push(gateReason('resolution', pxPerMm, RESOLUTION_LIMIT_PX_PER_MM));
  // Too few pixels look blurred as well; the advice that helps is to move closer.
  else if (edgeSpreadMm === null || edgeSpreadMm > BLUR_LIMIT_MM) failed.push(gateReason('blur', edgeSpreadMm, BLUR_LIMIT_MM));
  return failed;
}

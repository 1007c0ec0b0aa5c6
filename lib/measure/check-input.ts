import type { MeasureInput, ScaleFacts } from './measure-input';

const LARGEST_TILT_DEG = 90;
/** A unit vector that was stored with three decimals still passes. */
const UNIT_TOLERANCE = 1e-3;

function must(holds: boolean, name: string, rule: string, received: unknown): void {
  if (!holds) throw new RangeError(`measureToe: ${name} must be ${rule}, received ${String(received)}`);
}

const notNegative = (value: number): boolean => Number.isFinite(value) && value >= 0;

function checkScale(scale: ScaleFacts): void {
  for (const name of ['printRelativeU', 'distanceRelativeU', 'homographyResidualMm'] as const) {
    must(notNegative(scale[name]), `scale.${name}`, 'finite and ≥ 0', scale[name]);
  }
  must(notNegative(scale.tiltDeg) && scale.tiltDeg < LARGEST_TILT_DEG, 'scale.tiltDeg', '0…90', scale.tiltDeg);
  must(scale.pxPerMm > 0, 'scale.pxPerMm', '> 0', scale.pxPerMm);
  must(scale.distanceMm === null || scale.distanceMm > 0, 'scale.distanceMm', 'null or > 0', scale.distanceMm);
}

/**
 * Stops a call whose numbers cannot be what their names say; such a call is a bug and not a refusal.
 *
 * @param input of the whole stage
 * @throws RangeError naming the field, the rule and what was received
 * @example checkInput({ ...input, toeAxis: { across: 1, down: 1 } }) // throws: toeAxis must be a unit vector, received length 1.41…
 */
export function checkInput({ scale, toeAxis, redness, outlines }: MeasureInput): void {
  checkScale(scale);
  if (toeAxis !== null) {
    const length = Math.hypot(toeAxis.across, toeAxis.down);
    must(Math.abs(length - 1) <= UNIT_TOLERANCE, 'toeAxis', 'a unit vector', `length ${length}`);
  }
  if (redness !== null) {
    const pixels = redness.grid.widthPx * redness.grid.heightPx;
    must(redness.excessEi.length === pixels, 'redness.excessEi', `${pixels} long`, redness.excessEi.length);
    const deltaALength = redness.deltaA?.length ?? pixels;
    must(deltaALength === pixels, 'redness.deltaA', `${pixels} long`, deltaALength);
  }
  const { erythema, raw, macerated, nailFoldMargin, cutEdge } = outlines;
  for (const [name, part] of Object.entries({ erythema, raw, macerated, nailFoldMargin, cutEdge })) {
    must(part === null || notNegative(part.boundaryUMm), `${name}.boundaryUMm`, 'finite and ≥ 0', part?.boundaryUMm);
  }
}

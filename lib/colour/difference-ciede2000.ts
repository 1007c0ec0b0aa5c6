import { deltaE } from '../units';
import type { DeltaE } from '../units';
import type { Lab65 } from './encodings';

const RADIANS = Math.PI / 180;
const TO_THE_7TH_OF_25 = 25 ** 7;

/** Hue angle 0…360 degrees; a grey has none and is given 0 (Sharma 2005, eq. 7). */
function hueDeg(aPrime: number, b: number): number {
  if (aPrime === 0 && b === 0) return 0;
  const angle = Math.atan2(b, aPrime) / RADIANS;
  return angle < 0 ? angle + 360 : angle;
}

/** Signed hue step in degrees, the short way round (eq. 10). */
function hueStepDeg(first: number, second: number): number {
  const step = second - first;
  if (Math.abs(step) <= 180) return step;
  return step > 180 ? step - 360 : step + 360;
}

/** Mean hue in degrees (eq. 14); the sum stands where one of the two is a grey. */
function meanHueDeg(first: number, second: number, bothHaveHue: boolean): number {
  const sum = first + second;
  if (!bothHaveHue) return sum;
  if (Math.abs(first - second) <= 180) return sum / 2;
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}

/** Weight of hue differences at this mean hue (eq. 15). */
function hueWeight(hue: number): number {
  const cosDeg = (angle: number): number => Math.cos(angle * RADIANS);
  return 1 - 0.17 * cosDeg(hue - 30) + 0.24 * cosDeg(2 * hue) + 0.32 * cosDeg(3 * hue + 6) - 0.2 * cosDeg(4 * hue - 63);
}

/** How far chroma saturates, 0…1 (inside eq. 4 and eq. 17). */
const saturation = (chroma: number): number => Math.sqrt(chroma ** 7 / (chroma ** 7 + TO_THE_7TH_OF_25));

/**
 * Colour difference ΔE00 (CIEDE2000) with kL = kC = kH = 1.
 * @param first L*a*b*, D65
 * @param second L*a*b*, D65
 * @returns ΔE00 ≥ 0, the same in both orders
 * The formula jumps by a few hundredths where two hues lie exactly opposite; that is in the standard.
 * Source: Sharma, Wu and Dalal, Color Res Appl 2005;30:21-30, eq. 2–22.
 * @example differenceCiede2000({ l65: 0, a65: 0, b65: 0 }, { l65: 100, a65: 0, b65: 0 }) // 100
 */
export function differenceCiede2000(first: Lab65, second: Lab65): DeltaE {
  const meanChroma = (Math.hypot(first.a65, first.b65) + Math.hypot(second.a65, second.b65)) / 2;
  const stretch = 1.5 - 0.5 * saturation(meanChroma);
  const firstChroma = Math.hypot(first.a65 * stretch, first.b65);
  const secondChroma = Math.hypot(second.a65 * stretch, second.b65);
  const firstHue = hueDeg(first.a65 * stretch, first.b65);
  const secondHue = hueDeg(second.a65 * stretch, second.b65);
  const bothHaveHue = firstChroma * secondChroma !== 0;

  const lightnessStep = second.l65 - first.l65;
  const chromaStep = secondChroma - firstChroma;
  const hueHalf = bothHaveHue ? (hueStepDeg(firstHue, secondHue) / 2) * RADIANS : 0;
  const hueStep = 2 * Math.sqrt(firstChroma * secondChroma) * Math.sin(hueHalf);

  const lightnessFromMid = ((first.l65 + second.l65) / 2 - 50) ** 2;
  const chroma = (firstChroma + secondChroma) / 2;
  const hue = meanHueDeg(firstHue, secondHue, bothHaveHue);
  const lightnessScale = 1 + (0.015 * lightnessFromMid) / Math.sqrt(20 + lightnessFromMid);
  const chromaScale = 1 + 0.045 * chroma;
  const hueScale = 1 + 0.015 * chroma * hueWeight(hue);
  const turnDeg = 30 * Math.exp(-(((hue - 275) / 25) ** 2));
  const rotation = -Math.sin(2 * turnDeg * RADIANS) * 2 * saturation(chroma);

  const l = lightnessStep / lightnessScale;
  const c = chromaStep / chromaScale;
  const h = hueStep / hueScale;
  return deltaE(Math.sqrt(Math.max(0, l * l + c * c + h * h + rotation * c * h)));
}

import { converter, differenceCiede2000 as culoriDifference } from 'culori';
import { describe, expect, it } from 'vitest';
import { convertLab50ToXyz50 } from '../../../lib/colour/convert-lab50-to-xyz50';
import { convertLab65ToLinear } from '../../../lib/colour/convert-lab65-to-linear';
import { convertLinearToLab65 } from '../../../lib/colour/convert-linear-to-lab65';
import { convertLinearToSrgb } from '../../../lib/colour/convert-linear-to-srgb';
import { convertLinearToXyz65 } from '../../../lib/colour/convert-linear-to-xyz65';
import { convertSrgbToLinear } from '../../../lib/colour/convert-srgb-to-linear';
import { convertXyz50ToXyz65 } from '../../../lib/colour/convert-xyz50-to-xyz65';
import { convertXyz65ToLinear } from '../../../lib/colour/convert-xyz65-to-linear';
import { differenceCiede2000 } from '../../../lib/colour/difference-ciede2000';
import { seededRandom } from '../../seeded-random';

// culori prints its matrices to about 16 digits, rounded separately in each direction: 1e-9 holds with room to spare.
const TOLERANCE = 1e-9;

const random = seededRandom(20260301);
const colours = Array.from({ length: 500 }, () => ({ r: random(), g: random(), b: random() }));
const codesOf = ({ r, g, b }: { r: number; g: number; b: number }) => ({
  redCode: r * 255,
  greenCode: g * 255,
  blueCode: b * 255,
});

describe('500 random colours against culori', () => {
  const toLinear = converter('lrgb');
  const toXyz65 = converter('xyz65');
  const toLab50 = converter('lab');
  const toLab65 = converter('lab65');

  it('agree on the way from sRGB through linear light and XYZ to L*a*b* D65', () => {
    for (const colour of colours) {
      const rgb = { mode: 'rgb' as const, ...colour };
      const linear = convertSrgbToLinear(codesOf(colour));
      const theirs = { linear: toLinear(rgb), xyz: toXyz65(rgb), lab: toLab65(rgb) };
      const xyz = convertLinearToXyz65(linear);
      const lab = convertLinearToLab65(linear);
      expect(Math.abs(linear.red - theirs.linear.r)).toBeLessThan(TOLERANCE);
      expect(Math.abs(linear.green - theirs.linear.g)).toBeLessThan(TOLERANCE);
      expect(Math.abs(linear.blue - theirs.linear.b)).toBeLessThan(TOLERANCE);
      expect(Math.abs(xyz.x65 - theirs.xyz.x)).toBeLessThan(TOLERANCE);
      expect(Math.abs(xyz.y65 - theirs.xyz.y)).toBeLessThan(TOLERANCE);
      expect(Math.abs(xyz.z65 - theirs.xyz.z)).toBeLessThan(TOLERANCE);
      expect(Math.abs(lab.l65 - theirs.lab.l)).toBeLessThan(TOLERANCE);
      expect(Math.abs(lab.a65 - (theirs.lab.a ?? 0))).toBeLessThan(TOLERANCE);
      expect(Math.abs(lab.b65 - (theirs.lab.b ?? 0))).toBeLessThan(TOLERANCE);
    }
  });

  it('come back from culori’s L*a*b* D65 and XYZ to the code values they started from', () => {
    for (const colour of colours) {
      const lab = toLab65({ mode: 'rgb', ...colour });
      const xyz = toXyz65({ mode: 'rgb', ...colour });
      const fromLab = convertLinearToSrgb(convertLab65ToLinear({ l65: lab.l, a65: lab.a, b65: lab.b }));
      const fromXyz = convertLinearToSrgb(convertXyz65ToLinear({ x65: xyz.x, y65: xyz.y, z65: xyz.z }));
      for (const back of [fromLab, fromXyz]) {
        expect(Math.abs(back.redCode / 255 - colour.r)).toBeLessThan(TOLERANCE);
        expect(Math.abs(back.greenCode / 255 - colour.g)).toBeLessThan(TOLERANCE);
        expect(Math.abs(back.blueCode / 255 - colour.b)).toBeLessThan(TOLERANCE);
      }
    }
  });

  it('come back from culori’s L*a*b* D50 to their XYZ under D65, within the two versions of the D50 white', () => {
    // Ours is the D50 of instruments and profiles (.96422, .82521); culori's follows from .3457 .3585 (.96430, .82510).
    for (const colour of colours) {
      const lab = toLab50({ mode: 'rgb', ...colour });
      const theirs = toXyz65({ mode: 'rgb', ...colour });
      const ours = convertXyz50ToXyz65(convertLab50ToXyz50({ l50: lab.l, a50: lab.a, b50: lab.b }));
      expect(Math.abs(ours.x65 - theirs.x)).toBeLessThan(2e-4);
      expect(Math.abs(ours.y65 - theirs.y)).toBeLessThan(2e-4);
      expect(Math.abs(ours.z65 - theirs.z)).toBeLessThan(2e-4);
    }
  });

  it('have the same ΔE00', () => {
    const theirs = culoriDifference();
    for (let index = 1; index < colours.length; index += 1) {
      const pair = [colours[index - 1], colours[index]];
      const [first, second] = pair.map((colour) => convertLinearToLab65(convertSrgbToLinear(codesOf(colour))));
      const expected = theirs({ mode: 'rgb', ...pair[0] }, { mode: 'rgb', ...pair[1] });
      // culori's ΔE00 also works in D65, from the same digits: only rounding is left.
      expect(Math.abs(differenceCiede2000(first, second) - expected)).toBeLessThan(1e-6);
    }
  });
});

/** Tone curve and colours of a chart photo from one half of its patches, judged on the other half. */
import { convertLab50ToXyz50 } from '../../../lib/colour/convert-lab50-to-xyz50';
import { convertLinearToLab65 } from '../../../lib/colour/convert-linear-to-lab65';
import { convertXyz50ToXyz65 } from '../../../lib/colour/convert-xyz50-to-xyz65';
import { convertXyz65ToLinear } from '../../../lib/colour/convert-xyz65-to-linear';
import { differenceCiede2000 } from '../../../lib/colour/difference-ciede2000';
import type { LinearRgb } from '../../../lib/colour/encodings';
import { fitToneCurve } from '../../../lib/colour/fit-tone-curve';
import { matchToBaseline } from '../../../lib/colour/match-to-baseline';
import { multiplyMatrixVector } from '../../../lib/colour/multiply-matrix-vector';
import { decodeSrgb } from '../../../lib/colour/decode-srgb';
import { logLightOf } from '../../../lib/colour/tone-curve';
import { CHART_24 } from './chart-24';

export type Codes = readonly [number, number, number];

const REFERENCE: readonly LinearRgb[] = CHART_24.map(({ lab50: [l50, a50, b50] }) =>
  convertXyz65ToLinear(convertXyz50ToXyz65(convertLab50ToXyz50({ l50, a50, b50 }))),
);
const FIRST_GREY = 18;
export const even = CHART_24.flatMap((_, index) => (index % 2 === 0 ? [index] : []));
export const odd = CHART_24.flatMap((_, index) => (index % 2 === 1 ? [index] : []));

const patchOf = (index: number) => ({
  name: CHART_24[index].name,
  kind: 'colour' as const,
  centre: { acrossMm: 0, downMm: 0 },
  widthMm: 1,
  heightMm: 1,
  designSrgb: CHART_24[index].srgb,
});
const channelsOf = ({ red, green, blue }: LinearRgb): Codes => [red, green, blue];
const isUsable = (codes: Codes) => Math.max(...codes) < 252;

/** Fits tone curve and colour map on some patches, with the brightest unclipped grey among them as the white. */
export function fitOn(fitted: readonly number[], codes: readonly Codes[]): (codes: Codes) => LinearRgb {
  const usable = fitted.filter((index) => isUsable(codes[index]));
  const [white, ...greys] = usable.filter((index) => index >= FIRST_GREY);
  const whiteLight = channelsOf(REFERENCE[white]);
  const pairs = greys.flatMap((index) =>
    [0, 1, 2].map((c) => ({
      name: CHART_24[index].name,
      code: codes[index][c],
      whiteCode: codes[white][c],
      expectedLight: channelsOf(REFERENCE[index])[c] / whiteLight[c],
    })),
  );
  const { curve } = fitToneCurve(pairs, true);
  const lightOf = (code: Codes): LinearRgb => {
    const [red, green, blue] = code.map(
      (value, c) => whiteLight[c] * Math.exp(logLightOf(curve, value) - logLightOf(curve, codes[white][c])),
    );
    return { red, green, blue };
  };
  const { matrix } = matchToBaseline(
    usable.map((index) => ({ patch: patchOf(index), light: lightOf(codes[index]) })),
    usable.map((index) => ({ patch: patchOf(index), light: REFERENCE[index] })),
  );
  return (code) => {
    const [red, green, blue] = multiplyMatrixVector(matrix, channelsOf(lightOf(code)));
    return { red, green, blue };
  };
}

export const asStandard = ([red, green, blue]: Codes): LinearRgb => ({
  red: decodeSrgb(red),
  green: decodeSrgb(green),
  blue: decodeSrgb(blue),
});

export function meanDeltaE(indices: readonly number[], codes: readonly Codes[], convert: (codes: Codes) => LinearRgb): number {
  const errors = indices
    .filter((index) => isUsable(codes[index]))
    .map((index) => differenceCiede2000(convertLinearToLab65(convert(codes[index])), convertLinearToLab65(REFERENCE[index])));
  return errors.reduce((sum, error) => sum + error, 0) / errors.length;
}

/**
 * The 24-patch colour chart. `srgb`: published hex values (public shader library `color/checker.glsl`, citing the chart's
 * literature). `lab50`: edition after November 2014, M0, D50 (a public chart-reading program's `reference_values.py`).
 * `lab65`: the sRGB column in L*a*b* D65; `deltaE00`: the sRGB column adapted to D50 (Bradford) against `lab50`. Both
 * were computed apart from this project's code, to two decimals.
 */
export interface ChartPatch {
  readonly name: string;
  readonly srgb: readonly [number, number, number];
  readonly lab65: readonly [number, number, number];
  readonly lab50: readonly [number, number, number];
  readonly deltaE00: number;
}

export const CHART_24: readonly ChartPatch[] = [
  { name: 'Dark skin', srgb: [115, 82, 68], lab65: [38.02, 11.80, 13.66], lab50: [37.54, 14.37, 14.92], deltaE00: 1.32 },
  { name: 'Light skin', srgb: [194, 150, 130], lab65: [65.67, 13.67, 16.90], lab50: [64.66, 19.27, 17.50], deltaE00: 3.20 },
  { name: 'Blue sky', srgb: [98, 122, 157], lab65: [50.63, 0.37, -21.60], lab50: [49.32, -3.82, -22.54], deltaE00: 1.96 },
  { name: 'Foliage', srgb: [87, 108, 67], lab65: [43.00, -15.88, 20.45], lab50: [43.46, -12.74, 22.72], deltaE00: 1.92 },
  { name: 'Blue flower', srgb: [133, 128, 177], lab65: [55.68, 12.76, -25.17], lab50: [54.94, 9.61, -24.79], deltaE00: 0.58 },
  { name: 'Bluish green', srgb: [103, 189, 170], lab65: [70.99, -30.64, 1.54], lab50: [70.48, -32.26, -0.37], deltaE00: 1.22 },
  { name: 'Orange', srgb: [214, 126, 44], lab65: [61.14, 28.10, 56.13], lab50: [62.73, 35.83, 56.50], deltaE00: 3.02 },
  { name: 'Purplish blue', srgb: [80, 91, 166], lab65: [41.12, 17.41, -41.88], lab50: [39.43, 10.75, -45.17], deltaE00: 2.60 },
  { name: 'Moderate red', srgb: [193, 90, 99], lab65: [51.33, 42.10, 14.88], lab50: [50.57, 48.64, 16.67], deltaE00: 2.30 },
  { name: 'Purple', srgb: [94, 60, 108], lab65: [31.10, 24.35, -22.10], lab50: [30.10, 22.54, -20.87], deltaE00: 1.04 },
  { name: 'Yellow green', srgb: [157, 188, 64], lab65: [71.90, -28.10, 56.96], lab50: [71.77, -24.13, 58.19], deltaE00: 0.61 },
  { name: 'Orange yellow', srgb: [224, 163, 46], lab65: [71.04, 12.60, 64.91], lab50: [71.51, 18.24, 67.37], deltaE00: 1.17 },
  { name: 'Blue', srgb: [56, 61, 150], lab65: [30.35, 26.43, -49.67], lab50: [28.37, 15.42, -49.80], deltaE00: 3.17 },
  { name: 'Green', srgb: [70, 148, 73], lab65: [55.03, -40.14, 32.30], lab50: [54.38, -39.72, 32.27], deltaE00: 1.11 },
  { name: 'Red', srgb: [175, 54, 60], lab65: [41.35, 49.30, 24.66], lab50: [42.43, 51.05, 28.62], deltaE00: 1.36 },
  { name: 'Yellow', srgb: [231, 199, 31], lab65: [80.70, -3.66, 77.55], lab50: [81.80, 2.67, 80.41], deltaE00: 1.34 },
  { name: 'Magenta', srgb: [187, 86, 149], lab65: [51.14, 48.15, -15.28], lab50: [50.63, 51.28, -14.12], deltaE00: 1.63 },
  { name: 'Cyan', srgb: [8, 133, 161], lab65: [51.15, -19.73, -23.37], lab50: [49.57, -29.71, -28.32], deltaE00: 3.18 },
  { name: 'White 9.5', srgb: [243, 243, 242], lab65: [95.82, -0.18, 0.48], lab50: [95.19, -1.03, 2.93], deltaE00: 2.60 },
  { name: 'Neutral 8', srgb: [200, 200, 200], lab65: [80.60, 0, 0], lab50: [81.29, -0.57, 0.44], deltaE00: 1.05 },
  { name: 'Neutral 6.5', srgb: [160, 160, 160], lab65: [65.87, 0, 0], lab50: [66.89, -0.75, -0.06], deltaE00: 1.37 },
  { name: 'Neutral 5', srgb: [122, 122, 121], lab65: [51.19, -0.20, 0.55], lab50: [50.76, -0.13, 0.14], deltaE00: 0.60 },
  { name: 'Neutral 3.5', srgb: [85, 85, 85], lab65: [36.15, 0, 0], lab50: [35.63, -0.46, -0.48], deltaE00: 0.93 },
  { name: 'Black 2', srgb: [52, 52, 52], lab65: [21.70, 0, 0], lab50: [20.64, 0.07, -0.46], deltaE00: 0.88 },
];

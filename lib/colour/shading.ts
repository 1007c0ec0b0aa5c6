import type { LinearTables } from '../rectify/resample-map';
import type { PointMm } from '../units';
import type { WhiteSample } from './card-readings';
import { PAPER_BEND_SD, PAPER_SIGMA } from './constants';
import type { LinearRgb } from './encodings';
import { fieldAt, fitQuadraticField } from './quadratic-field';
import type { QuadraticField } from './quadratic-field';

/** The light of bare paper over the card, as smooth fields of its natural logarithm. */
export interface Shading {
  readonly red: QuadraticField;
  readonly green: QuadraticField;
  readonly blue: QuadraticField;
  /** Brightest over darkest paper among the spots, by the fitted field, worst channel; ≥ 1. */
  readonly ratio: number;
  /** 90th percentile of the spots' departure from the field, relative, worst channel: large at a shadow's edge. */
  readonly residual: number;
}

const RESIDUAL_PERCENTILE = 0.9;

/**
 * Fits the light of bare paper over the card: illumination, exposure and white balance in one.
 * @param spots usable paper spots (see `sortPaperSpots`), at least one
 * @param tables the photo's tone curve
 * @returns the field per channel, and how uneven and how unsmooth it is
 * @example fitShading([{ acrossMm: 0, downMm: 0, code: [200, 200, 200] }], toneTables(SRGB_CURVE_ITSELF)).ratio // 1
 */
export function fitShading(spots: readonly WhiteSample[], tables: LinearTables): Shading {
  const channels = [tables.red, tables.green, tables.blue].map((table, channel) =>
    fitChannel(spots.map((spot) => ({ at: spot, value: Math.log(lightBetween(table, spot.code[channel])) }))),
  );
  return {
    red: channels[0].field,
    green: channels[1].field,
    blue: channels[2].field,
    ratio: Math.max(...channels.map(({ ratio }) => ratio)),
    residual: Math.max(...channels.map(({ residual }) => residual)),
  };
}

/** Medians can lie between two codes; paper is never at code 0, but a wrong spot may be. */
function lightBetween(table: Float32Array, code: number): number {
  const below = Math.floor(code);
  const above = Math.min(below + 1, table.length - 1);
  return Math.max(table[below] + (code - below) * (table[above] - table[below]), table[1]);
}

function fitChannel(samples: readonly { at: PointMm; value: number }[]) {
  const { field, residuals } = fitQuadraticField(samples, PAPER_SIGMA, PAPER_BEND_SD);
  const fitted = samples.map(({ at }) => fieldAt(field, at));
  const departures = residuals.map(Math.abs).sort((a, b) => a - b);
  return {
    field,
    ratio: Math.exp(Math.max(...fitted) - Math.min(...fitted)),
    residual: Math.expm1(departures[Math.floor(RESIDUAL_PERCENTILE * (departures.length - 1))]),
  };
}

/**
 * The light that bare paper would send from one point of the card.
 * @param shading the fitted light
 * @param point card position, mm
 * @returns linear light in the units of the tone tables
 * @example paperLightAt(shading, { acrossMm: 0, downMm: 0 }).red // 1
 */
export function paperLightAt(shading: Shading, point: PointMm): LinearRgb {
  return {
    red: Math.exp(fieldAt(shading.red, point)),
    green: Math.exp(fieldAt(shading.green, point)),
    blue: Math.exp(fieldAt(shading.blue, point)),
  };
}

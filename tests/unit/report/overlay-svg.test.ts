import { describe, expect, it } from 'vitest';
import { gateReason } from '../../../lib/photo/reasons';
import type { Analysis } from '../../../lib/pipeline/analysis';
import { mapWindow } from '../../../lib/rectify/map-window';
import { ACCENT } from '../../../lib/report/constants';
import { legendHeightMm } from '../../../lib/report/legend-svg';
import { overlaySvg } from '../../../lib/report/overlay-svg';
import { reachLine } from '../../../lib/report/reach-line';
import { svgColour } from '../../../lib/report/svg-colour';
import { isMeasured } from '../../../lib/result';
import { drawnAnalysis, STRAIGHT_CARD } from './drawn-analysis';

const window = mapWindow(STRAIGHT_CARD.frame, 18);
const draw = (analysis: Analysis): string => overlaySvg(analysis, { window, legendMm: legendHeightMm(analysis) });
/** Strokes in the accent colour: one explains the reach in the legend, another is its dimension line on the toe. */
const accents = (svg: string): number => svg.split(`stroke="${svgColour(ACCENT)}"`).length - 1;

const red = drawnAnalysis(10);
const pale = drawnAnalysis(0);

describe('the overlay', () => {
  it('holds numbers only: no NaN, no infinity, nothing undefined', () => {
    for (const analysis of [red, pale]) expect(draw(analysis)).not.toMatch(/NaN|Infinity|undefined|null/);
  });

  it('is made of shapes alone: no words of the photo, no fonts, no links and no script can come in', () => {
    const { photo } = red;
    const svg = draw({ ...red, photo: { ...photo, capture: { ...photo.capture, lensModel: '"/><script>alert(1)</script>' } } });
    expect(new Set([...svg.matchAll(/<([a-z]+)/g)].map(([, name]) => name))).toEqual(new Set(['svg', 'path', 'g', 'rect']));
    expect(svg).not.toMatch(/href|url\(|script|style=/);
    expect(svg.replace(/<[^>]+>/g, '').trim()).toBe('');
  });

  it('closes what it opens and is as high as picture and legend together', () => {
    const svg = draw(red);
    expect(svg.split('<g').length).toBe(svg.split('</g>').length);
    // 44 × 56 mm at 18 pixels a millimetre.
    expect(svg).toContain(`width="792" height="${Math.round((56 + legendHeightMm(red)) * 18)}"`);
  });

  it('draws the dimension line of the reach when the reach is measured', () => {
    expect(red.measurement && isMeasured(red.measurement.measurements.reach)).toBe(true);
    expect(accents(draw(red))).toBe(2);
  });

  it('draws no dimension line, no outline and no date on the skin, when redness is not supported by the picture', () => {
    expect(pale.segmentation?.erythema).not.toBeNull();
    expect(pale.measurement?.measurements.reach).toHaveProperty('notMeasured');
    expect(accents(draw(pale))).toBe(1);
    const closedLines = (svg: string) => svg.slice(0, svg.indexOf('<rect')).split('Z"').length;
    expect(closedLines(draw(pale))).toBeLessThan(closedLines(draw(red)));
  });

  it('draws no line at all over a photo on which no toe was looked for', () => {
    const svg = draw({ ...red, segmentation: null, measurement: null, reasons: [gateReason('tilt', 41, 35)] });
    expect(svg).toMatch(/stroke-linejoin="round"><\/g>/);
    expect(accents(svg)).toBe(0);
  });
});

describe('the dimension line of the reach', () => {
  it('runs from the margin to the farthest point of the redness', () => {
    const square = [[46, 26], [50, 26], [50, 40], [46, 40]].map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
    const margin = [{ acrossMm: 46, downMm: 25 }, { acrossMm: 46, downMm: 38 }];
    const line = reachLine({ rings: [{ ring: square, hole: false }], confidence: 1, boundaryUMm: 0.1 }, margin);
    // The corner at (50, 40) lies 4 mm across and 2 mm below the margin's end.
    expect(line?.lengthMm).toBeCloseTo(Math.hypot(4, 2), 6);
    expect(line?.from).toEqual({ acrossMm: 46, downMm: 38 });
    expect(line?.to.acrossMm).toBeCloseTo(50, 6);
  });

  it('is null where the region has no edge', () => {
    expect(reachLine({ rings: [], confidence: 1, boundaryUMm: 0.1 }, [{ acrossMm: 0, downMm: 0 }, { acrossMm: 1, downMm: 0 }])).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import { PEN_GLYPHS } from '../../../lib/card/pen-glyphs';
import type { Measurand } from '../../../lib/measure/measure-input';
import { GATE_ADVICE, type GateId, gateReason, NOT_MEASURED_SENTENCE } from '../../../lib/photo/reasons';
import type { Analysis } from '../../../lib/pipeline/analysis';
import { legendLines } from '../../../lib/report/legend-lines';
import type { Measurement, NotMeasuredReason } from '../../../lib/result';
import { drawnAnalysis } from './drawn-analysis';

const measuredToe = drawnAnalysis(10);
const textsOf = (analysis: Analysis): string[] => legendLines(analysis).map(({ text }) => text);
const foreignGlyphs = (texts: readonly string[]): string[] => [...texts.join('')].filter((glyph) => !(glyph in PEN_GLYPHS));

/** The same toe with every number taken away for one reason. */
function without(reason: NotMeasuredReason): Analysis {
  const { measurement } = measuredToe;
  if (!measurement) throw new Error('the drawn toe was not measured');
  const none = Object.fromEntries(Object.keys(measurement.measurements).map((key) => [key, { notMeasured: reason }]));
  return { ...measuredToe, measurement: { ...measurement, measurements: none as Record<Measurand, Measurement> } };
}

describe('the legend of a measured photo', () => {
  it('writes date, redness, reach, groove and raw area with ± and unit, in the pen alphabet', () => {
    const texts = textsOf(measuredToe);
    expect(texts[0]).toBe('2026-03-02 19:32');
    for (const [label, unit] of [['REDNESS AREA', 'mm²'], ['REACH', 'mm'], ['GROOVE WIDTH', 'mm'], ['RAW AREA', 'mm²']]) {
      expect(texts.filter((text) => new RegExp(`^${label} \\d+\\.\\d ± \\d+\\.\\d ${unit}$`).test(text)), label).toHaveLength(1);
    }
    expect(foreignGlyphs(texts)).toEqual([]);
  });

  it('gives each line a pattern of its own; the reach, a straight line with ticks, has the solid one in another ink', () => {
    const lines = legendLines(measuredToe).filter(({ style }) => style);
    const reach = lines.filter(({ accent }) => accent);
    expect(reach.map(({ text, style }) => [text.slice(0, 5), style])).toEqual([['REACH', 'solid']]);
    expect(new Set(lines.map(({ style }) => style)).size).toBe(lines.length - reach.length);
  });

  it.each(Object.keys(NOT_MEASURED_SENTENCE) as NotMeasuredReason[])('writes the reason %s in place of a number, in the pen alphabet', (reason) => {
    const texts = textsOf(without(reason));
    const [reach] = texts.filter((text) => text.startsWith('REACH'));
    expect(reach.replaceAll(' ', '').toLowerCase()).toBe(`reach-${reason.toLowerCase()}`);
    expect(foreignGlyphs(texts)).toEqual([]);
  });
});

describe('the legend of a photo that was not measured', () => {
  it.each(Object.keys(GATE_ADVICE) as GateId[])('names the gate %s in the pen alphabet, and no number', (gate) => {
    const texts = textsOf({ ...measuredToe, measurement: null, reasons: [gateReason(gate, null, null)] });
    expect(texts).toContain('NOT MEASURED');
    expect(texts.map((text) => text.replaceAll(' ', '').toLowerCase())).toContain(gate.toLowerCase());
    expect(texts.join(' ')).not.toMatch(/\d\.\d/);
    expect(foreignGlyphs(texts)).toEqual([]);
  });

  it('says that the date is not known when the file does not tell', () => {
    const { photo } = measuredToe;
    const [first] = textsOf({ ...measuredToe, photo: { ...photo, capture: { ...photo.capture, localTime: null } } });
    expect(first).toBe('DATE UNKNOWN');
  });
});

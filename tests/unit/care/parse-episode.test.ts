import { describe, expect, it } from 'vitest';
import { MEASURAND_UNIT } from '../../../lib/measure/measure-input';
import { parseEpisode } from '../../../lib/care/parse-episode';
import { at, episodeJson, photo } from '../decide/invented-course';

const good = episodeJson([{ hours: 50, answers: { pain: 3 }, photo: photo({ reach: 3 }) }]);
const problemOf = (data: unknown): string => {
  const parsed = parseEpisode(data);
  return 'problem' in parsed ? parsed.problem : '';
};
const withAnswers = (answers: Record<string, unknown>) => ({ ...good, checkIns: [{ at: at(50), answers }] });
const withMeasurement = (measurements: Record<string, unknown>) => ({ ...good, checkIns: [{ at: at(50), answers: {}, photo: { measured: true, measurements } }] });

describe('reading an episode', () => {
  it('takes a good one and fills in the plan', () => {
    const parsed = parseEpisode(good);
    expect('episode' in parsed && parsed.episode.plan).toEqual({ checkInEveryHours: 24, graceHours: 36 });
  });

  it('takes every measurement of an analysis as it comes, with value, u, U and unit', () => {
    const measurements = Object.fromEntries(Object.entries(MEASURAND_UNIT).map(([name, unit]) => [name, { value: 1, u: 0.1, U: 0.2, unit }]));
    expect(problemOf(withMeasurement(measurements))).toBe('');
    expect(problemOf(withMeasurement({ reach: { notMeasured: 'noRegionFound' } }))).toBe('');
  });

  it.each([
    [{ ...good, note: 1 }, /^the episode: unknown field “note”\.$/],
    [withAnswers({ fever: 38 }), /^checkIns\[0\]\.answers: unknown field “fever”\.$/],
    [withMeasurement({ reachInches: { value: 1, u: 1, unit: 'mm' } }), /measurements: unknown field “reachInches”/],
    [withMeasurement({ reach: { value: 1, u: 0.1, unit: 'cm' } }), /measurements\.reach\.unit: this is given in mm \(UCUM\), received "cm"/],
    [withMeasurement({ erythemaArea: { value: 1, u: 0.1, unit: 'mm' } }), /erythemaArea\.unit: this is given in mm2/],
    [withMeasurement({ reach: { value: 1, u: -0.1, unit: 'mm' } }), /reach\.u/],
    [withMeasurement({ reach: { value: 1, unit: 'mm' } }), /reach\.u: .*missing/],
    [withAnswers({ feverC: 100.4 }), /feverC: Is this in degrees Fahrenheit\?/],
    [withAnswers({ feverC: 29.9 }), /feverC: Is this in degrees Celsius\?/],
    [withAnswers({ pain: 11 }), /answers\.pain/],
    [{ ...good, now: '2026-03-10' }, /^now: A time is written as/],
    [{ ...good, now: '2026-03-10T10:00:00' }, /^now: A time is written as/],
    [{ ...good, now: at(-1) }, /now: .* lies before the procedure/],
    [{ ...good, now: at(20) }, /checkIns\[0\]\.at: .* lies after now/],
    [{ ...good, risks: ['tall'] }, /risks\[0\]: expected one of/],
    [null, /^the episode: expected object/],
    ['text', /^the episode: expected object/],
  ])('refuses %j by name', (data, message) => {
    expect(problemOf(data)).toMatch(message);
  });

  it.each([30, 43])('takes a temperature of %i °C', (feverC) => {
    expect(problemOf(withAnswers({ feverC }))).toBe('');
  });

  it('takes a phone’s clock that runs ahead by less than a day', () => {
    expect(problemOf({ ...good, now: at(27) })).toBe('');
  });
});

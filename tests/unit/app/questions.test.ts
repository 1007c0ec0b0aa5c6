import { describe, expect, it } from 'vitest';
import { askedSigns, followUps } from '../../../app/(patient)/_questions/asked-signs';
import { readTemperature } from '../../../app/(patient)/_questions/read-temperature';
import { tickedSigns, tickSigns } from '../../../app/(patient)/_questions/tick-signs';
import { warningSigns } from '../../../app/(patient)/_questions/warning-signs';
import type { Answers } from '../../../lib/care/answers';

const DAY_5 = 5 * 24;

describe('warning signs', () => {
  it.each<[Answers, string[]]>([
    [{ streaks: true }, ['streaks']],
    [{ chills: true }, ['chills']],
    [{ confusion: true }, ['confusion']],
    [{ dusky: true }, ['dusky']],
    [{ cold: true }, ['cold']],
    [{ boneVisible: true }, ['boneVisible']],
    [{ painOutOfProportion: true }, ['painOutOfProportion']],
    [{ bleedingAfterPressure: true }, ['bleedingAfterPressure']],
    [{ bloodRuns: true }, ['bloodRuns']],
    [{ feverC: 38 }, ['fever']],
    [{ feverC: 37.9 }, []],
    [{ feverC: 35.9, smell: true }, ['tooCold']],
    [{ feverC: 35.9, dischargeConsistency: 'thick' }, ['tooCold']],
    [{ feverC: 35.9 }, []],
    [{ pain: 10, wetness: 'wet', smell: true, spreadingSeen: true }, []],
    [{ streaks: false, chills: false, dusky: false }, []],
    [{}, []],
  ])('in %j are %j', (answers, signs) => {
    expect(warningSigns(answers, DAY_5)).toEqual(signs);
  });

  it('take a numb toe for the injection until 24 hours have passed', () => {
    expect([24, 24.1].map((hours) => warningSigns({ numb: true }, hours))).toEqual([[], ['numb']]);
  });
});

describe('a typed temperature', () => {
  // 98.6 °F is 37 °C, 100.4 °F is 38 °C, 104 °F is 40 °C by definition of the scales.
  it.each([
    ['', { kind: 'empty' }],
    [' 38,5 °C', { kind: 'celsius', celsius: 38.5 }],
    ['30', { kind: 'celsius', celsius: 30 }],
    ['43', { kind: 'celsius', celsius: 43 }],
    ['98.6', { kind: 'fahrenheit', celsius: 37 }],
    ['100.4', { kind: 'fahrenheit', celsius: 38 }],
    ['104', { kind: 'fahrenheit', celsius: 40 }],
    ['29.9', { kind: 'outside' }],
    ['44', { kind: 'outside' }],
    ['200', { kind: 'outside' }],
    ['hot', { kind: 'outside' }],
  ])('%j is read as %j', (typed, read) => {
    expect(readTemperature(typed)).toEqual(read);
  });
});

describe('the ticked signs', () => {
  const listed = ['dusky', 'cold', 'numb'] as const;

  it('are all "no" after "none of these", and absent when nothing was ticked', () => {
    expect(tickSigns({ pain: 2 }, listed, 'none', true)).toEqual({ pain: 2, dusky: false, cold: false, numb: false });
    expect(tickSigns({ pain: 2, dusky: false, cold: false, numb: false }, listed, 'none', false)).toEqual({ pain: 2 });
    expect(tickSigns({ dusky: true, cold: false, numb: false }, listed, 'dusky', false)).toEqual({});
  });

  it('take back "none of these" when one is ticked', () => {
    const none = tickSigns({}, listed, 'none', true);
    expect(tickedSigns(none, listed)).toEqual(['none']);
    const one = tickSigns(none, listed, 'cold', true);
    expect(one).toEqual({ dusky: false, cold: true, numb: false });
    expect(tickedSigns(one, listed)).toEqual(['cold']);
  });

  it('are listed from the day on which they begin to mean something', () => {
    expect(askedSigns(10)).toEqual(['dusky', 'cold', 'boneVisible']);
    expect(askedSigns(DAY_5)).toContain('numb');
    expect(askedSigns(11 * 24)).toEqual(['dusky', 'cold', 'boneVisible', 'numb', 'proudTissue', 'cornerTender']);
  });
});

describe('follow-up questions', () => {
  it('are few when nothing calls for them, and asked every time where skin or nerves hide signs', () => {
    expect(Object.values(followUps({ pain: 2, wetness: 'dry' }, []))).not.toContain(true);
    expect(followUps({ wetness: 'dry' }, ['warmth', 'swelling', 'pain', 'discharge'])).toMatchObject({ warmth: true, swelling: true, discharge: true });
  });

  it('follow wet dressings, strong pain, fever and spreading redness', () => {
    expect(followUps({ wetness: 'damp' }, []).discharge).toBe(true);
    expect(followUps({ pain: 7 }, []).outOfProportion).toBe(true);
    expect(followUps({ chills: true }, []).confusion).toBe(true);
    expect(followUps({ spreadingSeen: true }, [])).toMatchObject({ swelling: true, warmth: true });
  });
});

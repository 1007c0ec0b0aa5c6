/** What must not change a judgement: order, zone, another run, and what came later. */
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import type { EpisodeJson } from '../../../lib/care/episode';
import type { Finding } from '../../../lib/decide/finding';
import { at, type CheckInSketch, episodeJson, judgeJson, photo, refused } from '../../unit/decide/invented-course';

const answers = fc.record(
  {
    pain: fc.integer({ min: 0, max: 10 }),
    wetness: fc.constantFrom('dry', 'damp', 'wet'),
    dischargeColour: fc.constantFrom('none', 'clear', 'yellow', 'green'),
    dischargeConsistency: fc.constantFrom('none', 'watery', 'thick'),
    feverC: fc.double({ min: 35, max: 39, noNaN: true }),
    swelling: fc.boolean(),
    warmth: fc.boolean(),
    cornerTender: fc.boolean(),
    proudTissue: fc.boolean(),
    numb: fc.boolean(),
  },
  { requiredKeys: [] },
);

const length = fc.double({ min: 0.2, max: 24, noNaN: true });
const usable = fc
  .record({ reach: length, erythemaArea: fc.double({ min: 2, max: 300, noNaN: true }), rawArea: fc.double({ min: 0, max: 40, noNaN: true }), proximalReach: length })
  .map((numbers) => photo(numbers));

const sketch: fc.Arbitrary<CheckInSketch> = fc.record({
  hours: fc.double({ min: 1, max: 700, noNaN: true }),
  answers,
  photo: fc.oneof({ weight: 6, arbitrary: usable }, fc.constant(refused()), fc.constant(undefined)),
});

const course = fc.array(sketch, { minLength: 1, maxLength: 24 });
const risks = fc.uniqueArray(fc.constantFrom('diabetes' as const, 'neuropathy' as const, 'anticoagulant' as const), { maxLength: 2 });
const RUNS = { numRuns: 60 };

const keyOf = ({ closed: _, ...finding }: Finding): string => JSON.stringify(finding);

describe('a judgement', () => {
  it('does not depend on the order of the check-ins', () => {
    fc.assert(
      fc.property(course, risks, fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })), (sketches, atRisk, keys) => {
        const json = episodeJson(sketches, { risks: atRisk });
        const shuffled = json.checkIns.map((one) => ({ one, key: keys.next().value })).sort((a, b) => a.key - b.key).map(({ one }) => one);
        expect(judgeJson({ ...json, checkIns: shuffled })).toEqual(judgeJson(json));
      }),
      RUNS,
    );
  });

  it('does not depend on the zone in which times are written', () => {
    const inZone = (time: string, zone: string) => DateTime.fromISO(time, { zone }).toISO() ?? '';
    fc.assert(
      fc.property(course, fc.constantFrom('Asia/Kathmandu', 'America/New_York', 'Australia/Lord_Howe', 'Europe/Berlin'), (sketches, zone) => {
        const json = episodeJson(sketches);
        const moved: EpisodeJson = {
          ...json,
          procedure: { ...json.procedure, at: inZone(json.procedure.at, zone) },
          now: inZone(json.now, zone),
          checkIns: json.checkIns.map((one) => ({ ...one, at: inZone(one.at, zone) })),
        };
        expect(judgeJson(moved)).toEqual(judgeJson(json));
      }),
      RUNS,
    );
  });

  it('is the same when it is made again', () => {
    fc.assert(
      fc.property(course, (sketches) => {
        expect(judgeJson(episodeJson(sketches))).toEqual(judgeJson(episodeJson(sketches)));
      }),
      RUNS,
    );
  });

  it('keeps every earlier finding when check-ins are added later', () => {
    fc.assert(
      fc.property(course, course, (first, later) => {
        const end = Math.max(...first.map(({ hours }) => hours));
        const before = judgeJson(episodeJson(first));
        const all = [...first, ...later.map((one) => ({ ...one, hours: end + 0.5 + one.hours }))];
        const after = new Set(judgeJson(episodeJson(all)).map(keyOf));
        for (const finding of before) expect(after.has(keyOf(finding)), keyOf(finding)).toBe(true);
      }),
      RUNS,
    );
  });

  it('only adds to what it said when time passes', () => {
    fc.assert(
      fc.property(course, fc.double({ min: 0, max: 900, noNaN: true }), (sketches, wait) => {
        const end = Math.max(...sketches.map(({ hours }) => hours));
        const now = judgeJson(episodeJson(sketches)).map(keyOf);
        expect(judgeJson(episodeJson(sketches, { nowHours: end + wait })).map(keyOf).slice(0, now.length)).toEqual(now);
      }),
      RUNS,
    );
  });

  it('never calls now for measurements, and closes nothing without a reason', () => {
    fc.assert(
      fc.property(course, risks, (sketches, atRisk) => {
        for (const { rule, level, closed, sentence } of judgeJson(episodeJson(sketches, { risks: atRisk, nowHours: 1400, closedAt: at(1000) }))) {
          if (level === 'now') expect(['streak-or-fever', 'dusky-toe', 'bleeding']).toContain(rule);
          if (closed) expect(closed.reason.length).toBeGreaterThan(5);
          expect(sentence).toMatch(/[.]$/);
          expect(sentence).not.toMatch(/NaN|undefined|null|normal|fine/);
        }
      }),
      RUNS,
    );
  });

  it('takes an early photo, or the visit before, as the base of spreading exactly as the rule says in words', () => {
    const seenReach = (hours: number, reach: number): CheckInSketch => ({ hours, photo: photo({ reach }) });
    const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 });
    const LIMIT = { fromHours: 24, growthMm: 4, beforeMm: 1 };
    const raised: Record<string, number> = {};
    fc.assert(
      fc.property(tenths(12, 47), tenths(1, 5), tenths(-1, 5), tenths(2, 7), (hours, first, stood, grew) => {
        const course = [seenReach(hours / 10, first / 10), seenReach(80, (first + stood) / 10), seenReach(104, (first + grew) / 10)];
        const found = judgeJson(episodeJson(course)).filter(({ rule }) => rule === 'spreading');
        const isBase = hours >= 10 * LIMIT.fromHours;
        const second = isBase && stood >= 10 * LIMIT.growthMm;
        const third = isBase ? grew >= 10 * LIMIT.growthMm && stood >= 10 * LIMIT.beforeMm : grew - stood >= 10 * LIMIT.growthMm;
        const meant = second ? [80] : third ? [104] : [];
        expect(found.map(({ level, at: when }) => [level, when])).toEqual(meant.map((when) => ['today', at(when)]));
        const how = second ? 'visitBefore' : isBase ? 'earlyBase' : 'visitBefore, too early a photo left out';
        if (meant.length > 0) raised[how] = (raised[how] ?? 0) + 1;
      }),
      { numRuns: 500 },
    );
    expect(Object.values(raised).map((often) => often > 10)).toEqual([true, true, true]);
  });

  it('keeps what an earlier photo said when a photo arrives that was on its way', () => {
    const grown = [48, 72, 96].map((hours): CheckInSketch => ({ hours, photo: photo({ reach: 3 }) })).concat([{ hours: 120, photo: photo({ reach: 5 }) }, { hours: 144, photo: photo({ reach: 6 }) }]);
    const onItsWay: CheckInSketch = { hours: 60, photo: photo({ reach: 9 }, { receivedAt: at(150) }) };
    const before = judgeJson(episodeJson(grown)).map(keyOf);
    expect(before).toHaveLength(1);
    expect(judgeJson(episodeJson([...grown, onItsWay], { nowHours: 160 })).map(keyOf)).toContain(before[0]);
  });
});

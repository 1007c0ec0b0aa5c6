/**
 * Each rule's finding as a whole: what the nurse reads, and every number, photo and answer it rests on. Values follow from
 * the course by hand: the smallest detectable change of two readings with u 0.4 is 1.96 · √(2 · 0.16) = 1.1087 mm.
 */
import { describe, expect, it } from 'vitest';
import type { Finding, RuleId } from '../../../lib/decide/finding';
import { at, type CheckInSketch, judge, type Numbers, photo, refused } from './invented-course';

type Seen = readonly [name: string, value: number, unit: string, u?: number];
interface Whole {
  readonly rule: RuleId;
  readonly level: Finding['level'];
  readonly hours: number;
  readonly sentence: string;
  readonly numbers?: readonly Seen[];
  readonly photos?: readonly number[];
  readonly checkIns?: readonly number[];
}
type More = Parameters<typeof judge>[1];

function expectWhole(findings: readonly Finding[], { rule, level, hours, sentence, numbers = [], photos = [], checkIns = [] }: Whole): void {
  const found = findings.find((one) => one.rule === rule && one.level === level);
  expect(found && { ...found, evidence: null }).toEqual({ rule, level, at: at(hours), sentence, evidence: null, ruleBookVersion: '2026.3', raisedForRisk: false, closed: null });
  expect(found?.evidence.photos).toEqual(photos.map(at));
  expect(found?.evidence.checkIns).toEqual(checkIns.map(at));
  const shown = found?.evidence.numbers.map(({ name, value, unit, u }) => [name, Number(value.toFixed(4)), unit, ...(u === undefined ? [] : [Number(u.toFixed(4))])]);
  expect(shown).toEqual(numbers);
}

const DRY = { wetness: 'dry', dischargeColour: 'none', dischargeConsistency: 'none' } as const;
const dryAt = (hours: number, more: Numbers = {}): CheckInSketch => ({ hours, answers: DRY, photo: photo({ rawArea: 'noRegionFound', ...more }) });
const seen = (hours: number, numbers: Numbers, answers = {}): CheckInSketch => ({ hours, answers, photo: photo(numbers) });
const said = (hours: number, answers: CheckInSketch['answers']): CheckInSketch => ({ hours, answers });

const CASES: readonly (readonly [what: string, course: readonly CheckInSketch[], more: More, whole: Whole])[] = [
  ['redness to the limit', [seen(10, { reach: [19.2, 0.4] })], {}, { rule: 'reach-moderate', level: 'today', hours: 10, sentence: 'Redness reaches 19.2 mm from the nail fold, up to 20 mm with its uncertainty; the limit is 20 mm.', numbers: [['reach', 19.2, 'mm', 0.4], ['limit', 20, 'mm']], photos: [10] }],
  ['redness to the crease', [seen(10, { proximalReach: [13, 0.5], creaseDistance: [14, 0] })], {}, { rule: 'reach-moderate', level: 'today', hours: 10, sentence: 'Redness reaches 13 mm toward the ankle, up to 14 mm with its uncertainty; the joint crease lies at 14 mm.', numbers: [['creaseDistance', 14, 'mm', 0], ['proximalReach', 13, 'mm', 0.5]], photos: [10] }],
  ['redness across the crease', [seen(10, { creaseDistance: [0, 0.5] })], {}, { rule: 'reach-moderate', level: 'today', hours: 10, sentence: 'Redness is seen to cross the joint crease (0 mm).', numbers: [['creaseDistance', 0, 'mm', 0.5]], photos: [10] }],
  ['redness with signs', [seen(80, { reach: [8, 0.4] }, { warmth: true, swelling: true })], {}, { rule: 'reach-mild', level: 'soon', hours: 80, sentence: 'Redness reaches 8 mm, at least 7.2 mm with its uncertainty (limit 5 mm), together with warmth, new swelling.', numbers: [['reach', 8, 'mm', 0.4], ['limit', 5, 'mm']], photos: [80], checkIns: [80] }],
  [
    'an antibiotic without effect, against the largest before it',
    [seen(90, { reach: [7, 0.4], erythemaArea: [50, 3] }), seen(100, { reach: [8, 0.4], erythemaArea: [60, 4] }), seen(190, { reach: [8, 0.4], erythemaArea: [59, 4] })],
    { antibioticStartedAt: at(96) },
    {
      rule: 'antibiotic-no-better', level: 'today', hours: 190, sentence: '94 h after the antibiotic was started nothing is down by what we can see: reach 8 → 8 mm, area of redness 60 → 59 mm².',
      numbers: [['reachBefore', 8, 'mm', 0.4], ['reach', 8, 'mm', 0.4], ['reachSmallestDetectableChange', 1.1087, 'mm'], ['erythemaAreaBefore', 60, 'mm2', 4], ['erythemaArea', 59, 'mm2', 4], ['erythemaAreaSmallestDetectableChange', 11.0874, 'mm2']],
      photos: [100, 190],
    },
  ],
  ['blood', [said(5, { bleedingAfterPressure: true })], {}, { rule: 'bleeding', level: 'today', hours: 5, sentence: 'Blood keeps coming after 20 minutes of pressure with the foot raised.', numbers: [['pressure', 20, 'min']], checkIns: [5] }],
  ['blood that runs', [said(5, { bloodRuns: true })], {}, { rule: 'bleeding', level: 'now', hours: 5, sentence: 'Reported: blood runs or drips, or the person feels faint.', numbers: [], checkIns: [5] }],
  ['thinned blood', [said(5, { bleedingAfterPressure: true })], { risks: ['anticoagulant'] }, { rule: 'bleeding', level: 'now', hours: 5, sentence: 'Blood keeps coming after 20 minutes of pressure with the foot raised, and the person takes an anticoagulant.', numbers: [['pressure', 20, 'min']], checkIns: [5] }],
  ['bone felt', [{ hours: 5 }], { procedure: { boneFelt: true } }, { rule: 'bone-felt', level: 'today', hours: 0, sentence: 'Bone was felt at the procedure: for the clinician.' }],
  ['pain and redness late', [seen(500, { erythemaArea: [20, 2] }, { pain: 6 }), seen(530, { erythemaArea: [22, 2] }, { pain: 7 })], {}, { rule: 'bone-felt', level: 'today', hours: 530, sentence: 'After day 14 the fold is red and pain goes on (6 and 7 of 10): for the clinician.', numbers: [['erythemaArea', 22, 'mm2', 2], ['pain', 7, '/10']], photos: [500, 530], checkIns: [500, 530] }],
  ['pain and redness late, of which one photo gives a reach only', [seen(500, { erythemaArea: [20, 2] }, { pain: 6 }), seen(530, { erythemaArea: 'foldHidden', reach: [4, 0.5] }, { pain: 7 })], {}, { rule: 'bone-felt', level: 'today', hours: 530, sentence: 'After day 14 the fold is red and pain goes on (6 and 7 of 10): for the clinician.', numbers: [['reach', 4, 'mm', 0.5], ['pain', 7, '/10']], photos: [500, 530], checkIns: [500, 530] }],
  ['refused photos', [{ hours: 30, answers: { pain: 1 }, photo: refused('blur') }, { hours: 55, answers: { pain: 1 }, photo: refused('tilt') }, { hours: 80 }], {}, { rule: 'cannot-judge', level: 'soon', hours: 61, sentence: 'Two visits in a row have no photo that can be used (blurred, camera too slanted): call instead.', numbers: [['visits', 2, '1']], photos: [30, 55], checkIns: [30, 55] }],
  ['no photos', [said(30, { pain: 1 }), said(55, { pain: 1 }), { hours: 80 }], {}, { rule: 'cannot-judge', level: 'soon', hours: 61, sentence: 'Two visits in a row have no photo that can be used: call instead.', numbers: [['visits', 2, '1']], checkIns: [30, 55] }],
  ['redness that cannot be seen', [seen(30, { reach: 'contrastTooLow' }), seen(55, { reach: 'evidenceTooWeak' }, { pain: 1 }), { hours: 80 }], {}, { rule: 'cannot-judge', level: 'soon', hours: 61, sentence: 'On two visits redness cannot be seen at this skin tone and light: call instead.', numbers: [['visits', 2, '1']], photos: [30, 55], checkIns: [30, 55] }],
  ['dry', [dryAt(200), dryAt(224)], {}, { rule: 'dry', level: 'visit', hours: 224, sentence: 'Looks dry, confirm: 2 check-ins without discharge over 24 h, and no raw area in the last photo that can be used.', photos: [224], checkIns: [200, 224] }],
  ['dry within its uncertainty', [dryAt(200), dryAt(224, { rawArea: [1, 0.5] })], {}, { rule: 'dry', level: 'visit', hours: 224, sentence: 'Looks dry, confirm: 2 check-ins without discharge over 24 h, and no raw area in the last photo that can be used.', numbers: [['rawArea', 1, 'mm2', 0.5]], photos: [224], checkIns: [200, 224] }],
  ['a toe in danger', [said(30, { dusky: true, cold: true, boneVisible: true, painOutOfProportion: true })], {}, { rule: 'dusky-toe', level: 'now', hours: 30, sentence: 'Reported: a black or grey toe, a cold toe, bone or tendon in sight, pain out of proportion.', numbers: [['sinceAnaesthetic', 30, 'h']], checkIns: [30] }],
  ['numbness', [said(30, { numb: true })], { procedure: { anaestheticAt: at(-1) } }, { rule: 'dusky-toe', level: 'now', hours: 30, sentence: 'Reported: numbness after the anaesthetic should have worn off.', numbers: [['sinceAnaesthetic', 31, 'h']], checkIns: [30] }],
  ['slow', [], { nowHours: 21 * 24 }, { rule: 'late', level: 'visit', hours: 504, sentence: 'Not found dry by day 21; after this procedure most are by then.', numbers: [['slow', 21, 'd']] }],
  ['late', [], { nowHours: 28 * 24 }, { rule: 'late', level: 'soon', hours: 672, sentence: 'Not found dry by day 28; after this procedure nearly all are by then.', numbers: [['late', 28, 'd']] }],
  ['soggy skin', [seen(100, { maceratedArea: [12, 1], foldStripArea: [40, 2] }), seen(124, { maceratedArea: [16, 1], foldStripArea: [40, 2] })], {}, { rule: 'macerated', level: 'soon', hours: 124, sentence: 'White soggy skin covers 40 % of the fold, 30 % the visit before (limit 25 %): dressing advice is due.', numbers: [['maceratedArea', 16, 'mm2', 1], ['foldStripArea', 40, 'mm2', 2], ['share', 40, '%']], photos: [100, 124] }],
  ['proud tissue', [seen(100, { rawBeyondMargin: [1.5, 0.2] }), seen(124, { rawBeyondMargin: [1.2, 0.2] }, { proudTissue: true })], {}, { rule: 'over-granulation', level: 'visit', hours: 124, sentence: 'Raw tissue stands over the fold’s edge on two visits (measured limit 1 mm).', numbers: [['rawBeyondMargin', 1.5, 'mm', 0.2], ['rawBeyondMargin', 1.2, 'mm', 0.2]], photos: [100, 124], checkIns: [124] }],
  ['pain up at once', [said(80, { pain: 2 }), said(100, { pain: 2 }), said(124, { pain: 4 }), said(148, { pain: 6 })], {}, { rule: 'pain-rising', level: 'soon', hours: 148, sentence: 'Pain is 6 of 10, 4 above the second-lowest report (2), once.', numbers: [['pain', 6, '/10'], ['secondLowest', 2, '/10']], checkIns: [148] }],
  ['pain up twice', [said(80, { pain: 1 }), said(100, { pain: 2 }), said(124, { pain: 5 }), said(148, { pain: 5 })], {}, { rule: 'pain-rising', level: 'soon', hours: 148, sentence: 'Pain is 5 of 10, 3 above the second-lowest report (2), on two reports in a row.', numbers: [['pain', 5, '/10'], ['secondLowest', 2, '/10']], checkIns: [124, 148] }],
  ['pus', [said(50, { dischargeColour: 'green', dischargeConsistency: 'thick' })], {}, { rule: 'purulent', level: 'soon', hours: 50, sentence: 'Discharge is green and thick.', checkIns: [50] }],
  ['pus with redness', [seen(50, { reach: [9, 0.4] }, { dischargeColour: 'yellow', dischargeConsistency: 'creamy' })], {}, { rule: 'purulent', level: 'today', hours: 50, sentence: 'Discharge is yellow and creamy, and redness reaches 9 mm.', numbers: [['reach', 9, 'mm', 0.4]], photos: [50], checkIns: [50] }],
  ['damp again', [dryAt(200), dryAt(224), said(248, { wetness: 'damp' }), said(272, { wetness: 'damp' })], {}, { rule: 'relapse', level: 'soon', hours: 272, sentence: 'It was dry before; now two check-ins are not dry.', numbers: [['checkInsNotDry', 2, '1']], checkIns: [248, 272] }],
  ['wet again', [dryAt(200), dryAt(224), said(248, { wetness: 'wet', dischargeColour: 'clear', dischargeConsistency: 'watery' })], {}, { rule: 'relapse', level: 'soon', hours: 248, sentence: 'It was dry before; now one is wet with discharge.', numbers: [['checkInsNotDry', 1, '1']], checkIns: [248] }],
  ['red again', [dryAt(200, { erythemaArea: 20 }), dryAt(224, { erythemaArea: 20 }), dryAt(248, { erythemaArea: 30 }), dryAt(272, { erythemaArea: 32 })], {}, { rule: 'relapse', level: 'soon', hours: 272, sentence: 'It was dry before; the area of redness has grown from 20 to 32 mm², seen on two visits.', numbers: [['erythemaArea', 32, 'mm2', 1.92], ['whenDry', 20, 'mm2', 1.2]], photos: [224, 248, 272] }],
  ['silence', [{ hours: 30 }], { nowHours: 200 }, { rule: 'silent', level: 'soon', hours: 90, sentence: 'Nothing came for 60 h since the last check-in.', numbers: [['silence', 60, 'h']], checkIns: [30] }],
  ['silence from the start', [], { nowHours: 70 }, { rule: 'silent', level: 'soon', hours: 60, sentence: 'Nothing came for 60 h since the procedure.', numbers: [['silence', 60, 'h']] }],
  ['silence with a worry', [said(30, { dischargeColour: 'green', dischargeConsistency: 'thick' })], { nowHours: 200 }, { rule: 'silent', level: 'today', hours: 90, sentence: 'Nothing came for 60 h since the last check-in, and a finding is open.', numbers: [['silence', 60, 'h']], checkIns: [30] }],
  [
    'a wound that does not shrink (of six pairs three rise: S 0, of 24 orders 15 have S ≤ 0)',
    [20, 22, 19, 21].map((rawArea, visit) => seen([70, 100, 130, 160][visit], { rawArea })),
    {},
    {
      rule: 'stalled', level: 'soon', hours: 160, sentence: 'Raw area went from 21 to 20 mm² in 90 h and is 95.5 % of its peak; by half of the expected time we look for 50 % (an inference from ulcer literature).',
      numbers: [['rawArea', 21, 'mm2', 1.26], ['peak', 22, 'mm2', 1.32], ['meanOfFirstTwo', 21, 'mm2'], ['meanOfLastTwo', 20, 'mm2'], ['mannKendallS', 0, '1'], ['exactFallingTail', 0.625, '1']], photos: [70, 100, 130, 160],
    },
  ],
  ['all signs of an infection that spreads', [said(50, { feverC: 38.4, streaks: true, chills: true, confusion: true })], {}, { rule: 'streak-or-fever', level: 'now', hours: 50, sentence: 'Reported: a red streak, fever of 38.4 °C, chills, confusion.', numbers: [['temperature', 38.4, 'Cel']], checkIns: [50] }],
  ['chills', [said(50, { chills: true })], {}, { rule: 'streak-or-fever', level: 'now', hours: 50, sentence: 'Reported: chills.', checkIns: [50] }],
  ['a low temperature', [said(100, { feverC: 35.5, painOutOfProportion: true })], {}, { rule: 'streak-or-fever', level: 'now', hours: 100, sentence: 'Reported: a temperature of 35.5 °C, below 36 °C.', numbers: [['temperature', 35.5, 'Cel']], checkIns: [100] }],
  [
    'redness that spreads',
    [...[48, 72, 96, 120].map((hours) => seen(hours, { reach: 3 })), seen(144, { reach: 6 }), seen(168, { reach: 6.5 })],
    {},
    { rule: 'spreading', level: 'today', hours: 168, sentence: 'Reach grew 3.5 mm in 120 h, smallest change we can see is 1.1 mm.', numbers: [['newest', 6.5, 'mm', 0.4], ['before', 6, 'mm', 0.4], ['lowestRunningMedian', 3, 'mm', 0.4], ['growth', 3.5, 'mm'], ['smallestDetectableChange', 1.1087, 'mm'], ['elapsed', 120, 'h']], photos: [48, 144, 168] },
  ],
  [
    'redness that spreads round the toe',
    [...[48, 72, 96, 120].map((hours) => seen(hours, { unrolledReach: 4, reach: 3 })), seen(144, { unrolledReach: 8, reach: 3 }), seen(168, { unrolledReach: 8.5, reach: 3 })],
    {},
    { rule: 'spreading', level: 'today', hours: 168, sentence: 'Reach grew 4.5 mm in 120 h, smallest change we can see is 1.1 mm.', numbers: [['newest', 8.5, 'mm', 0.4], ['before', 8, 'mm', 0.4], ['lowestRunningMedian', 4, 'mm', 0.4], ['growth', 4.5, 'mm'], ['smallestDetectableChange', 1.1087, 'mm'], ['elapsed', 120, 'h']], photos: [48, 144, 168] },
  ],
  [
    'redness that spreads toward the ankle',
    [...[48, 72, 96, 120].map((hours) => seen(hours, { proximalReach: 3 })), seen(144, { proximalReach: 6 }), seen(168, { proximalReach: 6.5 })],
    {},
    { rule: 'spreading-proximal', level: 'today', hours: 168, sentence: 'Reach toward the ankle grew 3.5 mm in 120 h, smallest change we can see is 1.1 mm.', numbers: [['newest', 6.5, 'mm', 0.4], ['before', 6, 'mm', 0.4], ['lowestRunningMedian', 3, 'mm', 0.4], ['growth', 3.5, 'mm'], ['smallestDetectableChange', 1.1087, 'mm'], ['elapsed', 120, 'h']], photos: [48, 144, 168] },
  ],
  [
    'redness that spreads from an early photo',
    [seen(26, { reach: 1.6 }), seen(126, { reach: 5 }), seen(171, { reach: 10.2 })],
    {},
    { rule: 'spreading', level: 'today', hours: 171, sentence: 'Reach grew 8.6 mm in 145 h, smallest change we can see is 1.1 mm. It is compared with a photo taken 26 h after the procedure, for no later one can be its base; so 4 mm are asked for.', numbers: [['newest', 10.2, 'mm', 0.4], ['before', 5, 'mm', 0.4], ['earlyBase', 1.6, 'mm', 0.4], ['growth', 8.6, 'mm'], ['smallestDetectableChange', 1.1087, 'mm'], ['elapsed', 145, 'h']], photos: [26, 126, 171] },
  ],
  [
    'redness that spreads from the visit before, named once',
    [seen(50, { reach: 1 }), seen(98, { reach: 5.5 })],
    {},
    { rule: 'spreading', level: 'today', hours: 98, sentence: 'Reach grew 4.5 mm in 48 h, smallest change we can see is 1.1 mm. It is compared with a photo taken 50 h after the procedure, for no other can be its base; so 4 mm are asked for.', numbers: [['newest', 5.5, 'mm', 0.4], ['visitBefore', 1, 'mm', 0.4], ['growth', 4.5, 'mm'], ['smallestDetectableChange', 1.1087, 'mm'], ['elapsed', 48, 'h']], photos: [50, 98] },
  ],
  [
    'redness that spreads from the visit before, with a sign',
    [seen(50, { reach: 1 }), seen(98, { reach: 5.5 }, { warmth: true })],
    { procedure: { matricectomy: 'phenol60' } },
    { rule: 'spreading', level: 'today', hours: 98, sentence: 'Reach grew 4.5 mm in 48 h, smallest change we can see is 1.1 mm, and there is warmth. It is compared with a photo taken 50 h after the procedure, for no other can be its base; so 4 mm are asked for.', numbers: [['newest', 5.5, 'mm', 0.4], ['visitBefore', 1, 'mm', 0.4], ['growth', 4.5, 'mm'], ['smallestDetectableChange', 1.1087, 'mm'], ['elapsed', 48, 'h']], photos: [50, 98], checkIns: [98] },
  ],
  [
    'redness that spreads from the only visit',
    [seen(48, { reach: 3 }), seen(72, { reach: 4 }), seen(96, { reach: 5 })],
    {},
    { rule: 'spreading', level: 'today', hours: 96, sentence: 'Reach grew 2 mm in 48 h, smallest change we can see is 1.1 mm.', numbers: [['newest', 5, 'mm', 0.4], ['before', 4, 'mm', 0.4], ['onlyVisit', 3, 'mm', 0.4], ['growth', 2, 'mm'], ['smallestDetectableChange', 1.1087, 'mm'], ['elapsed', 48, 'h']], photos: [48, 72, 96] },
  ],
  [
    'redness that spreads from the mean of two visits (1.96 · √(0.5² + 0.4²) = 1.2550 mm), both of them shown',
    [seen(48, { reach: [4, 0.4] }), seen(72, { reach: [3, 0.6] }), seen(96, { reach: [5, 0.4] }), seen(120, { reach: [6, 0.4] })],
    {},
    { rule: 'spreading', level: 'today', hours: 120, sentence: 'Reach grew 2.5 mm in 48 h, smallest change we can see is 1.3 mm.', numbers: [['newest', 6, 'mm', 0.4], ['before', 5, 'mm', 0.4], ['meanOfTwo', 3.5, 'mm', 0.5], ['growth', 2.5, 'mm'], ['smallestDetectableChange', 1.255, 'mm'], ['elapsed', 48, 'h']], photos: [48, 72, 96, 120] },
  ],
  [
    'an area that spreads from the higher of two visits (1.96 · √(2.88² + 3.6²) = 9.0361 mm²)',
    [[48, 40, 3], [72, 48, 3], [96, 54, 3.5], [120, 60, 4]].map(([hours, erythemaArea, reach]) => seen(hours, { erythemaArea, reach })),
    {},
    { rule: 'spreading', level: 'today', hours: 120, sentence: 'The area of redness grew 12 mm² in 48 h, smallest change we can see is 9 mm².', numbers: [['newest', 60, 'mm2', 3.6], ['before', 54, 'mm2', 3.24], ['higherOfTwo', 48, 'mm2', 2.88], ['growth', 12, 'mm2'], ['smallestDetectableChange', 9.0361, 'mm2'], ['elapsed', 48, 'h']], photos: [72, 96, 120] },
  ],
  ['a spike on record', [said(20, { pain: 8 })], { procedure: { edge: 'torn' } }, { rule: 'spike-suspect', level: 'visit', hours: 0, sentence: 'A spike or torn edge was recorded at the procedure.' }],
  ['a spike that hurts', [seen(500, { proximalReach: 2 }, { pain: 5 })], { procedure: { edge: 'spike' } }, { rule: 'spike-suspect', level: 'soon', hours: 500, sentence: 'A spike or torn edge was recorded at the procedure, with pain 5 of 10.', numbers: [['pain', 5, '/10']], checkIns: [500] }],
  ['a tender corner', [500, 530].map((hours) => seen(hours, { proximalReach: 2 }, { cornerTender: true, pain: 1 })), {}, { rule: 'spike-suspect', level: 'visit', hours: 530, sentence: 'The proximal corner is tender and red on two visits.', numbers: [['pain', 1, '/10']], photos: [500, 530], checkIns: [500, 530] }],
];

describe('a finding says what it rests on', () => {
  it.each(CASES)('%s', (_what, course, more, whole) => {
    expectWhole(judge(course, more), whole);
  });
});

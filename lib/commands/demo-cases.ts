/** A clinic, and people with a toe, of our own invention. Days count back from the moment of seeding. */
import type { EpisodeWords } from '../edges/db/start-episode';
import type { ClinicWords } from '../edges/db/start-clinic';
import type { Answers } from '../care/answers';

export const DEMO_CLINIC: Omit<ClinicWords, 'timeZone'> = {
  name: 'Heron Lane Foot Clinic',
  // Numbers that are set aside for invented people (Ofcom, numbers for drama use).
  phone: '01632 960134',
  emergencyPhone: '112',
  openingHours: 'Monday to Friday, 8:30 to 17:00',
  language: 'en',
  asksBirthYear: false,
  reviewLimits: { now: 15, today: 240, soon: 1440, visit: 10080 },
};

/** One password for everybody: this clinic is nobody's. */
export const DEMO_PASSWORD = 'heron-lane-demo';

export const DEMO_STAFF = [
  { role: 'nurse', name: 'Ines Marlow', email: 'nurse@heronlane.example' },
  { role: 'nurse', name: 'Tom Abara', email: 'nurse2@heronlane.example' },
  { role: 'clinician', name: 'Ruth Okonjo', email: 'clinician@heronlane.example' },
  { role: 'lead', name: 'Pavel Lind', email: 'lead@heronlane.example' },
  { role: 'admin', name: 'Noor Castell', email: 'admin@heronlane.example' },
] as const;

export interface DemoVisit {
  readonly daysAgo: number;
  /** In `sample-images`; null where only answers came. */
  readonly photo: string | null;
  readonly answers: Answers;
}

export interface DemoCase {
  readonly caseCode: string;
  /** For whoever tries the demo. */
  readonly about: string;
  readonly language: 'en' | 'es';
  readonly procedureDaysAgo: number;
  readonly procedure: Omit<EpisodeWords['procedure'], 'at'>;
  readonly risks: EpisodeWords['risks'];
  readonly antibioticDaysAgo?: number;
  /** The card that is in the pictures; null where none can be read there. */
  readonly cardSerial: string | null;
  readonly visits: readonly DemoVisit[];
}

const quiet: Answers = { pain: 2, wetness: 'damp', dischargeColour: 'clear', dischargeConsistency: 'watery', smell: false, chills: false, streaks: false };

const dry: Answers = { pain: 1, wetness: 'dry', dischargeColour: 'none', dischargeConsistency: 'none', smell: false, chills: false, streaks: false };

/** A message without a photo. */
const said = (daysAgo: number, answers: Answers = quiet): DemoVisit => ({ daysAgo, photo: null, answers });
/** One a day, so that nobody counts as silent. */
const saidDaily = (fromDaysAgo: number, toDaysAgo: number): DemoVisit[] => Array.from({ length: fromDaysAgo - toDaysAgo + 1 }, (_, i) => said(fromDaysAgo - i));

/** Fourteen days after the procedure was yesterday, so that today's check-in is still to come. */
const seriesVisit = (day: number, answers: Answers): DemoVisit => ({ daysAgo: 15 - day, photo: `series/day-${String(day).padStart(2, '0')}.jpg`, answers });

export const DEMO_CASES: readonly DemoCase[] = [
  {
    caseCode: 'HL-101',
    about: 'ten photos in two weeks, redness that spreads in spite of an antibiotic; today’s check-in is due',
    language: 'en',
    procedureDaysAgo: 15,
    procedure: { matricectomy: 'phenol60', treatedSides: ['lateral'], stripMm: 3.5, edge: 'whole', pusSeen: false, boneFelt: false },
    risks: [],
    antibioticDaysAgo: 5.9,
    cardSerial: 'ZJDH7GKVYVA',
    visits: [
      seriesVisit(1, { ...quiet, pain: 4, wetness: 'wet' }),
      seriesVisit(2, { ...quiet, pain: 4 }),
      seriesVisit(3, { ...quiet, pain: 3 }),
      seriesVisit(5, quiet),
      seriesVisit(6, quiet),
      seriesVisit(7, { ...quiet, pain: 3 }),
      seriesVisit(9, { ...quiet, pain: 4, warmth: true }),
      seriesVisit(11, { ...quiet, pain: 5, warmth: true, swelling: true }),
      seriesVisit(12, { ...quiet, pain: 5, warmth: true, swelling: true }),
      seriesVisit(14, { ...quiet, pain: 6, warmth: true, swelling: true, spreadingSeen: true }),
    ],
  },
  {
    caseCode: 'HL-102',
    about: 'diabetes, thick yellow discharge',
    language: 'en',
    procedureDaysAgo: 3,
    procedure: { matricectomy: 'phenol30', treatedSides: ['medial'], stripMm: 3, edge: 'whole', pusSeen: true, boneFelt: false },
    risks: ['diabetes'],
    cardSerial: '7SEWNTDQQGS',
    visits: [
      { daysAgo: 2, photo: null, answers: quiet },
      { daysAgo: 1, photo: 'measured/light-shade.jpg', answers: { ...quiet, dischargeColour: 'yellow', dischargeConsistency: 'thick' } },
    ],
  },
  {
    caseCode: 'HL-103',
    about: 'dark skin, a spike left behind; it was dry and is wet again; page in Spanish',
    language: 'es',
    procedureDaysAgo: 9,
    procedure: { matricectomy: 'naoh', treatedSides: ['lateral'], stripMm: 4, edge: 'spike', pusSeen: false, boneFelt: false },
    risks: [],
    cardSerial: 'DQ9WG3E1HRZ',
    visits: [
      ...saidDaily(8, 6),
      { daysAgo: 5, photo: 'measured/dark-daylight.jpg', answers: { ...dry, warmth: false, swelling: false } },
      said(4, dry),
      said(3, dry),
      said(2, { ...quiet, pain: 3 }),
      said(1, { ...quiet, pain: 3, cornerTender: true }),
    ],
  },
  {
    caseCode: 'HL-104',
    about: 'two photos in a row that could not be measured',
    language: 'en',
    procedureDaysAgo: 3,
    procedure: { matricectomy: 'phenol60', treatedSides: ['medial'], stripMm: 3, edge: 'whole', pusSeen: false, boneFelt: false },
    risks: [],
    cardSerial: null,
    visits: [
      { daysAgo: 2, photo: 'refused/defocus.jpg', answers: quiet },
      { daysAgo: 1, photo: 'refused/uneven-light.jpg', answers: quiet },
    ],
  },
  {
    caseCode: 'HL-105',
    about: 'silent for five days, and a photo with somebody else’s card',
    language: 'en',
    procedureDaysAgo: 7,
    procedure: { matricectomy: 'none', treatedSides: ['lateral'], stripMm: 2.5, edge: 'whole', pusSeen: false, boneFelt: false },
    risks: ['arterial'],
    // Another patient's card is in the picture: it is held until a person has looked.
    cardSerial: '00000000000',
    visits: [{ daysAgo: 5, photo: 'refused/duplicate.jpg', answers: quiet }],
  },
  {
    caseCode: 'HL-106',
    about: 'operated today, the dressing stays on',
    language: 'en',
    procedureDaysAgo: 0.2,
    procedure: { matricectomy: 'phenol60', treatedSides: ['lateral'], stripMm: 3, edge: 'whole', pusSeen: false, boneFelt: false },
    risks: [],
    cardSerial: 'FNDC62CQRK7',
    visits: [],
  },
  {
    caseCode: 'HL-107',
    about: 'fever and a red streak',
    language: 'en',
    procedureDaysAgo: 4,
    procedure: { matricectomy: 'phenol60', treatedSides: ['medial'], stripMm: 3, edge: 'whole', pusSeen: true, boneFelt: false },
    risks: ['immunosuppressed'],
    cardSerial: null,
    visits: [...saidDaily(3, 1), said(0.1, { ...quiet, pain: 6, feverC: 38.6, streaks: true, warmth: true })],
  },
  {
    caseCode: 'HL-108',
    about: 'arterial disease, a toe that has turned grey',
    language: 'en',
    procedureDaysAgo: 2,
    procedure: { matricectomy: 'none', treatedSides: ['lateral'], stripMm: 2.5, edge: 'whole', pusSeen: false, boneFelt: false },
    risks: ['arterial'],
    cardSerial: null,
    visits: [said(1), said(0.05, { ...quiet, pain: 7, dusky: true, cold: true })],
  },
  {
    caseCode: 'HL-109',
    about: 'anticoagulant, blood keeps coming after twenty minutes of pressure',
    language: 'en',
    procedureDaysAgo: 0.8,
    procedure: { matricectomy: 'phenol30', treatedSides: ['medial', 'lateral'], stripMm: 2.5, edge: 'whole', pusSeen: false, boneFelt: false },
    risks: ['anticoagulant'],
    cardSerial: null,
    visits: [said(0.3, { pain: 3, bleedingAfterPressure: true })],
  },
  {
    caseCode: 'HL-110',
    about: 'not dry after three weeks, proud tissue over the fold',
    language: 'en',
    procedureDaysAgo: 23,
    procedure: { matricectomy: 'none', treatedSides: ['medial'], stripMm: 3, edge: 'unknown', pusSeen: false, boneFelt: false },
    risks: [],
    cardSerial: null,
    visits: [...saidDaily(22, 3), said(2, { ...quiet, proudTissue: true }), said(1, { ...quiet, proudTissue: true })],
  },
  {
    caseCode: 'HL-111',
    about: 'bone was felt at the procedure',
    language: 'en',
    procedureDaysAgo: 5,
    procedure: { matricectomy: 'phenol60', treatedSides: ['lateral'], stripMm: 3, edge: 'whole', pusSeen: true, boneFelt: true },
    risks: ['neuropathy'],
    cardSerial: null,
    visits: saidDaily(4, 1),
  },
  {
    caseCode: 'HL-112',
    about: 'tan skin, white soggy skin along the fold',
    language: 'en',
    procedureDaysAgo: 5,
    procedure: { matricectomy: 'phenol30', treatedSides: ['lateral'], stripMm: 3, edge: 'whole', pusSeen: false, boneFelt: false },
    risks: [],
    cardSerial: '1XDEA1K6PEX',
    visits: [
      said(4),
      { daysAgo: 3, photo: 'measured/tan-incandescent.jpg', answers: quiet },
      said(2),
      { daysAgo: 1, photo: 'measured/tan-incandescent.jpg', answers: quiet },
    ],
  },
  {
    caseCode: 'HL-113',
    about: 'a spike of nail was seen to stay behind: to be spoken of at the follow-up',
    language: 'en',
    procedureDaysAgo: 1.3,
    procedure: { matricectomy: 'phenol30', treatedSides: ['medial'], stripMm: 2.5, edge: 'spike', pusSeen: false, boneFelt: false },
    risks: [],
    cardSerial: null,
    visits: [said(0.2)],
  },
  {
    caseCode: 'HL-114',
    about: 'redness that runs more than 20 mm toward the ankle',
    language: 'en',
    procedureDaysAgo: 6,
    procedure: { matricectomy: 'none', treatedSides: ['lateral'], stripMm: 2.5, edge: 'whole', pusSeen: false, boneFelt: false },
    risks: [],
    cardSerial: '3NA2JY18CCM',
    visits: [said(5), said(4), said(3), said(2), { daysAgo: 1, photo: 'measured/far-up-the-toe.jpg', answers: { ...quiet, pain: 5, warmth: true } }],
  },
];

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
  /** The card that is in the pictures; null where none can be read there. */
  readonly cardSerial: string | null;
  readonly visits: readonly DemoVisit[];
}

const quiet: Answers = { pain: 2, wetness: 'damp', dischargeColour: 'clear', dischargeConsistency: 'watery', smell: false, chills: false, streaks: false };

/** Fourteen days after the procedure was yesterday, so that today's check-in is still to come. */
const seriesVisit = (day: number, answers: Answers): DemoVisit => ({ daysAgo: 15 - day, photo: `series/day-${String(day).padStart(2, '0')}.jpg`, answers });

export const DEMO_CASES: readonly DemoCase[] = [
  {
    caseCode: 'HL-101',
    about: 'ten photos in two weeks, redness that spreads; today’s check-in is due',
    language: 'en',
    procedureDaysAgo: 15,
    procedure: { matricectomy: 'phenol60', treatedSides: ['lateral'], stripMm: 3.5, edge: 'whole', pusSeen: false, boneFelt: false },
    risks: [],
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
    about: 'dark skin, a spike left behind, page in Spanish',
    language: 'es',
    procedureDaysAgo: 3,
    procedure: { matricectomy: 'naoh', treatedSides: ['lateral'], stripMm: 4, edge: 'spike', pusSeen: false, boneFelt: false },
    risks: [],
    cardSerial: 'DQ9WG3E1HRZ',
    visits: [
      { daysAgo: 2, photo: null, answers: { ...quiet, pain: 3, warmth: false, swelling: false } },
      { daysAgo: 1, photo: 'measured/dark-daylight.jpg', answers: { ...quiet, pain: 3, warmth: false, swelling: false } },
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
];

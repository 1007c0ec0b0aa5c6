import { DateTime } from 'luxon';
import type { EpisodeJson } from '../../../lib/care/episode';
import { RISKS } from '../../../lib/care/risks';
import { type RandomSource, randomSource } from '../../phantom/random/random-source';
import { type CourseKind, type CourseTruth, drawTruth, ITA_CLASSES } from './course-truth';
import { drawAnswers } from './draw-answers';
import { drawPhoto, nextLight, refusedPhoto, type VisitLight } from './draw-photo';

export interface InventedEpisode {
  readonly truth: CourseTruth;
  readonly json: EpisodeJson;
  /** A warning was tapped by mistake somewhere. */
  readonly wrongWarning: boolean;
}

/** Places and days around a clock change: most courses have one in them. */
const CLOCKS = [
  ['Europe/Berlin', '2026-03-22'],
  ['Europe/Berlin', '2026-10-18'],
  ['America/New_York', '2026-03-01'],
  ['America/New_York', '2026-10-25'],
  ['Australia/Lord_Howe', '2026-03-30'],
  ['Africa/Cairo', '2026-04-18'],
  ['Asia/Kathmandu', '2026-06-10'],
] as const;

const DAYS_AFTER_EVENT: Readonly<Partial<Record<CourseKind, number>>> = { silent: 0, stalled: 16, 'bone-felt': 6, 'antibiotic-no-better': 6 };

/** One invented course, the same for the same seed. */
export function drawEpisode(kind: CourseKind, place: number, seed: number): InventedEpisode {
  const random = randomSource(seed * 100_003 + place, kind);
  const truth = drawTruth(kind, place % ITA_CLASSES.length, random);
  const [zone, date] = random.pick(CLOCKS);
  const procedure = DateTime.fromISO(`${date}T00:00`, { zone }).plus({ days: random.whole(0, 9), minutes: random.whole(8 * 60, 17 * 60) });
  const lastDay = truth.eventDay === null ? truth.dryDay + (kind === 'late' ? -30 : 3.5) : truth.eventDay + (DAYS_AFTER_EVENT[kind] ?? 8);
  const drawn = drawCheckIns(truth, procedure, lastDay, random);
  const last = drawn.checkIns.at(-1)?.at ?? iso(procedure);
  const now = DateTime.fromISO(last, { setZone: true }).plus({ hours: kind === 'silent' ? 80 : 7 });
  const antibiotic = kind === 'antibiotic-no-better' ? procedure.plus({ minutes: Math.round(((truth.eventDay ?? 0) + 2.2) * 1440) }) : null;
  return {
    truth,
    wrongWarning: drawn.wrongWarning,
    json: {
      procedure: {
        at: iso(procedure),
        matricectomy: truth.matricectomy,
        treatedSides: ['lateral'],
        stripMm: 2.5,
        edge: kind === 'spike-suspect' && random.chance(0.3) ? 'spike' : 'whole',
        boneFelt: kind === 'bone-felt' && random.chance(0.3),
        pusSeen: false,
        anaestheticAt: iso(procedure.minus({ minutes: 20 })),
      },
      risks: random.chance(0.25) ? [random.pick(RISKS.filter((one) => one !== 'neuropathy' || kind !== 'dusky-toe'))] : [],
      plan: { checkInEveryHours: 24, graceHours: 36 },
      antibioticStartedAt: antibiotic && antibiotic < now ? iso(antibiotic) : null,
      now: iso(now),
      checkIns: drawn.checkIns,
    },
  };
}

const iso = (time: DateTime): string => time.toISO({ suppressMilliseconds: true }) ?? '';

type CheckInJson = EpisodeJson['checkIns'][number];

function drawCheckIns(truth: CourseTruth, procedure: DateTime, lastDay: number, random: RandomSource): { checkIns: CheckInJson[]; wrongWarning: boolean } {
  const habitHour = random.between(7, 21);
  const refusing = truth.kind === 'cannot-judge' ? 0 : random.chance(0.1) ? 0.2 : 0.06;
  const missing = random.chance(0.1) ? 0.2 : 0.06;
  const checkIns: CheckInJson[] = [];
  let light: VisitLight | null = null;
  let wrongWarning = false;
  for (let day = 0; day <= lastDay + 1; day++) {
    const hour = Math.min(23.5, Math.max(5, habitHour + 1.5 * random.normal()));
    const at = procedure.startOf('day').plus({ days: day }).set({ hour: Math.floor(hour), minute: Math.floor((hour % 1) * 60) });
    const age = at.diff(procedure, 'hours').hours / 24;
    if (age < 0.15 || age > lastDay || random.chance(missing)) continue;
    light = nextLight(light, random);
    const said = drawAnswers(truth, age, random);
    wrongWarning ||= said.wrongWarning;
    const spoiled = truth.kind === 'cannot-judge' && truth.eventDay !== null && age > truth.eventDay;
    checkIns.push(...drawVisit(truth, age, at, said.answers, light, spoiled ? 0.95 : refusing, random));
  }
  return { checkIns, wrongWarning };
}

/** One photo, or a refused one and perhaps another a few minutes later; now and then a second one of the same visit. */
function drawVisit(truth: CourseTruth, age: number, at: DateTime, answers: CheckInJson['answers'], light: VisitLight, refusing: number, random: RandomSource): CheckInJson[] {
  const withPhoto = age > 1 && random.chance(0.96);
  const receivedAt = iso(at.plus({ minutes: random.chance(0.05) ? random.whole(60, 600) : 1 }));
  const take = () => (random.chance(refusing) ? refusedPhoto(receivedAt, random) : drawPhoto(truth, age, light, receivedAt, random));
  const first = withPhoto ? take() : null;
  const checkIns: CheckInJson[] = [{ at: iso(at), answers, photo: first }];
  if (first && (first.measured ? random.chance(0.08) : random.chance(0.6))) checkIns.push({ at: iso(at.plus({ minutes: random.whole(2, 15) })), answers: {}, photo: take() });
  return checkIns;
}

/** The words and numbers of the review list: what a level is called, which limits a rule rests on, what may be done. */
import type { LimitId } from '../decide/constants';
import type { Level, RuleId } from '../decide/finding';

/** Worst first. A level is said in words before it is drawn. */
export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  now: 'Now',
  today: 'Today',
  soon: 'Next working day',
  visit: 'At the follow-up',
  retake: 'New photo needed',
};

/** A newest photo that could not be measured is no finding of the rule book; it has a place on the list all the same. */
export const PHOTO_NOT_MEASURED = 'photo-not-measured';
export type ReviewRule = RuleId | typeof PHOTO_NOT_MEASURED;

export const RULE_WORDS: Readonly<Record<ReviewRule, string>> = {
  'reach-moderate': 'Redness reaches far',
  'reach-mild': 'Redness with one more sign',
  spreading: 'Redness spreads',
  'spreading-proximal': 'Redness spreads towards the foot',
  'streak-or-fever': 'Red streak, fever or chills',
  'dusky-toe': 'Dark, cold or numb toe, or bone visible',
  bleeding: 'Bleeding goes on',
  purulent: 'Thick coloured discharge',
  'pain-rising': 'Pain rises',
  stalled: 'Raw area has stopped shrinking',
  late: 'Not dry by the expected day',
  relapse: 'Wet again after it was dry',
  'spike-suspect': 'A spike of nail may be left',
  'bone-felt': 'Bone was felt',
  macerated: 'White soggy skin',
  'over-granulation': 'Proud red tissue',
  'antibiotic-no-better': 'No change since the antibiotic',
  silent: 'Nothing came',
  'cannot-judge': 'Photos cannot be judged',
  dry: 'Looks dry, to be confirmed',
  [PHOTO_NOT_MEASURED]: 'Newest photo not measured',
};

const EARLY = ['early.hours', 'early.chemicalHours'] as const;
const SPREADING = [
  'spreading.mm',
  'spreading.beforeMm',
  'spreading.areaPercent',
  'spreading.areaBeforePercent',
  'spreading.areaReachMm',
  'spreading.baseFromHours',
  'spreading.baseOlderHours',
  ...EARLY,
] as const;
const EXPECTED = ['expected.none', 'expected.naoh', 'expected.phenol30', 'expected.phenol60', 'expected.unknown'] as const;
const SLOW = ['slow.none', 'slow.naoh', 'slow.phenol30', 'slow.phenol60', 'slow.unknown'] as const;
const LATE = ['late.none', 'late.naoh', 'late.phenol30', 'late.phenol60', 'late.unknown'] as const;

/** The limits that stand behind each rule; where there are none, the rule rests on answers or on the patient's plan. */
export const RULE_LIMITS: Readonly<Record<ReviewRule, readonly LimitId[]>> = {
  'reach-moderate': ['reachModerate.mm'],
  'reach-mild': ['reachMild.mm', 'fresh.hours', ...EARLY],
  spreading: SPREADING,
  'spreading-proximal': SPREADING,
  'streak-or-fever': ['fever.celsius', 'fever.lowCelsius', 'fever.lowAgainHours'],
  'dusky-toe': ['numb.hours'],
  bleeding: [],
  purulent: ['purulent.reachMm', 'fresh.hours'],
  'pain-rising': ['pain.riseTwice', 'pain.riseOnce', 'pain.fromHours', 'early.hours'],
  stalled: ['stalled.peakPercent', 'stalled.dropPercent', 'stalled.photos', 'stalled.spanHours', 'stalled.extraDays', ...EXPECTED],
  late: [...SLOW, ...LATE],
  relapse: ['relapse.areaPercent', 'relapse.areaMm2'],
  'spike-suspect': ['spike.afterDays', 'pain.strong'],
  'bone-felt': ['boneFelt.afterDays', 'pain.strong'],
  macerated: ['macerated.percent'],
  'over-granulation': ['overGranulation.mm'],
  'antibiotic-no-better': ['antibiotic.hours', 'antibiotic.beforeHours', 'antibiotic.afterHours'],
  silent: [],
  'cannot-judge': [],
  dry: ['dry.hours'],
  [PHOTO_NOT_MEASURED]: [],
};

/** What a person may do with a case. */
export const RESOLUTION_ACTIONS = ['called', 'messaged', 'bringInToday', 'askClinician', 'nothingNeeded'] as const;
export type ResolutionAction = (typeof RESOLUTION_ACTIONS)[number];

interface ActionWords {
  readonly words: string;
  /** Stands for the reason where a note may be left out. */
  readonly said: string;
  /** What has to be written down; null where a note may be left out. */
  readonly noteAsks: string | null;
}

export const ACTION_WORDS: Readonly<Record<ResolutionAction, ActionWords>> = {
  called: { words: 'Called', said: 'Called the patient.', noteAsks: null },
  messaged: { words: 'Message sent', said: 'Sent a message.', noteAsks: null },
  bringInToday: { words: 'Bring in today', said: 'Asked to come in today.', noteAsks: null },
  askClinician: { words: 'Ask clinician', said: 'Asked the clinician.', noteAsks: 'What is the clinician asked?' },
  nothingNeeded: { words: 'Nothing needed', said: '', noteAsks: 'Why is nothing needed?' },
};

/** A note or a message is a few sentences. Ours. */
export const MOST_NOTE_LETTERS = 2000;
/** Shorter is no reason. Ours. */
export const LEAST_NOTE_LETTERS = 3;
/** A claim lapses so long after the last sign of life from whoever has the case open. Ours. */
export const CLAIM_MINUTES = 5;
/** The list shows so many cases and says how many more there are: the worst are in it. Ours. */
export const MOST_ROWS = 100;

import type { Matricectomy } from '../care/procedure';
import { LIMITS, type LimitId } from '../decide/constants';
import type { Level, RuleId } from '../decide/finding';
import type { RuleBook } from '../decide/rule-book';

interface RuleText {
  readonly name: string;
  readonly limits: readonly LimitId[];
  /** Where the rule has no limit of its own. */
  readonly basis?: string;
}

const RULES: Readonly<Record<RuleId, RuleText>> = {
  'reach-moderate': { name: 'Redness reaches far', limits: ['reachModerate.mm'] },
  'reach-mild': { name: 'Redness with one more sign', limits: ['reachMild.mm', 'early.hours'] },
  spreading: { name: 'Redness spreads', limits: ['spreading.mm', 'spreading.earlyBaseMm', 'spreading.areaPercent', 'spreading.areaMm2', 'spreading.fewAreaMm2'] },
  'spreading-proximal': { name: 'Redness spreads toward the ankle', limits: ['spreading.mm', 'spreading.earlyBaseMm'] },
  'streak-or-fever': { name: 'Red streak or fever', limits: ['fever.celsius', 'fever.lowCelsius'] },
  'dusky-toe': { name: 'Black, grey or cold toe', limits: ['numb.hours'] },
  bleeding: { name: 'Bleeding that does not stop', limits: [], basis: 'common practice: 20 min of pressure with the foot raised; at once where blood runs' },
  purulent: { name: 'Thick coloured discharge', limits: ['purulent.reachMm'], basis: 'NHSN wording' },
  'pain-rising': { name: 'Pain rises', limits: ['pain.riseTwice', 'pain.riseOnce'] },
  stalled: { name: 'The raw area stands still', limits: ['stalled.peakPercent', 'stalled.dropPercent'] },
  late: { name: 'Not dry when it could be', limits: [] },
  relapse: { name: 'Wet or red again', limits: ['relapse.areaPercent', 'relapse.areaMm2'], basis: 'patient leaflets: two clean dressings' },
  'spike-suspect': { name: 'A spike of nail may be left', limits: ['spike.afterDays'] },
  'bone-felt': { name: 'Bone was felt, or deep pain goes on', limits: ['boneFelt.afterDays'] },
  macerated: { name: 'White soggy skin', limits: ['macerated.percent'] },
  'over-granulation': { name: 'Proud red tissue', limits: ['overGranulation.mm'] },
  'antibiotic-no-better': { name: 'No smaller on the antibiotic', limits: ['antibiotic.hours'] },
  silent: { name: 'Nothing came', limits: [], basis: 'ours: the interval and grace of this plan' },
  'cannot-judge': { name: 'Cannot be judged from photos', limits: [], basis: 'ours: two visits in a row' },
  dry: { name: 'May be dry: a person confirms', limits: ['dry.hours'] },
};

/** How soon a person looks, in words; position and words carry it, never a colour. */
export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  now: 'now',
  today: 'today',
  soon: 'next working day',
  visit: 'at this visit',
  retake: 'another photo',
};

const UNIT_WORDS: Readonly<Record<string, string>> = { mm2: 'mm²', '%': '%', h: 'h', d: 'days', '/10': 'of 10', Cel: '°C', mm: 'mm', '1': '' };

export interface RuleSaid {
  readonly name: string;
  /** Each limit with its source. */
  readonly limits: readonly string[];
}

/**
 * A rule's name, its limits in this clinic's book, and where each comes from.
 *
 * @param rule its id; one that is not in the list is called by its id
 * @param book the limits in force
 * @param matricectomy decides which day counts as late
 * @returns words for people
 * @example ruleWords('dry', DEFAULT_RULE_BOOK, 'none').limits // ['12 h (patient leaflets: two dressings in a row come off clean)']
 */
export function ruleWords(rule: string, book: RuleBook, matricectomy: Matricectomy): RuleSaid {
  if (!Object.hasOwn(RULES, rule)) return { name: rule, limits: [] };
  const { name, limits, basis } = RULES[rule as RuleId];
  const ids: readonly LimitId[] = rule === 'late' ? [`slow.${matricectomy}`, `late.${matricectomy}`] : limits;
  const said = ids.map((id) => `${book.limits[id]} ${UNIT_WORDS[LIMITS[id].unit]} (${LIMITS[id].source})`);
  return { name, limits: basis === undefined ? said : [...said, basis] };
}

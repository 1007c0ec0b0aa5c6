import { LIMITS, type LimitId } from '../decide/constants';
import { LIMIT_IDS } from '../decide/rule-book';

/** Which way the rule hears less; `either` where that depends on the course. */
export type LessSensitive = 'raised' | 'lowered' | 'either';

interface LimitText {
  readonly name: string;
  readonly less: LessSensitive;
}

const days = (name: string) => ({ name, less: 'raised' as const });

const TEXTS: Readonly<Record<LimitId, LimitText>> = {
  'visit.hours': { name: 'Photos and answers within so long are one visit', less: 'either' },
  'fresh.hours': { name: 'A photo speaks for a sign reported within so long', less: 'lowered' },
  'early.hours': { name: 'Until then redness and weeping are expected', less: 'raised' },
  'early.chemicalHours': { name: 'The same after phenol or sodium hydroxide, without a sign', less: 'raised' },
  'reachModerate.mm': { name: 'Redness reaches far: from this reach on', less: 'raised' },
  'reachMild.mm': { name: 'Redness with one more sign: from this reach on', less: 'raised' },
  'spreading.mm': { name: 'Redness spreads: growth of reach', less: 'raised' },
  'spreading.beforeMm': { name: 'Redness spreads: growth seen the visit before', less: 'raised' },
  'spreading.areaPercent': { name: 'Redness spreads: growth of area', less: 'raised' },
  'spreading.areaBeforePercent': { name: 'Redness spreads: growth of area the visit before', less: 'raised' },
  'spreading.areaMm2': { name: 'Redness spreads: growth of area, at least', less: 'raised' },
  'spreading.fewAreaMm2': { name: 'Redness spreads: growth of area over two visits only, at least', less: 'raised' },
  'spreading.areaReachMm': { name: 'Redness spreads by area: growth of reach beside it', less: 'raised' },
  'spreading.baseFromHours': { name: 'Redness spreads: visits to compare with begin at', less: 'either' },
  'spreading.earlyBaseFromHours': { name: 'Redness spreads: where there are none, visits to compare with begin at', less: 'either' },
  'spreading.earlyBaseMm': { name: 'Redness spreads: growth of reach against such an early visit, or the visit just before', less: 'raised' },
  'spreading.baseOlderHours': { name: 'Redness spreads: visits to compare with are older by', less: 'either' },
  'fever.celsius': { name: 'Fever: from this temperature on', less: 'raised' },
  'fever.lowCelsius': { name: 'Low temperature: below this', less: 'lowered' },
  'fever.lowAgainHours': { name: 'Low temperature read twice within', less: 'lowered' },
  'numb.hours': { name: 'Toe still numb so long after the anaesthetic', less: 'raised' },
  'purulent.reachMm': { name: 'Thick discharge is urgent from this reach on', less: 'raised' },
  'pain.riseTwice': { name: 'Pain rises: on two reports in a row', less: 'raised' },
  'pain.riseOnce': { name: 'Pain rises: on one report', less: 'raised' },
  'pain.fromHours': { name: 'Pain rises: reports to compare with begin at', less: 'either' },
  'pain.strong': { name: 'Strong pain begins at', less: 'raised' },
  'stalled.peakPercent': { name: 'Raw area stands still: more than this share of its peak is left', less: 'raised' },
  'stalled.dropPercent': { name: 'Raw area stands still: it fell by less than', less: 'lowered' },
  'stalled.photos': { name: 'Raw area stands still: usable photos needed', less: 'raised' },
  'stalled.spanHours': { name: 'Raw area stands still: time that they span', less: 'raised' },
  'stalled.extraDays': { name: 'Raw area stands still: days beyond half the expected time', less: 'raised' },
  'expected.none': days('Expected dry: no matricectomy'),
  'expected.naoh': days('Expected dry: sodium hydroxide'),
  'expected.phenol30': days('Expected dry: phenol 30 s'),
  'expected.phenol60': days('Expected dry: phenol 60 s'),
  'expected.unknown': days('Expected dry: matricectomy not known'),
  'slow.none': days('Slow to dry: no matricectomy'),
  'slow.naoh': days('Slow to dry: sodium hydroxide'),
  'slow.phenol30': days('Slow to dry: phenol 30 s'),
  'slow.phenol60': days('Slow to dry: phenol 60 s'),
  'slow.unknown': days('Slow to dry: matricectomy not known'),
  'late.none': days('Late to dry: no matricectomy'),
  'late.naoh': days('Late to dry: sodium hydroxide'),
  'late.phenol30': days('Late to dry: phenol 30 s'),
  'late.phenol60': days('Late to dry: phenol 60 s'),
  'late.unknown': days('Late to dry: matricectomy not known'),
  'relapse.areaPercent': { name: 'Red again: growth of area', less: 'raised' },
  'relapse.areaMm2': { name: 'Red again: growth of area, at least', less: 'raised' },
  'spike.afterDays': { name: 'A spike may be left: tender corner after', less: 'raised' },
  'boneFelt.afterDays': { name: 'Deep pain goes on after', less: 'raised' },
  'macerated.percent': { name: 'White soggy skin: share of the fold', less: 'raised' },
  'overGranulation.mm': { name: 'Proud red tissue: height over the fold', less: 'raised' },
  'antibiotic.hours': { name: 'No smaller on the antibiotic: judged after', less: 'raised' },
  'antibiotic.beforeHours': { name: 'No smaller on the antibiotic: largest reach from so long before', less: 'either' },
  'antibiotic.afterHours': { name: 'No smaller on the antibiotic: largest reach until so long after', less: 'either' },
  'dressing.staysHours': { name: 'No photo is expected under the first dressing', less: 'raised' },
  'dry.hours': { name: 'May be dry: two dry check-ins lie apart by', less: 'lowered' },
};

const UNITS: Readonly<Record<string, string>> = { mm: 'mm', mm2: 'mm²', '%': '%', h: 'h', d: 'days', '/10': 'of 10', Cel: '°C', '1': '' };

/**
 * What a limit is called.
 *
 * @param id of the limit
 * @returns its name and its unit, in words
 * @example limitWords('fever.celsius').unit // '°C'
 */
export const limitWords = (id: LimitId): { readonly name: string; readonly unit: string; readonly less: LessSensitive } => ({ ...TEXTS[id], unit: UNITS[LIMITS[id].unit] });

/**
 * Changes with which a rule may hear less than before, each as a sentence for whoever makes it.
 *
 * @param before limits in force
 * @param after limits as they would be
 * @returns empty where nothing becomes less sensitive
 * @example lessSensitiveWords({ ...DEFAULT_RULE_BOOK.limits }, { ...DEFAULT_RULE_BOOK.limits, 'fever.celsius': 38.5 })[0] // 'Fever: from this temperature on: 38 becomes 38.5 °C. The rule hears less.'
 */
export function lessSensitiveWords(before: Readonly<Record<LimitId, number>>, after: Readonly<Record<LimitId, number>>): string[] {
  return LIMIT_IDS.filter((id) => after[id] !== before[id]).flatMap((id) => {
    const { name, unit, less } = limitWords(id);
    if (less !== 'either' && after[id] > before[id] !== (less === 'raised')) return [];
    return `${name}: ${before[id]} becomes ${after[id]}${unit === '' ? '' : ` ${unit}`}. The rule ${less === 'either' ? 'may hear' : 'hears'} less.`;
  });
}

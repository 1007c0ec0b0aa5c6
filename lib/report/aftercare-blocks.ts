import { DEFAULT_DRESSING_STAYS_HOURS } from '../care/constants';
import { MS_PER_HOUR } from '../care/instant';
import type { AftercareFacts, AftercareWords } from './aftercare-facts';

/** One heading with what stands under it; `listed` lines have a mark before them. */
export interface SheetBlock {
  readonly heading: string;
  readonly lines: readonly string[];
  readonly listed?: readonly string[];
  readonly last?: readonly string[];
}

export interface AftercareBlocks {
  readonly page: SheetBlock;
  readonly left: readonly SheetBlock[];
  readonly right: readonly SheetBlock[];
}

/** A plan without a length of soak has the common one. Common practice. */
const SOAK_MINUTES = 10;

/**
 * A moment in the patient's own zone and language.
 *
 * @param at ISO 8601
 * @param facts language and zone
 * @param withTime whether the hour is told
 * @example momentWords('2026-03-02T09:00:00Z', { language: 'en', timeZone: 'Europe/London' }, true) // 'Monday 2 March at 09:00'
 */
export function momentWords(at: string, { language, timeZone }: Pick<AftercareFacts, 'language' | 'timeZone'>, withTime: boolean): string {
  const locale = { en: 'en-GB', es: 'es-ES' }[language];
  const day = new Intl.DateTimeFormat(locale, { timeZone, weekday: 'long', day: 'numeric', month: 'long' }).format(new Date(at)).replaceAll(',', '');
  if (!withTime) return new Intl.DateTimeFormat(locale, { timeZone, day: 'numeric', month: 'long', year: 'numeric' }).format(new Date(at));
  const time = new Intl.DateTimeFormat(locale, { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }).format(new Date(at));
  return `${day} ${language === 'es' ? 'a las' : 'at'} ${time}`;
}

/**
 * What the sheet says, in order, before it is laid out: the page, the plan and bleeding on the left, whom to call on the right.
 *
 * @param facts of the person and the clinic
 * @param words of the language
 * @example aftercareBlocks(facts, AFTERCARE_EN).left[1].heading // 'If it bleeds'
 */
export function aftercareBlocks(facts: AftercareFacts, words: AftercareWords): AftercareBlocks {
  const { plan, clinic, feverC, numbHours } = facts;
  const { name, phone, openingHours, emergencyPhone } = clinic;
  return {
    page: { heading: words.page.heading, lines: [...words.page.lines, words.page.every(plan.checkInEveryHours)] },
    left: [
      { heading: words.plan.heading, lines: planLines(facts, words) },
      { heading: words.bleeding.heading, lines: words.bleeding.lines },
    ],
    right: [
      { heading: words.call.heading, lines: [], listed: words.call.signs(String(feverC), numbHours), last: [words.call.why] },
      { heading: words.who.heading, lines: [name, phone, words.who.hours(openingHours), words.who.emergency(emergencyPhone)] },
    ],
  };
}

function planLines({ plan, procedureAt, language, timeZone }: AftercareFacts, { plan: words }: AftercareWords): string[] {
  const { dressingStaysHours = DEFAULT_DRESSING_STAYS_HOURS, soaksPerDay = 0, soakMinutes = SOAK_MINUTES, soakDays, coverBetweenSoaks = true, notes = '' } = plan;
  const until = new Date(Date.parse(procedureAt) + dressingStaysHours * MS_PER_HOUR).toISOString();
  const soaks = soaksPerDay === 0 ? [words.noSoaks] : [words.soaks(soaksPerDay, soakMinutes, soakDays ?? null), coverBetweenSoaks ? words.cover : words.noCover];
  return [words.dressing(dressingStaysHours, momentWords(until, { language, timeZone }, true)), ...soaks, ...(notes === '' ? [] : [notes])];
}

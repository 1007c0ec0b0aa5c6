import type { Language } from '../../_messages/message-keys';

const LOCALE: Readonly<Record<Language, string>> = { en: 'en-GB', es: 'es' };

/** A date, or a date with its time, in words and in the patient's own zone. */
export function sayWhen(instant: string | number, kind: 'day' | 'time', language: Language, timeZone: string): string {
  const day = { weekday: 'long', day: 'numeric', month: 'long' } as const;
  const shape = kind === 'day' ? day : ({ ...day, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const);
  return new Intl.DateTimeFormat(LOCALE[language], { ...shape, timeZone }).format(new Date(instant));
}

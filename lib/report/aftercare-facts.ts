import type { Plan } from '../care/plan';

export type AftercareLanguage = 'en' | 'es';

/** All that the aftercare sheet of one person rests on. No name: a case code. */
export interface AftercareFacts {
  readonly language: AftercareLanguage;
  readonly caseCode: string;
  readonly foot: 'left' | 'right' | null;
  /** ISO 8601 */
  readonly procedureAt: string;
  readonly timeZone: string;
  readonly plan: Plan;
  readonly clinic: { readonly name: string; readonly phone: string; readonly emergencyPhone: string; readonly openingHours: string };
  /** From the clinic's rule book. */
  readonly feverC: number;
  readonly numbHours: number;
  /** The personal link, and its code: true where dark. */
  readonly address: string;
  readonly code: readonly (readonly boolean[])[];
}

/** What the sheet says in one language. Reading age 11: short sentences, everyday words, never a word that all is well. */
export interface AftercareWords {
  readonly title: string;
  readonly toe: Readonly<Record<'left' | 'right' | 'unknown', string>>;
  readonly about: (toe: string, date: string, caseCode: string) => string;
  readonly page: { readonly heading: string; readonly lines: readonly string[]; readonly every: (hours: number) => string };
  readonly plan: {
    readonly heading: string;
    readonly dressing: (hours: number, until: string) => string;
    readonly soaks: (perDay: number, minutes: number, days: number | null) => string;
    readonly noSoaks: string;
    readonly cover: string;
    readonly noCover: string;
  };
  readonly bleeding: { readonly heading: string; readonly lines: readonly string[] };
  readonly call: { readonly heading: string; readonly signs: (feverC: string, numbHours: number) => readonly string[]; readonly why: string };
  readonly who: { readonly heading: string; readonly hours: (hours: string) => string; readonly emergency: (phone: string) => string };
  readonly caution: readonly string[];
}

import type { en } from './en';

export type Language = 'en' | 'es';

/** The same keys with any text behind them, so that no language can lack a sentence. */
type AnyText<T> = T extends string
  ? string
  : T extends (...values: infer Values) => string
    ? (...values: Values) => string
    : { readonly [Key in keyof T]: AnyText<T[Key]> };

export type Messages = AnyText<typeof en>;

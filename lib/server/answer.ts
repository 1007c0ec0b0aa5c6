import type { Verdict } from '../access/guard';

/** What a route answers, before it becomes a response. */
export interface Answer {
  readonly status: number;
  /** Sent as JSON; absent where `bytes` are sent, or nothing. */
  readonly json?: unknown;
  readonly bytes?: Uint8Array<ArrayBuffer>;
  readonly headers?: Readonly<Record<string, string>>;
}

/** `answer({ ok: true })` */
export const answer = (json: unknown, status = 200): Answer => ({ status, json });

/** A refusal names its reason in one word; the page has the sentence in every language. */
export const refusal = (status: number, problem: string, facts: Readonly<Record<string, unknown>> = {}): Answer => ({
  status,
  json: { problem, ...facts },
});

/** Somebody else's episode is answered like one that does not exist. */
export function refusedBy({ because }: Extract<Verdict, { allowed: false }>): Answer {
  const status = { notSignedIn: 401, birthYearOwed: 403, notYours: 404 }[because];
  return refusal(status, because === 'notYours' ? 'notFound' : because);
}

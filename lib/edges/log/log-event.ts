/** One line of JSON per event, on standard error. Ids and counts only: no names, no answers, no addresses, no secrets. */
export function logEvent(event: string, facts: Readonly<Record<string, string | number | boolean | null>> = {}): void {
  process.stderr.write(`${JSON.stringify({ at: new Date().toISOString(), event, ...facts })}\n`);
}

/** What may be said of an error in a log: its kind and message, and the first line of where it happened. */
export const errorFacts = (error: unknown): { error: string; where: string | null } =>
  error instanceof Error
    ? { error: `${error.name}: ${error.message}`.slice(0, 500), where: error.stack?.split('\n').find((line) => /^\s+at /.test(line))?.trim() ?? null }
    : { error: String(error).slice(0, 500), where: null };

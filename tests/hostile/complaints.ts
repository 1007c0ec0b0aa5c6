/** What `console.error` was told during one test; anything at all fails it. */
export interface Complaints {
  /** Stands in for `console.error`. */
  readonly hear: (...parts: unknown[]) => void;
  /** Throws if anything was heard, and forgets it. */
  readonly expectNone: () => void;
}

/** `const c = complaints(); c.hear('no'); c.expectNone()` throws. */
export function complaints(): Complaints {
  const heard: string[] = [];
  return {
    hear: (...parts) => void heard.push(parts.map(String).join(' ')),
    expectNone: () => {
      const all = heard.splice(0);
      if (all.length > 0) throw new Error(`console.error was called: ${all.join(' | ')}`);
    },
  };
}

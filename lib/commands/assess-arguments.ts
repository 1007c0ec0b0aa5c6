import { parseArgs } from 'node:util';

export interface AssessArguments {
  /** A path, or `-` for standard input; null with `--schema`. */
  readonly episode: string | null;
  /** A path, or `-` for standard output; null prints a summary. */
  readonly json: string | null;
  readonly schema: boolean;
  readonly lines: boolean;
}

export const ASSESS_USAGE = `Judges the course of one toe: a trend and findings, each with its numbers.

  npm run -s assess -- EPISODE.json [options]   (- reads standard input)

  --json FILE|-   write trend and findings as JSON
  --lines         one episode a line in, one answer a line out; a line that is refused gives {"problem": …}
  --schema        print the JSON schema of an episode
  --help

Leaves 0 when everything was judged, 2 when an episode could not be read.
An aid for those who follow up, not a diagnosis: local protocols and a licensed professional's judgement come first.
`;

const OPTIONS = {
  json: { type: 'string' },
  schema: { type: 'boolean' },
  lines: { type: 'boolean' },
  help: { type: 'boolean' },
} as const;

/** The command line as data; `problem` is one sentence for the person who typed it. */
export function readAssessArguments(words: readonly string[]): AssessArguments | { readonly problem: string } | 'help' {
  try {
    const { values, positionals } = parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
    if (values.help) return 'help';
    const schema = values.schema ?? false;
    if (positionals.length > 1) return { problem: `One episode at a time, received ${positionals.length}; many go through --lines.` };
    if (positionals.length === 0 && !schema && !values.lines) return { problem: 'No episode was named. Name a JSON file, or - for standard input.' };
    const episode = positionals[0] ?? (schema ? null : '-');
    return { episode, json: values.json ?? null, schema, lines: values.lines ?? false };
  } catch (error) {
    return { problem: `${(error as Error).message.replace(/\.?$/, '.').replace(/\n/g, ' ')}` };
  }
}

/**
 * Folder = stage, and imports only point back up the journey of a photo. The table below is the rule; adding a folder
 * to `lib` means adding a line here.
 */
import path from 'node:path';

/** In the order a photo passes them. `care` holds the words of the job; `review` is where a person decides. */
export const STAGES = [
  'photo',
  'card',
  'rectify',
  'colour',
  'segment',
  'measure',
  'trend',
  'care',
  'decide',
  'review',
] as const;

const WORDS = ['units', 'result'];
const PURE = [...WORDS, ...STAGES];

/** What each layer may import besides itself. Absent from this table: nothing may be there. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  units: [],
  result: ['units'],
  ...Object.fromEntries(STAGES.map((stage, at) => [stage, [...WORDS, ...STAGES.slice(0, at)]])),
  access: [...WORDS, 'care'],
  pipeline: PURE,
  report: [...PURE, 'pipeline'],
  // Of the pipeline an edge may know the ports it fills, and nothing else: see `onlyPorts`.
  edges: [...PURE, 'pipeline'],
  server: [...PURE, 'access', 'pipeline', 'report', 'edges'],
  commands: [...PURE, 'access', 'pipeline', 'report', 'edges', 'server'],
  // `care` is what the phone and the server say to each other, and what is due when there is no network to ask.
  app: ['server', 'care'],
};

/** Pairs `importer → imported` that are tolerated for now. It starts empty and may only shrink. */
export const IMPORT_ALLOWLIST: readonly string[] = [];

/** Which layer a file belongs to; a file in `lib` that no line of the table names is its own, unknown layer. */
function layerOf(file: string): string {
  const [top, second = ''] = file.split('/');
  return top === 'lib' ? second.replace(/\.\w+$/, '') : top;
}

/** The file, without its ending, that a specifier means; null for a package. `@/` is the root, as Next has it. */
function targetOf(from: string, specifier: string): string | null {
  if (specifier.startsWith('@/')) return specifier.slice(2);
  return specifier.startsWith('.') ? path.posix.join(path.posix.dirname(from), specifier) : null;
}

/**
 * What is wrong with one import, or null.
 * @param from the importing file, relative to the root
 * @param specifier as written
 * @returns one sentence; packages are no concern of this rule (see purity-rule)
 * @example importBreach('lib/card/serial.ts', '../units') // null
 */
export function importBreach(from: string, specifier: string): string | null {
  if (!/^(lib|app)\//.test(from)) return null;
  const target = targetOf(from, specifier);
  if (target === null) return null;
  const [layer, wanted] = [layerOf(from), layerOf(target)];
  const allowed = MAY_IMPORT[layer];
  if (allowed === undefined) return `${from}: lib/${layer} is no part of the journey`;
  const breach = `${from} → ${target}`;
  if (wanted !== layer && !allowed.includes(wanted)) return `${breach}: ${layer} may not import ${wanted}`;
  const onlyPorts = layer === 'edges' && wanted === 'pipeline' && target !== 'lib/pipeline/ports';
  return onlyPorts ? `${breach}: an edge knows the ports of the pipeline only` : null;
}

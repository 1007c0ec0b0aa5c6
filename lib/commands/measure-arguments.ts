import { parseArgs } from 'node:util';

export interface MeasureArguments {
  readonly photos: readonly string[];
  readonly baseline: string | null;
  readonly earlier: readonly string[];
  readonly geometry: string | null;
  readonly clinicCard: string | null;
  readonly barMm: number | null;
  /** A path, or `-` for standard output. */
  readonly json: string | null;
  readonly overlay: string | null;
}

export const MEASURE_USAGE = `Measures redness and groove on photos of a toe in its calibration card, in millimetres.

  npm run -s measure -- PHOTO… [options]        (a folder stands for the photos in it)

  --baseline PHOTO     bring colours to those of the same card in this photo
  --earlier PHOTO…     earlier visits of the same toe: the margin is carried over, and differences are shown
  --geometry FILE      geometry of another card design
  --clinic-card CSV    measured colours of this print: name,L,a,b (L*a*b* D50)
  --bar-mm 50.0        what the printed 50 mm bar really measures
  --json FILE|-        write the result as JSON
  --overlay FILE.png   draw the outlines over the rectified photo
  --help

Leaves 0 when everything was measured, 3 when a photo was kept but not measured, 2 when a file could not be read.
A measurement aid, not a diagnosis: local protocols and a licensed professional's judgement come first.`;

const OPTIONS = {
  baseline: { type: 'string' },
  earlier: { type: 'string', multiple: true },
  geometry: { type: 'string' },
  'clinic-card': { type: 'string' },
  'bar-mm': { type: 'string' },
  json: { type: 'string' },
  overlay: { type: 'string' },
  help: { type: 'boolean' },
} as const;

/** The command line as data; `problem` is one sentence for the person who typed it. */
export function readMeasureArguments(words: readonly string[]): MeasureArguments | { readonly problem: string } | 'help' {
  try {
    const { values, positionals } = parseArgs({ args: spreadEarlier(words), options: OPTIONS, allowPositionals: true });
    if (values.help) return 'help';
    if (positionals.length === 0) return { problem: 'No photo was named. Put the photo, several, or a folder first.' };
    const barMm = values['bar-mm'] === undefined ? null : Number(values['bar-mm'].replace(',', '.'));
    if (barMm !== null && !Number.isFinite(barMm)) return { problem: `--bar-mm needs a number of millimetres, received ${values['bar-mm']}.` };
    return {
      photos: positionals,
      baseline: values.baseline ?? null,
      earlier: values.earlier ?? [],
      geometry: values.geometry ?? null,
      clinicCard: values['clinic-card'] ?? null,
      barMm,
      json: values.json ?? null,
      overlay: values.overlay ?? null,
    };
  } catch (error) {
    return { problem: `${(error as Error).message}.` };
  }
}

/** `--earlier a b c` means three earlier photos: everything up to the next option. */
function spreadEarlier(words: readonly string[]): string[] {
  const spread: string[] = [];
  let earlier = false;
  for (const word of words) {
    if (word === '--earlier') earlier = true;
    else if (word.startsWith('--')) {
      earlier = false;
      spread.push(word);
    } else if (earlier) spread.push('--earlier', word);
    else spread.push(word);
  }
  return spread;
}

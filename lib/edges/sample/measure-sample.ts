import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import path from 'node:path';

/** A phantom that comes with the project; the photo that the method page works its example on. */
const SAMPLES = 'sample-images';
const PHOTO = 'measured/light-warm-led.jpg';
const LIMIT_MS = 60_000;
const MOST_BYTES = 16_000_000;

export interface MeasuredSample {
  readonly photo: string;
  /** What the measure command wrote. */
  readonly json: string;
  /** The redness area that was drawn, mm². */
  readonly trueAreaMm2: number;
}

let measuring: Promise<MeasuredSample | null> | null = null;

/**
 * The sample photo through the whole method as it stands, once in the life of this process, by a process of its own: what
 * serves pages opens no picture. Null where it could not be run.
 */
export function measureSample(): Promise<MeasuredSample | null> {
  measuring ??= run();
  return measuring;
}

async function run(): Promise<MeasuredSample | null> {
  const json = await measured();
  if (json === null) return null;
  const { photos } = JSON.parse(await readFile(path.join(SAMPLES, 'manifest.json'), 'utf8')) as Manifest;
  const truth = photos.find(({ file }) => file === PHOTO)?.truth.measurements;
  return truth ? { photo: path.posix.join(SAMPLES, PHOTO), json, trueAreaMm2: truth.erythemaArea } : null;
}

interface Manifest {
  readonly photos: readonly { readonly file: string; readonly truth: { readonly measurements: { readonly erythemaArea: number } | null } }[];
}

function measured(): Promise<string | null> {
  const words = ['--import', 'tsx', path.join('lib', 'commands', 'measure.ts'), path.join(SAMPLES, PHOTO), '--bar-mm', '50', '--json', '-'];
  return new Promise((resolve) => {
    execFile(process.execPath, words, { timeout: LIMIT_MS, maxBuffer: MOST_BYTES }, (error, out) => resolve(error ? null : out));
  });
}

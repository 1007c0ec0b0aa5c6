/** Writes `sample-images/`: a few photos that can be measured, one for every reason to refuse, and one series of visits. */
import { mkdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { cleanSpec, faultSpec } from './fault-spec';
import { LIGHT_NAMES } from './light/light-spectra';
import { FAULT_KINDS, type CameraSpec, type PhantomSpec } from './phantom-spec';
import type { PhantomTruth } from './phantom-truth';
import { renderEach } from './render-many';
import { seriesSpecs } from './series-specs';
import { SKIN_CLASSES } from './skin/skin-class';

const FOLDER = path.resolve(import.meta.dirname, '..', '..', 'sample-images');
const SEED = 4100;

/** One size and quality for all, so that the folder stays small. */
function tidy(spec: PhantomSpec): PhantomSpec {
  const upright = spec.camera.heightPx > spec.camera.widthPx;
  const [widthPx, heightPx] = upright ? [1200, 1600] : [1600, 1200];
  const size: Partial<CameraSpec> = { widthPx, heightPx, jpegQuality: Math.min(80, spec.camera.jpegQuality) };
  return { ...spec, camera: { ...spec.camera, ...size } };
}

/** `tooDark` → `too-dark`, `very light` → `very-light` */
const fileName = (words: string): string => words.replace(/([A-Z])/g, '-$1').replace(/ /g, '-').toLowerCase();

interface Sample {
  readonly file: string;
  readonly spec: PhantomSpec;
  readonly visitDay?: number;
}

function measured(): Sample[] {
  const pairs = SKIN_CLASSES.map((skinClass, i) => [skinClass, LIGHT_NAMES[i % LIGHT_NAMES.length]] as const);
  const more = [['light', 'warmLed'], ['brown', 'daylight']] as const;
  const one = [...pairs, ...more].map(([skinClass, key], i) => {
    const spec = cleanSpec(SEED + i, { skinClass, light: { key, ambient: key }, camera: { tiltDeg: 3 + 4 * i } });
    return { file: `measured/${fileName(`${skinClass}-${key}`)}.jpg`, spec: tidy(spec) };
  });
  return [...one, { file: 'measured/far-up-the-toe.jpg', spec: tidy(farUpTheToe()) }];
}

/** Redness with a tongue toward the ankle, past the 20 mm from which an infection counts as moderate. */
function farUpTheToe(): PhantomSpec {
  const redness = [{ where: 'treatedFold', addedBloodShare: 0.035, widthMm: 4.5, edgeMm: 1.5, from: 0.1, to: 0.95, raggedness: 0.15, tongueMm: 21, spot: null }] as const;
  return cleanSpec(SEED + 50, { skinClass: 'light', light: { key: 'daylight', ambient: 'daylight' }, wound: { redness }, camera: { tiltDeg: 5 } });
}

function refused(): Sample[] {
  const kinds = FAULT_KINDS.filter((kind) => kind !== 'duplicate');
  const photos = kinds.map((kind, i) => ({ file: `refused/${fileName(kind)}.jpg`, spec: tidy(faultSpec(kind, SEED + 100 + i)) }));
  // A duplicate is a photo that was handed in before: byte for byte the first of the measured ones.
  return [...photos, { file: 'refused/duplicate.jpg', spec: { ...measured()[0].spec, faults: ['duplicate'] } }];
}

function series(): Sample[] {
  return seriesSpecs('spreading', SEED + 200, { skinClass: 'intermediate', camera: { defocusPx: 0, motionPx: 0 } }).map(({ day, spec }) => ({
    file: `series/day-${String(day).padStart(2, '0')}.jpg`,
    spec: tidy(spec),
    visitDay: day,
  }));
}

/** Micrometres and thousandths of a pixel are enough; small numbers keep six digits. */
const shortNumbers = (_: string, value: unknown): unknown =>
  typeof value !== 'number' || Number.isInteger(value) ? value : Number(Math.abs(value) >= 1 ? value.toFixed(3) : value.toPrecision(6));

async function writeSamples(): Promise<void> {
  const samples = [...measured(), ...refused(), ...series()];
  for (const folder of ['measured', 'refused', 'series']) {
    await rm(path.join(FOLDER, folder), { recursive: true, force: true });
    await mkdir(path.join(FOLDER, folder), { recursive: true });
  }
  const entries: { file: string; visitDay: number | null; truth: PhantomTruth }[] = [];
  await renderEach(samples.map(({ spec }) => spec), async (index, { jpeg, truth }) => {
    const { file, visitDay } = samples[index];
    await writeFile(path.join(FOLDER, file), jpeg);
    entries[index] = { file, visitDay: visitDay ?? null, truth };
    console.log(`${file}  ${Math.round(jpeg.length / 1024)} kB`);
  });
  await writeFile(path.join(FOLDER, 'manifest.json'), `${JSON.stringify({ photos: entries }, shortNumbers)}\n`);
}

await writeSamples();

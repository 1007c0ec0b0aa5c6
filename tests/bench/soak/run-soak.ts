import { execFile } from 'node:child_process';
import path from 'node:path';
import { promisify } from 'node:util';
import { max, median } from 'd3-array';

const PROBE = path.join(import.meta.dirname, 'soak-probe.ts');
/** The first photos fill caches, arenas and the WebAssembly heap once. */
const WARM_PHOTOS = 20;
const PHOTOS_PER_READING = 10;

export interface Soak {
  readonly photos: number;
  /** Memory after the first twenty photos, MB. */
  readonly warmMb: number;
  /** Median of the last third, MB. */
  readonly lateMb: number;
  readonly peakMb: number;
  /** `lateMb / warmMb` */
  readonly growth: number;
}

/** Analyses so many photos one after the other in a process of its own, and says whether its memory grew. */
export async function runSoak(photos: number): Promise<Soak> {
  const { stdout } = await promisify(execFile)(process.execPath, ['--expose-gc', '--import', 'tsx', PROBE, String(photos)]);
  const { rssMb } = JSON.parse(stdout) as { rssMb: number[] };
  const warmMb = rssMb[WARM_PHOTOS / PHOTOS_PER_READING - 1];
  const lateMb = median(rssMb.slice(-Math.ceil(rssMb.length / 3))) as number;
  return { photos, warmMb, lateMb, peakMb: max(rssMb) as number, growth: lateMb / warmMb };
}

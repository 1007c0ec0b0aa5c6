import { randomSpec } from '../../phantom/random-spec';
import { renderPhantom } from '../../phantom/render-phantom';

/** Any seed whose photo is measured; the same one every time, so that runs can be compared. */
const SEED = 4;
const SIZE_PX = { widthPx: 4032, heightPx: 3024 };

/** A rendered photo of the size that phones take, held upright so that no turning is timed. */
export async function twelveMegapixelPhoto(): Promise<Uint8Array> {
  const spec = randomSpec(SEED, { skinClass: 'light', light: { key: 'daylight' }, camera: { ...SIZE_PX, orientationTag: 1, tiltDeg: 8, distanceMm: 260, focal35Mm: 26 } });
  return (await renderPhantom(spec)).jpeg;
}

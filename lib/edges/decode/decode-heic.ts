/**
 * Pixels of a HEIC, through libheif as WebAssembly (the picture library has no HEVC). The file's own rotation and
 * mirroring are applied by libheif: what comes back is upright, and the EXIF orientation must not be applied again.
 */
import { Worker } from 'node:worker_threads';
import { MAX_PIXELS } from '../../photo/constants';
import { decodeRefusal, type DecodeRefusal } from '../../photo/decode-refusals';
import type { RgbPicture } from '../../photo/turn-upright';
import type { ContainerHeader } from './container-header';

/** Twelve megapixels take one to two seconds; 48 on a busy machine stay within this. */
const MAX_MILLISECONDS = 40_000;

/** JavaScript memory of the thread; the pixels lie outside it. */
const MAX_HEAP_MB = 256;

/** `await decodeHeic(header)` → code values in the file's own colour space, or a refusal. */
export function decodeHeic(header: ContainerHeader, limitMs = MAX_MILLISECONDS): Promise<RgbPicture | DecodeRefusal> {
  const { widthPx, heightPx, picture } = header;
  return new Promise((resolve) => {
    const worker = new Worker(new URL('./heic-worker.mjs', import.meta.url), {
      workerData: { bytes: picture, widthPx, heightPx, maxPixels: MAX_PIXELS },
      resourceLimits: { maxOldGenerationSizeMb: MAX_HEAP_MB },
      // The library prints its complaints; they are kept out of this program's output.
      stdout: true,
      stderr: true,
      execArgv: [],
    });
    const finish = (result: RgbPicture | DecodeRefusal): void => {
      clearTimeout(timer);
      resolve(result);
      void worker.terminate();
    };
    const timer = setTimeout(() => finish(decodeRefusal('tookTooLong')), limitMs);
    worker.once('message', (decoded: RgbPicture) => finish(decoded));
    worker.once('error', (error) => finish(decodeRefusal('corrupt', `HEIC: ${error.message.slice(0, 120)}`)));
    worker.once('exit', () => finish(decodeRefusal('corrupt', 'HEIC: the decoder ended without a picture')));
  });
}

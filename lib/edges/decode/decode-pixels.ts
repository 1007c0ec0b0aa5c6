/** Pixels of a JPEG, PNG or WebP: 8 bit RGB as stored (not yet turned), with foreign colour profiles already applied. */
import { decodeRefusal, type DecodeRefusal } from '../../photo/decode-refusals';
import type { PartPx } from '../../photo/part-of';
import type { RgbPicture } from '../../photo/turn-upright';
import { openPicture } from './open-picture';

/**
 * What decoders complain about in files that are whole: stray bytes between segments, odd but harmless fields that
 * some phones write. Everything else that they warn of (data ending early, broken codes) spoils pixels.
 */
const HARMLESS = [
  /extraneous bytes before marker/,
  /Invalid SOS parameters/,
  /unknown JFIF revision/,
  /Unknown Adobe color transform/,
  /read gave \d+ warnings/,
  /error in tile/,
];

const linesOf = (message: string): string[] => message.split('\n').map((line) => line.trim()).filter((line) => line !== '');
const isHarmless = (line: string): boolean => HARMLESS.some((pattern) => pattern.test(line));

export interface PixelOptions {
  /** Leave the embedded profile aside, because the code values are sRGB or are converted afterwards. */
  readonly ignoreIcc: boolean;
  readonly flatten: boolean;
  /** Only this part of the picture, as stored. */
  readonly part?: PartPx;
}

/** `decodePixels(bytes, { ignoreIcc: true, flatten: false })` → a picture, or a refusal. */
export async function decodePixels(bytes: Uint8Array, options: PixelOptions): Promise<RgbPicture | DecodeRefusal> {
  try {
    return await readRgb(bytes, options, 'warning', []);
  } catch (error) {
    const strict = messageOf(error);
    if (!linesOf(strict).every(isHarmless)) return refusalFor(strict);
  }
  // Harmless words only: read again past them, and still stop at anything that spoils pixels.
  const warnings: string[] = [];
  try {
    const picture = await readRgb(bytes, options, 'truncated', warnings);
    const spoilt = warnings.flatMap(linesOf).find((line) => !isHarmless(line));
    return spoilt === undefined ? picture : refusalFor(spoilt);
  } catch (error) {
    return refusalFor(messageOf(error));
  }
}

async function readRgb(
  bytes: Uint8Array,
  { ignoreIcc, flatten, part }: PixelOptions,
  failOn: 'warning' | 'truncated',
  warnings: string[],
): Promise<RgbPicture> {
  const picture = openPicture(bytes, { failOn, ignoreIcc });
  picture.on('warning', (warning: string) => warnings.push(warning));
  if (part) picture.extract({ left: part.left, top: part.top, width: part.widthPx, height: part.heightPx });
  if (flatten) picture.flatten({ background: '#ffffff' });
  const { data, info } = await picture.raw().toBuffer({ resolveWithObject: true });
  if (info.channels !== 3) throw new Error(`three channels are expected from the decoder, received ${info.channels}`);
  return { widthPx: info.width, heightPx: info.height, srgb: ownBytes(data) };
}

/** Never a window into memory that others share: a photo outlives this call and may be moved between threads. */
function ownBytes(data: Buffer): Uint8Array {
  const alone = data.byteOffset === 0 && data.byteLength === data.buffer.byteLength;
  return alone ? new Uint8Array(data.buffer) : new Uint8Array(data);
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

function refusalFor(message: string): DecodeRefusal {
  if (/timeout/i.test(message)) return decodeRefusal('tookTooLong');
  if (/premature end|not enough data|truncated/i.test(message)) return decodeRefusal('truncated', firstLine(message));
  return decodeRefusal('corrupt', firstLine(message));
}

const firstLine = (message: string): string => linesOf(message)[0]?.slice(0, 120) ?? '';

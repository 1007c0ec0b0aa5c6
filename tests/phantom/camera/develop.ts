/** From the light on the sensor to the eight bits of the file: electronics, then the phone's own idea of a nice picture. */
import { randomSource } from '../random/random-source';
import type { CameraSpec } from '../phantom-spec';
import type { LinearPicture } from './expose';
import { phoneSensor } from './phone-sensor';

const TABLE_SIZE = 4096;

const srgbCode = (light: number): number => (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);

/**
 * A phone's tone curve on linear light 0…1: the standard encoding, bent into an S, with a shoulder that holds the
 * highlights back. Rises everywhere, 0 → 0, 1 → 1.
 */
export function toneCurve(camera: Pick<CameraSpec, 'toneContrast' | 'toneShoulder'>, light: number): number {
  const held = (light * (1 + camera.toneShoulder)) / (1 + camera.toneShoulder * light);
  const code = srgbCode(held);
  const bent = code * code * (3 - 2 * code);
  return code + 0.55 * camera.toneContrast * (bent - code);
}

/** Noise of light and of electronics in sensor values, with clipping; vignetting and exposure come before. */
function sense(picture: LinearPicture, camera: CameraSpec, seed: number): Float32Array {
  const { widthPx, heightPx, rgb } = picture;
  const { colourMatrix: m } = phoneSensor(camera.phoneSeed);
  const random = randomSource(seed, 'noise');
  let state = Math.floor(random.next() * 4294967296) | 0;
  // Four uniform bytes of one draw, added: close enough to a bell, and quick.
  const bell = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let h = Math.imul(state ^ (state >>> 15), state | 1);
    h = (h + Math.imul(h ^ (h >>> 7), h | 61)) ^ h;
    h ^= h >>> 14;
    return ((h & 255) + ((h >>> 8) & 255) + ((h >>> 16) & 255) + (h >>> 24) - 510) / 147.8;
  };
  const far = (widthPx * widthPx + heightPx * heightPx) / 4;
  const developed = new Float32Array(rgb.length);
  const shot = 1 / camera.fullWell;
  const dark = camera.readNoise * camera.readNoise;
  for (let row = 0, i = 0; row < heightPx; row++) {
    const dy = row - heightPx / 2;
    for (let column = 0; column < widthPx; column++, i += 3) {
      const dx = column - widthPx / 2;
      const gain = camera.exposure * (1 - (camera.vignetting * (dx * dx + dy * dy)) / far);
      const r = rgb[i] * gain, g = rgb[i + 1] * gain, b = rgb[i + 2] * gain;
      const nr = 1.5 * bell() * Math.sqrt(dark + shot * Math.max(0, r));
      const ng = bell() * Math.sqrt(dark + shot * Math.max(0, g));
      const nb = 1.9 * bell() * Math.sqrt(dark + shot * Math.max(0, b));
      developed[i] = Math.min(1.25, r + m[0][0] * nr + m[0][1] * ng + m[0][2] * nb) * camera.whiteBalance[0];
      developed[i + 1] = Math.min(1.25, g + m[1][0] * nr + m[1][1] * ng + m[1][2] * nb);
      developed[i + 2] = Math.min(1.25, b + m[2][0] * nr + m[2][1] * ng + m[2][2] * nb) * camera.whiteBalance[1];
    }
  }
  return developed;
}

/** Evens out small differences between neighbours and keeps large ones: the smearing of phone pictures. */
function denoise(rgb: Float32Array, widthPx: number, heightPx: number, strength: number): Float32Array {
  if (strength <= 0.05) return rgb;
  const smooth = rgb.slice();
  const row = widthPx * 3;
  for (let r = 1; r < heightPx - 1; r++) {
    for (let at = r * row + 3; at < (r + 1) * row - 3; at++) {
      const here = rgb[at];
      const limit = (0.012 + 0.08 * Math.abs(here)) ** 2;
      const l = rgb[at - 3] - here, t = rgb[at - row] - here, n = rgb[at + 3] - here, b = rgb[at + row] - here;
      const lift = l / (limit + l * l) + t / (limit + t * t) + n / (limit + n * n) + b / (limit + b * b);
      smooth[at] = here + 0.2 * strength * limit * lift;
    }
  }
  return smooth;
}

/** Unsharp mask on brightness in coded values. */
function sharpen(code: Float32Array, widthPx: number, heightPx: number, amount: number): void {
  if (amount <= 0) return;
  const luma = new Float32Array(widthPx * heightPx);
  for (let i = 0; i < luma.length; i++) luma[i] = 0.3 * code[3 * i] + 0.59 * code[3 * i + 1] + 0.11 * code[3 * i + 2];
  for (let r = 1; r < heightPx - 1; r++) {
    for (let c = 1; c < widthPx - 1; c++) {
      const i = r * widthPx + c;
      const around = (luma[i - 1] + luma[i + 1] + luma[i - widthPx] + luma[i + widthPx]) / 6 +
        (luma[i - widthPx - 1] + luma[i - widthPx + 1] + luma[i + widthPx - 1] + luma[i + widthPx + 1]) / 12;
      const lift = amount * (luma[i] - around);
      code[3 * i] += lift;
      code[3 * i + 1] += lift;
      code[3 * i + 2] += lift;
    }
  }
}

/** The developed picture as sRGB bytes. */
export function develop(picture: LinearPicture, camera: CameraSpec, seed: number): Uint8Array {
  const { widthPx, heightPx } = picture;
  const { saturation } = camera;
  // Linear light at first; each value is coded where it stands.
  const code = denoise(sense(picture, camera, seed), widthPx, heightPx, camera.denoise);
  const curve = Float32Array.from({ length: TABLE_SIZE + 2 }, (_, i) => 255 * toneCurve(camera, Math.min(1, i / TABLE_SIZE)));
  for (let i = 0; i < code.length; i += 3) {
    const mean = 0.2126 * code[i] + 0.7152 * code[i + 1] + 0.0722 * code[i + 2];
    for (let j = i; j < i + 3; j++) {
      const vivid = mean + saturation * (code[j] - mean);
      const at = (vivid < 0 ? 0 : vivid > 1 ? 1 : vivid) * TABLE_SIZE;
      const low = at | 0;
      code[j] = curve[low] + (curve[low + 1] - curve[low]) * (at - low);
    }
  }
  sharpen(code, widthPx, heightPx, camera.sharpen);
  const bytes = new Uint8ClampedArray(code.length);
  for (let i = 0; i < code.length; i++) bytes[i] = code[i];
  return new Uint8Array(bytes.buffer);
}

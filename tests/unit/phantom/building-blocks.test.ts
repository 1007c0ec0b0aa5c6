import { describe, expect, it } from 'vitest';
import { colourResponse } from '../../phantom/camera/colour-response';
import { toneCurve } from '../../phantom/camera/develop';
import { LIGHT_NAMES } from '../../phantom/light/light-spectra';
import { randomSource } from '../../phantom/random/random-source';
import { layeredNoise, valueNoise } from '../../phantom/random/value-noise';
import { randomSpec } from '../../phantom/random-spec';
import { upperTail } from '../../phantom/scene/smooth';
import { SKIN_CLASSES } from '../../phantom/skin/skin-class';

describe('the random source', () => {
  it('repeats itself for one seed and differs for another seed or purpose', () => {
    const draw = (seed: number, purpose: string): number[] => {
      const random = randomSource(seed, purpose);
      return Array.from({ length: 5 }, () => random.next());
    };
    expect(draw(1, 'a')).toEqual(draw(1, 'a'));
    expect(draw(1, 'a')).not.toEqual(draw(2, 'a'));
    expect(draw(1, 'a')).not.toEqual(draw(1, 'b'));
  });

  it('is even between 0 and 1, and normal where it says so', () => {
    const random = randomSource(7);
    const even = Array.from({ length: 20000 }, () => random.next());
    const normal = Array.from({ length: 20000 }, () => random.normal());
    const mean = (values: number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(mean(even)).toBeCloseTo(0.5, 2);
    expect(mean(even.map((value) => (value - 0.5) ** 2))).toBeCloseTo(1 / 12, 2);
    expect(Math.abs(mean(normal))).toBeLessThan(0.03);
    expect(mean(normal.map((value) => value * value))).toBeCloseTo(1, 1);
  });
});

describe('the noise field', () => {
  it('is smooth and stays between its bounds', () => {
    const field = layeredNoise(3, 3);
    for (let i = 0; i < 500; i++) {
      expect(Math.abs(field(i * 0.37, i * 0.11))).toBeLessThanOrEqual(1);
      expect(Math.abs(valueNoise(3)(i * 0.37, 2) - valueNoise(3)(i * 0.37 + 1e-4, 2))).toBeLessThan(0.001);
    }
  });
});

describe('the tail of the normal distribution', () => {
  // Abramowitz and Stegun 1964, table 26.1.
  it.each([[0, 0.5], [1, 0.1586553], [1.2815516, 0.1], [-1, 0.8413447], [3, 0.0013499]])('above %d is %d', (z, share) => {
    expect(upperTail(z)).toBeCloseTo(share, 5);
  });
});

describe('a phone', () => {
  it('has a tone curve that rises from black to white', () => {
    const camera = { toneContrast: 0.8, toneShoulder: 0.5 };
    const curve = Array.from({ length: 201 }, (_, i) => toneCurve(camera, i / 200));
    expect(curve[0]).toBe(0);
    expect(curve[200]).toBeCloseTo(1, 9);
    for (let i = 1; i <= 200; i++) expect(curve[i]).toBeGreaterThan(curve[i - 1]);
  });

  it('follows the standard encoding when it adds nothing of its own (IEC 61966-2-1)', () => {
    expect(toneCurve({ toneContrast: 0, toneShoulder: 0 }, 0.2140411)).toBeCloseTo(0.5, 5);
  });

  it.each(LIGHT_NAMES.map((name) => [name] as const))('shows white as white in %s', (name) => {
    const [red, green, blue] = colourResponse(2, name).paint([1, 1, 1]);
    for (const value of [red, green, blue]) expect(value).toBeCloseTo(1, 9);
  });

  it('keeps a painted colour in daylight close to what it was', () => {
    const [red, green, blue] = colourResponse(2, 'daylight').paint([0.5, 0.2, 0.1]);
    expect(Math.hypot(red - 0.5, green - 0.2, blue - 0.1)).toBeLessThan(0.06);
  });
});

describe('a random spec', () => {
  const specs = Array.from({ length: 300 }, (_, seed) => randomSpec(seed));

  it('reaches every class, side and light', () => {
    expect(new Set(specs.map(({ toe }) => toe.skin.skinClass)).size).toBe(SKIN_CLASSES.length);
    expect(new Set(specs.map(({ wound }) => wound.side)).size).toBe(2);
    expect(new Set(specs.map(({ light }) => light.key)).size).toBe(LIGHT_NAMES.length);
  });

  it('shows the toe without redness, with redness on both sides and with redness elsewhere', () => {
    const kinds = specs.map(({ wound }) => wound.redness.map(({ where }) => where).join(' '));
    expect(kinds.filter((kind) => kind === '').length).toBeGreaterThan(15);
    expect(kinds.some((kind) => kind.includes('untreatedFold'))).toBe(true);
    expect(kinds.some((kind) => kind === 'elsewhere')).toBe(true);
  });

  it('lets swelling and redness vary independently', () => {
    const swollen = specs.filter(({ wound }) => wound.swellingMm > 0);
    const share = (list: typeof specs): number => list.filter(({ wound }) => wound.redness.length > 0).length / list.length;
    expect(Math.abs(share(swollen) - share(specs))).toBeLessThan(0.08);
  });

  it('keeps what an override says and draws the rest as before', () => {
    const plain = randomSpec(9);
    const changed = randomSpec(9, { camera: { tiltDeg: 12 } });
    expect(changed).toEqual({ ...plain, camera: { ...plain.camera, tiltDeg: 12 } });
  });
});

import { describe, expect, it } from 'vitest';
import { fitReferenceField } from '../../../lib/segment/reference-field';
import { seededRandom } from '../../seeded-random';
import { GRID } from './square-toe';

const pixels = GRID.widthPx * GRID.heightPx;
const across = (i: number) => ((i % GRID.widthPx) / GRID.widthPx) * 2 - 1;
const down = (i: number) => (Math.floor(i / GRID.widthPx) / GRID.heightPx) * 2 - 1;
/** The back of a toe paler than its sides, its tip redder: a quadratic of the map's position, in EI. */
const PLANTED = new Float32Array(pixels).map((_, i) => 18 + 1.5 * across(i) - 2 * down(i) + 3 * across(i) ** 2 - down(i) * across(i) + down(i) ** 2);
const EVERYWHERE = new Uint8Array(pixels).fill(1);

/** The sum of twelve uniform deviates less six: very nearly normal, standard deviation 1. */
function withNoise(plane: Float32Array): Float32Array {
  const chance = seededRandom(3);
  return plane.map((value) => value - 6 + Array.from({ length: 12 }, chance).reduce((sum, one) => sum + one, 0));
}

function farthest(found: Float32Array, planted: Float32Array): number {
  return found.reduce((most, value, i) => Math.max(most, Math.abs(value - planted[i])), 0);
}

describe('the field of the reference skin', () => {
  it('recovers a planted slope under noise of 1 EI within 0.2 EI, and the noise within a twentieth', () => {
    const sloped = new Float32Array(pixels).map((_, i) => 18 + 1.5 * across(i) - 2 * down(i));
    const fit = fitReferenceField(GRID, withNoise(sloped), EVERYWHERE);
    expect(farthest(fit?.field ?? new Float32Array(pixels), sloped)).toBeLessThan(0.2);
    expect(Math.abs((fit?.scatter ?? NaN) - 1)).toBeLessThan(0.05);
  });

  it('follows a planted bend, held back on purpose by its ridge: between three quarters of it and the whole', () => {
    const field = fitReferenceField(GRID, withNoise(PLANTED), EVERYWHERE)?.field ?? new Float32Array(pixels);
    // Both sides of the toe against its middle, in one row: slopes and cross terms cancel, 3 EI of bend are left.
    const row = GRID.widthPx * (GRID.heightPx >> 1);
    const bend = (plane: Float32Array) => (plane[row] + plane[row + GRID.widthPx - 1]) / 2 - plane[row + (GRID.widthPx >> 1)];
    expect(bend(PLANTED)).toBeCloseTo(3, 1);
    expect(bend(field)).toBeGreaterThan(0.75 * 3);
    expect(bend(field)).toBeLessThan(3.1);
    expect(Math.sqrt(field.reduce((sum, value, i) => sum + (value - PLANTED[i]) ** 2, 0) / pixels)).toBeLessThan(0.3);
  });

  it('is not moved by a fifth of the skin being 15 EI redder than it should be', () => {
    const chance = seededRandom(4);
    const clean = PLANTED.map((value) => value + chance() - 0.5);
    const spoilt = clean.map((value) => value + (chance() < 0.2 ? 15 : 0));
    const [without, despite] = [clean, spoilt].map((plane) => fitReferenceField(GRID, plane, EVERYWHERE)?.field ?? new Float32Array(pixels));
    // The plain mean would move by 3 EI.
    expect(farthest(despite, without)).toBeLessThan(0.3);
  });

  it('looks at reference skin alone: what lies elsewhere changes nothing', () => {
    const half = EVERYWHERE.map((_, i) => (down(i) > 0 ? 1 : 0));
    const other = PLANTED.map((value, i) => (half[i] ? value : 500));
    const [one, two] = [PLANTED, other].map((plane) => fitReferenceField(GRID, plane, half)?.field ?? new Float32Array(0));
    expect(two).toEqual(one);
  });

  it('is null where there is too little skin, or where all of it has no light', () => {
    expect(fitReferenceField(GRID, PLANTED, EVERYWHERE.map((_, i) => (i < 200 ? 1 : 0)))).toBeNull();
    expect(fitReferenceField(GRID, PLANTED.map(() => NaN), EVERYWHERE)).toBeNull();
  });
});

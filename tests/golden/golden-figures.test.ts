import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { METHOD_VERSION } from '../../lib/pipeline/method-version';
import { type GoldenFigures, goldenFigures } from './golden-figures';

const STORED = JSON.parse(readFileSync(path.join(import.meta.dirname, 'golden-figures.json'), 'utf8')) as GoldenFigures;
const ANNOUNCE = 'A number moved: raise METHOD_VERSION, write before and after into DEVELOPERS.md, then run tests/golden/write-golden-figures.ts';
/** Floating-point differences between processors move an outline by far less than half a per cent of its area. */
const RELATIVE_TOLERANCE = 0.005;

it('does not move a measured number without a new method version', async () => {
  const now = await goldenFigures();
  expect(now.methodVersion, ANNOUNCE).toBe(STORED.methodVersion);
  for (const [photo, figures] of Object.entries(STORED.photos)) {
    for (const [key, value] of Object.entries(figures)) {
      const found = now.photos[photo][key];
      if (typeof value === 'string') expect(found, `${photo} ${key}. ${ANNOUNCE}`).toBe(value);
      else expect(Math.abs(Number(found) - value), `${photo} ${key}. ${ANNOUNCE}`).toBeLessThanOrEqual(RELATIVE_TOLERANCE * Math.max(1, value));
    }
  }
});

it('has every method version announced in DEVELOPERS.md: a dated line of what moved', () => {
  const announced = readFileSync(path.resolve(import.meta.dirname, '..', '..', 'DEVELOPERS.md'), 'utf8');
  const line = announced.split('\n').find((one) => one.split('|')[2]?.trim() === METHOD_VERSION);
  expect(line, ANNOUNCE).toMatch(/^\| \d{4}-\d{2}-\d{2} \|/);
});

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { formatHex, parse, wcagContrast, type Rgb } from 'culori';
import { describe, expect, it } from 'vitest';
import { ROOT } from '../../architecture/source-tree';

const CSS = readFileSync(path.join(ROOT, 'app/tokens.css'), 'utf8');

/** The custom properties of one `:root` block: light is the first, dark and print stand in their media queries. */
function tokensOf(block: 'light' | 'dark' | 'print'): Record<string, string> {
  const start = { light: 0, dark: CSS.indexOf('(prefers-color-scheme: dark)'), print: CSS.indexOf('@media print') }[block];
  const text = CSS.slice(CSS.indexOf(':root', start), CSS.indexOf('}', CSS.indexOf(':root', start)));
  const found = Object.fromEntries([...text.matchAll(/--([\w-]+):\s*([^;]+);/g)].map(([, name, value]) => [name, value.trim()]));
  return block === 'light' ? found : { ...tokensOf('light'), ...found };
}

/** A colour laid over an opaque one, gamma-encoded as browsers do it. */
function over(top: string, ground: string): string {
  const [a, b] = [parse(top) as Rgb, parse(ground) as Rgb];
  const alpha = a.alpha ?? 1;
  const mix = (one: 'r' | 'g' | 'b') => a[one] * alpha + b[one] * (1 - alpha);
  return formatHex({ mode: 'rgb', r: mix('r'), g: mix('g'), b: mix('b') });
}

/** WCAG 2.2: 4.5 for text (1.4.3), 3 for edges of controls and the ring of the focus (1.4.11). */
const TEXT = [
  ['ink', 'paper'],
  ['ink', 'sheet'],
  ['ink', 'chosen'],
  ['ink-soft', 'paper'],
  ['ink-soft', 'sheet'],
  ['accent', 'paper'],
  ['paper', 'ink'],
] as const;
const EDGES = [
  ['edge', 'paper'],
  ['edge', 'sheet'],
  ['accent', 'paper'],
  ['accent', 'sheet'],
] as const;

describe.each(['light', 'dark', 'print'] as const)('the palette in %s', (block) => {
  const tokens = tokensOf(block);

  it.each(TEXT)('lets %s be read on %s', (front, ground) => {
    expect(wcagContrast(tokens[front], tokens[ground])).toBeGreaterThanOrEqual(4.5);
  });

  it.each(EDGES)('lets the edge %s be seen on %s', (front, ground) => {
    expect(wcagContrast(tokens[front], tokens[ground])).toBeGreaterThanOrEqual(3);
  });

  it.each(['ink', 'ink-soft'])('lets %s be read where two bold lines of the grid cross', (front) => {
    const crossing = over(tokens['grid-bold'], over(tokens['grid-bold'], tokens.sheet));
    expect(wcagContrast(tokens[front], crossing)).toBeGreaterThanOrEqual(4.5);
  });
});

it('measures contrast as WCAG does: black on white is 21, and #767676 on white the lightest grey that passes', () => {
  expect(wcagContrast('#000', '#fff')).toBeCloseTo(21, 5);
  expect(wcagContrast('#767676', '#fff')).toBeGreaterThanOrEqual(4.5);
  expect(wcagContrast('#777777', '#fff')).toBeLessThan(4.5);
});

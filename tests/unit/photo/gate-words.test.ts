import { expect, it } from 'vitest';
import { gateWords } from '../../../lib/photo/gate-words';
import { GATE_ADVICE } from '../../../lib/photo/reasons';

it('says every gate in words of its own, never by its id', () => {
  const words = Object.keys(GATE_ADVICE).map(gateWords);
  for (const [at, gate] of Object.keys(GATE_ADVICE).entries()) if (/[A-Z]/.test(gate)) expect(words[at]).not.toBe(gate);
  expect(new Set(words).size).toBe(words.length);
});

it('leaves a gate that it does not know as it came, names of built-in properties among them', () => {
  expect([gateWords('sandOnLens'), gateWords('toString')]).toEqual(['sandOnLens', 'toString']);
});

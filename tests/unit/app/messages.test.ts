import { describe, expect, it } from 'vitest';
import { en } from '../../../app/_messages/en';
import { es } from '../../../app/_messages/es';
import { GATE_ADVICE } from '../../../lib/photo/reasons';

/** Every sentence of a message file; functions are called with plain values. */
function sentences(node: unknown): string[] {
  if (typeof node === 'string') return [node];
  if (typeof node === 'function') return [String((node as (...values: unknown[]) => unknown)(3, 10)), String((node as (...values: unknown[]) => unknown)(1, 10))];
  return Object.values(node as object).flatMap(sentences);
}

const REASSURING = {
  en: /\b(normal|fine|healing well|healthy|all (is )?well|all good|nothing wrong|harmless|(don['’]t|do not) worry|no problem)\b/i,
  es: /\b(normal|normales|todo (va |está )?bien|va bien|sana bien|cura bien|sano|no se preocupe|tranquil[oa]|sin problemas?|inofensiv[oa])\b/i,
};

describe.each([
  ['en', en],
  ['es', es],
] as const)('the messages in %s', (language, messages) => {
  it('have one sentence for every reason to refuse a photo, and none besides', () => {
    expect(Object.keys(messages.gates).sort()).toEqual(Object.keys(GATE_ADVICE).sort());
  });

  it('reassure nobody', () => {
    expect(sentences(messages).filter((sentence) => REASSURING[language].test(sentence))).toEqual([]);
  });

  it('are short: on average no more than 14 words a sentence, never more than 30', () => {
    const counts = sentences(messages)
      .flatMap((text) => text.split(/[.?!:…]\s*/))
      .map((sentence) => sentence.split(/\s+/).filter(Boolean).length)
      .filter((count) => count > 0);
    expect(counts.reduce((sum, count) => sum + count, 0) / counts.length).toBeLessThan(14);
    expect(Math.max(...counts)).toBeLessThanOrEqual(30);
  });
});

it('catches a reassuring sentence in either language', () => {
  expect(REASSURING.en.test('This is normal.')).toBe(true);
  expect(REASSURING.es.test('Todo va bien.')).toBe(true);
});

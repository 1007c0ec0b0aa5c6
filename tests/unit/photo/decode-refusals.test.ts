import { describe, expect, it } from 'vitest';
import { DECODE_REFUSAL_SENTENCE, decodeRefusal, type DecodeRefusalId } from '../../../lib/photo/decode-refusals';

const ids = Object.keys(DECODE_REFUSAL_SENTENCE) as DecodeRefusalId[];

describe('a refusal to open a file', () => {
  it.each(ids)('has a whole sentence that says what to do: %s', (id) => {
    const { sentence } = decodeRefusal(id);
    expect(sentence).toMatch(/^[A-Z].*\.$/);
    expect(sentence).toMatch(/please/i);
    expect(sentence).not.toMatch(/\b(normal|fine|all well|healing well)\b/i);
  });

  it('carries what was found only where something was found', () => {
    expect(decodeRefusal('tooSmall', '8 × 8 px').detail).toBe('8 × 8 px');
    expect('detail' in decodeRefusal('tooSmall')).toBe(false);
  });
});

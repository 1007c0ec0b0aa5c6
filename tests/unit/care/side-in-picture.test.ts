import { describe, expect, it } from 'vitest';
import { sideInPicture } from '../../../lib/care/side-in-picture';

describe('the treated side in a picture with the toe pointing up', () => {
  it.each([
    ['left', 'medial', 'right'],
    ['left', 'lateral', 'left'],
    ['right', 'medial', 'left'],
    ['right', 'lateral', 'right'],
  ] as const)('of a %s foot, %s fold, is on the %s (anatomy)', (foot, side, expected) => {
    expect(sideInPicture({ foot, treatedSides: [side] })).toBe(expected);
  });

  it('is not known without foot or side', () => {
    expect(sideInPicture({ foot: null, treatedSides: ['medial'] })).toBeNull();
    expect(sideInPicture({ foot: 'left', treatedSides: [] })).toBeNull();
    expect(sideInPicture({ foot: 'left' })).toBeNull();
  });

  it('is both where both were treated', () => {
    expect(sideInPicture({ foot: 'left', treatedSides: ['medial', 'lateral'] })).toBe('both');
  });
});

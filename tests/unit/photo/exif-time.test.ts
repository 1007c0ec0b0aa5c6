import { describe, expect, it } from 'vitest';
import { parseExifOffset, parseExifTime } from '../../../lib/photo/exif-time';

describe('the camera’s wall clock', () => {
  it('is the text of the file in ISO order, whatever the zone of this machine', () => {
    expect(parseExifTime('2026:03:02 19:32:31')).toBe('2026-03-02T19:32:31');
    expect(parseExifTime('2026-03-29T02:30:00')).toBe('2026-03-29T02:30:00');
  });

  it.each([null, '', '    :  :     :  :  ', '0000:00:00 00:00:00', '2026:02:30 10:00:00', '2026:13:01 10:00:00', 'yesterday'])(
    'is null where the camera did not know it: %j',
    (text) => {
      expect(parseExifTime(text)).toBeNull();
    },
  );
});

describe('the zone of the wall clock', () => {
  it.each(['+09:00', '-05:00', '+05:45', '+14:00', '-12:00'])('is kept as stated: %s', (text) => {
    expect(parseExifOffset(text)).toBe(text);
  });

  it.each([null, '', '   :  ', 'Z', '+14:30', '-13:00', '+5:00', '+05:75'])('is null where it is no zone: %j', (text) => {
    expect(parseExifOffset(text)).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import { classifyDevice } from '../../../lib/photo/classify-device';

describe('the class of the device', () => {
  it('is phone or camera where maker, model or lens say so', () => {
    expect(classifyDevice(['HTC', 'HTC Desire', null])).toBe('phone');
    expect(classifyDevice([null, null, 'iPhone 11 Pro back triple camera 4.25mm f/1.8'])).toBe('phone');
    expect(classifyDevice(['FUJIFILM', 'FinePixS1Pro', null])).toBe('camera');
  });

  it('is unknown where nothing is said, or something unheard of', () => {
    expect(classifyDevice([null, null, null])).toBe('unknown');
    expect(classifyDevice(['Invented', 'Nine', null])).toBe('unknown');
  });
});

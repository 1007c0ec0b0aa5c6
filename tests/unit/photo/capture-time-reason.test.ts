import { describe, expect, it } from 'vitest';
import { captureTimeReason } from '../../../lib/photo/capture-time-reason';

const receivedAt = '2026-11-25T08:00:00Z';
const taken = (localTime: string | null, utcOffset: string | null = null) => ({ localTime, utcOffset });

describe('the date of a photo', () => {
  it('can be absent: that fails nothing', () => {
    expect(captureTimeReason(taken(null), { receivedAt })).toBeNull();
  });

  it.each([
    ['the same morning', '2026-11-25T07:00:00', '+00:00'],
    ['in summer, half a year before', '2026-03-02T19:32:31', '+01:00'],
    ['399 days before', '2025-10-22T08:00:00', null],
    ['on a clock without a zone, east of here', '2026-11-25T22:00:00', null],
    ['on a clock without a zone, at the date line', '2026-11-26T09:30:00', null],
  ])('can be right: %s', (_, localTime, utcOffset) => {
    expect(captureTimeReason(taken(localTime, utcOffset), { receivedAt })).toBeNull();
  });

  it('cannot be years back, nor in the future', () => {
    expect(captureTimeReason(taken('2019-01-05T10:00:00', '+01:00'), { receivedAt })).toMatchObject({ gate: 'captureTime', limit: 400 });
    const future = captureTimeReason(taken('2031-06-01T10:00:00', '+01:00'), { receivedAt });
    expect(future?.measured).toBeLessThan(-1600);
    expect(future?.limit).toBeCloseTo(-26 / 24, 9);
  });

  it('is held against the procedure, with the same slack for clocks without a zone', () => {
    const context = { receivedAt, procedureAt: '2026-11-20T09:00:00Z' };
    expect(captureTimeReason(taken('2026-11-19T20:00:00'), context)).toBeNull();
    expect(captureTimeReason(taken('2026-11-18T20:00:00'), context)?.gate).toBe('captureTime');
    const withoutReceipt = captureTimeReason(taken('2026-11-18T20:00:00'), { ...context, receivedAt: null });
    expect(withoutReceipt).toMatchObject({ gate: 'captureTime', measured: null, limit: null });
  });

  it('uses the stated zone: 23 hours of offset between two photos with the same wall clock', () => {
    const context = { receivedAt: '2026-11-24T20:00:00Z' };
    expect(captureTimeReason(taken('2026-11-26T04:00:00', '+14:00'), context)).toBeNull();
    expect(captureTimeReason(taken('2026-11-26T04:00:00', '-09:00'), context)?.gate).toBe('captureTime');
  });

  it('throws on a context that is no instant, and says which', () => {
    expect(() => captureTimeReason(taken('2026-11-25T07:00:00'), { receivedAt: 'today' })).toThrow(/receivedAt.*today/);
  });
});

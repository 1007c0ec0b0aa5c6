import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { orderQueue, type QueueFacts } from '../../../lib/review/order-queue';
import { orderFindings, type OpenFinding } from '../../../lib/review/place-case';

const NOW = '2026-03-10T12:00:00Z';
const hoursAgo = (hours: number) => new Date(Date.parse(NOW) - hours * 3_600_000).toISOString();
let count = 0;
const finding = (episodeId: string, level: OpenFinding['level'], hours: number, more: Partial<OpenFinding> = {}): OpenFinding => {
  count += 1;
  return { id: `f${count}`, episodeId, rule: 'spreading', level, at: hoursAgo(hours), foundAt: hoursAgo(hours), ...more };
};
const facts = (more: Partial<QueueFacts> = {}): QueueFacts => ({
  limits: { now: 15, today: 240, soon: 1440 },
  now: NOW,
  askedAt: new Map(),
  answersQuestions: false,
  ...more,
});
const order = (findings: readonly OpenFinding[], more: Partial<QueueFacts> = {}) => orderQueue(findings, facts(more)).map(({ episodeId }) => episodeId);

describe('the order of the list', () => {
  it('puts the worst level first, however long the others have waited', () => {
    const levels = ['retake', 'visit', 'soon', 'today', 'now'] as const;
    expect(order(levels.map((level, at) => finding(level, level, 100 - at)))).toEqual(['now', 'today', 'soon', 'visit', 'retake']);
  });

  it('puts first, within a level, what has used up most of the clinic’s limit', () => {
    expect(order([finding('an hour', 'today', 1), finding('six hours', 'today', 6), finding('three', 'today', 3)])).toEqual(['six hours', 'three', 'an hour']);
  });

  it('puts the longest wait first also where the clinic has set no limit', () => {
    expect(order([finding('short', 'visit', 2), finding('long', 'visit', 90)])).toEqual(['long', 'short']);
  });

  it('has one place for a case, by the worst that is open on it', () => {
    const [only, ...others] = orderQueue([finding('a', 'soon', 50), finding('a', 'now', 1, { rule: 'bleeding' }), finding('a', 'visit', 99, { rule: 'late' })], facts());
    expect(others).toEqual([]);
    expect(only.first.level).toBe('now');
    expect(only.others.map(({ level }) => level)).toEqual(['soon', 'visit']);
  });

  it('does not depend on the order in which findings come', () => {
    const all = [finding('a', 'today', 5), finding('b', 'today', 5), finding('c', 'soon', 7), finding('d', 'now', 1), finding('b', 'soon', 30, { rule: 'late' })];
    const wanted = orderQueue(all, facts());
    fc.assert(fc.property(fc.shuffledSubarray(all, { minLength: all.length }), (mixed) => {
      expect(orderQueue(mixed, facts())).toEqual(wanted);
    }));
  });

  it('says nothing twice: the same rule again is told with its newest evidence, and waits since it was first said', () => {
    const [only] = orderQueue([finding('a', 'today', 30, { id: 'old' }), finding('a', 'today', 2, { id: 'new' })], facts());
    expect(only.first.id).toBe('new');
    expect(only.waitedMinutes).toBe(1800);
    expect(only.others).toEqual([]);
  });

  it('never waits a time below zero, also where a clock runs ahead', () => {
    expect(orderQueue([finding('a', 'today', -3)], facts())[0].waitedMinutes).toBe(0);
  });
});

describe('a question to the clinician', () => {
  const askedAt = new Map([['asked', hoursAgo(1)]]);
  const both = () => [finding('asked', 'today', 20), finding('open', 'soon', 2)];

  it('puts the case last for the nurse and first for the clinician', () => {
    expect(order(both(), { askedAt })).toEqual(['open', 'asked']);
    expect(order(both(), { askedAt, answersQuestions: true })).toEqual(['asked', 'open']);
  });

  it('covers nothing that was found after it was asked', () => {
    const queue = orderQueue([...both(), finding('asked', 'soon', 0.5, { rule: 'purulent' })], facts({ askedAt }));
    expect(queue[0]).toMatchObject({ episodeId: 'asked', asked: false });
  });

  it('takes an emergency from the top for nobody', () => {
    expect(order([finding('asked', 'now', 2, { rule: 'bleeding' }), finding('open', 'today', 200)], { askedAt })[0]).toBe('asked');
  });
});

it('keeps both words on photos apart where a wrong card and unusable photos are two reasons', () => {
  const two = [finding('a', 'soon', 3, { rule: 'cannot-judge', id: 'held' }), finding('a', 'soon', 5, { rule: 'cannot-judge', id: 'blurred' })];
  const newest = finding('a', 'retake', 1, { rule: 'photo-not-measured' });
  expect(orderFindings([...two, newest]).map(({ id }) => id)).toEqual(['blurred', 'held']);
  expect(orderFindings([newest])).toEqual([newest]);
});

import { expect, it } from 'vitest';
import { classGap } from '../../bench/cohorts/class-gap';
import { wilsonInterval } from '../../bench/cohorts/wilson-interval';

const between = [75, 70, 70, 65].map((hits) => wilsonInterval(hits, 100));

it('has the published interval of a difference: 56 of 70 and 48 of 80, 5.24 to 33.39 points (Newcombe 1998, table II, method 10; from memory)', () => {
  const { points, from, to } = classGap([wilsonInterval(48, 80), ...between, wilsonInterval(56, 70)]);
  expect([points, from, to].map((one) => one.toFixed(2))).toEqual(['20.00', '5.24', '33.39']);
});

it('says what six equal classes would show: 2.534 standard errors', () => {
  const classes = Array.from({ length: 6 }, () => wilsonInterval(90, 100));
  expect(classGap(classes)).toMatchObject({ points: 0 });
  expect(classGap(classes).byChancePoints).toBeCloseTo(2.534 * 3, 9);
});

it('takes six classes and no other number', () => {
  expect(() => classGap(between)).toThrow('six classes, received 4');
});

import type { PointMm, RingMm } from '../../../lib/units';

/** A ring of equally spaced angles on an ellipse. */
export function ellipseRing(acrossMm: number, downMm: number, a: number, b: number, sides = 360): RingMm {
  return Array.from({ length: sides }, (_, index) => {
    const angle = (2 * Math.PI * index) / sides;
    return { acrossMm: acrossMm + a * Math.cos(angle), downMm: downMm + b * Math.sin(angle) };
  });
}

export const circleRing = (acrossMm: number, downMm: number, radius: number, sides = 360): RingMm =>
  ellipseRing(acrossMm, downMm, radius, radius, sides);

export const rectangleRing = (left: number, top: number, width: number, height: number): RingMm => [
  { acrossMm: left, downMm: top },
  { acrossMm: left + width, downMm: top },
  { acrossMm: left + width, downMm: top + height },
  { acrossMm: left, downMm: top + height },
];

/** A star-shaped ring that does not cross itself, somewhere on the card. */
export function wobblyRing(random: () => number, sides: number): RingMm {
  const centre = { acrossMm: 20 + 40 * random(), downMm: 10 + 30 * random() };
  return Array.from({ length: sides }, (_, index) => {
    const angle = (2 * Math.PI * index) / sides;
    const radius = 4 + 3 * random();
    return { acrossMm: centre.acrossMm + radius * Math.cos(angle), downMm: centre.downMm + radius * Math.sin(angle) };
  });
}

export const moved = (ring: RingMm, across: number, down: number): RingMm =>
  ring.map(({ acrossMm, downMm }) => ({ acrossMm: acrossMm + across, downMm: downMm + down }));

export const scaled = (ring: RingMm, factor: number): RingMm =>
  ring.map(({ acrossMm, downMm }) => ({ acrossMm: acrossMm * factor, downMm: downMm * factor }));

/** Turned about the card's origin. */
export function turned(ring: RingMm, angleDeg: number): RingMm {
  const angle = (angleDeg * Math.PI) / 180;
  return ring.map(
    ({ acrossMm, downMm }): PointMm => ({
      acrossMm: acrossMm * Math.cos(angle) - downMm * Math.sin(angle),
      downMm: acrossMm * Math.sin(angle) + downMm * Math.cos(angle),
    }),
  );
}

/** Arc length from the top of |x|ⁿ + |z / flatness|ⁿ = 1 to x = share, by many short chords: nothing of the project's. */
export function superellipseArc({ flatness, squareness: n }: { readonly flatness: number; readonly squareness: number }, share: number): number {
  const steps = 20_000;
  const height = (x: number): number => flatness * Math.max(0, 1 - x ** n) ** (1 / n);
  let sum = 0;
  for (let i = 1; i <= steps; i++) {
    const [a, b] = [i - 1, i].map((at) => Math.sin((Math.asin(share) * at) / steps));
    sum += Math.hypot(b - a, height(b) - height(a));
  }
  return sum;
}

/**
 * Least-squares straight line.
 *
 * @param points at least two places x with their values y
 * @returns the line as a function; level where all x are the same
 * @example lineThrough([{ x: 0, y: 1 }, { x: 2, y: 5 }])(1) // 3
 */
export function lineThrough(points: readonly { readonly x: number; readonly y: number }[]): (x: number) => number {
  const xMean = points.reduce((sum, { x }) => sum + x, 0) / points.length;
  const yMean = points.reduce((sum, { y }) => sum + y, 0) / points.length;
  const squared = points.reduce((sum, { x }) => sum + (x - xMean) ** 2, 0);
  const product = points.reduce((sum, { x, y }) => sum + (x - xMean) * (y - yMean), 0);
  const slope = squared === 0 ? 0 : product / squared;
  return (x) => yMean + slope * (x - xMean);
}

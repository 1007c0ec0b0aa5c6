import type { LineMm, PointMm } from '../units';

const between = (a: PointMm, b: PointMm, share: number): PointMm => ({
  acrossMm: a.acrossMm + (b.acrossMm - a.acrossMm) * share,
  downMm: a.downMm + (b.downMm - a.downMm) * share,
});

/**
 * The pen-down parts of a dashed line, each following the line's corners.
 *
 * @param line mm, no point twice in a row
 * @param dashMm pen down
 * @param gapMm pen up
 * @returns short lines from the start of `line` on; the last may be cut short.
 * @example dashedLine([{ acrossMm: 0, downMm: 0 }, { acrossMm: 5, downMm: 0 }], 2, 1).length // 2
 */
export function dashedLine(line: LineMm, dashMm: number, gapMm: number): LineMm[] {
  const dashes: PointMm[][] = [];
  let current: PointMm[] = [line[0]];
  let penDown = true;
  let leftMm = dashMm;
  for (let place = 1; place < line.length; place++) {
    let from = line[place - 1];
    const to = line[place];
    let lengthMm = Math.hypot(to.acrossMm - from.acrossMm, to.downMm - from.downMm);
    while (lengthMm > leftMm) {
      from = between(from, to, leftMm / lengthMm);
      lengthMm -= leftMm;
      if (penDown) dashes.push([...current, from]);
      penDown = !penDown;
      current = [from];
      leftMm = penDown ? dashMm : gapMm;
    }
    leftMm -= lengthMm;
    if (lengthMm > 0) current.push(to);
  }
  if (penDown && current.length > 1) dashes.push(current);
  return dashes;
}

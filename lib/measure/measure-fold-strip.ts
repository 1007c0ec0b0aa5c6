import { gridPoint } from '../rectify/grid-point';
import type { MapGrid } from '../rectify/millimetre-map';
import { ringMask } from '../rectify/ring-mask';
import type { LineMm } from '../units';
import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import { FOLD_STRIP_MM, STRIP_PX_PER_MM } from './constants';
import type { FoldSide } from './fold-side';
import { lineLengthMm } from './line-length';
import type { MeasureInput } from './measure-input';
import { scaleTerms } from './scale-terms';
import { skinSlopeTerm } from './skin-slope-term';
import { uOfHalfWidth } from './u-of-half-width';

/**
 * Area of the strip of skin beside the treated margin, as wide as the fold: what soggy skin is a share of.
 *
 * @param input of the whole stage, outlines straightened
 * @param fold the margin with its sides, or null where it is not known
 * @returns mm² or a reason
 * The strip ends square at the margin's ends, and at the toe's outline where that comes first.
 * @example measureFoldStrip(input, null).measurement // { notMeasured: 'marginNotFound' }
 */
export function measureFoldStrip(input: MeasureInput, fold: FoldSide | null): Budgeted {
  const { toe, nailFoldMargin: margin } = input.outlines;
  if (fold === null || margin === null) return refused('marginNotFound');
  if (toe === null) return refused('toeNotFound');
  const grid = gridAround(fold.line);
  const onToe = ringMask(toe.rings.map(({ ring }) => ring), grid);
  let pixels = 0;
  for (let i = 0; i < onToe.length; i++) {
    if (onToe[i] === 0) continue;
    const out = fold.outMm(gridPoint(grid, Math.floor(i / grid.widthPx), i % grid.widthPx));
    if (out !== null && out > 0 && out <= FOLD_STRIP_MM) pixels++;
  }
  if (pixels === 0) return refused('foldHidden');
  const areaMm2 = pixels / STRIP_PX_PER_MM ** 2;
  const lengthMm = lineLengthMm(fold.line);
  // Where the toe's outline ends the strip, both lines say how wide it is; elsewhere its width is its definition.
  const cutMm = Math.max(0, lengthMm - areaMm2 / FOLD_STRIP_MM);
  return budgeted(input, 'foldStripArea', areaMm2, [
    ...scaleTerms(input.scale, areaMm2, 'area'),
    skinSlopeTerm(input.scale, areaMm2, 'area'),
    { name: 'stripEdge', u: Math.hypot(toe.boundaryUMm, margin.boundaryUMm), sensitivity: cutMm },
    { name: 'marginEnds', u: margin.boundaryUMm, sensitivity: FOLD_STRIP_MM * Math.SQRT2 },
    { name: 'sampling', u: uOfHalfWidth(1 / (2 * STRIP_PX_PER_MM), 'rectangular'), sensitivity: Math.sqrt(lengthMm / STRIP_PX_PER_MM) },
  ]);
}

function gridAround(line: LineMm): MapGrid {
  const across = line.map(({ acrossMm }) => acrossMm);
  const down = line.map(({ downMm }) => downMm);
  const [left, top] = [Math.min(...across) - FOLD_STRIP_MM, Math.min(...down) - FOLD_STRIP_MM];
  return {
    originAcrossMm: left,
    originDownMm: top,
    pxPerMm: STRIP_PX_PER_MM,
    widthPx: Math.ceil((Math.max(...across) + FOLD_STRIP_MM - left) * STRIP_PX_PER_MM) + 1,
    heightPx: Math.ceil((Math.max(...down) + FOLD_STRIP_MM - top) * STRIP_PX_PER_MM) + 1,
  };
}

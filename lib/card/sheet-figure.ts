import type { PointMm } from '../units';
import { BLACK, FAINT_INK, INK_BLUE, NOTCH_WIDTHS_MM } from './constants';
import { dashedLine } from './dashed-line';
import type { InkedShape } from './inked-shape';
import { notchOutline } from './notch-outline';
import { OWN_CARD } from './own-card';
import { placeShape } from './place-shape';
import { centredRing, rectRing } from './rect-ring';
import { smoothLine } from './smooth-line';
import { strokeOutline } from './stroke-outline';

type Pair = readonly [number, number];
const points = (pairs: readonly Pair[]): PointMm[] => pairs.map(([acrossMm, downMm]) => ({ acrossMm, downMm }));

const PEN_MM = 0.35;
const pen = (name: string, pairs: readonly Pair[], penMm = PEN_MM): InkedShape => ({
  name,
  ink: INK_BLUE,
  rings: strokeOutline(smoothLine(points(pairs)), penMm),
});

/** The toe from above, in the card's frame: its outline, the nail, the nail's free edge. */
const TOE_FROM_ABOVE: readonly Pair[] = [
  [29.6, 64], [28.9, 48], [29.3, 36], [31.8, 27], [36.6, 22.2], [42.8, 20.8], [49, 22.2], [53.8, 27], [56.3, 36], [56.7, 48], [56, 64],
];
const NAIL_FROM_ABOVE: readonly Pair[] = [
  [34.6, 26.5], [33.9, 33], [34.8, 38], [38, 40.4], [42.8, 41], [47.6, 40.4], [50.8, 38], [51.7, 33], [51, 26.5], [47, 24.4], [42.8, 23.9], [38.6, 24.4],
];

/** Half size: the card is 43 mm wide in the figure. */
const FIGURE_SCALE = 0.5;
const ABOVE_PEN_MM = PEN_MM / FIGURE_SCALE;

function fromAbove(): InkedShape[] {
  const { widthMm, heightMm } = OWN_CARD;
  const notch = notchOutline(NOTCH_WIDTHS_MM.L);
  const corners = points([[widthMm, heightMm], [widthMm, 0], [0, 0], [0, heightMm]]);
  const edge = [...notch, ...corners, notch[0]];
  const squares = OWN_CARD.fiducials.map((fiducial) => centredRing(fiducial.centre, fiducial.sizeMm));
  const card: InkedShape = { name: 'card from above', ink: INK_BLUE, rings: strokeOutline(edge, ABOVE_PEN_MM) };
  const markers: InkedShape = { name: 'squares', ink: BLACK, rings: squares };
  const toe = pen('toe', TOE_FROM_ABOVE, ABOVE_PEN_MM);
  const nail = pen('nail', [...NAIL_FROM_ABOVE, NAIL_FROM_ABOVE[0]], ABOVE_PEN_MM);
  return [card, markers, toe, nail].map((shape) =>
    placeShape(shape, { acrossMm: 0, downMm: 4 }, FIGURE_SCALE),
  );
}

/** The toe from the side, tip to the right, with the card level with its nail and the phone straight above. */
function fromTheSide(): InkedShape[] {
  const sight = (from: Pair, to: Pair): InkedShape => ({
    name: 'line of sight',
    ink: FAINT_INK,
    rings: dashedLine(points([from, to]), 1.2, 0.8).flatMap((dash) => strokeOutline(dash, 0.2)),
  });
  return [
    sight([24, 4.4], [13, 24]),
    sight([24, 4.4], [41, 24]),
    pen('sole', [[0, 36], [9, 35.6], [18, 34.2], [24, 35.4], [31, 35.6], [36.4, 33], [38, 28.6], [36.6, 25.2]]),
    pen('back of the toe', [[0, 20], [8, 21.6], [16, 22.6], [21, 23.2], [22.6, 24.4]]),
    pen('nail from the side', [[22.6, 24.4], [27, 23.6], [32, 23.8], [37.4, 25.4]]),
    pen('nail thickness', [[24.4, 25], [30, 24.7], [36.6, 26.2]]),
    { name: 'card from the side', ink: BLACK, rings: [rectRing(14, 25.6, 8, 0.5), rectRing(38.4, 25.6, 5, 0.5)] },
    { name: 'phone', ink: INK_BLUE, rings: strokeOutline(points([[16, 1], [32, 1], [32, 3], [16, 3], [16, 1]]), PEN_MM) },
    { name: 'lens', ink: INK_BLUE, rings: [centredRing({ acrossMm: 24, downMm: 3.7 }, 3, 0.8)] },
  ];
}

/**
 * How the card lies: from above at half size, and from the side.
 *
 * @returns shapes with their origin at the top left of a place 100 mm wide and 40 mm high.
 * @example sheetFigure().filter((shape) => shape.name === 'nail').length // 1
 */
export function sheetFigure(): InkedShape[] {
  return [...fromAbove(), ...fromTheSide().map((shape) => placeShape(shape, { acrossMm: 54, downMm: 0 }))];
}

import { type Homography, invertHomography, toImage } from '../rectify/homography';

/** `[acrossMm, downMm]` */
type Position = readonly [number, number];
type Rings = readonly { readonly ring: readonly Position[] }[] | null | undefined;

/** The outlines of one analysis, as they are kept. */
export interface KeptOutlines {
  readonly nailFoldMargin?: readonly Position[] | null;
  readonly erythema?: Rings;
  readonly raw?: Rings;
  readonly macerated?: Rings;
  readonly referenceSkin?: Rings;
}

export const PEN_LINES = ['referenceSkin', 'macerated', 'raw', 'nailFoldMargin', 'erythema'] as const;
export type PenLineName = (typeof PEN_LINES)[number];

export interface PenLine {
  readonly name: PenLineName;
  /** Path data in pixels of the upright photo. */
  readonly path: string;
}

/**
 * Outlines in card millimetres as paths over the photo they were found in.
 *
 * @param outlines as the analysis keeps them, mm on the card
 * @param cardFromImage the analysis's map from photo pixels to the card
 * @returns what is to be drawn first comes first; nothing for what was not found
 * @example penLines({ nailFoldMargin: [[0, 0], [2, 1]] }, [0.1, 0, 0, 0, 0.1, 0, 0, 0, 1]) // [{ name: 'nailFoldMargin', path: 'M0 0L20 10' }]
 */
export function penLines(outlines: KeptOutlines, cardFromImage: Homography): PenLine[] {
  const imageFromCard = invertHomography(cardFromImage);
  const draw = (line: readonly Position[], end: '' | 'Z'): string => {
    const points = line.map(([acrossMm, downMm]) => toImage(imageFromCard, { acrossMm, downMm }));
    return points.length < 2 ? '' : `M${points.map(({ column, row }) => `${pixel(column)} ${pixel(row)}`).join('L')}${end}`;
  };
  return PEN_LINES.flatMap((name) => {
    const found = outlines[name];
    const path = name === 'nailFoldMargin' ? draw(outlines.nailFoldMargin ?? [], '') : ((found ?? []) as NonNullable<Rings>).map(({ ring }) => draw(ring, 'Z')).join('');
    return path === '' ? [] : [{ name, path }];
  });
}

/** A tenth of a pixel is finer than any screen shows. */
const pixel = (value: number): string => String(Math.round(value * 10) / 10 + 0);

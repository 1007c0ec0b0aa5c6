/**
 * Where the 24 patches lie in the real chart photos of the shared data. No coordinates are published with them: the
 * centres of the four corner patches were read off by eye, to about two pixels, and the others lie between.
 */
import sharp from 'sharp';
import { medianOf } from '../../../lib/rectify/median-of';
import { sharedFile } from '../../shared-data';

type Pixel = readonly [column: number, row: number];

export interface ChartPhoto {
  readonly file: string;
  readonly darkSkin: Pixel;
  readonly bluishGreen: Pixel;
  readonly white: Pixel;
  readonly black: Pixel;
  /** Half the side of the square that is read, pixels: well inside a patch. */
  readonly reach: number;
}

export const CHART_PHOTOS: readonly ChartPhoto[] = [
  { file: 'plantcv_classic.png', darkSkin: [225, 59], bluishGreen: [225, 331], white: [58, 59], black: [68, 330], reach: 6 },
  { file: 'plantcv_passport.png', darkSkin: [95, 339], bluishGreen: [99, 106], white: [235, 340], black: [237, 107], reach: 6 },
  { file: 'plantcv_cabinet_target.png', darkSkin: [233, 170], bluishGreen: [231, 276], white: [171, 169], black: [169, 274], reach: 4 },
  { file: 'plantcv_cabinet_source1.png', darkSkin: [232, 166], bluishGreen: [231, 272], white: [170, 166], black: [168, 271], reach: 4 },
  { file: 'plantcv_seedhead.jpg', darkSkin: [168, 262], bluishGreen: [302, 266], white: [164, 344], black: [300, 347], reach: 6 },
  { file: 'handheld_sunlit.jpg', darkSkin: [261, 302], bluishGreen: [511, 302], white: [261, 452], black: [514, 443], reach: 8 },
];

/** Median code values of the 24 patches, in the chart's order: dark skin … bluish green, …, white … black. */
export async function readChartCodes(photo: ChartPhoto): Promise<(readonly [number, number, number])[]> {
  const { data, info } = await sharp(sharedFile('colour', photo.file))
    .flatten()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return Array.from({ length: 24 }, (_, index) => {
    const across = (index % 6) / 5;
    const down = Math.floor(index / 6) / 3;
    const [column, row] = [0, 1].map((axis) =>
      Math.round(
        (1 - down) * ((1 - across) * photo.darkSkin[axis] + across * photo.bluishGreen[axis]) +
          down * ((1 - across) * photo.white[axis] + across * photo.black[axis]),
      ),
    );
    const values: number[][] = [[], [], []];
    for (let r = row - photo.reach; r <= row + photo.reach; r += 1) {
      for (let c = column - photo.reach; c <= column + photo.reach; c += 1) {
        values.forEach((list, channel) => list.push(data[(r * info.width + c) * info.channels + channel]));
      }
    }
    return [medianOf(values[0]), medianOf(values[1]), medianOf(values[2])];
  });
}

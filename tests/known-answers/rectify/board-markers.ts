/** Photos of printed markers taken by others: which dictionary each holds, and how a found marker is matched to its truth. */
import { detectFiducials } from '../../../lib/edges/vision/detect-fiducials';
import type { OpenCv } from '../../../lib/edges/vision/open-cv';
import type { FoundFiducial } from '../../../lib/rectify/found-fiducial';
import { shrinkToGrey } from '../../../lib/rectify/grey-image';
import type { PointPx } from '../../../lib/units';
import { type Marker, readBoardPhoto } from './read-board-photo';

/** Pictures that hold markers of a dictionary OpenCV knows, and which. */
export const KNOWN: Readonly<Record<string, string>> = {
  'opencv_singlemarkers.jpg': 'DICT_6X6_250',
  'opencv_charuco_a.jpg': 'DICT_6X6_250',
  'opencv_charuco_b.jpg': 'DICT_6X6_250',
  'arucogrid_00.jpg': 'DICT_6X6_1000',
  'arucogrid_05.jpg': 'DICT_6X6_1000',
  'arucogrid_10.jpg': 'DICT_6X6_1000',
  'arucogrid_20.jpg': 'DICT_6X6_1000',
  'apriltag_field_a.jpg': 'DICT_APRILTAG_36h11',
  'apriltag_yaw_000.png': 'DICT_APRILTAG_36h11',
  'apriltag_yaw_030.png': 'DICT_APRILTAG_36h11',
  'apriltag_signs_a.png': 'DICT_APRILTAG_36h11',
  'apriltag_room_a.jpg': 'DICT_APRILTAG_36h11',
  'apriltag_hall_a.jpg': 'DICT_APRILTAG_36h11',
  'aruco5x5_id1.png': 'DICT_5X5_1000',
};
/** Markers of no dictionary that a card could bear. */
export const FOREIGN = ['squarebinary_a.jpg', 'hamming25h7_a.jpg', 'opencv_singlemarkers_legacy.png', 'chess30mm_02.jpg', 'chess30mm_12.jpg'] as const;

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
export const distance = (a: PointPx, [column, row]: readonly [number, number]): number => Math.hypot(a.column - column, a.row - row);
const centre = (points: readonly PointPx[]): PointPx => ({ row: sum(points.map((p) => p.row)) / 4, column: sum(points.map((p) => p.column)) / 4 });

export async function markersIn(cv: OpenCv, name: string, dictionary: string): Promise<FoundFiducial[]> {
  return detectFiducials(cv, shrinkToGrey(await readBoardPhoto(name), 1), dictionary, 'any');
}

/** The found marker of the same id whose centre lies nearest; ids may occur many times. */
export function nearest(found: readonly FoundFiducial[], { id, corners }: Marker): FoundFiducial | null {
  const middle = [sum(corners.map((c) => c[0])) / 4, sum(corners.map((c) => c[1])) / 4] as const;
  const same = found.filter((one) => one.id === id).map((one) => ({ one, offPx: distance(centre(one.cornersPx), middle) }));
  const best = same.reduce<(typeof same)[number] | null>((a, b) => (a === null || b.offPx < a.offPx ? b : a), null);
  return best && best.offPx < 8 ? best.one : null;
}

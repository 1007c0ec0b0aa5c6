import { z } from 'zod';

/**
 * The shape of a geometry file: what this project writes, and less than that for cards made by others. Millimetres from
 * the card's top left corner; places are centres. Unknown fields are passed over.
 */

/** A card larger than a large sheet of paper is a file in other units. */
const LARGEST_MM = 500;
const placeMm = z.number().min(0).max(LARGEST_MM);
const lengthMm = z.number().positive().max(LARGEST_MM);
const MOST_ITEMS = 1000;

const dictionary = z
  .string()
  .regex(/^DICT_(([4-7])X\2_(50|100|250|1000)|ARUCO_ORIGINAL|APRILTAG_(16h5|25h9|36h10|36h11)|ARUCO_MIP_36h12)$/, {
    message: 'must be the name of an OpenCV predefined dictionary, such as DICT_4X4_50',
  });

const fiducial = z.object({ id: z.int().min(0), xMm: placeMm, yMm: placeMm, sizeMm: lengthMm });

const code = z.int().min(0).max(255);
const patch = z.object({
  name: z.string().min(1).max(100).optional(),
  kind: z.enum(['white', 'grey', 'colour']).optional(),
  xMm: placeMm,
  yMm: placeMm,
  wMm: lengthMm.optional(),
  hMm: lengthMm.optional(),
  sizeMm: lengthMm.optional(),
  srgb: z.tuple([code, code, code]).optional(),
});

export const geometryFile = z.object({
  version: z.string().min(1).max(100).optional(),
  widthMm: lengthMm,
  heightMm: lengthMm,
  origin: z.literal('top-left').optional(),
  anchor: z.literal('centre').optional(),
  fiducialAnchor: z.literal('centre').optional(),
  dictionary: dictionary.optional(),
  notch: z.array(z.tuple([placeMm, placeMm])).min(3).max(MOST_ITEMS),
  fiducials: z.array(fiducial).min(4).max(MOST_ITEMS),
  patches: z.array(patch).max(MOST_ITEMS).optional(),
  qr: z.object({ xMm: placeMm, yMm: placeMm, sizeMm: lengthMm }).nullish(),
});

export type GeometryFile = z.infer<typeof geometryFile>;
export type PatchInFile = z.infer<typeof patch>;

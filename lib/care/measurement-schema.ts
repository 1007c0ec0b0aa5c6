/** Measurements as they come out of `pipeline/analysis-json.ts`, and those that a person adds with a pen on the overlay. */
import { z } from 'zod';
import { MEASURAND_UNIT } from '../measure/measure-input';
import type { UnitCode } from '../result';

/** Beyond what the picture yields: read by a person, or by a later method. */
const ADDED_UNIT = {
  /** From the margin to the joint crease along the toe; zero or less where the redness is seen to cross it. */
  creaseDistance: 'mm',
} as const;

export const FOLLOWED_UNIT = { ...MEASURAND_UNIT, ...ADDED_UNIT } as const;
export type Followed = keyof typeof FOLLOWED_UNIT;

const valueOf = (unit: UnitCode) =>
  z.strictObject({
    value: z.number(),
    /** Standard uncertainty, k = 1. */
    u: z.number().min(0),
    /** Expanded uncertainty, k = 2. Accepted as it comes; the rules double u themselves. */
    U: z.number().min(0).optional(),
    unit: z.literal(unit, { error: ({ input }) => `this is given in ${unit} (UCUM), received ${JSON.stringify(input)}` }),
  });

/** `NotMeasuredReason`, or a reason of another method that this one does not know yet. */
const reasonSchema = z.strictObject({ notMeasured: z.string().min(1) });

const schemaOf = (unit: UnitCode) => z.union([valueOf(unit), reasonSchema]).optional();
type MeasurementSchema = ReturnType<typeof schemaOf>;

export type FollowedMeasurement = NonNullable<z.infer<MeasurementSchema>>;

const entries = Object.entries(FOLLOWED_UNIT).map(([name, unit]) => [name, schemaOf(unit)] as const);

/** Any of the numbers may be absent: not every photo, and not every method, has them all. */
export const measurementsSchema = z.strictObject(Object.fromEntries(entries) as Record<Followed, MeasurementSchema>);
export type FollowedMeasurements = z.infer<typeof measurementsSchema>;

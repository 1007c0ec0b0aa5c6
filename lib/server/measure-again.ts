import { z } from 'zod';
import type { DrawnPhoto } from '../edges/db/outline-versions';
import { readPressedMap } from '../edges/files/press-map';
import { lineToJson, type PositionMm } from '../measure/line-to-json';
import type { ToeMeasurement } from '../measure/measure-input';
import { resampleLine } from '../measure/resample-line';
import { movedOutlinesJson } from '../pipeline/analysis-json';
import { type DrawnLines, measureRedrawn, withDrawn } from '../pipeline/measure-redrawn';
import { unpackRedrawMap } from '../pipeline/pack-redraw-map';
import { DRAWN_OUTLINES, type DrawnOutline } from '../segment/edge-cost';
import { type SetPoint, snapLine } from '../segment/snap-line';
import type { LineMm } from '../units';

/** The card and what lies around it; a click cannot be farther off. */
const placeSchema = z.number().min(-50).max(150);
/** More points than anybody sets by hand. */
const MOST_POINTS = 80;
const LINE_STEP_MM = 0.2;

/** What is drawn: an outline through points that were set, or, without any, the program's own again. */
export const drawnSchema = z.strictObject({
  outline: z.enum(DRAWN_OUTLINES),
  points: z.array(z.strictObject({ acrossMm: placeSchema, downMm: placeSchema, held: z.boolean() })).max(MOST_POINTS).nullable(),
});
export type DrawnBody = z.infer<typeof drawnSchema>;

/** One outline as a person drew it, as the camera shows it. */
interface DrawnLine {
  readonly points: readonly SetPoint[];
  readonly line: readonly PositionMm[];
}

/** A version of a photo's outlines as it is kept: what was drawn by hand until then, and every outline with it. */
export interface KeptOutlines {
  readonly drawn: Partial<Record<DrawnOutline, DrawnLine>>;
  readonly outlines: ReturnType<typeof movedOutlinesJson>;
  readonly outlinesAsSeen: ReturnType<typeof movedOutlinesJson>;
  readonly budget: ToeMeasurement['budget'];
}

export interface MeasuredAgain {
  readonly kept: KeptOutlines;
  readonly measurements: ToeMeasurement['measurements'];
  /** The line that was asked for; null where the program's own stands again. */
  readonly line: readonly PositionMm[] | null;
}

/**
 * Lays a line along the photo's own edges through the points, and measures again with it and with all that was drawn
 * before. No photo is opened: the map was made when it was analysed.
 */
export async function measureAgain({ photo, analysis, newest }: DrawnPhoto, { outline, points }: DrawnBody, photoFolder: string): Promise<MeasuredAgain | { readonly problem: 'noMap' | 'tooFewPoints' }> {
  const packed = analysis?.mapSha256 ? await readPressedMap(photoFolder, { episodeId: photo.episodeId, sha256: analysis.mapSha256 }) : null;
  if (packed === null) return { problem: 'noMap' };
  const { input, costs } = unpackRedrawMap(packed);
  const { [outline]: _, ...others } = newest ? (JSON.parse(newest.outlines) as KeptOutlines).drawn : {};
  const closed = outline !== 'nailFoldMargin';
  const snapped = points && snapLine(costs[outline], points, closed);
  if (points !== null && snapped === null) return { problem: 'tooFewPoints' };
  const line = snapped && lineToJson(resampleLine(snapped, LINE_STEP_MM, closed));
  const drawn: KeptOutlines['drawn'] = { ...others, ...(line && points && { [outline]: { points, line } }) };
  const lines = Object.fromEntries(Object.entries(drawn).map(([name, one]) => [name, lineOf(one.line)])) as DrawnLines;
  const { measurements, outlines, budget } = measureRedrawn(input, lines);
  const kept = { drawn, outlines: movedOutlinesJson(outlines), outlinesAsSeen: movedOutlinesJson(withDrawn(input.outlines, lines)), budget };
  return { kept, measurements, line };
}

const lineOf = (positions: readonly PositionMm[]): LineMm => positions.map(([acrossMm, downMm]) => ({ acrossMm, downMm }));

import type { IndexMap } from '../measure/index-difference';
import type { ToeRelief } from '../measure/toe-relief';
import type { TreatedSide } from '../segment/segmentation';
import type { LineMm, RingMm } from '../units';
import type { AnalysisJson, OutlineJson } from './analysis-json';

/** What an earlier photo of the same toe tells about this one; lengths straightened, on its own card. */
export interface EarlierVisit {
  readonly nailPlate: RingMm;
  readonly nailFoldMargin: LineMm;
  /** How far that margin may lie off, one standard deviation. */
  readonly marginUMm: number;
  readonly treatedSide: TreatedSide | null;
  /** What the earlier photo is called, and its skin, where it is still at hand: then the index is compared place by place. */
  readonly photo?: string;
  readonly skin?: SkinMap | null;
}

/** The index of one photo's skin and how its camera leaned. */
export interface SkinMap extends IndexMap {
  readonly relief: ToeRelief | null;
}

/** A margin that the program proposed, and one that a person drew: what own phantoms showed of either, rounded up. */
const MARGIN_U_MM = { proposed: 0.4, carriedOver: 0.3, confirmed: 0.25 } as const;

/**
 * The earlier visit's part of an analysis, from its plain data.
 *
 * @param json the earlier photo's analysis
 * @returns null where plate or margin were not found
 * @example earlierVisit(json)?.marginUMm // 0.4
 */
export function earlierVisit(json: Pick<AnalysisJson, 'outlines'>): EarlierVisit | null {
  const { outlines } = json;
  const plate = (outlines?.nailPlate ?? []).find(({ hole }: OutlineJson) => !hole);
  const margin = outlines?.nailFoldMargin ?? null;
  if (!outlines || !plate || margin === null || margin.length < 2) return null;
  const points = (line: readonly (readonly [number, number])[]): LineMm => line.map(([acrossMm, downMm]) => ({ acrossMm, downMm }));
  return {
    nailPlate: points(plate.ring),
    nailFoldMargin: points(margin),
    marginUMm: MARGIN_U_MM[outlines.marginOrigin ?? 'proposed'],
    treatedSide: outlines.treatedSide,
  };
}

import type { CardGeometry } from '../card/card-geometry';
import type { UprightPhoto } from '../photo/upright-photo';
import { type GateId, type GateReason, gateReason } from '../photo/reasons';
import type { PointMm } from '../units';
import { BLUR_LIMIT_MM, LEAST_FIDUCIALS, LEAST_HULL_SHARE, POSE_RESIDUAL_LIMIT_MM, QUICK_MAY_MISS } from './constants';
import { convexHullAreaMm2 } from './convex-hull';
import { type CardFit, fitCard } from './fit-card';
import type { FoundFiducial } from './found-fiducial';
import { type GreyImage, mirror, shrinkToGrey, toPhoto } from './grey-image';
import { searchShrinks } from './search-shrink';
import { sharpestStepPx } from './sharpest-step-px';
import { refineCorners } from './refine-corners';

/** `quick` looks at the picture once, `thorough` at several scales of contrast: a third of the time against a few more finds. */
export type SearchEffort = 'quick' | 'thorough';
/** Finds square fiducials of a dictionary in a grey picture; an effect, handed in (`edges/vision`). */
export type DetectFiducials = (image: GreyImage, dictionary: string, effort?: SearchEffort) => FoundFiducial[];

/** What one look at a grey copy showed. */
export interface CardLook {
  readonly image: GreyImage;
  readonly effort: SearchEffort;
  readonly fiducials: readonly FoundFiducial[];
}

export type CardSearch = { readonly found: true; readonly fit: CardFit } | { readonly found: false; readonly reason: GateReason };

/** Other dictionaries asked when nothing of ours is there: somebody else's card is told apart from no card. */
const OTHER_DICTIONARIES = ['DICT_5X5_1000', 'DICT_6X6_1000', 'DICT_APRILTAG_36h11', 'DICT_4X4_1000'] as const;
/** Squares that cannot be read look like squares that are not there. */
const BLUR_HIDES: ReadonlySet<GateId> = new Set(['cardNotFound', 'tooFewFiducials']);
/** No step narrower than this in a picture without a readable card: sharp phone photos hold steps of 2 or 3 pixels. */
const BLURRED_STEP_PX = 5;
/** So many foreign fiducials make a foreign card and not a chance pattern. */
const FOREIGN_CARD = 3;

/**
 * Searches a small copy of the photo first, then larger ones, and makes the corners precise only where fiducials
 * were found. Answers with the card's plane, or with the gate that explains best why there is none.
 *
 * @param photo the upright photo
 * @param geometry the card looked for
 * @param detect the fiducial detector
 * @param glance a quick look already taken, while the photo was still being decoded
 * @example const search = findCard(photo, OWN_CARD, detect); if (search.found) search.fit.residualMm
 */
export function findCard(photo: UprightPhoto, geometry: CardGeometry, detect: DetectFiducials, glance: CardLook | null = null): CardSearch {
  const seen = new Map<number, FoundFiducial>();
  const foreign = new Set<number>();
  let unreliable = false;
  let smallest: GreyImage | null = null;
  for (const { image, effort, fiducials } of looks(photo, geometry, detect, glance)) {
    smallest ??= image;
    for (const one of fiducials) {
      if (!geometry.fiducials.some((f) => f.id === one.id)) foreign.add(one.id);
      else if (!seen.has(one.id)) keepRefined(photo, image, one, seen);
    }
    if (effort === 'quick' && seen.size < geometry.fiducials.length - QUICK_MAY_MISS) continue;
    const fit = seen.size >= LEAST_FIDUCIALS ? fitCard([...seen.values()], geometry) : null;
    if (fit && isTrustworthy(fit, geometry)) return { found: true, fit };
    unreliable ||= fit !== null && fit.residualMm > POSE_RESIDUAL_LIMIT_MM;
    if (foreign.size >= FOREIGN_CARD && seen.size === 0) break;
  }
  const reason = explain(seen.size, foreign.size, unreliable, smallest as GreyImage, geometry, detect);
  const hidden = BLUR_HIDES.has(reason.gate) && (sharpestStepPx(photo) ?? 0) >= BLURRED_STEP_PX;
  return { found: false, reason: hidden ? gateReason('blur', null, BLUR_LIMIT_MM) : reason };
}

/**
 * A quick look at a small grey copy.
 * @example quickLook(copy, OWN_CARD, detect).fiducials
 */
export function quickLook(image: GreyImage, { dictionary }: CardGeometry, detect: DetectFiducials): CardLook {
  return { image, effort: 'quick', fiducials: detect(image, dictionary, 'quick') };
}

function* looks(photo: UprightPhoto, geometry: CardGeometry, detect: DetectFiducials, glance: CardLook | null): Generator<CardLook> {
  if (glance) yield glance;
  for (const [i, shrink] of searchShrinks(Math.max(photo.widthPx, photo.heightPx)).entries()) {
    const image = shrinkToGrey(photo, shrink);
    if (i === 0 && !glance) yield quickLook(image, geometry, detect);
    yield { image, effort: 'thorough', fiducials: detect(image, geometry.dictionary, 'thorough') };
  }
}

function keepRefined(photo: UprightPhoto, image: GreyImage, one: FoundFiducial, seen: Map<number, FoundFiducial>): void {
  const coarse = { id: one.id, cornersPx: one.cornersPx.map((corner) => toPhoto(image, corner)) };
  const fine = refineCorners(photo, coarse);
  if (fine) seen.set(one.id, fine);
}

/** Enough of the card, on both sides of the toe, in one plane and the right way round. */
function isTrustworthy(fit: CardFit, geometry: CardGeometry): boolean {
  const centres = geometry.fiducials.filter((f) => fit.used.some((one) => one.id === f.id)).map((f) => f.centre);
  const hullShare = convexHullAreaMm2(centres) / convexHullAreaMm2(geometry.fiducials.map((f) => f.centre));
  return fit.residualMm <= POSE_RESIDUAL_LIMIT_MM && hullShare >= LEAST_HULL_SHARE && surroundsToe(centres, geometry) && !isMirrored(fit);
}

function surroundsToe(centres: readonly PointMm[], geometry: CardGeometry): boolean {
  const across = geometry.notch.map((point) => point.acrossMm);
  const middle = (Math.min(...across) + Math.max(...across)) / 2;
  return centres.some((c) => c.acrossMm < middle) && centres.some((c) => c.acrossMm > middle);
}

function isMirrored(fit: CardFit): boolean {
  const [a, b, , c, d] = fit.imageFromCard;
  return a * d - b * c < 0;
}

function explain(
  seen: number,
  foreign: number,
  unreliable: boolean,
  image: GreyImage,
  geometry: CardGeometry,
  detect: DetectFiducials,
): GateReason {
  if (unreliable) return gateReason('wrongCard', null, null);
  if (foreign >= FOREIGN_CARD && foreign > seen) return gateReason('wrongCard', seen, LEAST_FIDUCIALS);
  const known = (found: readonly FoundFiducial[]) => found.filter((one) => geometry.fiducials.some((f) => f.id === one.id)).length;
  if (known(detect(mirror(image), geometry.dictionary)) > Math.max(1, seen)) return gateReason('mirrored', null, null);
  if (seen > 0) return gateReason('tooFewFiducials', seen, LEAST_FIDUCIALS);
  const others = OTHER_DICTIONARIES.some((dictionary) => detect(image, dictionary).length >= FOREIGN_CARD);
  return others ? gateReason('wrongCard', 0, LEAST_FIDUCIALS) : gateReason('cardNotFound', null, null);
}
